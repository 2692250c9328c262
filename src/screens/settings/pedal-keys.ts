/** Which keys a pedal may be taught, and what they are called. */
import type { Preferences } from '../../preferences';

const USUAL = new Set([
  'PageDown',
  'ArrowRight',
  'ArrowDown',
  ' ',
  'Enter',
  'PageUp',
  'ArrowLeft',
  'ArrowUp',
]);
/** Needed to move about, or sent along with other keys. */
const RESERVED = new Set([
  'Tab',
  'Escape',
  'Shift',
  'Control',
  'Alt',
  'Meta',
  'Unidentified',
  'Dead',
]);
const MOST_KEYS = 8;

/** "new", or why a key (a value of `event.key`) cannot be learnt. */
export function learnable(
  key: string,
  { forwardKeys, backKeys }: Pick<Preferences, 'forwardKeys' | 'backKeys'>,
): string {
  if (USUAL.has(key)) return 'it works already';
  if (RESERVED.has(key)) return 'it is needed for other things';
  if (forwardKeys.includes(key) || backKeys.includes(key)) return 'it has been learnt before';
  if (forwardKeys.length + backKeys.length >= MOST_KEYS) return 'there are enough keys';
  return 'new';
}

const NAMES: Readonly<Record<string, string>> = { ' ': 'space' };

/** What a key is called: "PageDown" is "page down", "m" is the key "m". */
export const keyName = (key: string): string =>
  NAMES[key] ??
  (key.length === 1 ? `“${key}”` : key.replace(/(?<=[a-z])(?=[A-Z])/g, ' ').toLowerCase());
