/**
 * A number with minus and plus; hold a button to repeat, or type.
 *
 * <Stepper label="Minutes a day" value={20} min={5} max={90} step={5} unit="minutes" onChange={setMinutes} />
 *
 * See tempo-stepper.tsx for the one that shows a metronome mark. `onChange` gets a whole number within the limits.
 */
import type { ComponentChildren } from 'preact';
import { useEffect, useId, useRef } from 'preact/hooks';
import styles from './stepper.module.css';

interface StepperProps {
  readonly label: ComponentChildren;
  /** Named by the surroundings already: the label is spoken, not drawn. */
  readonly isLabelHidden?: boolean;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step?: number;
  /** Drawn before the number ("♩ ="). */
  readonly before?: ComponentChildren;
  /** Said after the number ("minutes"). */
  readonly unit?: string;
  readonly size?: 'normal' | 'stand';
  readonly onChange: (value: number) => void;
}

/** Milliseconds: long enough that one tap is one step, then about eleven steps a second. */
const HOLD = 450;
const REPEAT = 90;

export function Stepper(props: StepperProps) {
  const { value, min, max, step = 1, size = 'normal' } = props;
  const id = useId();
  const set = (wish: number) => {
    const next = Math.min(max, Math.max(min, Math.round(wish)));
    if (next !== value) props.onChange(next);
  };
  const less = useHold(() => set(Math.ceil(value / step) * step - step));
  const more = useHold(() => set(Math.floor(value / step) * step + step));
  return (
    <div class={`${styles.stepper} ${styles[size]}`}>
      <label for={id} class={props.isLabelHidden ? 'spoken' : styles.label}>
        {props.label}
      </label>
      <div class={styles.row}>
        <button type="button" class={styles.sign} disabled={value <= min} {...less}>
          <span aria-hidden="true">−</span>
          <span class="spoken">
            less: <For label={props.label} />
          </span>
        </button>
        <span class={styles.value}>
          {props.before}
          <input
            id={id}
            type="number"
            inputMode="numeric"
            class={styles.input}
            value={value}
            min={min}
            max={max}
            step={step}
            onChange={(event) => {
              const typed = event.currentTarget.valueAsNumber;
              if (Number.isFinite(typed)) set(typed);
              // A wish outside the limits leaves the state as it was, so the text is put right here.
              event.currentTarget.value = String(
                Number.isFinite(typed) ? Math.min(max, Math.max(min, Math.round(typed))) : value,
              );
            }}
          />
          {props.unit !== undefined && <span class={styles.unit}>{props.unit}</span>}
        </span>
        <button type="button" class={styles.sign} disabled={value >= max} {...more}>
          <span aria-hidden="true">+</span>
          <span class="spoken">
            more: <For label={props.label} />
          </span>
        </button>
      </div>
    </div>
  );
}

const For = ({ label }: { readonly label: ComponentChildren }) => <>{label}</>;

/** Handlers for a button whose action repeats while it is held. A key press or a tap is a click as always. */
function useHold(action: () => void) {
  const latest = useRef(action);
  latest.current = action;
  const timer = useRef(0);
  const hasRepeated = useRef(false);
  const stop = () => clearTimeout(timer.current);
  const repeat = () => {
    hasRepeated.current = true;
    latest.current();
    timer.current = window.setTimeout(repeat, REPEAT);
  };
  useEffect(() => stop, []);
  return {
    onPointerDown: () => {
      hasRepeated.current = false;
      stop();
      timer.current = window.setTimeout(repeat, HOLD);
    },
    onPointerUp: stop,
    onPointerLeave: stop,
    onPointerCancel: stop,
    onContextMenu: (event: Event) => event.preventDefault(),
    onClick: () => {
      if (!hasRepeated.current) latest.current();
      hasRepeated.current = false;
    },
  };
}
