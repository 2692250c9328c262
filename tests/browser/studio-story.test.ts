/**
 * Teacher and student, each on a device of their own, from the programme to the report: it is read by the camera and taken
 * from a file, a week is practised, the teacher hears, remarks and examines, and the student's list says what was asked.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { factsOf, needPoppler, textOf } from '../report/poppler';
import { liveAt } from './app';
import { browseApp, type Device } from './browse';
import { begin, BETWEEN_MARKS, chooseFile, downloaded, press, show } from './steps';

const folder = mkdtempSync(join(tmpdir(), 'arpeggiary-camera-'));
/** What the camera sees is written here before it is opened. */
const film = join(folder, 'code.y4m');
const app = browseApp([
  '--use-fake-ui-for-media-stream',
  '--use-fake-device-for-media-stream',
  `--use-file-for-fake-video-capture=${film}`,
]);

beforeAll(needPoppler);
afterAll(() => rmSync(folder, { recursive: true }));

async function deviceOf(name: string): Promise<Device> {
  const device = await app.newDevice({
    prepare: (context) => liveAt(context, '2026-03-02T17:00:00'),
  });
  await device.page.getByLabel(/What the student is called/).fill(name);
  await begin(device.page);
  return device;
}

async function takeIn(page: Page, file: Buffer): Promise<void> {
  await show(page, '#/receive');
  await chooseFile(page, file);
}

/** A programme for D, in ten minutes a day, with words; `minutes` tells one from another. */
async function writeProgramme(page: Page, minutes: number): Promise<void> {
  await show(page, '#/settings');
  await press(page, 'Change the programme');
  await page
    .getByRole('group', { name: 'Starting notes' })
    .getByRole('radio', { name: 'choose' })
    .check();
  const keys = page.getByRole('group', { name: 'Each starting note' });
  for (const note of ['C', 'E', 'F', 'G', 'A', 'B']) {
    await keys.getByRole('checkbox', { name: note, exact: true }).uncheck();
  }
  await page.getByLabel(/Date of the examination/).fill('2026-03-20');
  await page.getByLabel(/What else is asked/).fill('From memory, legato.');
  await page.getByRole('spinbutton', { name: 'Minutes a day' }).fill(String(minutes));
  await page.keyboard.press('Tab');
  await press(page, 'Save the programme');
  await page.getByText('Programme saved.').waitFor();
}

/** A page that has yet to be drawn is waited for. */
const LOADED = { timeout: 30_000 };

const WIDTH = 640;
const HEIGHT = 480;

/** A film of one frame in the form that Chromium's false camera takes: a picture in the middle of a grey wall. */
async function filmed(page: Page, picture: Buffer): Promise<Buffer> {
  const grey = await page.evaluate(
    async ([base64, width, height]) => {
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      const bitmap = await createImageBitmap(new Blob([bytes]));
      const context = new OffscreenCanvas(width, height).getContext('2d')!;
      context.fillStyle = '#888';
      context.fillRect(0, 0, width, height);
      const side = 0.8 * height;
      context.drawImage(bitmap, (width - side) / 2, (height - side) / 2, side, side);
      const { data } = context.getImageData(0, 0, width, height);
      return Array.from({ length: width * height }, (_, i) => data[4 * i]!);
    },
    [picture.toString('base64'), WIDTH, HEIGHT] as const,
  );
  const noColour = Buffer.alloc((WIDTH * HEIGHT) / 2, 128);
  return Buffer.concat([
    Buffer.from(`YUV4MPEG2 W${WIDTH} H${HEIGHT} F10:1 Ip A1:1 C420jpeg\nFRAME\n`),
    Buffer.from(grey),
    noColour,
  ]);
}

/** Plays the first open entry without a beat, by the pedal, and rates it even. */
async function playFirst(page: Page): Promise<void> {
  const entry = await page.locator('ol > li[data-state="open"]').first().innerText();
  const chords = Number(/Round of (\d+)/.exec(entry)?.[1] ?? 1);
  await page.getByRole('link', { name: 'Begin' }).first().click();
  await page
    .getByRole('group', { name: 'Beat' })
    .getByRole('radio', { name: 'off', exact: true })
    .check();
  await press(page, 'Begin');
  await page.locator('[data-playing="true"]').waitFor();
  for (let i = 0; i < chords; i++) await page.keyboard.press('PageDown');
  await page.getByRole('heading', { name: 'How did it go?' }).waitFor();
  await press(page, chords > 1 ? 'All even: save' : 'even');
  await page.getByText(/^Saved/).waitFor();
}

