/** Which screen is shown: the part of the address behind the hash, so that one document serves every screen. */
import { signal, type ReadonlySignal } from '@preact/signals';

export const SCREENS = [
  'today',
  'play',
  'map',
  'item',
  'fingering',
  'drill',
  'recording',
  'report',
  'examination',
  'lesson',
  'placement',
  'settings',
  'programme',
  'receive',
  'studio',
  'help',
  'start',
] as const;
export type ScreenName = (typeof SCREENS)[number];

export interface Route {
  readonly screen: ScreenName;
  /** What follows the name: "#/map/together.4" has "together.4". The screen checks it. */
  readonly argument: string | null;
}

/** What every screen is given. */
export type ScreenProps = Pick<Route, 'argument'>;

/** "#/item/eb.major-6.right.2" is the screen "item"; anything unknown is today's list. */
export function parseRoute(hash: string): Route {
  const [name, argument] = hash.replace(/^#\/?/, '').split('/');
  const screen = SCREENS.find((candidate) => candidate === name);
  if (screen === undefined) return { screen: 'today', argument: null };
  return { screen, argument: argument ? decode(argument) : null };
}

function decode(text: string): string | null {
  try {
    return decodeURIComponent(text);
  } catch {
    return null; // A broken escape in a typed address names nothing.
  }
}

/** The address of a screen, for links: `hrefOf('map', 'together.4')`. */
export const hrefOf = (screen: ScreenName, argument?: string): string =>
  argument === undefined ? `#/${screen}` : `#/${screen}/${encodeURIComponent(argument)}`;

const current = signal(parseRoute(location.hash));
addEventListener('hashchange', () => {
  current.value = parseRoute(location.hash);
});

export const route: ReadonlySignal<Route> = current;

/** Shows another screen; the one left behind stays in the browser's history. */
export function go(screen: ScreenName, argument?: string): void {
  location.hash = hrefOf(screen, argument);
}

/** Shows another screen in place of this one: "back" does not lead here again. */
export function replace(screen: ScreenName): void {
  history.replaceState(null, '', hrefOf(screen));
  current.value = parseRoute(location.hash);
}
