/**
 * The page that tests/browser/metronome.test.ts opens in a real browser: it renders the metronome's clicks offline, and
 * has buttons for the live one, because only a real click on a button lets a page sound.
 */
import { createClicker } from '../../src/sound/click';
import { startMetronome, type Beat, type Metronome } from '../../src/sound/metronome';
import { walkGrid, type Grid } from '../../src/sound/schedule';
import { findClicks, type RenderedClick, renderWalk } from './render';

export interface Rendering {
  readonly sampleRate: number;
  readonly seconds: number;
  readonly grid: Grid;
}

/** Renders the clicks and finds them in the samples. */
async function renderClicks({ grid, ...size }: Rendering): Promise<RenderedClick[]> {
  const samples = await renderWalk(size, (context) => {
    const { click } = createClicker(context, 1);
    return walkGrid(grid, { now: () => context.currentTime, click });
  });
  return findClicks(samples);
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
