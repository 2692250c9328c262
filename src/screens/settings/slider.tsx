import { useId, useState } from 'preact/hooks';
import styles from './slider.module.css';

interface SliderProps {
  readonly label: string;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly value: number;
  /** A value in words, shown beside the label and read aloud. */
  readonly textOf: (value: number) => string;
  /** Called when it is let go, not all the way. */
  readonly onChange: (value: number) => void;
}

/** A value where the right one is found by trying. */
export function Slider({ label, textOf, value, onChange, ...range }: SliderProps) {
  const id = useId();
  const [moving, setMoving] = useState<number | null>(null);
  const text = textOf(moving ?? value);
  return (
    <div class={styles.slider}>
      <label for={id} class={styles.label}>
        {label}: <span class={styles.value}>{text}</span>
      </label>
      <input
        id={id}
        type="range"
        class={styles.range}
        {...range}
        value={moving ?? value}
        aria-valuetext={text}
        onInput={(event) => setMoving(event.currentTarget.valueAsNumber)}
        onChange={(event) => {
          setMoving(null);
          onChange(event.currentTarget.valueAsNumber);
        }}
      />
    </div>
  );
}
