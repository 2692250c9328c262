/** Chords that a stage asks for at a tempo of their own: folded away, as most programmes have one tempo for a stage. */
import type { Programme, StageGoal } from '../../../shared/log/programme';
import { CHORD_IDS, type ChordId } from '../../../shared/music/chords';
import { STAGES, type Stage } from '../../../shared/music/deck';
import type { Tempo } from '../../../shared/music/tempo';
import { FAMILIES } from '../chord-families';
import { TempoStepper } from '../stepper/tempo-stepper';
import { wayText } from '../words';
import styles from './programme-form.module.css';

/** A goal with some chords at a tempo; those at the tempo of the stage have none of their own. */
export function withTempoOf(
  { targets: before = {}, ...goal }: StageGoal,
  family: readonly ChordId[],
  tempo: Tempo,
): StageGoal {
  const targets = CHORD_IDS.flatMap((chord): readonly [ChordId, Tempo][] => {
    const own = family.includes(chord) ? tempo : before[chord];
    return own === undefined || own === goal.target ? [] : [[chord, own]];
  });
  return targets.length === 0 ? goal : { ...goal, targets: Object.fromEntries(targets) };
}

/** A goal with every tempo changed. */
export function withTempos(
  { targets, ...goal }: StageGoal,
  change: (tempo: Tempo) => Tempo,
): StageGoal {
  const target = change(goal.target);
  if (targets === undefined) return { ...goal, target };
  const own = Object.entries(targets).map(([chord, tempo]) => [chord, change(tempo)] as const);
  return { ...goal, target, targets: Object.fromEntries(own) };
}

interface StageTemposProps {
  readonly value: Programme;
  readonly onChange: (programme: Programme) => void;
}

export function StageTempos({ value, onChange }: StageTemposProps) {
  const asked = STAGES.filter((stage) => value.stages[stage].asked);
  const isOne = asked.every((stage) => value.stages[stage].targets === undefined);
  return (
    <details class={styles.standards}>
      <summary>
        {isOne ? 'One tempo for all chords of a stage' : 'Some chords at a tempo of their own'}
      </summary>
      {asked.map((stage) => (
        <TemposOf
          key={stage}
          stage={stage}
          value={value}
          onChange={(goal) => onChange({ ...value, stages: { ...value.stages, [stage]: goal } })}
        />
      ))}
    </details>
  );
}

interface TemposOfProps {
  readonly stage: Stage;
  readonly value: Programme;
  readonly onChange: (goal: StageGoal) => void;
}

function TemposOf({ stage, value, onChange }: TemposOfProps) {
  const goal = value.stages[stage];
  const { target, targets = {}, chords = CHORD_IDS } = goal;
  return (
    <fieldset class={styles.tempos}>
      <legend class={styles.label}>{wayText(stage)}</legend>
      {FAMILIES.map(([name, family]) => {
        const first = family.find((chord) => chords.includes(chord));
        if (first === undefined) return null;
        return (
          <div key={name} class={styles.tempo}>
            {name}
            <TempoStepper
              label={`Tempo of ${name}, ${wayText(stage)}`}
              isLabelHidden
              tempo={targets[first] ?? target}
              grouping={value.grouping}
              onChange={(tempo) => onChange(withTempoOf(goal, family, tempo))}
            />
          </div>
        );
      })}
    </fieldset>
  );
}
