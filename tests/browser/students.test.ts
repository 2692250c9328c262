/**
 * Teacher and student, each on a device of their own: a family on one device, a programme by QR code, link and file, and
 * the record handed over, whole and then what is new.
 */
import jsQR from 'jsqr';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { studioFile } from '../bench/studio-log';
import { browseApp, type Device } from './browse';
import { begin, chooseFile, downloaded } from './steps';

const app = browseApp();

/** A device on which a student of this name has begun. */
async function deviceOf(name: string): Promise<Device> {
  const device = await app.newDevice();
  await device.page.getByLabel(/What the student is called/).fill(name);
  await begin(device.page);
  return device;
}

/** Minutes a day by the programme, as the settings tell it. */
async function programmeText(page: Page): Promise<string> {
  await page.goto(`${app.url}#/settings`);
  return page.getByText(/minutes a day on/).innerText();
}

async function setMinutes(page: Page, minutes: number): Promise<void> {
  await page.goto(`${app.url}#/settings`);
  await page.getByRole('button', { name: 'Change the programme' }).click();
  await page.getByRole('spinbutton', { name: 'Minutes a day' }).fill(String(minutes));
  await page.getByLabel(/What else is asked/).fill('Legato,\nfrom memory.');
  await page.getByRole('button', { name: 'Save the programme' }).click();
  await page.getByText('Programme saved.').waitFor();
}

/** The dots of a picture, by the browser's own decoder of PNG. */
const pixelsOf = (page: Page, picture: Buffer) =>
  page.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
    const bitmap = await createImageBitmap(new Blob([bytes]));
    const { width, height } = bitmap;
    const context = new OffscreenCanvas(width, height).getContext('2d')!;
    context.drawImage(bitmap, 0, 0);
    return { width, height, data: [...context.getImageData(0, 0, width, height).data] };
  }, picture.toString('base64'));

async function takeIn(page: Page, file: Buffer): Promise<void> {
  await page.goto(`${app.url}#/receive`);
  await chooseFile(page, file);
}

/** The name of a student at the head of a page. */
const nameOf = (page: Page, name: string) =>
  page.getByRole('group', { name: 'Student' }).getByRole('button', { name });

test('a family on one device: whose page it is, switched by one tap, in both windows', async () => {
  const { context, page } = await deviceOf('Ada');
  expect(await page.getByRole('group', { name: 'Student', exact: true }).count()).toBe(0);
  await page.goto(`${app.url}#/settings`);
  await page.getByRole('button', { name: 'Add another student' }).click();
  await page.getByLabel('Name of the new student').fill('Ben');
  await page.getByRole('button', { name: 'Add', exact: true }).click();
  await page.getByRole('checkbox', { name: 'hands together, contrary motion' }).check();
  await page.getByRole('button', { name: 'Make today’s list' }).click();
  await page.locator('[data-ready]').waitFor();
  expect(await nameOf(page, 'Ben').getAttribute('aria-pressed')).toBe('true');

  const other = await context.newPage();
  await other.goto(app.url);
  await nameOf(other, 'Ada').click();
  await page.getByRole('button', { name: 'Ada', pressed: true }).waitFor();
  expect(await programmeText(page)).toMatch(/four stages/);
  await nameOf(page, 'Ben').click();
  await page.getByText(/five stages/).waitFor();

  // On the music stand and on paper it is said as well.
  await page.goto(`${app.url}#/play`);
  expect(await page.locator('[data-stand] header').innerText()).toMatch(/^Ben\n/);
  await page.goto(`${app.url}#/map`);
  await page.emulateMedia({ media: 'print' });
  expect(await page.getByRole('main').innerText()).toMatch(/^Ben\n/);
  await page.emulateMedia({ media: 'screen' });
  await page.goto(`${app.url}#/settings`);

  // Archived and taken back, then removed, with the record as a file before; the file brings it all back.
  const more = page.getByRole('button', { name: 'More about Ben' });
  await more.click();
  await page.getByRole('button', { name: 'Archive' }).click();
  await page.getByText('Ben (archived)').waitFor();
  await expect.poll(() => nameOf(other, 'Ben').count()).toBe(0);
  await page.getByRole('button', { name: 'Take back Ben' }).click();
  await expect.poll(() => nameOf(other, 'Ben').count()).toBe(1);
  await more.click();
  await page.getByRole('button', { name: /Remove from this device/ }).click();
  const file = await downloaded(page, 'Save the record as a file first');
  await page.getByRole('button', { name: 'Remove', exact: true }).click();
  await page.getByText(/four stages/).waitFor();
  await expect
    .poll(() => other.getByRole('group', { name: 'Student', exact: true }).count())
    .toBe(0);
  await takeIn(page, file);
  await page.getByText('Ben, new on this device').waitFor();
  await page.getByRole('button', { name: 'Take in' }).click();
  await nameOf(page, 'Ben').click();
  await page.getByRole('button', { name: 'Ben', pressed: true }).waitFor();
  expect(await programmeText(page)).toMatch(/five stages/);
});

