/** Lessons, rehearsals and the like beside the date of the examination, each with what it is called. */
import { useId } from 'preact/hooks';
import { LONGEST_DATE_WORDS } from '../../../shared/formats/event';
import { addDays } from '../../../shared/log/day';
import type { Day } from '../../../shared/log/events';
import { type FurtherDate, MOST_FURTHER_DATES } from '../../../shared/log/programme';
import { Button } from '../button/button';
import { DateInput } from './date-input';
import styles from './programme-form.module.css';

interface FurtherDatesProps {
  readonly value: readonly FurtherDate[];
  readonly today: Day;
  readonly onChange: (dates: readonly FurtherDate[]) => void;
}

const A_WEEK = 7;

export function FurtherDates({ value, today, onChange }: FurtherDatesProps) {
  const set = (place: number, change: Partial<FurtherDate>) =>
    onChange(value.map((date, i) => (i === place ? { ...date, ...change } : date)));
  return (
    <div class={styles.dates}>
      {value.map((date, place) => (
        // A date has no name of its own: its place in the list is what it is known by.
        <DateRow
          // oxlint-disable-next-line react/no-array-index-key
          key={place}
          date={date}
          today={today}
          onChange={(change) => set(place, change)}
          onRemove={() => onChange(value.filter((_, i) => i !== place))}
        />
      ))}
      {value.length < MOST_FURTHER_DATES && (
        <Button
          kind="quiet"
          onClick={() => onChange([...value, { day: addDays(today, A_WEEK), words: '' }])}
        >
          Add a lesson or rehearsal
        </Button>
      )}
    </div>
  );
}

interface DateRowProps {
  readonly date: FurtherDate;
  readonly today: Day;
  readonly onChange: (change: Partial<FurtherDate>) => void;
  readonly onRemove: () => void;
}

function DateRow({ date, today, onChange, onRemove }: DateRowProps) {
  const id = useId();
  return (
    <div class={styles.dateRow}>
      <DateInput
        label="Also on"
        value={date.day}
        today={today}
        isRequired
        onChange={(day) => day !== null && onChange({ day })}
      />
      <div class={styles.dateWords}>
        <label for={id} class={styles.label}>
          What it is
        </label>
        <input
          id={id}
          type="text"
          maxLength={LONGEST_DATE_WORDS}
          placeholder="lesson"
          value={date.words}
          onInput={(event) => onChange({ words: event.currentTarget.value })}
        />
      </div>
      <Button kind="quiet" onClick={onRemove}>
        Remove
      </Button>
    </div>
  );
}
