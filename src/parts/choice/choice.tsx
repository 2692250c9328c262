/**
 * One of a few, drawn as a row of words with the chosen one underlined; a radio group underneath, so arrow keys work.
 *
 * <Choice legend="Theme" value={theme} onChange={setTheme}
 *   options={[{ value: 'light', label: 'Light' }, { value: 'dark', label: 'Dark' }]} />
 *
 * `isStacked` puts long options under each other. `spoken` adds to an option's accessible name what its short label leaves out; `isLegendHidden` hides a legend that
 * the surroundings already show. Values are strings or numbers.
 */
import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import styles from './choice.module.css';

export interface ChoiceOption<T> {
  readonly value: T;
  readonly label: ComponentChildren;
  readonly spoken?: string;
}

interface ChoiceProps<T> {
  readonly legend: string;
  readonly isLegendHidden?: boolean;
  readonly isStacked?: boolean;
  readonly options: readonly ChoiceOption<T>[];
  readonly value: T;
  readonly onChange: (value: T) => void;
}

export function Choice<T extends string | number>(props: ChoiceProps<T>) {
  const name = useId();
  return (
    <fieldset class={styles.choice}>
      <legend class={props.isLegendHidden ? 'spoken' : styles.legend}>{props.legend}</legend>
      <div class={props.isStacked ? styles.stack : styles.row}>
        {props.options.map((option) => (
          <label key={option.value} class={styles.option}>
            <input
              type="radio"
              class={styles.input}
              name={name}
              value={option.value}
              checked={option.value === props.value}
              onChange={() => props.onChange(option.value)}
            />
            <span class={styles.word}>
              {option.label}
              {option.spoken !== undefined && <span class="spoken"> {option.spoken}</span>}
            </span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
