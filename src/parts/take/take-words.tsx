/** What a take says: up to three sentences, the most useful first, and its figures. */
import type { ComponentChildren } from 'preact';
import { isAsOne } from '../../../shared/listening/findings';
import type { HandTake, RunTake } from '../../../shared/log/run-take';
import { FAIR, intervalOf, unitsOf } from '../../../shared/log/take-limits';
import { sentencesOf } from '../../../shared/listening/sentences';
import type { Score } from '../../../shared/music/score';
import { markOf } from '../../../shared/music/tempo';
import { preferences } from '../../preferences';
import { EvennessLegend, EvennessScale } from './evenness-scale';
import styles from './take-words.module.css';

interface TakeProps {
  readonly take: RunTake;
  readonly score: Score;
}

const CLEAN = {
  sure: 'Every note is there, and nothing stands out.',
  unsure: 'Nothing stands out in the notes that were heard for sure.',
};

/** How many notes could not be told from the sound. */
const unsureOf = (take: RunTake, score: Score): number =>
  score.right.length + score.left.length - take.notes;

export function TakeWords({ take, score }: TakeProps) {
  const sentences = sentencesOf(take, score, preferences.value.nameStyle);
  if (sentences.length === 0) {
    return <p class={styles.words}>{CLEAN[unsureOf(take, score) === 0 ? 'sure' : 'unsure']}</p>;
  }
  return (
    <ul class={styles.words}>
      {sentences.map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ul>
  );
}

/** Just noticeable units up to which evenness has a word (proposed, no source); professionals have about 1.4. */
const WORDS = [
  { most: 1.5, word: 'excellent' },
  { most: 2.5, word: 'good' },
  { most: FAIR, word: 'fair' },
  { most: Infinity, word: 'uneven' },
];

function evennessText(unevenness: number, interval: number): string {
  const units = unitsOf(unevenness, interval);
  const share = ((100 * unevenness) / interval).toFixed(1);
  const { word } = WORDS.find(({ most }) => units <= most)!;
  return `${word}: ${unevenness.toFixed(0)} ms, ${share} per cent of the time from note to note`;
}

const overlapText = (overlap: number): string =>
  overlap >= 0 ? `keys held ${overlap} ms into the next` : `gaps of ${-overlap} ms`;

/** The hands that were measured, each with its name; both as one where a microphone cannot tell them apart. */
function measuredIn(take: RunTake): readonly (readonly [string, HandTake])[] {
  const { right, left } = take.hands;
  if (isAsOne(take)) return [['both hands', right!]];
  return [
    ...(right ? [['right hand', right] as const] : []),
    ...(left ? [['left hand', left] as const] : []),
  ];
}

export function TakeFigures({ take, score }: TakeProps) {
  const interval = intervalOf(take);
  const unsure = unsureOf(take, score);
  const notSure = unsure === 0 ? '' : `, ${unsure} not sure`;
  const hands = interval === null ? [] : measuredIn(take);
  const isMeasured = hands.some(([, { unevenness }]) => unevenness !== null);
  return (
    <>
      <dl class={styles.figures}>
        <Figure name="notes">{`${take.right} of ${take.notes} right${notSure}`}</Figure>
        {take.tempo !== null && (
          <Figure name="tempo">{String(markOf(take.tempo, score.grouping))}</Figure>
        )}
        {hands.map(([name, { unevenness, overlap }]) => (
          <Figure key={name} name={name}>
            {unevenness !== null && (
              <>
                {evennessText(unevenness, interval!)}
                <EvennessScale unevenness={unevenness} interval={interval!} />
              </>
            )}
            {overlap !== null && <span class={styles.overlap}>{overlapText(overlap)}</span>}
          </Figure>
        ))}
      </dl>
      {isMeasured && <EvennessLegend />}
    </>
  );
}

function Figure({
  name,
  children,
}: {
  readonly name: string;
  readonly children: ComponentChildren;
}) {
  return (
    <div class={styles.figure}>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}
