/** Listening on the built app: MIDI played during a run, refused, missing, unplugged. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { expectedOf } from '../../shared/listening/expected';
import { type ItemId, itemOf } from '../../shared/music/deck';
import { scoreOf } from '../../shared/music/score-of';
import { OPTIONS } from '../formats/scores';
import { perform, type Planted, seededRandom } from '../listening/performer';
import { browseApp } from './browse';
import { allFaultsIn } from './faults';
import { allowMidi, type Answer, fakeMidi, playTake } from './midi';
import { midiFileOf } from './midi-file';
import { beginWithoutBeat, prefer, runsIn, toRating, toStand } from './on-stand';
import { begin } from './steps';

const app = browseApp();

/** A new student's page, with or without MIDI. */
async function openApp(answer: Answer): Promise<Page> {
  const { page } = await app.newDevice({
    viewport: { width: 1024, height: 768 },
    reducedMotion: 'reduce',
    serviceWorkers: 'block',
    prepare: (context) => fakeMidi(context, answer),
  });
  await begin(page);
  return page;
}

const takeOf = (items: readonly ItemId[], planted: Planted) =>
  perform(expectedOf(scoreOf(items.map(itemOf), { ...OPTIONS, pedal: false })), {
    random: seededRandom(4),
    tempo: 320,
    spread: 0.004,
    planted,
  });

const tap = (page: Page, key: number) =>
  page.evaluate((midi) => {
    window.fakeKeyboard.play([
      [0, 0x90, midi, 64],
      [50, 0x80, midi, 0],
    ]);
  }, key);

const listen = (page: Page) => page.getByRole('button', { name: 'Listen to a MIDI keyboard' });

const LEFT: readonly ItemId[] = ['f.major-53.left.2'];
const ROUND: readonly ItemId[] = ['e.major-53.together.2', 'e.minor-53.together.2'];

