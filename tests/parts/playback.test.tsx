import { type Signal, signal } from '@preact/signals';
import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { type Hands, itemOf } from '../../shared/music/deck';
import type { Score } from '../../shared/music/score';
import { scoreOf } from '../../shared/music/score-of';
import { Playback } from '../../src/parts/playback/playback';
import type { SoundState } from '../../src/sound/conductor';
import type { Playing } from '../../src/sound/passage';
import type { PlaybackOptions } from '../../src/sound/playback';
import { note, OPTIONS, score } from '../formats/scores';

interface Started {
  readonly options: PlaybackOptions;
  readonly state: Signal<SoundState>;
  readonly place: Signal<number | null>;
  readonly changes: Playing[];
  resumes: number;
}

const sound = vi.hoisted(() => ({ started: [] as Started[], isRefused: false }));

vi.mock('../../src/sound/playback', () => ({
  startPlayback: async (options: PlaybackOptions) => {
    if (options.sound && sound.isRefused) throw new Error('no sound output');
    const made: Started = {
      options,
      state: signal<SoundState>('running'),
      place: signal<number | null>(null),
      changes: [],
      resumes: 0,
    };
    sound.started.push(made);
    return {
      state: made.state,
      place: made.place,
      change: (playing: Playing) => made.changes.push(playing),
      resume: async () => void (made.resumes += 1),
      stop: () => (made.state.value = 'stopped'),
    };
  },
}));

const TOGETHER = scoreOf([itemOf('d.major-53.together.2')], { ...OPTIONS, tempo: 240 });

let place: Signal<number | null>;
beforeEach(() => {
  sound.started = [];
  sound.isRefused = false;
  place = signal(null);
  vi.stubGlobal('matchMedia', (media: string) =>
    Object.assign(new EventTarget(), { media, matches: isCalm }),
  );
});
let isCalm = false;
afterEach(() => {
  cleanup();
  isCalm = false;
  vi.unstubAllGlobals();
});

const show = (made: Score = TOGETHER, initial = {}) =>
  render(<Playback score={made} place={place} initial={initial} />);
const press = (name: string) => fireEvent.click(screen.getByRole('button', { name }));
const box = (name: string) => screen.getByRole<HTMLInputElement>('checkbox', { name });

/** Presses Play and returns what was started when it is there. */
async function play(): Promise<Started> {
  const count = sound.started.length;
  press('Play');
  await waitFor(() => expect(sound.started).toHaveLength(count + 1));
  return sound.started.at(-1)!;
}

test('plays all of it once, both hands, as fast as it is written', async () => {
  show();
  const { options } = await play();
  expect(options).toMatchObject({ sound: true, countInBeats: 0 });
  expect(options.playing).toEqual({
    score: TOGETHER,
    hands: 'together',
    stretch: expect.objectContaining({ from: 0, to: 96 }),
    repeats: false,
    beatsPerMinute: 60,
    piano: true,
    beat: false,
  });
});

test('tells its place, and nothing once it has stopped', async () => {
  show();
  const started = await play();
  started.place.value = 30;
  expect(place.value).toBe(30);
  press('Stop');
  expect(started.state.value).toBe('stopped');
  expect(place.value).toBeNull();
  expect(screen.getByRole('button', { name: 'Play' })).toBeTruthy();
});

test('is ready to play again when the music is over', async () => {
  show();
  const started = await play();
  started.place.value = 90;
  started.state.value = 'stopped';
  await screen.findByRole('button', { name: 'Play' });
  expect(place.value).toBeNull();
  await play();
});

test('for who asks for less motion, the place moves with the beat only', async () => {
  isCalm = true;
  show();
  const started = await play();
  started.place.value = 30;
  expect(place.value).toBe(24);
});

test('begins as it is asked to: only the beat, counted in, again and again', async () => {
  show(TOGETHER, { piano: false, beat: true, repeat: 0, tempo: 120 });
  const { options } = await play();
  expect(options.countInBeats).toBe(4);
  expect(options.playing).toMatchObject({
    piano: false,
    beat: true,
    repeats: true,
    beatsPerMinute: 30,
  });
});

test('takes changes up while it sounds', async () => {
  show();
  const { changes } = await play();
  press('more: Tempo');
  fireEvent.click(screen.getByRole('radio', { name: 'left' }));
  fireEvent.click(box('beat'));
  fireEvent.click(box('piano'));
  expect(changes.at(-1)).toMatchObject({
    beatsPerMinute: 61,
    hands: 'left',
    beat: true,
    piano: false,
  });
  const choice = screen.getByRole<HTMLSelectElement>('combobox', { name: 'Repeat' });
  const change = screen.getAllByRole<HTMLOptionElement>('option', { name: /thumb under to/ })[0]!;
  fireEvent.change(choice, { target: { value: change.value } });
  expect(changes.at(-1)).toMatchObject({
    repeats: true,
    stretch: { kind: 'change', hand: 'right' },
  });
  fireEvent.change(choice, { target: { value: '' } });
  expect(changes.at(-1)).toMatchObject({ repeats: false, stretch: { from: 0, to: 96 } });
});

test('tells which hands are heard, for those who mark what sounds', async () => {
  const hands = signal<Hands>('together');
  render(<Playback score={TOGETHER} place={place} hands={hands} />);
  fireEvent.click(screen.getByRole('radio', { name: 'left' }));
  await waitFor(() => expect(hands.value).toBe('left'));
});

test('offers the hands only where both have notes', () => {
  show(score([note('C4', 24)]));
  expect(screen.queryByRole('radio')).toBeNull();
});

test('says so when there is no sound, and moves the place without it', async () => {
  sound.isRefused = true;
  show();
  const { options } = await play();
  expect(options.sound).toBe(false);
  await screen.findByText(/gives no sound now/);
});

test('goes on when the sound was interrupted', async () => {
  show();
  const started = await play();
  started.state.value = 'interrupted';
  fireEvent.click(await screen.findByRole('button', { name: /interrupted: go on/ }));
  expect(started.resumes).toBe(1);
});

test('is silent as soon as one leaves, even if the sound came too late', async () => {
  const { unmount } = show();
  press('Play');
  unmount();
  await waitFor(() => expect(sound.started[0]?.state.value).toBe('stopped'));
  expect(place.value).toBeNull();
});
