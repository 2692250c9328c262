/**
 * A picture of today's list as it last stood on the screen, so that the next opening shows it before the app itself has
 * been read. The app then takes the same elements over. Nothing depends on it: what is missing, damaged, of another day
 * or of another release is not shown.
 */

/** An element with its attributes and children, or a text. */
export type Sketch =
  | string
  | readonly [
      tag: string,
      attributes: Readonly<Record<string, string>>,
      children: readonly Sketch[],
    ];

export interface Snapshot {
  readonly release: string;
  readonly day: string;
  readonly sketches: readonly Sketch[];
}

const KEY = 'today';

/** The first load's scripts are named after their content, so their address tells one release from another. */
const release = (): string =>
  document.querySelector<HTMLLinkElement>('link[rel=modulepreload]')?.href ?? '';

/** What is true of this moment and must be true again for a picture to be shown. */
const frame = () => ({ release: release(), day: new Date().toDateString() });

/** Null where there is none for now, and where the browser keeps nothing. */
export function readSnapshot(): Snapshot | null {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? 'null') as Snapshot | null;
    const now = frame();
    return kept?.release === now.release && kept.day === now.day ? kept : null;
  } catch {
    return null;
  }
}

/** Null forgets it. */
export function writeSnapshot(sketches: readonly Sketch[] | null): void {
  try {
    if (sketches === null) localStorage.removeItem(KEY);
    else localStorage.setItem(KEY, JSON.stringify({ ...frame(), sketches } satisfies Snapshot));
  } catch {
    // Without room or permission the next opening is as fast as the app itself.
  }
}
