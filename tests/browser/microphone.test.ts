/** Listening by the microphone on the built app: a rendered piano is played into the browser, or the browser refuses. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { expectedOf } from '../../shared/listening/expected';
import type { Sound } from '../../shared/listening/sound/spectrum';
import { type ItemId, itemOf } from '../../shared/music/deck';
import { scoreOf } from '../../shared/music/score-of';
import { OPTIONS } from '../formats/scores';
import { normal, perform, type Planted, seededRandom } from '../listening/performer';
import { rendered } from '../listening/sound/fluidsynth';
import { PLACES, retuned, spoiled } from '../listening/sound/spoil';
import { type AppServer, serveApp, watchErrors } from './app';
import { launchBrowser } from './chromium';
import { beginWithoutBeat, runsIn, toRating, toStand } from './on-stand';
import { writeWave } from './wave';

declare global {
  interface Window {
    /** How many sounds the page has started. */
    clicks: number;
    /** What the page sounds goes in here, and comes back as its microphone. */
    loop: AudioNode;
  }
}

const LEFT: readonly ItemId[] = ['f.major-53.left.2'];
const TOGETHER: readonly ItemId[] = ['c.major-53.together.2'];

let server: AppServer;
let folder: string;
let browser: Browser;
let context: BrowserContext;
let errors: string[];
let files = 0;

beforeAll(async () => {
  server = await serveApp();
  folder = mkdtempSync(join(tmpdir(), 'microphone-'));
});
afterEach(async () => {
  await browser.close();
  if (errors.length > 0) throw new Error(errors.join('\n'));
});
afterAll(async () => {
  rmSync(folder, { recursive: true });
  await server.kill();
});

/** A new student's page in a browser whose microphone hears a file once, from when it is opened. */
async function openApp(
  flags: readonly string[],
  permissions: string[],
  hasDevice = true,
): Promise<Page> {
  const device = hasDevice ? ['--use-fake-device-for-media-stream'] : [];
  browser = await launchBrowser([...device, ...flags]);
  context = await browser.newContext({
    viewport: { width: 1024, height: 768 },
    reducedMotion: 'reduce',
    serviceWorkers: 'block',
    permissions,
  });
  const page = await context.newPage();
  errors = watchErrors(page);
  await page.goto(server.url);
  await page.getByRole('button', { name: 'Make today’s list' }).click();
  await page.locator('[data-ready="today"]').waitFor();
  return page;
}

/** A playing at 80 in a room, as a file, after so many seconds; its length in milliseconds. `change` is done to the sound. */
function played(
  items: readonly ItemId[],
  planted: Planted,
  after = 0,
  change = (sound: Sound): Sound => sound,
) {
  const expected = expectedOf(scoreOf(items.map(itemOf), { ...OPTIONS, pedal: false }));
  const random = seededRandom(4);
  const take = perform(expected, { random, tempo: 320, spread: 0.004, planted });
  const { samples, rate } = rendered([take])[0]!;
  const late = new Float32Array(samples.length + after * rate);
  late.set(samples, after * rate);
  const sound = change(spoiled({ samples: late, rate }, PLACES.room, random));
  files += 1;
  const file = join(folder, `${files}.wav`);
  writeWave(file, sound);
  return { file, length: (1000 * sound.samples.length) / sound.rate };
}

const listen = (page: Page) => page.getByRole('button', { name: 'Listen by the microphone' });

/** A stand with an entry, that listens to a file. */
async function listening(items: readonly ItemId[], file: string): Promise<Page> {
  const flag = `--use-file-for-fake-audio-capture=${file}%noloop`;
  const page = await openApp([flag], ['microphone']);
  await toStand(page, items);
  await listen(page).click();
  await page.getByText('Listening by the microphone').waitFor();
  return page;
}

