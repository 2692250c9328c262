/** What the words and signs mean that stand for how a run went. */
import { FLUENCIES, type Fluency } from '../../../shared/log/events';
import { CHORDS } from '../../../shared/music/chords';
import { Figures } from '../../parts/figures/figures';
import { chordText } from '../../parts/words';
import { Glyph } from '../../parts/glyph/glyph';
import styles from './help-screen.module.css';

const MEANINGS: readonly string[] = [
  'it could not be brought to its end',
  'it came to its end with a halt or a repeat',
  'without a halt, but the beat or the tone was not steady',
  'steady in beat and tone, and no join stands out',
  'even, with something in hand',
];

export function Marks() {
  return (
    <>
      <section>
        <h2>How a run went</h2>
        <dl class={styles.pairs}>
          {FLUENCIES.map((word, fluency) => (
            <div key={word}>
              <dt>
                <svg class={styles.glyph} width={14} height={14} aria-hidden="true">
                  <Glyph fluency={fluency as Fluency} x={7} y={7} />
                </svg>
                {word}
              </dt>
              <dd>{MEANINGS[fluency]}</dd>
            </div>
          ))}
        </dl>
        <p>
          Judge what was heard, at the tempo that was played. A run that was judged too kindly comes
          back as a tempo that is too fast.
        </p>
      </section>
      <section>
        <h2>The eleven chords</h2>
        <p>All on one bottom note, here D, in the order in which a round goes through them.</p>
        <table class={styles.chords}>
          <tbody>
            {CHORDS.map(({ id, name }) => (
              <tr key={id}>
                <td class={styles.figures}>
                  <Figures chord={id} />
                </td>
                <th scope="row">{name}</th>
                <td class="music">
                  <span class="spoken">{chordText('d', id).spoken}</span>
                  <span aria-hidden="true">{chordText('d', id).notes}</span>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <section>
        <h2>On the keys and on the map</h2>
        <p>
          A full disc is a key for the right hand, an empty diamond one for the left. On the map the
          number is the chance in per cent that the arpeggio comes out at least even at the tempo
          that is asked; the fuller the colour, the higher. Readiness is the mean of these chances.
        </p>
      </section>
    </>
  );
}
