/**
 * The picture of a take: for each hand, note by note, how much later or sooner it came than at a steady tempo, with the
 * position changes marked, and the notes that were not as expected.
 *
 * <TakePicture take={run.take} score={itemScore(student, item, run.tempo)} />
 */
import { useId } from 'preact/hooks';
import type { RunTake } from '../../../shared/log/run-take';
import { intervalOf, leastWaitOf } from '../../../shared/log/take-limits';
import { displayName } from '../../../shared/music/names';
import type { Score } from '../../../shared/music/score';
import { preferences } from '../../preferences';
import { useWidth } from '../width';
import { audibleOf, barsOf, highestOf, type Layout, layoutOf, turnsOf } from './take-layout';
import legend from '../legend.module.css';
import styles from './take-picture.module.css';

interface TakePictureProps {
  readonly take: RunTake;
  /** Of the item that was played. */
  readonly score: Score;
}

type Hand = 'right' | 'left';

export function TakePicture({ take, score }: TakePictureProps) {
  const [figure, width] = useWidth();
  const hands = (['right', 'left'] as const).filter((hand) => take.hands[hand] !== null);
  const highest = highestOf(take);
  return (
    <figure ref={figure} class={styles.figure}>
      {hands.map((hand) => (
        <HandPicture
          key={hand}
          hand={hand}
          take={take}
          score={score}
          layout={layoutOf(width, score[hand].length, highest)}
        />
      ))}
      <figcaption class={legend.legend}>
        <span class={legend.sign}>
          <svg width={14} height={12} aria-hidden="true">
            <rect class={styles.usual} x={4} y={0} width={6} height={12} />
          </svg>
          later (up) or sooner than steady
        </span>
        <span class={legend.sign}>
          <svg width={14} height={12} aria-hidden="true">
            <rect class={styles.wait} x={4} y={0} width={6} height={12} />
          </svg>
          waits
        </span>
        {intervalOf(take) !== null && (
          <span class={legend.sign}>
            <svg width={14} height={12} aria-hidden="true">
              <rect class={styles.audible} x={0} y={3} width={14} height={6} />
            </svg>
            too little to be heard
          </span>
        )}
        <span class={legend.sign}>
          <svg width={14} height={12} aria-hidden="true">
            <path class={styles.change} d="M7 2L12 11L2 11Z" />
          </svg>
          change of position
        </span>
        <span class={legend.sign}>
          <svg width={14} height={12} aria-hidden="true">
            <path class={styles.fault} d="M3 2L11 10M11 2L3 10" />
          </svg>
          wrong or missed
        </span>
      </figcaption>
    </figure>
  );
}

interface HandProps extends TakePictureProps {
  readonly hand: Hand;
  readonly layout: Layout;
}

function HandPicture({ hand, take, score, layout }: HandProps) {
  const titleId = useId();
  const measured = take.hands[hand]!;
  const notes = score[hand];
  const interval = intervalOf(take);
  const least = interval === null ? Infinity : leastWaitOf(measured, interval);
  const bars = barsOf(measured.waits, layout);
  const audible = audibleOf(interval, layout);
  const changes = notes.flatMap(({ change }, step) => (change === null ? [] : [step]));
  const faults = take.faults.filter((fault) => fault.hand === hand && fault.kind !== 'extra');
  const name = (step: number) =>
    displayName(notes[step]!.keys[0]!.name, preferences.value.nameStyle);
  const { width, height, left, right, zero, x } = layout;
  return (
    <svg
      class={styles.picture}
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-labelledby={titleId}
    >
      <title id={titleId}>
        {`The ${hand} hand note by note: ${bars.filter(({ wait }) => wait >= least).length} waits, ${faults.length} notes wrong or missed.`}
      </title>
      <rect
        class={styles.audible}
        x={left}
        width={right - left}
        y={zero - audible}
        height={2 * audible}
      />
      <line class={styles.zero} x1={left} x2={right} y1={zero} y2={zero} />
      <text class={styles.hand} x={left} y={11}>
        {hand === 'right' ? 'right hand' : 'left hand'}
      </text>
      {turnsOf(notes).map((step) => (
        <line key={step} class={styles.turn} x1={x(step)} x2={x(step)} y1={16} y2={height - 18} />
      ))}
      {bars.map(({ step, top, length, wait }) => (
        <g key={step}>
          <rect
            class={wait >= least ? styles.wait : styles.usual}
            x={x(step) - layout.bar / 2}
            width={layout.bar}
            y={top}
            height={length}
          />
          {wait >= least && (
            <text class={styles.size} x={x(step)} y={top - 3}>
              {(wait / 1000).toFixed(2)}
            </text>
          )}
        </g>
      ))}
      {changes.map((step) => (
        <g key={step}>
          <path class={styles.change} d={`M${x(step)} ${height - 24}l4.5 8h-9Z`} />
          <text class={styles.name} x={x(step)} y={height - 4}>
            {name(step)}
          </text>
        </g>
      ))}
      {faults.map(({ step, kind }) => (
        <path
          key={`${kind} ${step}`}
          class={styles.fault}
          d={`M${x(step) - 4} ${zero - 4}l8 8m0 -8l-8 8`}
        />
      ))}
    </svg>
  );
}