/** Lets the page hear what it sounds, so many seconds later, in place of a microphone; so no room is needed. */
const hearItself = (page: Page, delayTime: number) =>
  page.evaluate((seconds) => {
    let last: AudioContext;
    window.AudioContext = new Proxy(window.AudioContext, {
      construct: (Context, options: []) => {
        last = new Context(...options);
        return last;
      },
    });
    navigator.mediaDevices.getUserMedia = async () => {
      const heard = last.createMediaStreamDestination();
      window.loop = new DelayNode(last, { maxDelayTime: 1, delayTime: seconds });
      window.loop.connect(heard);
      return heard.stream;
    };
    const gain = GainNode.prototype as { connect: (to: AudioNode) => AudioNode };
    const { connect } = gain;
    gain.connect = function (to) {
      connect.call(this, window.loop);
      return connect.call(this, to);
    };
  }, delayTime);

const measureLateness = async (page: Page) => {
  await page.goto(`${server.url}#/settings`);
  await page.getByRole('button', { name: 'Measure by the microphone how late' }).click();
};

type Change = (sound: Sound) => Sound;

const times =
  (factor: number): Change =>
  ({ samples, rate }) => ({ samples: samples.map((value) => factor * value), rate });
/** Noise that is softer than the playing by so many decibels. */
const inNoise =
  (decibels: number): Change =>
  ({ samples, rate }) => {
    const random = seededRandom(7);
    const level = Math.sqrt(samples.reduce((sum, value) => sum + value ** 2, 0) / samples.length);
    const size = level * 10 ** (-decibels / 20);
    return { samples: samples.map((value) => value + size * normal(random)), rate };
  };

const SPOILT: Readonly<Record<string, readonly [Change, RegExp]>> = {
  'an empty room': [times(0), /The pitch of the piano could not be told: play single notes/],
  noise: [inNoise(0), /Too little of the piano over the noise: move the device nearer/],
  'what is too loud for it': [
    times(40),
    /too loud for the microphone: move the device further away/,
  ],
};

const UNHEARD: Readonly<Record<string, readonly [Change, RegExp]>> = {
  'an empty room': [times(0), /not heard, so it was not judged: move the device nearer/],
  // 415 Hz, as old instruments are tuned: a semitone lower than the notes on the page.
  'a piano a semitone too low': [
    (sound) => retuned(sound, 1200 * Math.log2(415 / 440)),
    /not heard, so it was not judged: .*check the room and the piano in the settings/,
  ],
};

