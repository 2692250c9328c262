/** What a MIDI keyboard says while one plays, as far as the page itself acts on it. */
export type KeyMessage =
  | { readonly kind: 'struck' | 'lifted'; readonly midi: number; readonly at: number }
  | { readonly kind: 'pedal'; readonly isDown: boolean; readonly at: number };

const NOTE_OFF = 0x80;
const NOTE_ON = 0x90;
const CONTROLLER = 0xb0;
const SUSTAIN = 64;
/** From this value a pedal is down (MIDI 1.0: 0 to 63 off, 64 to 127 on). */
const DOWN = 64;

/** What a keyboard says when its pedal goes down. */
export const PEDAL_DOWN: readonly number[] = [CONTROLLER, SUSTAIN, 127];

/** `at`: milliseconds of `performance.now()`. Null for what is about neither keys nor the pedal. */
export function keyMessageOf(data: Uint8Array, at: number): KeyMessage | null {
  const [status = 0, first = 0, second = 0] = data;
  const kind = status & 0xf0;
  if (kind === NOTE_ON && second > 0) return { kind: 'struck', midi: first, at };
  if (kind === NOTE_ON || kind === NOTE_OFF) return { kind: 'lifted', midi: first, at };
  if (kind === CONTROLLER && first === SUSTAIN) {
    return { kind: 'pedal', isDown: second >= DOWN, at };
  }
  return null;
}
