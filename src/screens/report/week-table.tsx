/** The work done, week by week. */
import type { Week } from '../../../shared/planning/weeks';
import { Bar } from '../../parts/bar/bar';
import { shortDay } from '../../parts/dates';
import wide from '../../parts/wide.module.css';
import styles from './table.module.css';

export function WeekTable({ weeks }: { readonly weeks: readonly Week[] }) {
  const most = Math.max(1, ...weeks.map((week) => week.seconds));
  return (
    <section>
      <h2>Work of the last {weeks.length} weeks</h2>
      <div class={wide.scroll}>
        <table class={styles.table}>
          <thead>
            <tr>
              <th scope="col">Week of</th>
              <th scope="col" class={styles.number}>
                Days
              </th>
              <th scope="col" class={styles.number}>
                Runs
              </th>
              <th scope="col" colSpan={2}>
                Minutes played
              </th>
            </tr>
          </thead>
          <tbody>
            {weeks.map(({ monday, days, runs, seconds }) => (
              <tr key={monday}>
                <th scope="row">{shortDay(monday)}</th>
                <td class={styles.number}>{days}</td>
                <td class={styles.number}>{runs}</td>
                <td class={styles.number}>{Math.round(seconds / 60)}</td>
                <td class={styles.bar}>
                  <Bar share={seconds / most} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p class={styles.note}>From the first note to the last of each run, without the pauses.</p>
    </section>
  );
}
