/** What the parts of the report are put together from. */
import { chordOf } from '../../../shared/music/chords';
import type { Item } from '../../../shared/music/deck';
import type { Block, Part } from '../../../shared/formats/report-document';
import { SHORT_WAY } from '../../parts/short-way';
import { chordText } from '../../parts/words';

export const part = (heading: string, ...blocks: readonly Block[]): Part => ({
  kind: 'part',
  heading,
  blocks,
});
export const text = (words: string): Block => ({ kind: 'text', text: words });
export const note = (words: string): Block => ({ kind: 'text', text: words, isNote: true });
export const list = (items: readonly string[]): Block => ({ kind: 'list', items });

/** The first of a long list, and how many more there are. */
export function cutList(items: readonly string[], most: number): readonly Block[] {
  const more = items.length - most;
  return more <= 0
    ? [list(items)]
    : [list(items.slice(0, most)), note(`And ${more} more in the app.`)];
}

/** The beginning of a long text, so that the report stays on two pages. */
export function cutText(words: string, longest: number): string {
  if (words.length <= longest) return words;
  const whole = words.slice(0, longest - 1);
  const end = Math.max(whole.lastIndexOf(' '), longest / 2);
  return `${whole.slice(0, end).replace(/[\s.,;:]+$/, '')}…`;
}

/** "D, major 6 (both 4 oct.)" */
export const itemText = ({ note: from, chord, way }: Item): string =>
  `${chordText(from, chord).bottom}, ${chordOf(chord).shortName} (${SHORT_WAY[way].join(' ')})`;
