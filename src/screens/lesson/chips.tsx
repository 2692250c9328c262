import styles from './lesson.module.css';

interface ChipsProps<T> {
  readonly label: string;
  /** Value, words, and what is read aloud after them. */
  readonly options: readonly (readonly [value: T, text: string, spoken?: string])[];
  readonly value: T;
  readonly onChange: (value: T) => void;
}

/** One of several, as big buttons that wrap. */
export function Chips<T extends string>({ label, options, value, onChange }: ChipsProps<T>) {
  return (
    <div class={styles.chips} role="group" aria-label={label}>
      {options.map(([one, text, spoken]) => (
        <button
          key={one}
          type="button"
          class={styles.chip}
          aria-pressed={one === value}
          onClick={() => onChange(one)}
        >
          {text}
          {spoken !== undefined && <span class="spoken"> ({spoken})</span>}
        </button>
      ))}
    </div>
  );
}
