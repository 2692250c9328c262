/** Which stages the programme asks for, and how fast. */
import type { Programme, StageGoal } from '../../../shared/log/programme';
import { type Stage, STAGES } from '../../../shared/music/deck';
import type { ContraryForm } from '../../../shared/music/sequence';
import { Choice } from '../choice/choice';
import { TempoStepper } from '../stepper/tempo-stepper';
import { wayText } from '../words';
import styles from './programme-form.module.css';
import { StageChords } from './stage-chords';
import { StageTempos } from './stage-tempos';

interface StageGoalsProps {
  readonly value: Programme;
  readonly onChange: (programme: Programme) => void;
}

const FORMS = [
  { value: 'formula', label: 'formula pattern' },
  { value: 'plain', label: 'outwards and back' },
] as const;

export function StageGoals({ value, onChange }: StageGoalsProps) {
  const asked = STAGES.filter((stage) => value.stages[stage].asked);
  const setGoal = (stage: Stage, change: Partial<StageGoal>) => {
    const goal = { ...value.stages[stage], ...change };
    onChange({ ...value, stages: { ...value.stages, [stage]: goal } });
  };
  return (
    <>
      <fieldset class={styles.goals}>
        <legend class={styles.label}>Asked for, and at what tempo</legend>
        {STAGES.map((stage) => {
          const goal = value.stages[stage];
          return (
            <div key={stage} class={styles.goal}>
              <label class={styles.asked}>
                <input
                  type="checkbox"
                  checked={goal.asked}
                  // A programme that asks for nothing is none.
                  disabled={goal.asked && asked.length === 1}
                  onChange={(event) => setGoal(stage, { asked: event.currentTarget.checked })}
                />
                {wayText(stage)}
              </label>
              {goal.asked && (
                <TempoStepper
                  label={`Tempo of ${wayText(stage)}`}
                  isLabelHidden
                  tempo={goal.target}
                  grouping={value.grouping}
                  onChange={(target) => setGoal(stage, { target })}
                />
              )}
            </div>
          );
        })}
      </fieldset>
      <StageChords value={value} onChange={onChange} />
      <StageTempos value={value} onChange={onChange} />
      {value.stages['together.contrary'].asked && (
        <Choice<ContraryForm>
          legend="Contrary motion as"
          options={FORMS}
          value={value.contraryForm}
          onChange={(contraryForm) => onChange({ ...value, contraryForm })}
        />
      )}
    </>
  );
}
