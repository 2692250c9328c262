/** Forecast against outcome: each examination at its forecast, passed above the line, not passed below it. */
import { outcomeOf } from '../../../shared/planning/examination/outcome';
import type { Examination } from '../../../shared/planning/student';
import styles from './outcome-picture.module.css';

const WIDTH = 200;
const MIDDLE = 18;
const RISE = 9;

export function OutcomePicture({
  examinations,
}: {
  readonly examinations: readonly Examination[];
}) {
  return (
    <svg
      class={styles.picture}
      viewBox={`-6 0 ${WIDTH + 12} 48`}
      role="img"
      aria-label="Each examination at its forecast: passed above the line, not passed below. The table has the numbers."
    >
      <line class={styles.line} x1={0} x2={WIDTH} y1={MIDDLE} y2={MIDDLE} />
      {[0, 50, 100].map((per) => (
        <text key={per} class={styles.label} x={(per / 100) * WIDTH} y={45}>
          {per}
        </text>
      ))}
      {examinations.map((one) => {
        const { isPassed } = outcomeOf(one);
        return (
          <circle
            key={one.id}
            class={isPassed ? styles.passed : styles.failed}
            cx={one.forecast * WIDTH}
            cy={isPassed ? MIDDLE - RISE : MIDDLE + RISE}
            r={3.5}
          />
        );
      })}
    </svg>
  );
}
