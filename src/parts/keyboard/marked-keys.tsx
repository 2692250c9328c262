/**
 * A few keys of the piano with a sign on each, among their neighbours; where they lie far apart, in several pieces. A
 * picture beside words that say the same, so it has no name for assistive technology.
 *
 * <MarkedKeys marks={[{ midi: 21, sign: '1' }, { midi: 108, sign: '›' }]} />
 */
import { type KeyShape, keyShapes, widthOf } from './geometry';
import keys from './keyboard.module.css';
import styles from './marked-keys.module.css';

export interface KeyMark {
  readonly midi: number;
  /** One character. */
  readonly sign: string;
}

const LENGTH = 34;
const BLACK_LENGTH = 20;
/** Semitones between two marks beyond which they are drawn apart, and that are drawn beside the outer ones. */
const FAR = 8;
const BESIDE = 2;
const [LOWEST, HIGHEST] = [21, 108];
/** Of a white key, in px. */
const KEY_WIDTH = 16;

export function MarkedKeys({ marks }: { readonly marks: readonly KeyMark[] }) {
  const inOrder = marks.toSorted((a, b) => a.midi - b.midi);
  const pieces: KeyMark[][] = [];
  for (const mark of inOrder) {
    const last = pieces.at(-1);
    if (last && mark.midi - last.at(-1)!.midi <= FAR) last.push(mark);
    else pieces.push([mark]);
  }
  return (
    <span class={styles.pieces} aria-hidden="true">
      {pieces.map((piece) => (
        <Piece key={piece[0]!.midi} marks={piece} />
      ))}
    </span>
  );
}

function Piece({ marks }: { readonly marks: readonly KeyMark[] }) {
  const [first, last] = [marks[0]!.midi, marks.at(-1)!.midi];
  const from = Math.min(first, Math.max(LOWEST, first - BESIDE));
  const shapes = keyShapes(from, Math.max(last, Math.min(HIGHEST, last + BESIDE)));
  const width = widthOf(shapes);
  return (
    <svg
      viewBox={`-0.5 -0.5 ${width + 1} ${LENGTH + 1}`}
      width={(width / 10) * KEY_WIDTH}
      focusable="false"
    >
      {shapes.map((shape) => (
        <MarkedKey
          key={shape.midi}
          shape={shape}
          sign={marks.find(({ midi }) => midi === shape.midi)?.sign}
        />
      ))}
    </svg>
  );
}

interface MarkedKeyProps {
  readonly shape: KeyShape;
  readonly sign: string | undefined;
}

function MarkedKey({ shape, sign }: MarkedKeyProps) {
  const { isBlack, x, width } = shape;
  const length = isBlack ? BLACK_LENGTH : LENGTH;
  return (
    <g class={isBlack ? keys.black : keys.white}>
      <rect class={keys.key} x={x} y={0} width={width} height={length} />
      {sign !== undefined && (
        <text
          class={styles.sign}
          data-black={isBlack}
          x={x + width / 2}
          y={length - 3}
          font-size={isBlack ? 7 : 9}
          text-anchor="middle"
        >
          {sign}
        </text>
      )}
    </g>
  );
}
