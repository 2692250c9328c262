/**
 * The drawn piano. The right hand's notes are filled discs, the left hand's are open diamonds below them, so that
 * colour is not needed to tell them apart; the keys that sound now are filled.
 *
 * <Keyboard lowest={50} highest={74} right={[50, 54, 57]} left={[]} now={[50]} label="D, F sharp, A" />
 *
 * `hands` shows how each hand lies, the right one above the keys and the left one below; an absent hand keeps no room.
 *
 * Give only the range that is played. `label` is what assistive technology reads in place of the picture.
 * For the small ornament see keyboard-strip.tsx.
 */
import { useMemo } from 'preact/hooks';
import type { Placement } from '../../../shared/music/placement';
import { FingerStrip, stripHeight } from './finger-strip';
import { type KeyShape, keyShapes, WHITE_WIDTH, widthOf } from './geometry';
import styles from './keyboard.module.css';

/** Null while a hand that plays is not placed: its room is kept. */
export type PlacedHand = { readonly placement: Placement | null; readonly now: number | null };

interface KeyboardProps {
  readonly lowest: number;
  readonly highest: number;
  readonly right: readonly number[];
  readonly left: readonly number[];
  readonly now?: readonly number[];
  /** Keys that are heard to be down: they are lit at their edge. */
  readonly heard?: readonly number[];
  readonly label: string;
  readonly hands?: { readonly right?: PlacedHand; readonly left?: PlacedHand };
  /** Length of a white key in tenths of its width; a real one has about 64. */
  readonly length?: number;
}

const BLACK_LENGTH = 0.63;
/** Places of the marks along a key, as shares of its length: the right hand's above the left hand's. */
const RIGHT_ROW = { white: 0.73, black: 0.34 };
const LEFT_ROW = { white: 0.9, black: 0.52 };
/** Marks fill more of the key where keys are many and therefore small. */
const MANY_KEYS = 20;
const RADIUS = { few: { white: 2.8, black: 2 }, many: { white: 3.4, black: 2.4 } };
/** Height of the light of a key that is heard. */
const HEARD = 4;
const DIGITS = { few: 12, many: 17 };
const NO_KEYS: readonly number[] = [];

export function Keyboard(props: KeyboardProps) {
  const { lowest, highest, length = 56, now = NO_KEYS, heard = NO_KEYS } = props;
  const shapes = useMemo(() => keyShapes(lowest, highest), [lowest, highest]);
  const width = widthOf(shapes);
  const size = DIGITS[width > MANY_KEYS * WHITE_WIDTH ? 'many' : 'few'];
  const above = props.hands?.right ? stripHeight(size) : 0;
  const below = props.hands?.left ? stripHeight(size) : 0;
  const middleOf = (midi: number): number => {
    const shape = shapes.find((one) => one.midi === midi)!;
    return shape.x + shape.width / 2;
  };
  const radius = RADIUS[width > MANY_KEYS * WHITE_WIDTH ? 'many' : 'few'];
  return (
    <svg
      class={styles.keyboard}
      viewBox={`-0.5 ${-0.5 - above} ${width + 1} ${length + 1 + above + below}`}
      role="img"
      aria-label={props.label}
    >
      {shapes.map((shape) => (
        <PianoKey
          key={shape.midi}
          shape={shape}
          length={length}
          radius={radius[shape.isBlack ? 'black' : 'white']}
          isRight={props.right.includes(shape.midi)}
          isLeft={props.left.includes(shape.midi)}
          isNow={now.includes(shape.midi)}
          isHeard={heard.includes(shape.midi)}
        />
      ))}
      {props.hands?.right?.placement && (
        <FingerStrip
          placement={props.hands.right.placement}
          now={props.hands.right.now}
          middleOf={middleOf}
          y={-above}
          isAbove
          size={size}
        />
      )}
      {props.hands?.left?.placement && (
        <FingerStrip
          placement={props.hands.left.placement}
          now={props.hands.left.now}
          middleOf={middleOf}
          y={length}
          isAbove={false}
          size={size}
        />
      )}
    </svg>
  );
}

interface PianoKeyProps {
  readonly shape: KeyShape;
  readonly length: number;
  /** Of a mark. */
  readonly radius: number;
  readonly isRight: boolean;
  readonly isLeft: boolean;
  readonly isNow: boolean;
  readonly isHeard: boolean;
}

function PianoKey({ shape, length, radius, isRight, isLeft, isNow, isHeard }: PianoKeyProps) {
  const kind = shape.isBlack ? 'black' : 'white';
  const height = shape.isBlack ? length * BLACK_LENGTH : length;
  const middle = shape.x + shape.width / 2;
  return (
    <g class={styles[kind]} data-now={isNow}>
      <rect class={styles.key} x={shape.x} y={0} width={shape.width} height={height} />
      {isHeard && (
        <rect
          class={styles.heard}
          x={shape.x + 1}
          y={height - HEARD}
          width={shape.width - 2}
          height={HEARD - 1}
        />
      )}
      {isRight && (
        <circle class={styles.right} cx={middle} cy={length * RIGHT_ROW[kind]} r={radius} />
      )}
      {isLeft && (
        <path class={styles.left} d={diamond(middle, length * LEFT_ROW[kind], radius * 1.25)} />
      )}
    </g>
  );
}

const diamond = (x: number, y: number, r: number): string =>
  `M${x} ${y - r}L${x + r} ${y}L${x} ${y + r}L${x - r} ${y}Z`;
