/**
 * The programme as a form: starting notes, stage reached, targets, and time. It has no button of its own.
 *
 * <ProgrammeForm value={programme} onChange={setProgramme} today={store.today.value} />
 *
 * Every value that it hands out is a valid programme.
 */
import { useId } from 'preact/hooks';
import { LONGEST_TEXT } from '../../../shared/formats/event';
import type { Day } from '../../../shared/log/events';
import type { Programme } from '../../../shared/log/programme';
import { type Stage, STAGES } from '../../../shared/music/deck';
import { type Grouping, playableTempo } from '../../../shared/music/tempo';
import { Choice } from '../choice/choice';
import { Stepper } from '../stepper/stepper';
import { wayText } from '../words';
import { DateInput } from './date-input';
import { FurtherDates } from './further-dates';
import { NotePicker } from './note-picker';
import styles from './programme-form.module.css';
import { StageGoals } from './stage-goals';
import { withTempos } from './stage-tempos';
import { StandardList } from './standard-list';

interface ProgrammeFormProps {
  readonly value: Programme;
  readonly onChange: (programme: Programme) => void;
  /** The date of the programme cannot be before it. */
  readonly today: Day;
  /** What the time would lead to, in a sentence; null where nothing can be said. */
  readonly outlook?: string | null;
}

const REACHED = STAGES.map((stage) => ({ value: stage, label: wayText(stage) }));
const GROUPINGS = [
  { value: 4, label: 'four notes a beat' },
  { value: 3, label: 'three notes a beat' },
] as const;

/** Another grouping keeps the speed of the notes, to the nearest whole metronome mark. */
function regrouped(programme: Programme, grouping: Grouping): Programme {
  const stages = { ...programme.stages };
  for (const stage of STAGES) {
    stages[stage] = withTempos(stages[stage], (tempo) => playableTempo(tempo, grouping));
  }
  return { ...programme, grouping, stages };
}

export function ProgrammeForm({ value, onChange, today, outlook = null }: ProgrammeFormProps) {
  const set = (change: Partial<Programme>) => onChange({ ...value, ...change });
  return (
    <div class={styles.form}>
      <NotePicker notes={value.notes} onChange={(notes) => set({ notes })} />
      <section class={styles.part}>
        <h2>Where are you now?</h2>
        <Choice<Stage>
          legend="The stage that goes well already, or the first one for a beginner"
          isStacked
          options={REACHED}
          value={value.reached}
          onChange={(reached) => set({ reached })}
        />
      </section>
      <section class={styles.part}>
        <h2>Where are you going?</h2>
        <StandardList value={value} onChange={onChange} />
        <Choice<Grouping>
          legend="The metronome counts"
          options={GROUPINGS}
          value={value.grouping}
          onChange={(grouping) => onChange(regrouped(value, grouping))}
        />
        <StageGoals value={value} onChange={onChange} />
        <DateInput
          label="Date of the examination, if there is one"
          value={value.date}
          today={today}
          onChange={(date) => set({ date })}
        />
        <FurtherDates
          value={value.furtherDates ?? []}
          today={today}
          onChange={(dates) => {
            const { furtherDates: _, ...others } = value;
            onChange(dates.length === 0 ? others : { ...others, furtherDates: dates });
          }}
        />
        <RequirementsField
          value={value.requirements ?? ''}
          onChange={(words) => {
            const { requirements: _, ...others } = value;
            onChange(words.trim() === '' ? others : { ...others, requirements: words });
          }}
        />
      </section>
      <section class={styles.part}>
        <h2>How much time?</h2>
        <div class={styles.steppers}>
          <Stepper
            label="Minutes a day"
            value={value.minutes}
            min={5}
            max={120}
            step={5}
            onChange={(minutes) => set({ minutes })}
          />
          <Stepper
            label="Days a week"
            value={value.daysPerWeek}
            min={1}
            max={7}
            onChange={(daysPerWeek) => set({ daysPerWeek })}
          />
        </div>
        <p class={styles.outlook} aria-live="polite">
          {outlook}
        </p>
      </section>
    </div>
  );
}

interface RequirementsFieldProps {
  readonly value: string;
  readonly onChange: (words: string) => void;
}

function RequirementsField({ value, onChange }: RequirementsFieldProps) {
  const id = useId();
  return (
    <div class={styles.words}>
      <label for={id} class={styles.label}>
        What else is asked, in words (may stay empty)
      </label>
      <textarea
        id={id}
        rows={3}
        maxLength={LONGEST_TEXT}
        value={value}
        onInput={(event) => onChange(event.currentTarget.value)}
      />
    </div>
  );
}
