import { chordOf } from '../../../shared/music/chords';
import type { Item } from '../../../shared/music/deck';
import { chordText, wayText } from '../../parts/words';

/** Items of the programme that do not come up on the list for now. Nothing if there are none. */
export function AsideList({ items }: { readonly items: readonly Item[] }) {
  if (items.length === 0) return null;
  const names = items.map(
    ({ note, chord, way }) =>
      `${chordText(note, chord).bottom}, ${chordOf(chord).shortName} (${wayText(way)})`,
  );
  return (
    <section>
      <h2>Set aside for now</h2>
      <p>{names.join('; ')}.</p>
    </section>
  );
}