/** The cells of a student in the overview, once they have been read. */
async function figuresOf(page: Page, name: string): Promise<readonly string[]> {
  const row = page.getByRole('row').filter({ has: page.getByRole('rowheader', { name }) });
  await page.locator('tr[aria-busy="true"]').first().waitFor({ state: 'detached' });
  return row.getByRole('cell').allInnerTexts();
}

test('all students at a glance: figures, order, table, and one tap to each', async () => {
  const { context, page } = await deviceOf('Ada');
  await page.goto(`${app.url}#/studio`);
  await page.getByText('There is one student here').waitFor();
  const today = await page.evaluate(() => {
    const date = new Date();
    date.setMinutes(date.getMinutes() - date.getTimezoneOffset());
    return date.toISOString().slice(0, 10);
  });
  await takeIn(page, Buffer.from(studioFile([1, 2], 60, today)));
  await page.getByRole('button', { name: 'Take in' }).click();
  await page.locator('[data-ready]').waitFor();
  await page.getByRole('link', { name: 'All students' }).click();
  await page.getByRole('table').waitFor();
  const [ready, onDate, date, practice, days] = await figuresOf(page, 'Ben');
  expect([practice, days]).toEqual(['2 days ago', '3']);
  expect(date).toMatch(/in 22 days/);
  expect(Number(ready)).toBeGreaterThanOrEqual(Number(onDate));
  expect((await figuresOf(page, 'Ada'))[3]).toBe('not yet');
  expect((await figuresOf(page, 'Cleo'))[6]).toBe('1 remark');

  const names = () => page.getByRole('rowheader').allInnerTexts();
  await page.getByRole('button', { name: 'Waiting' }).click();
  expect(await names()).toEqual(['Cleo', 'Ada', 'Ben']);
  expect(await page.locator('th[aria-sort="descending"]').innerText()).toMatch(/^Waiting/);
  const table = (await downloaded(page, /Save as a table/)).toString();
  expect(table.split('\r\n')).toHaveLength(5);

  // One tap to the report, whose figures are the same, and back to the order that was left.
  await page.getByRole('table').getByRole('button', { name: 'Ben', exact: true }).click();
  await page.getByRole('heading', { name: 'Readiness report' }).waitFor();
  await page.getByRole('button', { name: 'Ben', pressed: true }).waitFor();
  expect(await page.locator('main').innerText()).toContain(`Today it is ${ready} per cent`);
  await page.getByRole('link', { name: 'All students' }).click();
  expect(await names()).toEqual(['Cleo', 'Ada', 'Ben']);
  await page.getByRole('button', { name: 'Lesson of Cleo' }).click();
  await page.getByRole('heading', { name: 'Lesson' }).waitFor();
  await page.getByRole('button', { name: 'Cleo', pressed: true }).waitFor();

  // What the teacher rates shows at once, also in another window; who is archived is folded away.
  await page.locator('ol a').first().click();
  await page.getByRole('button', { name: 'even', exact: true }).click();
  const other = await context.newPage();
  await other.goto(`${app.url}#/studio`);
  await other.getByRole('table').waitFor();
  expect((await figuresOf(other, 'Cleo'))[3]).toBe('today');
  await page.goto(`${app.url}#/settings`);
  await page.getByRole('button', { name: 'More about Ben' }).click();
  await page.getByRole('button', { name: 'Archive' }).click();
  await other.getByText('Archived: 1').click();
  expect(await other.getByRole('rowheader').count()).toBe(2);
  await other.getByRole('button', { name: 'Take back Ben' }).click();
  await expect.poll(() => other.getByRole('rowheader').count()).toBe(3);
});

