/**
 * The emblem: a low strip of piano keys that stands at the head of every screen, with the notes lit that the screen is
 * about. Pure ornament, so it has no name for assistive technology.
 *
 * <KeyboardStrip lit={['d', 'bb']} />
 */
import type { StartingNote } from '../../../shared/music/deck';
import { pitchClassOf } from '../../../shared/music/spelling';
import { type KeyShape, keyShapes, widthOf } from './geometry';
import styles from './keyboard-strip.module.css';

const LENGTH = 26;
const BLACK_LENGTH = 16;
/** Two octaves from C, as on the shortest course of an arpeggio. */
const SHAPES = keyShapes(60, 83);
const WIDTH = widthOf(SHAPES);

export function KeyboardStrip({ lit }: { readonly lit: readonly StartingNote[] }) {
  const classes = new Set(lit.map(pitchClassOf));
  return (
    <svg
      class={styles.strip}
      viewBox={`-0.5 -0.5 ${WIDTH + 1} ${LENGTH + 1}`}
      aria-hidden="true"
      focusable="false"
    >
      {SHAPES.map((shape) => (
        <StripKey key={shape.midi} shape={shape} isLit={classes.has(shape.midi % 12)} />
      ))}
    </svg>
  );
}

function StripKey({ shape, isLit }: { readonly shape: KeyShape; readonly isLit: boolean }) {
  const { isBlack, x, width } = shape;
  const length = isBlack ? BLACK_LENGTH : LENGTH;
  return (
    <g class={isBlack ? styles.black : styles.white}>
      <rect class={styles.key} x={x} y={0} width={width} height={length} />
      {isLit && (
        <circle
          class={styles.dot}
          cx={x + width / 2}
          cy={length - width / 2}
          r={isBlack ? 1.7 : 2.3}
        />
      )}
    </g>
  );
}
