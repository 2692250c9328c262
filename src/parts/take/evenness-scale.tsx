/**
 * How evenly a hand played, on a scale of milliseconds from even to uneven, beside what the ear just hears and what
 * professionals play.
 */
import { leastHeard } from '../../../shared/log/take-limits';
import legend from '../legend.module.css';
import styles from './evenness-scale.module.css';

const WIDTH = 240;
const HEIGHT = 30;
/** Pixels that half a number needs beside the ends. */
const INSET = 8;
/** Where the scale lies, and half the height of its marks. */
const LINE = 9;
const HALF = 7;
/** Milliseconds at its end; what is beyond stays there. */
const MOST = 40;
const STEPS = [0, 10, 20, 30, 40];
/** 13 professional pianists, scales over two octaves in notes of 125 ms: 8.1 ms up, 8.9 ms down (Jabusch 2006). */
const PROFESSIONALS = [8.1, 8.9] as const;

const x = (ms: number): number => INSET + (Math.min(MOST, ms) / MOST) * (WIDTH - 2 * INSET);

interface EvennessScaleProps {
  /** Milliseconds, as is the time from note to note. */
  readonly unevenness: number;
  readonly interval: number;
}

/** The words beside it say the same. */
export function EvennessScale({ unevenness, interval }: EvennessScaleProps) {
  const [first, last] = PROFESSIONALS;
  return (
    <svg class={styles.scale} width={WIDTH} height={HEIGHT} aria-hidden="true">
      <rect
        class={styles.unheard}
        x={x(0)}
        width={x(leastHeard(interval)) - x(0)}
        y={LINE - HALF}
        height={2 * HALF}
      />
      <line class={styles.line} x1={x(0)} x2={x(MOST)} y1={LINE} y2={LINE} />
      <rect
        class={styles.professional}
        x={x(first)}
        width={x(last) - x(first)}
        y={LINE - HALF}
        height={2 * HALF}
      />
      <circle class={styles.played} cx={x(unevenness)} cy={LINE} r={4.5} />
      {STEPS.map((ms) => (
        <text key={ms} class={styles.step} x={x(ms)} y={HEIGHT - 1}>
          {ms}
        </text>
      ))}
    </svg>
  );
}

/** What the signs on the scales mean. */
export function EvennessLegend() {
  return (
    <p class={legend.legend}>
      <span class={legend.sign}>
        <svg width={14} height={14} aria-hidden="true">
          <circle class={styles.played} cx={7} cy={7} r={4.5} />
        </svg>
        uneven by so many milliseconds
      </span>
      <span class={legend.sign}>
        <svg width={14} height={14} aria-hidden="true">
          <rect class={styles.unheard} width={14} height={14} />
        </svg>
        too little to be heard
      </span>
      <span class={legend.sign}>
        <svg width={14} height={14} aria-hidden="true">
          <rect class={styles.professional} x={4} width={5} height={14} />
        </svg>
        professional pianists, scales at 120, four notes a beat: 8 to 9 ms (Jabusch 2006)
      </span>
    </p>
  );
}