test('a programme by QR code and by file, the record by file, whole and then what is new', async () => {
  const student = await deviceOf('Ada');
  const teacher = await deviceOf('Teacher');

  // The code on the teacher's screen is read by a decoder that is not ours, then by the student's app.
  await setMinutes(teacher.page, 35);
  await teacher.page.getByRole('button', { name: 'Give it to somebody' }).click();
  const code = await teacher.page.getByRole('img', { name: 'QR code' }).screenshot();
  const { data, width, height } = await pixelsOf(teacher.page, code);
  const link = jsQR(Uint8ClampedArray.from(data), width, height)!.data;
  expect(link.startsWith(`${app.url}#/programme/`)).toBe(true);
  await student.page.goto(`${app.url}#/programme`);
  await student.page
    .getByLabel(/Take a picture/)
    .setInputFiles({ name: 'code.png', mimeType: 'image/png', buffer: code });
  await student.page.getByRole('heading', { name: 'A programme for you' }).waitFor();
  const rows = student.page.locator('tbody tr');
  expect(await rows.allInnerTexts()).toEqual([
    'Minutes a day\t20\t35',
    'In words\tnothing\tLegato,\nfrom memory.',
  ]);
  await student.page.getByRole('button', { name: 'Accept this programme' }).click();
  await student.page.locator('[data-ready]').waitFor();
  expect(await programmeText(student.page)).toMatch(/35 minutes/);

  // By link it is the one that holds already; a link that was cut off changes nothing.
  await student.page.goto(link);
  await student.page.getByText('It is the programme that holds already.').waitFor();
  await student.page.goto(link.slice(0, -8));
  await student.page.getByText('This link is not whole').waitFor();

  // By file.
  await teacher.page.getByRole('button', { name: 'Done' }).click();
  await setMinutes(teacher.page, 40);
  await teacher.page.getByRole('button', { name: 'Give it to somebody' }).click();
  await takeIn(student.page, await downloaded(teacher.page, 'As a file'));
  await student.page.getByRole('button', { name: 'Accept this programme' }).click();
  await student.page.locator('[data-ready]').waitFor();

  // The student hands over the whole record, then what is new.
  await student.page.goto(`${app.url}#/settings`);
  await student.page.getByLabel(/To whom/).fill('teacher');
  const whole = await downloaded(student.page, 'Give the whole record');
  await takeIn(teacher.page, whole);
  await teacher.page.getByText('Ada, new on this device').waitFor();
  await teacher.page.getByRole('button', { name: 'Take in' }).click();
  await setMinutes(student.page, 50);
  const fresh = await downloaded(student.page, 'Give what is new to teacher');
  expect(fresh.toString().split('\n')).toHaveLength(3);
  await takeIn(teacher.page, fresh);
  await teacher.page.getByRole('button', { name: 'Take in' }).click();
  await teacher.page.getByRole('button', { name: 'Ada' }).click();
  await teacher.page.getByRole('button', { name: 'Ada', pressed: true }).waitFor();
  expect(await programmeText(teacher.page)).toMatch(/50 minutes/);
});

test('a file that the system hands to the installed app is shown', async () => {
  const { page } = await deviceOf('Ada');
  await page.goto(`${app.url}#/settings`);
  const backup = await downloaded(page, 'Save a backup file');
  // Only an installed app gets files from the system, and no test can install one: the queue is handed in.
  await page.addInitScript((text) => {
    const handle = { getFile: () => Promise.resolve(new File([text], 'log.arpeggiary')) };
    const setConsumer = (consumer: (launch: unknown) => void) => consumer({ files: [handle] });
    Object.defineProperty(window, 'launchQueue', { value: { setConsumer } });
  }, backup.toString());
  await page.goto(app.url);
  await page.reload();
  await page.getByRole('heading', { name: 'Open a file' }).waitFor();
  expect(await page.getByText('Not yet here').locator('..').innerText()).toMatch(/all of it/);
});
