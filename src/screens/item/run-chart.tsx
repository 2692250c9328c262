/** The runs of an item over time, with what is asked and the reach that they add up to. */
import { useId } from 'preact/hooks';
import { type Day, FLUENCIES, type Fluency, type RunEvent } from '../../../shared/log/events';
import { type Grouping, markOf, type Tempo } from '../../../shared/music/tempo';
import type { Reach } from '../../../shared/learning/prediction';
import { shortDay } from '../../parts/dates';
import { useWidth } from '../../parts/width';
import { dayScale, type Frame, markScale, sharesOfDay } from './chart-scale';
import { Glyph } from '../../parts/glyph/glyph';
import legend from '../../parts/legend.module.css';
import styles from './run-chart.module.css';

interface RunChartProps {
  /** Oldest first, at least one. */
  readonly runs: readonly RunEvent[];
  readonly today: Day;
  /** Null if it is not asked for. */
  readonly target: Tempo | null;
  readonly reach: Reach;
  readonly grouping: Grouping;
}

const HEIGHT = 260;
const ALL = [0, 1, 2, 3, 4] as const satisfies readonly Fluency[];

const frameOf = (width: number): Frame => ({
  width,
  height: HEIGHT,
  left: 34,
  right: width - 48,
  top: 14,
  bottom: HEIGHT - 28,
});

export function RunChart({ runs, today, target, reach, grouping }: RunChartProps) {
  const [figure, width] = useWidth();
  const titleId = useId();
  const mark = (tempo: Tempo): number => tempo / grouping;
  const frame = frameOf(width);
  const asked = target === null ? [] : [target];
  const shown = [...runs.map((run) => run.tempo), ...asked, reach.low, reach.high].map(mark);
  const { y, ticks } = markScale(shown, frame);
  const { x } = dayScale(runs[0]!.day, today, frame);
  const shares = sharesOfDay(runs.map((run) => run.day));
  const end = frame.right + 10;
  return (
    <figure ref={figure} class={styles.figure}>
      <svg
        class={styles.chart}
        width={width}
        height={HEIGHT}
        viewBox={`0 0 ${width} ${HEIGHT}`}
        role="img"
        aria-labelledby={titleId}
      >
        <title id={titleId}>{describe(runs, reach, grouping)}</title>
        {ticks.map(({ at, label }) => (
          <g key={label}>
            <line class={styles.grid} x1={frame.left} x2={frame.right} y1={at} y2={at} />
            <text class={styles.mark} x={frame.left - 8} y={at} dy="0.35em">
              {label}
            </text>
          </g>
        ))}
        {target !== null && (
          <line
            class={styles.target}
            x1={frame.left}
            x2={end}
            y1={y(mark(target))}
            y2={y(mark(target))}
          />
        )}
        <rect
          class={styles.band}
          x={end - 4}
          width={8}
          y={y(mark(reach.high))}
          height={y(mark(reach.low)) - y(mark(reach.high))}
        />
        <line
          class={styles.reach}
          x1={end - 9}
          x2={end + 9}
          y1={y(mark(reach.tempo))}
          y2={y(mark(reach.tempo))}
        />
        <text class={styles.reachMark} x={end + 13} y={y(mark(reach.tempo))} dy="0.35em">
          {markOf(reach.tempo, grouping)}
        </text>
        {runs.map((run, i) => (
          <Glyph
            key={run.id}
            fluency={run.fluency}
            x={x(run.day, shares[i]!)}
            y={y(mark(run.tempo))}
          />
        ))}
        <text class={styles.day} x={x(runs[0]!.day, 0)} y={HEIGHT - 6}>
          {shortDay(runs[0]!.day)}
        </text>
        <text class={styles.today} x={frame.right} y={HEIGHT - 6}>
          today
        </text>
      </svg>
      <figcaption class={legend.legend}>
        {ALL.map((fluency) => (
          <span key={fluency} class={legend.sign}>
            <svg width={14} height={14} aria-hidden="true">
              <Glyph fluency={fluency} x={7} y={7} />
            </svg>
            {FLUENCIES[fluency]}
          </span>
        ))}
        {target !== null && (
          <span class={legend.sign}>
            <svg width={22} height={14} aria-hidden="true">
              <line class={styles.target} x1={0} x2={22} y1={7} y2={7} />
            </svg>
            asked
          </span>
        )}
        <span class={legend.sign}>
          <svg width={18} height={16} aria-hidden="true">
            <rect class={styles.band} x={5} y={0} width={8} height={16} />
            <line class={styles.reach} x1={0} x2={18} y1={8} y2={8} />
          </svg>
          reach today, with its spread
        </span>
      </figcaption>
    </figure>
  );
}

function describe(runs: readonly RunEvent[], reach: Reach, grouping: Grouping): string {
  const marks = runs.map((run) => markOf(run.tempo, grouping));
  const count = runs.length === 1 ? 'One run' : `${runs.length} runs`;
  return `${count} at ${Math.min(...marks)} to ${Math.max(...marks)}; reach today ${markOf(reach.tempo, grouping)}. The table below has the numbers.`;
}
