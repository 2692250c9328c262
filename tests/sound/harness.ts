/**
 * The page that tests/browser/metronome.test.ts opens in a real browser: it renders the metronome's clicks offline, and
 * has buttons for the live one, because only a real click on a button lets a page sound.
 */
import { createClicker } from '../../src/sound/click';
import { startMetronome, type Beat, type Metronome } from '../../src/sound/metronome';
import { walkGrid, type Grid } from '../../src/sound/schedule';
import { LOOK_AHEAD } from '../../src/sound/walk';

export interface RenderedClick {
  /** Place of the click's first sample in the whole sound. */
  readonly sample: number;
  readonly peak: number;
}

export interface Rendering {
  readonly sampleRate: number;
  readonly seconds: number;
  readonly grid: Grid;
}

/** Irregular waits between two ticks, in seconds: mostly the worker's 25 ms, now and then as long as the look-ahead bears. */
const WAITS = [0.025, 0.025, 0.031, 0.02, 0.12, 0.025, 0.24, 0.004];

/** So many silent samples end a click: more than any zero crossing has, fewer than lie between two clicks. */
const SILENCE = 200;

/** Renders the clicks with the app's own scheduling, ticked as irregularly as in a page, and finds them in the samples. */
async function renderClicks({ sampleRate, seconds, grid }: Rendering): Promise<RenderedClick[]> {
  const context = new OfflineAudioContext(1, Math.round(seconds * sampleRate), sampleRate);
  const { click } = createClicker(context, 1);
  const walk = walkGrid(grid, { now: () => context.currentTime, click });
  const tick = (count: number): void => {
    walk(LOOK_AHEAD.visible);
    const next = context.currentTime + WAITS[count % WAITS.length]!;
    if (next >= seconds) return;
    // The rendering waits for the tick, as the sound output of a page would not: a tick takes no time here.
    void context.suspend(next).then(() => {
      tick(count + 1);
      return context.resume();
    });
  };
  tick(0);
  return findClicks((await context.startRendering()).getChannelData(0));
}

function findClicks(samples: Float32Array): RenderedClick[] {
  const clicks: { sample: number; peak: number }[] = [];
  let silent = SILENCE;
  for (const [sample, value] of samples.entries()) {
    const level = Math.abs(value);
    if (level === 0) {
      silent += 1;
      continue;
    }
    if (silent >= SILENCE) clicks.push({ sample, peak: 0 });
    silent = 0;
    const current = clicks.at(-1)!;
    current.peak = Math.max(current.peak, level);
  }
  return clicks;
}

const beats: Beat[] = [];
let metronome: Metronome | null = null;

async function start(sound: boolean): Promise<void> {
  metronome = await startMetronome({
    beatsPerMinute: 240,
    countInBeats: 2,
    beatsPerBar: 4,
    volume: 0.5,
    sound,
    latencyOffsetMs: 0,
    onBeat: (beat) => beats.push(beat),
  });
}

function addButton(name: string, onClick: () => void): void {
  const button = document.createElement('button');
  button.textContent = name;
  button.addEventListener('click', onClick);
  document.body.append(button);
}

addButton('Start', () => void start(true));
addButton('Start without sound', () => void start(false));
addButton('Resume', () => void metronome?.resume());
addButton('Stop', () => metronome?.stop());

const harness = { renderClicks, beats, state: () => metronome?.state.value ?? null };

declare global {
  interface Window {
    soundHarness: typeof harness;
  }
}

window.soundHarness = harness;
