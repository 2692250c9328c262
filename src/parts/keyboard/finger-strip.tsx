/**
 * One hand over the drawn keys: a bracket along the position in which it lies, its fingers, and paler, beyond it, the
 * finger with which it goes on. An SVG group; see keyboard.tsx.
 */
import type { Placement } from '../../../shared/music/placement';
import styles from './finger-strip.module.css';

/** The height of a strip for digits of a size. */
export const stripHeight = (size: number): number => size + 4;

interface FingerStripProps {
  readonly placement: Placement;
  /** The key that sounds now. */
  readonly now: number | null;
  /** Middle of a key by its MIDI number. */
  readonly middleOf: (midi: number) => number;
  /** Upper edge of the strip, and on which side of it the keys are. */
  readonly y: number;
  readonly isAbove: boolean;
  /** Of the digits. */
  readonly size: number;
}

const REACH = 3.4;

export function FingerStrip(props: FingerStripProps) {
  const { placement, now, middleOf, y, isAbove, size } = props;
  const { keys, next } = placement;
  const [from, to] = [middleOf(keys[0]!.midi) - REACH, middleOf(keys.at(-1)!.midi) + REACH];
  const height = stripHeight(size);
  const line = isAbove ? y + height - 1.5 : y + 1.5;
  const tick = isAbove ? 1.5 : -1.5;
  // Digits without descenders are about seven tenths of their size high.
  const base = isAbove ? line - 2 : line + 2 + size * 0.7;
  const isApart = next !== null && keys.every(({ midi }) => midi !== next.midi);
  return (
    <g>
      <path class={styles.bracket} d={`M${from} ${line + tick}V${line}H${to}V${line + tick}`} />
      {keys.map(({ midi, finger }) => (
        <text
          key={midi}
          class={styles.finger}
          font-size={size}
          data-now={midi === now}
          x={middleOf(midi)}
          y={base}
          text-anchor="middle"
        >
          {finger}
        </text>
      ))}
      {isApart && (
        <text
          class={styles.next}
          font-size={size}
          x={middleOf(next.midi)}
          y={base}
          text-anchor="middle"
        >
          {next.finger}
        </text>
      )}
    </g>
  );
}
