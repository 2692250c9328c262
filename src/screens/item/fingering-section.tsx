/** The fingering of an item, hand by hand: what holds, where the hand changes its position, and other ways to do it. */
import { handsOf, type Item } from '../../../shared/music/deck';
import { changeHint, stretchHint } from '../../../shared/music/fingering/hints';
import type { PositionChange, Stretch } from '../../../shared/music/fingering/positions';
import type { Fingering } from '../../../shared/music/fingering/result';
import type { Hand } from '../../../shared/music/fingering/types';
import { changeText, type NameOf, stretchText } from '../../../shared/music/fingering/words';
import {
  chosenPlan,
  computedFor,
  fingeringOn,
  handQuestion,
} from '../../../shared/planning/chosen-fingering';
import type { HandOfArpeggio } from '../../../shared/planning/student';
import { joinDrillId } from '../../../shared/planning/drills/kinds';
import { chordText } from '../../parts/words';
import { nameOfKeys } from '../../parts/name-of-keys';
import { hrefOf } from '../../route';
import { useStore } from '../../store-context';
import { FingerChoice } from './finger-choice';
import { FingerRow } from './finger-row';
import styles from './fingering-section.module.css';

const HANDS: Readonly<Record<Hand, string>> = { right: 'Right hand', left: 'Left hand' };
/** A pattern shows in two octaves; longer ways go on as it does. */
const SHOWN_OCTAVES = 2;
const MOST_CHANGES = 3;

export function FingeringSection({ item }: { readonly item: Item }) {
  const played = handsOf(item.way);
  const hands = played === 'together' ? (['right', 'left'] as const) : [played];
  return (
    <section class={styles.section}>
      <h2>Fingering</h2>
      <div class={styles.hands}>
        {hands.map((hand) => (
          <HandFingering key={hand} item={item} hand={hand} />
        ))}
      </div>
      <p class={styles.chart}>
        <a href={hrefOf('fingering')}>Fingering chart of the whole programme</a>
      </p>
    </section>
  );
}

function HandFingering({ item, hand }: { readonly item: Item; readonly hand: Hand }) {
  const student = useStore().student.value;
  const { names } = chordText(item.note, item.chord);
  const chosen = chosenPlan(student, item, hand);
  const question = { ...handQuestion(student, item, hand)!, octaves: SHOWN_OCTAVES };
  const computed = computedFor(question);
  const current = fingeringOn(question, chosen);
  const nameOf = nameOfKeys(question.keys, names);
  return (
    <div>
      <h3 class={styles.hand}>{HANDS[hand]}</h3>
      <FingerRow fingering={current} names={names} label={`${HANDS[hand]}, from the lowest note`} />
      <Advice fingering={current} nameOf={nameOf} hand={`${item.arpeggio}.${hand}`} />
      <FingerChoice
        item={item}
        hand={hand}
        question={question}
        computed={computed}
        current={current}
        nameOf={nameOf}
      />
    </div>
  );
}

/** The hardest first; what looks the same an octave higher is said once. */
function hardest(changes: readonly PositionChange[], nameOf: NameOf): readonly PositionChange[] {
  const texts = new Set<string>();
  return changes
    .toSorted((a, b) => b.difficulty - a.difficulty)
    .filter((change) => {
      const text = changeText(change, nameOf);
      return !texts.has(text) && texts.add(text);
    })
    .slice(0, MOST_CHANGES);
}

function stretchesOf(fingering: Fingering, nameOf: NameOf): readonly Stretch[] {
  const all = fingering.positions.flatMap(({ stretches }) => stretches);
  const texts = all.map((stretch) => stretchText(stretch, nameOf));
  return all.filter((_, i) => texts.indexOf(texts[i]!) === i);
}

interface AdviceProps {
  readonly fingering: Fingering;
  readonly nameOf: NameOf;
  /** Whose drills are linked. */
  readonly hand: HandOfArpeggio;
}

function Advice({ fingering, nameOf, hand }: AdviceProps) {
  return (
    <ul class={styles.advice}>
      {hardest(fingering.changes, nameOf).map((change) => (
        <li key={changeText(change, nameOf)}>
          <strong>{changeText(change, nameOf)}</strong> {changeHint(change)}{' '}
          <a href={hrefOf('drill', joinDrillId(hand, fingering, change))}>Practise this join</a>
        </li>
      ))}
      {stretchesOf(fingering, nameOf).map((stretch) => (
        <li key={stretchText(stretch, nameOf)}>
          <strong>{stretchText(stretch, nameOf)}</strong> {stretchHint(stretch)}
        </li>
      ))}
      <li>
        <a href={hrefOf('drill', `${hand}.chords`)}>Each position as a chord, and other drills</a>
      </li>
    </ul>
  );
}
