/** The one number of the report, and what it does and does not say. */
import { daysBetween } from '../../../shared/log/day';
import type { Report } from '../../../shared/planning/report';
import { dateText } from '../../parts/dates';
import { percent } from '../../parts/percent-text';
import styles from './readiness-figure.module.css';
import { evidenceText, readinessText } from './report-words';

export function ReadinessFigure({ report }: { readonly report: Report }) {
  const { today, date, onDate } = report;
  return (
    <section>
      <h2>Readiness {daysBetween(today, date) > 0 ? `on ${dateText(date)}` : 'today'}</h2>
      <p class={styles.number}>
        {percent(onDate.share)}
        <span class={styles.unit}> per cent</span>
      </p>
      <p>{readinessText(report)}</p>
      <p class={styles.evidence}>{evidenceText(report)}</p>
    </section>
  );
}
