/** When it will be ready at the present pace, and how true such words were so far. On the screen only. */
import { useMemo } from 'preact/hooks';
import type { Day } from '../../../shared/log/events';
import type { Programme } from '../../../shared/log/programme';
import type { Student } from '../../../shared/planning/student';
import { type Dot, forecastTexts, hindsightOf } from './forecast-words';
import styles from './forecast-section.module.css';
import table from './table.module.css';

interface ForecastSectionProps {
  readonly student: Student;
  readonly programme: Programme;
  readonly today: Day;
}

export function ForecastSection({ student, programme, today }: ForecastSectionProps) {
  const { stages, pace } = useMemo(
    () => forecastTexts(student, programme, today),
    [student, programme, today],
  );
  const hindsight = hindsightOf(student.learner);
  return (
    <section class={styles.section} data-screen-only>
      <h2>At the present pace</h2>
      <ul class={table.list}>
        {[...stages, ...pace].map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <p class={table.note}>
        Nine items in ten as often even as not at the target tempo; from what the slowest tenth has
        gained in the last eight weeks.
      </p>
      {hindsight && (
        <>
          <h2 class={styles.next}>Forecasts so far</h2>
          <div class={styles.hindsight}>
            <Diagram dots={hindsight.dots} />
            <p>{hindsight.text}</p>
          </div>
        </>
      )}
    </section>
  );
}

/** Reliability: what was foretold to the right, what happened upwards; on the slanting line both agree. */
function Diagram({ dots }: { readonly dots: readonly Dot[] }) {
  const most = Math.max(...dots.map(({ runs }) => runs));
  return (
    <svg
      class={styles.diagram}
      viewBox="-4 -4 108 108"
      role="img"
      aria-label="What was foretold, to the right, against what happened, upwards; on the slanting line both agree"
    >
      <path class={styles.frame} d="M0 0V100H100" />
      <path class={styles.ideal} d="M0 100L100 0" />
      {dots.map(({ foretold, happened, runs }) => (
        <circle
          key={foretold}
          class={styles.dot}
          cx={100 * foretold}
          cy={100 - 100 * happened}
          r={1.5 + 3 * Math.sqrt(runs / most)}
        />
      ))}
    </svg>
  );
}
