/** Readiness stage by stage, as a bar with its number. */
import type { Grouping } from '../../../shared/music/tempo';
import { markOf } from '../../../shared/music/tempo';
import type { Report } from '../../../shared/planning/report';
import { Bar } from '../../parts/bar/bar';
import { percent } from '../../parts/percent-text';
import wide from '../../parts/wide.module.css';
import { wayText } from '../../parts/words';
import { targetsText } from './report-words';
import styles from './table.module.css';

interface StageTableProps {
  readonly report: Report;
  readonly grouping: Grouping;
}

export function StageTable({ report, grouping }: StageTableProps) {
  return (
    <section>
      <h2>By stage</h2>
      <div class={wide.scroll}>
        <table class={`${styles.table} ${styles.stages}`}>
          <thead>
            <tr>
              <th scope="col">Stage</th>
              <th scope="col" class={styles.number}>
                Asked
              </th>
              <th scope="col" class={styles.number}>
                Reach
              </th>
              <th scope="col" class={styles.number}>
                Played
              </th>
              <th scope="col" colSpan={2}>
                Readiness
              </th>
            </tr>
          </thead>
          <tbody>
            {report.stages.map(({ stage, targets, reach, share, items, played }) => (
              <tr key={stage}>
                <th scope="row">{wayText(stage)}</th>
                <td class={styles.number}>{targetsText(targets, grouping)}</td>
                <td class={styles.number}>{markOf(reach, grouping)}</td>
                <td class={styles.number}>
                  {played} of {items}
                </td>
                <td class={styles.number}>{percent(share)}</td>
                <td class={styles.bar}>
                  <Bar share={share} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p class={styles.note}>
        Beats a minute, {grouping} notes a beat. Reach: today, of the middle one of the items.
        Readiness in per cent.
      </p>
    </section>
  );
}
