/** Where most is missing, stage by stage. */
import { FLUENCIES } from '../../../shared/log/events';
import { chordOf } from '../../../shared/music/chords';
import { type Grouping, markOf } from '../../../shared/music/tempo';
import type { Report } from '../../../shared/planning/report';
import { percent } from '../../parts/percent-text';
import { shortDay } from '../../parts/dates';
import { chordText, wayText } from '../../parts/words';
import { hrefOf } from '../../route';
import { SHORT_WAY } from '../../parts/short-way';
import wide from '../../parts/wide.module.css';
import { noWeakestText } from './standing-parts';
import styles from './table.module.css';

interface WeakestTableProps {
  readonly report: Report;
  readonly grouping: Grouping;
}

export function WeakestTable({ report, grouping }: WeakestTableProps) {
  const { weakest } = report;
  if (weakest.length === 0) {
    return (
      <section>
        <h2>Weakest of each stage</h2>
        <p class={styles.note}>{noWeakestText(report)}</p>
      </section>
    );
  }
  return (
    <section>
      <h2>Weakest of each stage</h2>
      <div class={wide.scroll}>
        <table class={styles.table}>
          <thead>
            <tr>
              <th scope="col">Arpeggio</th>
              <th scope="col" class={styles.number}>
                Reach
              </th>
              <th scope="col" class={styles.number}>
                Asked
              </th>
              <th scope="col" class={styles.number}>
                Chance
              </th>
              <th scope="col">Last run</th>
            </tr>
          </thead>
          <tbody>
            {weakest.map(({ item, target, reach, chance, last }) => (
              <tr key={item.id}>
                <th scope="row">
                  <a class="music" href={hrefOf('item', item.id)}>
                    {chordText(item.note, item.chord).bottom}, {chordOf(item.chord).shortName}
                  </a>{' '}
                  <span class={styles.way}>
                    <span class="spoken">{wayText(item.way)}</span>
                    <span aria-hidden="true">{SHORT_WAY[item.way].join(' ')}</span>
                  </span>
                </th>
                <td class={styles.number}>{markOf(reach.tempo, grouping)}</td>
                <td class={styles.number}>{markOf(target, grouping)}</td>
                <td class={styles.number}>{percent(chance)}</td>
                <td class={styles.last}>
                  {FLUENCIES[last.fluency]} at {markOf(last.tempo, grouping)}, {shortDay(last.day)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p class={styles.note}>
        Reach: today as often even as not at this tempo. Chance in per cent of at least even at what
        is asked.
      </p>
    </section>
  );
}