describe('the microphone', () => {
  test('hears a clean run as one, and only the measures are kept', async () => {
    const { file, length } = played(TOGETHER, {});
    const page = await listening(TOGETHER, file);
    await beginWithoutBeat(page);
    await page.waitForTimeout(length + 500);
    await toRating(page, 1);
    await page.getByText(/nothing stands out/i).waitFor();
    await page.waitForTimeout(1000);
    await page.keyboard.press('PageDown');
    await page.getByText('Saved.').waitFor();
    const [run] = await runsIn(page);
    expect(run!.take).toMatchObject({ source: 'microphone', faults: [] });
    // An upper note of an octave may not be sure, and is then not counted.
    expect(run!.take!.notes).toBeGreaterThanOrEqual(22);
    expect(run!.take!.right).toBe(run!.take!.notes);
    expect(run!.take!.tempo).toBeGreaterThan(316);
    expect(run!.take!.tempo).toBeLessThan(324);
    expect(JSON.stringify(run).length).toBeLessThan(1500);
  });

  test('hears where a run waited, while the beat sounds only as it counts in', async () => {
    // The count-in takes four seconds.
    const { file } = played(LEFT, { waits: [{ step: 9, seconds: 0.16 }] }, 4);
    const page = await listening(LEFT, file);
    await page.evaluate(() => {
      const { start } = AudioBufferSourceNode.prototype;
      window.clicks = 0;
      AudioBufferSourceNode.prototype.start = function (...when) {
        window.clicks += 1;
        start.apply(this, when);
      };
    });
    await page.getByRole('button', { name: 'Begin' }).click();
    await page.getByRole('heading', { name: 'Heard' }).waitFor();
    expect(await page.evaluate(() => window.clicks)).toBe(4);
    await page.getByText('Going down: it waits 0.1').waitFor();
    expect(await page.getByRole('img', { name: /left hand note by note: 1 waits/ }).count()).toBe(
      1,
    );
  });

  test('checks the room and the piano, and remembers its pitch', async () => {
    const { file } = played(LEFT, {});
    const flag = `--use-file-for-fake-audio-capture=${file}`;
    const page = await openApp([flag], ['microphone']);
    await page.goto(`${server.url}#/settings`);
    await listen(page).click();
    await page.getByRole('button', { name: 'Check the room and the piano' }).click();
    await page.getByText('Be quiet for a moment').waitFor();
    await page.getByText('The piano is tuned to A').waitFor();
    const told = await page.getByRole('status').allInnerTexts();
    expect(told.join(' ')).toContain('The piano is tuned to A = 440 Hz; this is remembered.');
    expect(told.join(' ')).toContain('The piano is heard well over the noise of the room.');
  });

  test.each(Object.entries(SPOILT))(
    'that hears %s says so in the check, and what to do',
    async (_, [change, told]) => {
      const { file } = played(LEFT, {}, 1.5, change);
      const page = await openApp([`--use-file-for-fake-audio-capture=${file}`], ['microphone']);
      await page.goto(`${server.url}#/settings`);
      await listen(page).click();
      await page.getByRole('button', { name: 'Check the room and the piano' }).click();
      await page.getByText(told).waitFor();
      expect(await page.getByText('The piano is heard well').count()).toBe(0);
    },
  );

  test.each(Object.entries(UNHEARD))(
    'that hears %s in a run does not judge it, and says what to do',
    async (_, [change, told]) => {
      const { file, length } = played(LEFT, {}, 0, change);
      const page = await listening(LEFT, file);
      await beginWithoutBeat(page);
      await page.waitForTimeout(length);
      await toRating(page, 1);
      await page.getByText(told).waitFor();
      expect(await page.getByRole('heading', { name: 'Heard' }).count()).toBe(0);
    },
  );

  test('that is not there is said, and what to do', async () => {
    const page = await openApp([], ['microphone'], false);
    await toStand(page, LEFT);
    await listen(page).click();
    await page.getByText(/no microphone here.*connect one, then try again/).waitFor();
    expect(await page.getByRole('button', { name: 'Try again' }).count()).toBe(1);
  });

  test('that is refused is said, and the run goes on as ever', async () => {
    const page = await openApp([], ['geolocation']);
    await toStand(page, LEFT);
    await listen(page).click();
    await page.getByText(/does not let this app use the microphone/).waitFor();
    await page.getByRole('button', { name: 'Do not listen' }).click();
    await listen(page).waitFor();
    await beginWithoutBeat(page);
    await toRating(page, 1);
    expect(await page.getByRole('heading', { name: 'Heard' }).count()).toBe(0);
  });

  test('hears how late the sound of the device is, and the seen beat is moved by that', async () => {
    const page = await openApp([], []);
    await hearItself(page, 0.18);
    await measureLateness(page);
    const told = await page.getByText(/The sound is heard \d+ milliseconds later/).innerText();
    // Less what the browser reports of its output, more what it needs to hand the sound on.
    const late = Number(/\d+/.exec(told)![0]);
    expect(late).toBeGreaterThanOrEqual(100);
    expect(late).toBeLessThanOrEqual(230);
    await page.getByRole('button', { name: 'Move the seen beat to that' }).click();
    await page.getByText('The seen beat is set to that.').waitFor();
    await page
      .getByText(`The seen beat against the heard one: ${late} milliseconds later`)
      .waitFor();
  });

  test('that hears none of the clicks says what to do', async () => {
    const { file } = played(LEFT, {}, 0, times(0));
    const page = await openApp([`--use-file-for-fake-audio-capture=${file}`], ['microphone']);
    await measureLateness(page);
    await page.getByText('Be quiet while the device clicks').waitFor();
    await page.getByText(/clicks were not heard.*then try again/).waitFor();
    expect(await page.getByRole('button', { name: 'Move the seen beat' }).count()).toBe(0);
  });

  test('that is refused to the clicks is said, and nothing is listened to after it', async () => {
    const page = await openApp([], ['geolocation']);
    await measureLateness(page);
    await page.getByText(/does not let this app use the microphone/).waitFor();
    expect(await listen(page).count()).toBe(1);
  });
});
