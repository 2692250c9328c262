/** Which chords a programme asks for in each stage: folded away, as most ask for all. */
import type { Programme, StageGoal } from '../../../shared/log/programme';
import { CHORD_IDS, type ChordId } from '../../../shared/music/chords';
import { STAGES, type Stage } from '../../../shared/music/deck';
import { FAMILIES } from '../chord-families';
import { wayText } from '../words';
import styles from './programme-form.module.css';

interface StageChordsProps {
  readonly value: Programme;
  readonly onChange: (programme: Programme) => void;
}

const chordsIn = ({ chords }: StageGoal): readonly ChordId[] => chords ?? CHORD_IDS;

const countText = (count: number): string =>
  count === CHORD_IDS.length ? 'all eleven chords' : `${count} of the eleven chords`;

/** All eleven are no restriction. */
function withChords(goal: StageGoal, chords: readonly ChordId[]): StageGoal {
  if (chords.length < CHORD_IDS.length) return { ...goal, chords };
  const { chords: _, ...others } = goal;
  return others;
}

export function StageChords({ value, onChange }: StageChordsProps) {
  const asked = STAGES.filter((stage) => value.stages[stage].asked);
  const restricted = asked.filter((stage) => value.stages[stage].chords !== undefined);
  const toggle = (stage: Stage, family: readonly ChordId[], isOn: boolean) => {
    const goal = value.stages[stage];
    const before = chordsIn(goal);
    const chords = CHORD_IDS.filter((chord) =>
      family.includes(chord) ? isOn : before.includes(chord),
    );
    onChange({ ...value, stages: { ...value.stages, [stage]: withChords(goal, chords) } });
  };
  return (
    <details class={styles.standards}>
      <summary>
        {restricted.length === 0
          ? 'All eleven chords in each stage'
          : 'Not all eleven chords in each stage'}
      </summary>
      {asked.map((stage) => {
        const chords = chordsIn(value.stages[stage]);
        return (
          <fieldset key={stage} class={styles.goals}>
            <legend class={styles.label}>
              {wayText(stage)}: {countText(chords.length)}
            </legend>
            {FAMILIES.map(([name, family]) => {
              const isOn = family.every((chord) => chords.includes(chord));
              return (
                <label key={name} class={styles.asked}>
                  <input
                    type="checkbox"
                    checked={isOn}
                    // A stage that asks for no chord is none.
                    disabled={isOn && chords.every((chord) => family.includes(chord))}
                    onChange={(event) => toggle(stage, family, event.currentTarget.checked)}
                  />
                  {name}
                </label>
              );
            })}
          </fieldset>
        );
      })}
    </details>
  );
}