test('from the programme to the report, on two devices', async () => {
  const teacher = await deviceOf('Teacher');
  const student = await deviceOf('Ada');

  // The programme goes over by the code on the teacher's screen, which the student's camera reads; then, changed, by file.
  await writeProgramme(teacher.page, 10);
  await press(teacher.page, 'Give it to somebody…');
  const code = await teacher.page.getByRole('img', { name: 'QR code' }).screenshot();
  writeFileSync(film, await filmed(teacher.page, code));
  await show(student.page, '#/programme');
  await press(student.page, 'Read it with the camera');
  await student.page.getByRole('heading', { name: 'A programme for you' }).waitFor();
  expect(await student.page.locator('tbody').innerText()).toContain('From memory, legato.');
  await press(student.page, 'Accept this programme');
  await student.page.locator('[data-ready="today"]').waitFor();
  await press(teacher.page, 'Done');
  await writeProgramme(teacher.page, 5);
  await press(teacher.page, 'Give it to somebody…');
  await takeIn(student.page, await downloaded(teacher.page, 'As a file'));
  await student.page.getByRole('heading', { name: 'A programme for you' }).waitFor();
  expect(await student.page.locator('tbody tr').allInnerTexts()).toEqual(['Minutes a day\t10\t5']);
  await press(student.page, 'Accept this programme');
  await student.page.locator('[data-ready="today"]').waitFor();

  // A week of practice.
  for (const day of [2, 3, 4, 5, 6, 7]) {
    await liveAt(student.context, `2026-03-0${day}T17:30:00`);
    await show(student.page, '#/today');
    await student.page.reload();
    await student.page.locator('[data-ready="today"]').waitFor();
    await playFirst(student.page);
  }

  // The lesson, on the teacher's device, with the student's record.
  await show(student.page, '#/settings');
  await student.page.getByLabel(/To whom/).fill('teacher');
  const record = await downloaded(student.page, 'Give the whole record');
  const { context, page } = teacher;
  await liveAt(context, '2026-03-09T15:00:00');
  await page.reload();
  await takeIn(page, record);
  await page.getByText('Ada, new on this device').waitFor();
  await press(page, 'Take in');
  await press(page, 'Ada');
  await page.getByRole('button', { name: 'Ada', pressed: true }).waitFor();
  await show(page, '#/lesson/d.major-6.right.2');
  await press(page, 'uneven');
  await page.getByText(/^Rated uneven at/).waitFor();
  await press(page, 'even');
  await page.getByText(/^Rated even at/).waitFor();
  await page.getByLabel('New remark').fill('Sing it first.');
  await press(page, 'Save remark');
  await page.getByText('Sing it first.').waitFor();
  await page.getByLabel('About').selectOption({ index: 1 });
  await page.getByLabel('New remark').fill('The thumb waits here.');
  await press(page, 'Save remark');
  await page.getByText('The thumb waits here.').waitFor();
  await press(page, 'Ask for it tomorrow');
  await page.getByRole('button', { name: 'Asked for: take back' }).waitFor();
  await show(page, '#/lesson/d.diminished-7.right.2');
  await press(page, 'Set it aside');
  await page.getByRole('button', { name: 'Take it back on the list' }).waitFor();

  // The examination: drawn by a number, marked run by run by the teacher, and its result.
  await show(page, '#/examination');
  await page.getByText('per cent today').waitFor();
  await page.getByLabel(/^Number of the draw/).fill('20614');
  await page.getByRole('radio', { name: 'a teacher' }).check();
  await press(page, 'Begin');
  for (let at = 1; at <= 6; at++) {
    await page.getByText(`Examination, ${at} of 6`).waitFor();
    await press(page, at === 2 ? 'stopped' : 'even');
    await page.waitForTimeout(BETWEEN_MARKS);
  }
  await page.getByRole('heading', { name: 'Passed' }).waitFor();
  await press(page, 'Keep the examination');
  await page.getByText(/1 of 1 passed/).waitFor();

  // Back to the student: the list of the next day has what was asked for, says who asked, and leaves out what is set aside.
  await show(page, '#/settings');
  await page.getByLabel(/To whom/).fill('Ada');
  const back = await downloaded(page, 'Give the whole record');
  await liveAt(student.context, '2026-03-10T17:00:00');
  await student.page.reload();
  await takeIn(student.page, back);
  await press(student.page, 'Take in');
  await show(student.page, '#/today');
  await expect
    .poll(() => student.page.locator('[data-ready="today"] ol > li').first().innerText(), LOADED)
    .toMatch(/major triad, first inversion[^]*Asked for by your teacher\./);
  await show(student.page, '#/item/d.major-6.right.2');
  await student.page.getByText('Sing it first.').waitFor();

  // The report, for the parents.
  await show(student.page, '#/report');
  const pdf = await downloaded(student.page, 'Save as PDF');
  expect(factsOf(pdf).get('Pages')).toMatch(/^[12]$/);
  const words = textOf(pdf).replaceAll(/\s+/g, ' ');
  for (const part of [
    'Ada, 10 March 2026',
    'Asked in words: From memory, legato.',
    'Readiness on 20 March 2026',
    'D, major 6 (right 2 oct.): Sing it first. (9 Mar)',
    ': The thumb waits here. (9 Mar)',
    '1 of 1 passed',
    'Marked by a teacher.',
    'Set aside for now • D, diminished 7 (right 2 oct.)',
  ]) {
    expect(words).toContain(part);
  }
}, 480_000);