describe('a MIDI keyboard', () => {
  test('is heard during a run, and the rating begins with what was heard', async () => {
    const page = await openApp('granted');
    await toStand(page, LEFT);
    expect(await page.evaluate(() => window.fakeKeyboard.asked())).toBe(0);
    await listen(page).click();
    await page.getByText('Listening to Test piano').waitFor();
    await beginWithoutBeat(page);
    await playTake(page, takeOf(LEFT, { waits: [{ step: 9, seconds: 0.14 }] }));
    await toRating(page, 1);

    await page.getByText('Going down: it waits 0.1').waitFor();
    expect(await page.getByRole('img', { name: /left hand note by note: 1 waits/ }).count()).toBe(
      1,
    );
    // Played at 80 and not at the 60 that was set.
    const tempo = page.getByRole('spinbutton', { name: 'Tempo played' });
    expect(await tempo.inputValue()).toBe('80');
    expect(await allFaultsIn(page, 'section')).toEqual([]);

    // The pedal saves what is marked; a reload before that loses nothing.
    await page.reload();
    await page.getByText('Going down: it waits 0.1').waitFor();
    await page.waitForTimeout(1000);
    await page.keyboard.press('PageDown');
    await page.getByText('Saved.').waitFor();
    const [run] = await runsIn(page);
    expect(run).toMatchObject({ item: LEFT[0], tempo: 320, fluency: 2, pedal: false });
    expect(run!.take).toMatchObject({ source: 'midi', notes: 13, right: 13, faults: [] });
    expect(run!.take!.hands.left!.waits[9]).toBeGreaterThan(120);
  });

  test('is there again at the next visit without a question, and may be given up', async () => {
    const page = await openApp('granted');
    await page.goto(`${app.url}#/settings`);
    await listen(page).click();
    await page.getByText('Listening to Test piano').waitFor();
    await allowMidi(page);
    await toStand(page, LEFT);
    await page.getByText('Listening to Test piano').waitFor();
    await page.getByRole('button', { name: 'Stop listening' }).click();
    await listen(page).waitFor();
    await page.reload();
    await listen(page).waitFor();
    expect(await page.evaluate(() => window.fakeKeyboard.asked())).toBe(0);
  });

  test('tells the chords of a round apart, and a run with pedal from a dry one', async () => {
    const page = await openApp('granted');
    await toStand(page, ROUND);
    await listen(page).click();
    await page.getByText('Listening to Test piano').waitFor();
    await beginWithoutBeat(page);
    const planted: Planted = { missed: [{ step: 15, hand: 'right' }] };
    await playTake(page, takeOf(ROUND, planted), true);
    await toRating(page, 2);
    const rows = page.locator('main ol > li');
    await rows.nth(0).getByText('Every note is there, and nothing stands out.').waitFor();
    await rows.nth(1).getByText('Right hand, going up: E is missing.').waitFor();
    expect(await page.getByRole('radio', { name: 'with pedal' }).isChecked()).toBe(true);
    await page.getByRole('button', { name: /save/i }).click();
    await page.getByText('Saved: 2 chords.').waitFor();
    const runs = await runsIn(page);
    expect(runs.map(({ take, pedal }) => [take!.notes, take!.right, pedal])).toEqual([
      [26, 26, true],
      [26, 25, true],
    ]);
  });

  test('turns the page and ends the run, while the notes that were heard are lit', async () => {
    const page = await openApp('granted');
    await prefer(page, { picture: 'staff' });
    await toStand(page, ROUND);
    await listen(page).click();
    await page.getByText('Listening to Test piano').waitFor();
    const turns = page.getByRole('group', { name: 'The page turns' });
    expect(await turns.count()).toBe(0);
    const beat = page.getByRole('group', { name: 'Beat' });
    await beat.getByRole('radio', { name: 'off' }).check();
    await turns.getByRole('radio', { name: 'with you' }).check();
    await page.getByRole('button', { name: 'Begin' }).click();
    await page.locator('svg .vf-notehead').first().waitFor();
    const { notes, ...take } = takeOf(ROUND, { wrong: [{ step: 3, hand: 'left', by: 1 }] });
    await playTake(page, { ...take, notes: notes.slice(0, 20) });
    // All but the wrong one.
    await page.waitForFunction(() => document.querySelectorAll('.lit').length === 19);
    const second = page.getByRole('heading', { name: /minor triad, root position/ });
    expect(await second.count()).toBe(0);
    await playTake(page, { ...take, notes: notes.slice(20, 28) });
    await second.waitFor();
    await playTake(page, { ...take, notes: notes.slice(28) });
    await page.getByRole('heading', { name: 'How did it go?' }).waitFor();
    expect(await page.getByText('Left hand, going up: F for E').count()).toBe(1);
  });

  test('rates and goes on by keys that were learnt, and by no others', async () => {
    const page = await openApp('granted');
    await page.goto(`${app.url}#/settings`);
    await listen(page).click();
    await page.getByRole('button', { name: 'Learn five neighbouring keys' }).click();
    await page.getByText('Press the lowest of them now').waitFor();
    await tap(page, 21);
    await page.getByText('1 broke down (A0), 2 stopped (B0)').waitFor();
    await page.getByRole('button', { name: 'Learn a piano key for “on”' }).click();
    await tap(page, 22);
    await page.getByText('› on (B♭0)').waitFor();
    expect(await allFaultsIn(page, 'main')).toEqual([]);

    await allowMidi(page);
    await toStand(page, LEFT);
    await page.getByText('On the piano:').waitFor();
    await page.getByRole('radio', { name: 'off' }).check();
    await page.waitForTimeout(700);
    await tap(page, 22);
    await page.locator('[data-playing="true"]').waitFor();
    // During a run they do nothing, and are no notes of it.
    await playTake(page, takeOf(LEFT, {}));
    await page.waitForTimeout(700);
    await tap(page, 22);
    await tap(page, 21);
    await toRating(page, 1);
    await page.getByText('Every note is there').waitFor();
    await page.waitForTimeout(1000);
    await tap(page, 24);
    await page.getByText('Saved.').waitFor();
    const [run] = await runsIn(page);
    expect(run).toMatchObject({ fluency: 2, take: { right: 13, faults: [] } });
  });

  test('that is unplugged in the middle of a run spoils nothing, and is heard again', async () => {
    const page = await openApp('granted');
    await toStand(page, LEFT);
    await listen(page).click();
    await page.getByText('Listening to Test piano').waitFor();
    await beginWithoutBeat(page);
    await playTake(page, takeOf(LEFT, { until: 5 }));
    await page.evaluate(() => window.fakeKeyboard.plug(false));
    await page.getByText('The run goes on, but what follows is not heard.').waitFor();
    await toRating(page, 1);
    await page.getByText('The keyboard was unplugged during the run').waitFor();
    expect(await page.getByRole('heading', { name: 'Heard' }).count()).toBe(0);
    await page.getByRole('button', { name: 'even', exact: true }).click();
    await page.getByText('Saved.').waitFor();
    expect((await runsIn(page))[0]).not.toHaveProperty('take');

    await page.getByText('No keyboard is connected').waitFor();
    await page.evaluate(() => window.fakeKeyboard.plug(true));
    await page.getByText('Listening to Test piano').waitFor();
  });
});

