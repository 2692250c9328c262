/** The checks of the microphone in the settings of the built app: the room and the piano, and how late it sounds. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import type { Sound } from '../../shared/listening/sound/spectrum';
import { normal, seededRandom } from '../listening/performer';
import { browseApp } from './browse';
import { heardFile, louder, played } from './heard-file';
import { begin, press, show } from './steps';

declare global {
  interface Window {
    /** What the page sounds goes in here, and comes back as its microphone. */
    loop: AudioNode;
  }
}

const heard = heardFile('again and again');
const app = browseApp(heard.flags);

/** A new student's settings, in a browser that was granted something. */
async function settingsOf(permissions: string[]): Promise<Page> {
  const { page } = await app.newDevice({ serviceWorkers: 'block', permissions });
  await begin(page);
  await show(page, '#/settings');
  return page;
}

const listen = (page: Page) => page.getByRole('button', { name: 'Listen by the microphone' });

async function checkRoom(sound: Sound): Promise<Page> {
  heard.play(sound);
  const page = await settingsOf(['microphone']);
  await listen(page).click();
  await press(page, /Check the room and the piano/);
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
      const destination = last.createMediaStreamDestination();
      window.loop = new DelayNode(last, { maxDelayTime: 1, delayTime: seconds });
      window.loop.connect(destination);
      return destination.stream;
    };
    const gain = GainNode.prototype as { connect: (to: AudioNode) => AudioNode };
    const { connect } = gain;
    gain.connect = function (to) {
      connect.call(this, window.loop);
      return connect.call(this, to);
    };
  }, delayTime);

const measureLateness = (page: Page) => press(page, /Measure by the microphone how late/);

/** With noise that is as loud as the playing. */
function inNoise({ samples, rate }: Sound): Sound {
  const random = seededRandom(7);
  const level = Math.sqrt(samples.reduce((sum, value) => sum + value ** 2, 0) / samples.length);
  return { samples: samples.map((value) => value + level * normal(random)), rate };
}

const SPOILT: Readonly<Record<string, readonly [(sound: Sound) => Sound, RegExp]>> = {
  'an empty room': [
    (sound) => louder(0, sound),
    /The pitch of the piano could not be told: play single notes/,
  ],
  noise: [inNoise, /Too little of the piano over the noise: move the device nearer/],
  'what is too loud for it': [
    (sound) => louder(40, sound),
    /too loud for the microphone: move the device further away/,
  ],
};

test('checks the room and the piano, and remembers its pitch', async () => {
  const page = await checkRoom(played(['f.major-53.left.2']));
  await page.getByText('Be quiet for a moment').waitFor();
  await page.getByText('The piano is tuned to A').waitFor();
  const told = await page.getByRole('status').allInnerTexts();
  expect(told.join(' ')).toContain('The piano is tuned to A = 440 Hz; this is remembered.');
  expect(told.join(' ')).toContain('The piano is heard well over the noise of the room.');
});

test.each(Object.entries(SPOILT))(
  'a microphone that hears %s says so in the check, and what to do',
  async (_, [change, told]) => {
    const page = await checkRoom(change(played(['f.major-53.left.2'], {}, 1.5)));
    await page.getByText(told).waitFor();
    expect(await page.getByText('The piano is heard well').count()).toBe(0);
  },
);

test('hears how late the sound of the device is, and the seen beat is moved by that', async () => {
  const page = await settingsOf([]);
  await hearItself(page, 0.18);
  await measureLateness(page);
  const told = await page.getByText(/The sound is heard \d+ milliseconds later/).innerText();
  // Less what the browser reports of its output, more what it needs to hand the sound on.
  const late = Number(/\d+/.exec(told)![0]);
  expect(late).toBeGreaterThanOrEqual(100);
  expect(late).toBeLessThanOrEqual(230);
  await press(page, 'Move the seen beat to that');
  await page.getByText('The seen beat is set to that.').waitFor();
  await page.getByText(`The seen beat against the heard one: ${late} milliseconds later`).waitFor();
});

test('clicks of which none is heard say what to do', async () => {
  heard.play(louder(0, played(['f.major-53.left.2'])));
  const page = await settingsOf(['microphone']);
  await measureLateness(page);
  await page.getByText('Be quiet while the device clicks').waitFor();
  await page.getByText(/clicks were not heard.*then try again/).waitFor();
  expect(await page.getByRole('button', { name: 'Move the seen beat' }).count()).toBe(0);
});

test('a microphone that is refused to the clicks is said, and nothing is listened to after it', async () => {
  const page = await settingsOf(['geolocation']);
  await measureLateness(page);
  await page.getByText(/does not let this app use the microphone/).waitFor();
  expect(await listen(page).count()).toBe(1);
});
