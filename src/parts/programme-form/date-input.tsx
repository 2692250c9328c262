/** A day to be set, kept within what a programme can hold; says so when a typed one was not taken. */
import { useId, useState } from 'preact/hooks';
import type { Day } from '../../../shared/log/events';
import styles from './programme-form.module.css';

interface DateInputProps {
  readonly label: string;
  readonly value: Day | null;
  /** Nothing before it is taken; what is there already stays. */
  readonly today: Day;
  /** An empty field is not taken either. */
  readonly isRequired?: boolean;
  readonly onChange: (day: Day | null) => void;
}

const LATEST: Day = '2099-12-31';

export function DateInput({ label, value, today, isRequired = false, onChange }: DateInputProps) {
  const id = useId();
  const [isRefused, setRefused] = useState(false);
  const mayBe = ({ value: day, validity }: HTMLInputElement): boolean =>
    day === '' ? !isRequired && !validity.badInput : day >= today && day <= LATEST;
  return (
    <div>
      <label for={id} class={styles.label}>
        {label}
      </label>
      <input
        id={id}
        type="date"
        value={value ?? ''}
        min={today}
        max={LATEST}
        required={isRequired}
        aria-describedby={isRefused ? `${id}-refused` : undefined}
        onChange={(event) => {
          if (!mayBe(event.currentTarget)) return;
          setRefused(false);
          onChange(event.currentTarget.value || null);
        }}
        // Not before: while a year is typed, it goes through years long past.
        onBlur={(event) => {
          const { value: day, validity } = event.currentTarget;
          const isChanged = validity.badInput || day !== (value ?? '');
          if (isChanged && !mayBe(event.currentTarget)) setRefused(true);
        }}
      />
      {isRefused && (
        <p id={`${id}-refused`} role="alert" class="small">
          Not taken: a whole date is needed, from today on and before 2100.
        </p>
      )}
    </div>
  );
}