const pick = (page: Page, name: string, bytes: Uint8Array) =>
  page
    .getByLabel(/MIDI file/)
    .setInputFiles({ name, mimeType: 'audio/midi', buffer: Buffer.from(bytes) });

describe('a MIDI file', () => {
  test('of a practice is cut into runs, which are recorded as the person confirms', async () => {
    const page = await openApp('NotAllowedError');
    await page.goto(`${app.url}#/recording`);
    await pick(page, 'letter.mid', new TextEncoder().encode('Dear teacher'));
    await page.getByRole('alert').getByText('This is not a MIDI file.').waitFor();

    const practice = [
      takeOf(LEFT, { waits: [{ step: 9, seconds: 0.2 }] }),
      takeOf(['d.dominant-65.together.4'], {}),
      takeOf(['c.major-53.right.2'], {}),
    ];
    await pick(page, 'practice.mid', midiFileOf(practice));
    const rows = page.locator('main ol > li');
    await page.getByText('3 runs found.').waitFor();
    expect(await rows.locator('a').allInnerTexts()).toEqual([
      'F, major triad, root position',
      'D, dominant seventh, first inversion',
      'C, major triad, root position',
    ]);
    await rows.nth(0).getByText('before the thumb on F').waitFor();
    await rows.nth(1).getByRole('radio', { name: 'uneven', exact: true }).check();
    await rows.nth(2).getByRole('checkbox', { name: 'record it' }).uncheck();
    await page.getByRole('button', { name: 'Record these 2 runs' }).click();
    await page.getByText('2 runs recorded.').waitFor();
    const runs = await runsIn(page);
    expect(runs.map(({ item, fluency, take }) => [item, fluency, take!.source])).toEqual([
      ['f.major-53.left.2', 2, 'file'],
      ['d.dominant-65.together.4', 2, 'file'],
    ]);

    // On the item's page it can be looked at again.
    await page.goto(`${app.url}#/item/f.major-53.left.2`);
    await page.getByRole('heading', { name: 'Heard' }).waitFor();
    expect(await page.getByText('before the thumb on F').count()).toBe(1);
  });
});

test('without MIDI it says why, and the run goes on as ever', async () => {
  const page = await openApp('InvalidStateError');
  await toStand(page, LEFT);
  await listen(page).click();
  await page.getByText(/no MIDI on this device/).waitFor();
  await page.evaluate(() => window.fakeKeyboard.answer('NotAllowedError'));
  await page.getByRole('button', { name: 'Try again' }).click();
  await page.getByText(/does not let this app use MIDI/).waitFor();
  await beginWithoutBeat(page);
  await toRating(page, 1);
  expect(await page.getByRole('heading', { name: 'Heard' }).count()).toBe(0);
  await page.getByRole('button', { name: 'even', exact: true }).click();
  await page.getByText('Saved.').waitFor();
});
