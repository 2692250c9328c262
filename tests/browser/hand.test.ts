/** The hand and the page on the built app: another fingering, one's own, a drill for a join, a sore hand, the exports. */
import { parseMidi } from 'midi-file';
import type { Page } from 'playwright-core';
import { beforeEach, expect, test } from 'vitest';
import { browseApp } from './browse';
import { downloaded, lookRound, show } from './steps';

const app = browseApp();
let page: Page;

/** The invented student, whose last runs point at a drill. */
beforeEach(async () => {
  ({ page } = await app.newDevice({ serviceWorkers: 'block' }));
  await lookRound(page);
});

const right = () => page.getByRole('img', { name: /^Right hand, from the lowest note/ });
const rightIs = (fingers: string) =>
  expect.poll(() => right().getAttribute('aria-label')).toMatch(new RegExp(`: ${fingers}$`));

test('another fingering and one’s own hold on the page and in the exports', async () => {
  await show(page, '#/item/c.major-53.right.2');
  await rightIs('1 2 3 1 2 3 5');
  await page.getByText('Another fingering').click();
  const options = page.getByRole('group', { name: /^Fingers from the lowest note up/ });
  const second = options.getByRole('radio').nth(1);
  const digits = (await second.getAttribute('value'))!;
  await second.check({ force: true });
  await rightIs([...digits].join(' '));

  await page.getByRole('textbox', { name: /^Your own/ }).fill('1 2 4 1 2 4 5');
  await page.getByRole('button', { name: 'Use these fingers' }).click();
  await rightIs('1 2 4 1 2 4 5');
  const xml = (await downloaded(page, /MusicXML/)).toString('utf8');
  const fingers = [...xml.matchAll(/<fingering[^>]*>(\d)</g)].map(([, finger]) => finger).join('');
  expect(fingers).toBe('1241245421421');
  const midi = parseMidi(await downloaded(page, /MIDI file/));
  const keys = midi.tracks.flat().flatMap((one) => (one.type === 'noteOn' ? [one.noteNumber] : []));
  // C major up and down over two octaves from middle C: common practice, no source.
  expect(keys).toEqual([60, 64, 67, 72, 76, 79, 84, 79, 76, 72, 67, 64, 60]);

  await page.getByRole('button', { name: 'Undo' }).click();
  await rightIs([...digits].join(' '));
});

test('a drill from the list is drawn, beats, is noted, and the list goes on', async () => {
  const drill = page.locator('[data-ready="today"] ol > li').first();
  const name = await drill.getByRole('heading').innerText();
  expect(await drill.innerText()).toMatch(/(?:Broke down|Stopped|Uneven) .*: .*octaves|contrary/);
  await page.getByRole('link', { name: /Play all the same|Begin/ }).click();
  await page.getByRole('heading', { level: 1, name }).waitFor();
  await page.locator('.vf-stavenote').first().waitFor();
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await page.getByRole('button', { name: 'Done: go on' }).click();
  // A second drill may come before the rounds.
  await page.locator(`[data-stand], h1:not(:text-is("${name}"))`).first().waitFor();
  await show(page, '#/today');
  await expect.poll(() => drill.getAttribute('data-state')).toBe('done');
});

test('the joins of an item lead to drills, and a drill to the others of the hand', async () => {
  await show(page, '#/item/d.dominant-42.together.4');
  await page.getByRole('link', { name: 'Practise this join' }).first().click();
  const staff = page.getByRole('img', { name: /^The join alone/ });
  // Four times to and fro over three notes, and the last one.
  await expect.poll(() => staff.locator('.vf-stavenote').count()).toBe(17);
  const midi = parseMidi(await downloaded(page, /MIDI file/));
  expect(midi.tracks.flat().filter(({ type }) => type === 'noteOn')).toHaveLength(17);
  for (const name of ['Each position as a chord', 'Hands in opposite directions']) {
    await page.getByRole('link', { name }).click();
    await page.getByRole('heading', { level: 1, name }).waitFor();
    await page.locator('.vf-stavenote').first().waitFor();
  }
});

test('a sore hand rests: the other plays slowly, and the rest is gone through in the mind', async () => {
  await page.getByText('Sore today?').click();
  await page.getByRole('radio', { name: 'both', exact: true }).check({ force: true });
  const first = page.locator('[data-ready="today"] ol > li').first();
  await expect.poll(() => first.innerText()).toMatch(/in the mind/);
  await page.getByRole('link', { name: /Play all the same|Begin/ }).click();
  await page.getByText(/Without playing: name each note/).waitFor();
  await page.getByRole('radio', { name: 'off' }).check({ force: true });
  await page.getByRole('button', { name: 'Begin' }).click();
  const onward = page.getByRole('button', { name: /^(Next chord|Done)$/ });
  const chords = await page.getByRole('img', { name: /^Chord 1 of/ }).getAttribute('aria-label');
  for (let i = 0; i < Number(/of (\d+)/.exec(chords!)![1]); i++) await onward.click();
  await show(page, '#/today');
  await expect.poll(() => first.getAttribute('data-state')).toBe('done');
});
