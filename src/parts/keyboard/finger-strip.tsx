/**
 * One hand over the drawn keys: a bracket along the position in which it lies, its fingers, and in outline the finger
 * with which it goes on. An SVG group; see keyboard.tsx.
 */
import type { Placement } from '../../../shared/music/placement';
import styles from './finger-strip.module.css';

export const STRIP_HEIGHT = 13;

interface FingerStripProps {
  readonly placement: Placement;
  /** The key that sounds now. */
  readonly now: number | null;
  /** Middle of a key by its MIDI number. */
  readonly middleOf: (midi: number) => number;
  /** Upper edge of the strip, and on which side of it the keys are. */
  readonly y: number;
  readonly isAbove: boolean;
}

const REACH = 3.4;

export function FingerStrip({ placement, now, middleOf, y, isAbove }: FingerStripProps) {
  const { keys, next } = placement;
  const [from, to] = [middleOf(keys[0]!.midi) - REACH, middleOf(keys.at(-1)!.midi) + REACH];
  const line = isAbove ? y + STRIP_HEIGHT - 1.5 : y + 1.5;
  const tick = isAbove ? 1.5 : -1.5;
  const base = isAbove ? y + STRIP_HEIGHT - 4.2 : y + STRIP_HEIGHT - 2.2;
  const isApart = next !== null && keys.every(({ midi }) => midi !== next.midi);
  return (
    <g>
      <path class={styles.bracket} d={`M${from} ${line + tick}V${line}H${to}V${line + tick}`} />
      {keys.map(({ midi, finger }) => (
        <text
          key={midi}
          class={styles.finger}
          data-now={midi === now}
          x={middleOf(midi)}
          y={base}
          text-anchor="middle"
        >
          {finger}
        </text>
      ))}
      {isApart && (
        <text class={styles.next} x={middleOf(next.midi)} y={base} text-anchor="middle">
          {next.finger}
        </text>
      )}
    </g>
  );
}
