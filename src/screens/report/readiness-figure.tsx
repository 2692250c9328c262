/** The one number of the report, and what it does and does not say. */
import { daysBetween } from '../../../shared/log/day';
import type { Report } from '../../../shared/planning/report';
import { dateText } from '../../parts/dates';
import { percent } from '../../parts/percent-text';
import styles from './readiness-figure.module.css';

export function ReadinessFigure({ report }: { readonly report: Report }) {
  const { today, date, onDate, now, played, isThin } = report;
  const days = daysBetween(today, date);
  return (
    <section>
      <h2>Readiness {days > 0 ? `on ${dateText(date)}` : 'today'}</h2>
      <p class={styles.number}>
        {percent(onDate.share)}
        <span class={styles.unit}> per cent</span>
      </p>
      <p>
        The estimated probability that one item of the programme, drawn at random, comes out at
        least even at its target tempo
        {days > 0 &&
          `, if nothing is played in the ${days === 1 ? 'day' : `${days} days`} until then. Today it is ${percent(now.share)} per cent`}
        .
      </p>
      <p class={styles.evidence}>
        {isThin ? 'Thin evidence: only ' : ''}
        {played} of {onDate.items} items have been played
        {played < onDate.items && '; the rest is estimated from them'}.
      </p>
    </section>
  );
}
