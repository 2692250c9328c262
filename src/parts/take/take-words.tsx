/** What a take says: up to three sentences, the most useful first, and on request its figures. */
import type { HandTake, RunTake } from '../../../shared/log/run-take';
import { FAIR, intervalOf, unitsOf } from '../../../shared/log/take-limits';
import { sentencesOf } from '../../../shared/listening/sentences';
import type { Score } from '../../../shared/music/score';
import { markOf } from '../../../shared/music/tempo';
import { preferences } from '../../preferences';
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

function evennessText({ unevenness }: HandTake, interval: number): string | null {
  if (unevenness === null) return null;
  const units = unitsOf(unevenness, interval);
  const share = ((100 * unevenness) / interval).toFixed(1);
  const { word } = WORDS.find(({ most }) => units <= most)!;
  return `${word}: ${unevenness.toFixed(0)} ms, ${share} per cent of the time from note to note`;
}

const overlapText = (overlap: number): string =>
  overlap >= 0 ? `keys held ${overlap} ms into the next` : `gaps of ${-overlap} ms`;

export function TakeFigures({ take, score }: TakeProps) {
  const interval = intervalOf(take);
  const unsure = unsureOf(take, score);
  const notSure = unsure === 0 ? '' : `, ${unsure} not sure`;
  const facts: (readonly [string, string])[] = [
    ['notes', `${take.right} of ${take.notes} right${notSure}`],
  ];
  if (take.tempo !== null) facts.push(['tempo', String(markOf(take.tempo, score.grouping))]);
  for (const hand of ['right', 'left'] as const) {
    const measured = take.hands[hand];
    if (measured === null || interval === null) continue;
    const evenness = evennessText(measured, interval);
    if (evenness !== null) facts.push([`${hand} hand`, evenness]);
    if (measured.overlap !== null) facts.push([`its joins`, overlapText(measured.overlap)]);
  }
  return (
    <>
      <dl class={styles.figures}>
        {facts.map(([name, value]) => (
          <div key={`${name} ${value}`} class={styles.figure}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <p class={styles.figures}>
        For comparison: professional pianists are uneven by 8 to 9 ms in scales at 120, four notes a
        beat (Jabusch 2006).
      </p>
    </>
  );
}
