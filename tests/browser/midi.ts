/** A MIDI keyboard that is not there: a fake of the browser's Web MIDI, played from the tests. */
import type { BrowserContext, Page } from 'playwright-core';
import type { Take } from '../../shared/listening/take';

interface FakeKeyboard {
  /** Messages with their times in milliseconds from now. */
  play(messages: readonly (readonly [at: number, ...bytes: number[]])[]): void;
  plug(isIn: boolean): void;
  /** What the browser says from now on. */
  answer(answer: Answer): void;
  /** How often the app has asked. */
  readonly asked: () => number;
}

declare global {
  interface Window {
    fakeKeyboard: FakeKeyboard;
  }
}

/** What the browser answers: access, a refusal, or no working MIDI as on a Linux without a sequencer. */
export type Answer = 'granted' | 'NotAllowedError' | 'InvalidStateError';

/** Puts the fake into every page of a context that is opened from now on. */
export async function fakeMidi(context: BrowserContext, answer: Answer): Promise<void> {
  await context.addInitScript((first: Answer) => {
    let given = first;
    const port = { name: 'Test piano', state: 'connected', onmidimessage: null as never };
    const changes = new EventTarget();
    let count = 0;
    const access = Object.assign(changes, { inputs: new Map([['1', port]]) });
    Object.defineProperty(navigator, 'requestMIDIAccess', {
      configurable: true,
      value: async (options?: { sysex?: boolean }) => {
        count += 1;
        if (options?.sysex !== false) throw new Error('the app must not ask for system exclusive');
        if (given !== 'granted') throw new DOMException('no MIDI here', given);
        return access;
      },
    });
    // The permission is as the answer says once the app has asked.
    const query = navigator.permissions.query.bind(navigator.permissions);
    navigator.permissions.query = async (descriptor) =>
      (descriptor.name as string) === 'midi'
        ? ({ state: sessionStorage.getItem('midi') ?? 'prompt' } as PermissionStatus)
        : query(descriptor);
    window.fakeKeyboard = {
      play: (messages) => {
        const now = performance.now();
        for (const [at, ...bytes] of messages) {
          const event = { data: Uint8Array.from(bytes), timeStamp: now + at };
          (port.onmidimessage as ((event: unknown) => void) | null)?.(event);
        }
      },
      plug: (isIn) => {
        port.state = isIn ? 'connected' : 'disconnected';
        changes.dispatchEvent(new Event('statechange'));
      },
      answer: (next) => {
        given = next;
      },
      asked: () => count,
    };
  }, answer);
}

/** Lets the browser remember that the person allowed MIDI. */
export const allowMidi = (page: Page) =>
  page.evaluate(() => sessionStorage.setItem('midi', 'granted'));

/** Plays a take on the fake keyboard at once, with the times of its notes. */
export async function playTake(page: Page, take: Take, hasPedal = false): Promise<void> {
  const messages = take.notes.flatMap(({ midi, on, off, loudness }) => [
    [on * 1000, 0x90, midi, loudness ?? 64],
    [(off ?? on + 0.1) * 1000, 0x80, midi, 0],
  ]);
  const pedal = hasPedal
    ? [
        [0, 0xb0, 64, 127],
        [60_000, 0xb0, 64, 0],
      ]
    : [];
  const inOrder = [...messages, ...pedal].toSorted((a, b) => a[0]! - b[0]!);
  await page.evaluate((all) => window.fakeKeyboard.play(all as never), inOrder);
}
