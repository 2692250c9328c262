import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { prefer, preferences } from '../../src/preferences';
import { BeatSection } from '../../src/screens/settings/beat-section';
import type { Lateness, LatenessOptions } from '../../src/sound/latency';

const measuring = vi.hoisted(() => ({
  options: null as LatenessOptions | null,
  end: null as ((lateness: Lateness) => void) | null,
}));
vi.mock('../../src/sound/latency', () => ({
  measureLateness: (options: LatenessOptions) => {
    measuring.options = options;
    return new Promise<Lateness>((done) => {
      measuring.end = done;
    });
  },
}));

beforeEach(async () => {
  vi.stubGlobal('AudioWorkletNode', vi.fn());
  Object.defineProperty(navigator, 'mediaDevices', { configurable: true, value: {} });
  await prefer({ beat: 'heard', latencyOffsetMs: 0, volume: 0.4 });
});
afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
});

const button = (name: string) => screen.queryByRole('button', { name });
const told = () => screen.getByRole('status').textContent;

async function measured(lateness: Lateness): Promise<void> {
  render(<BeatSection />);
  fireEvent.click(button('Measure by the microphone how late the sound is')!);
  await screen.findByRole('button', { name: 'Stop measuring' });
  measuring.end!(lateness);
  await screen.findByRole('button', { name: 'Measure by the microphone how late the sound is' });
}

test('nothing is measured before the button, and then as loudly as the beat, with no other beat', async () => {
  measuring.options = null;
  render(<BeatSection />);
  expect(measuring.options).toBeNull();
  expect(button('Try the beat')).not.toBeNull();
  fireEvent.click(button('Measure by the microphone how late the sound is')!);
  await waitFor(() => expect(told()).toContain('Be quiet while the device clicks eight times'));
  expect(measuring.options).toMatchObject({ volume: 0.4 });
  expect(button('Try the beat')).toBeNull();
});

test('what was measured is proposed in the slider’s steps, and set by a button', async () => {
  await measured({ kind: 'measured', offsetMs: 183.6 });
  expect(told()).toBe('The sound is heard 180 milliseconds later than this device reports.');
  expect(preferences.value.latencyOffsetMs).toBe(0);
  fireEvent.click(button('Move the seen beat to that')!);
  await waitFor(() => expect(told()).toContain('The seen beat is set to that.'));
  expect(preferences.value.latencyOffsetMs).toBe(180);
  expect(button('Move the seen beat to that')).toBeNull();
});

test.each([
  [-41, 'The sound is heard 40 milliseconds earlier than this device reports.', -40],
  [460, 'The sound is heard 300 milliseconds or more later than this device reports.', 300],
])('%i milliseconds are told and set within what the slider bears', async (offsetMs, text, set) => {
  await measured({ kind: 'measured', offsetMs });
  expect(told()).toBe(text);
  fireEvent.click(button('Move the seen beat to that')!);
  expect(preferences.value.latencyOffsetMs).toBe(set);
});

test('what the device reports rightly needs no change', async () => {
  await measured({ kind: 'measured', offsetMs: -3 });
  expect(told()).toContain('just when this device reports it. The seen beat is set to that.');
  expect(button('Move the seen beat to that')).toBeNull();
});

test.each([
  ['refused', /does not let this app use the microphone.*then try again/],
  ['missing', /no microphone here.*then try again/],
  ['cut-off', /was cut off.*Try again/],
  ['not-heard', /were not heard. Make the beat louder/],
  ['unsteady', /Try again when the room is quiet/],
] as const)('a measurement that ends as %s says what to do', async (kind, text) => {
  await measured({ kind });
  expect(told()).toMatch(text);
  expect(button('Move the seen beat to that')).toBeNull();
  expect(preferences.value.latencyOffsetMs).toBe(0);
});

test('stopped, it lets go of the microphone and says nothing more', async () => {
  render(<BeatSection />);
  fireEvent.click(button('Measure by the microphone how late the sound is')!);
  fireEvent.click(await screen.findByRole('button', { name: 'Stop measuring' }));
  expect(measuring.options!.signal.aborted).toBe(true);
  await waitFor(() => expect(button('Try the beat')).not.toBeNull());
  measuring.end!({ kind: 'measured', offsetMs: 100 });
  await Promise.resolve();
  expect(told()).toBe('');
});

test('left, as by another choice of beat, it lets go of the microphone, and the beat can be tried', async () => {
  render(<BeatSection />);
  fireEvent.click(button('Measure by the microphone how late the sound is')!);
  await screen.findByRole('button', { name: 'Stop measuring' });
  fireEvent.click(screen.getByRole('radio', { name: 'only seen' }));
  await waitFor(() => expect(button('Try the beat')).not.toBeNull());
  expect(measuring.options!.signal.aborted).toBe(true);
});

test('without a microphone to ask for it is not offered', () => {
  vi.stubGlobal('AudioWorkletNode', undefined);
  Reflect.deleteProperty(window, 'AudioWorkletNode');
  render(<BeatSection />);
  expect(button('Measure by the microphone how late the sound is')).toBeNull();
});
