/** Another fingering for one hand of an arpeggio: one of those computed, or the person's own. Kept for all octave ranges. */
import { useState } from 'preact/hooks';
import type { Item } from '../../../shared/music/deck';
import { readOwn } from '../../../shared/music/fingering/own';
import { fingersOfRun } from '../../../shared/music/fingering/plan';
import type { Fingering, Fingerings } from '../../../shared/music/fingering/result';
import type { FingerPlan, Hand, Question } from '../../../shared/music/fingering/types';
import { comparisonText, type NameOf, problemText } from '../../../shared/music/fingering/words';
import { chosenPlan } from '../../../shared/planning/chosen-fingering';
import { Button } from '../../parts/button/button';
import { Choice, type ChoiceOption } from '../../parts/choice/choice';
import { say } from '../../parts/notice/notice';
import { useStore } from '../../store-context';
import styles from './finger-choice.module.css';

interface FingerChoiceProps {
  readonly item: Item;
  readonly hand: Hand;
  readonly question: Question;
  readonly computed: Fingerings;
  /** What holds now. */
  readonly current: Fingering;
  readonly nameOf: NameOf;
}

/** Over two octaves, which tell one plan from another. */
const digitsOf = (plan: FingerPlan): string => fingersOfRun(plan, 2).join('');

export function FingerChoice(props: FingerChoiceProps) {
  const { item, hand, question, computed, current, nameOf } = props;
  const store = useStore();
  const { best, alternatives } = computed;
  const offered = [best, ...alternatives];
  const isOwn = offered.every(({ plan }) => digitsOf(plan) !== digitsOf(current.plan));

  const choose = async (plan: FingerPlan | null) => {
    try {
      const before = chosenPlan(store.student.value, item, hand);
      await store.record([{ kind: 'fingering', arpeggio: item.arpeggio, hand, plan }]);
      say('Fingering saved, for every number of octaves.', {
        label: 'Undo',
        do: () => void choose(before),
      });
    } catch (error) {
      say(error instanceof Error ? error.message : 'The fingering could not be saved.');
    }
  };

  const options: ChoiceOption<string>[] = offered.map((fingering) => ({
    value: digitsOf(fingering.plan),
    label: (
      <Option
        digits={digitsOf(fingering.plan)}
        text={fingering === best ? 'Computed for this hand.' : comparisonText(fingering, best)}
      />
    ),
  }));
  if (isOwn) {
    const digits = digitsOf(current.plan);
    options.push({ value: digits, label: <Option digits={digits} text="Your own." /> });
  }
  return (
    <details class={styles.more}>
      <summary>Another fingering</summary>
      <Choice
        legend="Fingers from the lowest note up, over two octaves"
        isStacked
        options={options}
        value={digitsOf(current.plan)}
        onChange={(digits) => {
          const found = offered.find(({ plan }) => digitsOf(plan) === digits);
          if (found !== undefined) void choose(found === best ? null : found.plan);
        }}
      />
      <OwnFingers question={question} nameOf={nameOf} onRead={(plan) => void choose(plan)} />
    </details>
  );
}

function Option({ digits, text }: { readonly digits: string; readonly text: string }) {
  return (
    <span>
      <span class={styles.digits}>{digits.split('').join(' ')}</span>
      <span class={styles.text}>{text}</span>
    </span>
  );
}

interface OwnFingersProps {
  readonly question: Question;
  readonly nameOf: NameOf;
  readonly onRead: (plan: FingerPlan) => void;
}

function OwnFingers({ question, nameOf, onRead }: OwnFingersProps) {
  const [typed, setTyped] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const { keys } = question;
  const keyAt = (index: number) =>
    keys[index % keys.length]! + 12 * Math.floor(index / keys.length);
  const read = (event: Event) => {
    event.preventDefault();
    const own = readOwn(typed, question);
    setProblem(own.ok ? null : problemText(own.problem, keyAt, nameOf));
    if (!own.ok) return;
    setTyped('');
    onRead(own.plan);
  };
  return (
    <form class={styles.form} onSubmit={read}>
      <label class={styles.label}>
        Your own, from the lowest note up, with the top note: one octave or two
        <input
          type="text"
          inputMode="numeric"
          autocomplete="off"
          class={styles.input}
          maxLength={40}
          value={typed}
          onInput={(event) => setTyped(event.currentTarget.value)}
        />
      </label>
      <Button type="submit" disabled={typed.trim() === ''}>
        Use these fingers
      </Button>
      {problem !== null && (
        <p role="alert" class={styles.problem}>
          {problem}
        </p>
      )}
    </form>
  );
}
