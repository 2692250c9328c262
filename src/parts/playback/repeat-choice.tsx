/** What is repeated: nothing, all, or a stretch that the music itself suggests, such as a position change. */
import { useId } from 'preact/hooks';
import { HANDS } from '../../../shared/music/engraving/placed';
import { displayName } from '../../../shared/music/names';
import { beatNumber, type NamedStretch } from '../../../shared/music/stretches';
import { preferences } from '../../preferences';
import styles from './playback.module.css';

interface RepeatChoiceProps {
  readonly stretches: readonly NamedStretch[];
  /** Index of a stretch; null for nothing. */
  readonly value: number | null;
  readonly onChange: (value: number | null) => void;
}

const NOTHING = '';

export function RepeatChoice({ stretches, value, onChange }: RepeatChoiceProps) {
  const id = useId();
  const indexed = stretches.map((stretch, index) => ({ stretch, index }));
  const optionsOf = (isWanted: (stretch: NamedStretch) => boolean) =>
    indexed
      .filter(({ stretch }) => isWanted(stretch))
      .map(({ stretch, index }) => (
        <option key={index} value={index}>
          {textOf(stretch)}
        </option>
      ));
  return (
    <div class={styles.repeat}>
      <label class={styles.label} for={id}>
        Repeat
      </label>
      <select
        id={id}
        value={value ?? NOTHING}
        onChange={(event) => {
          const chosen = event.currentTarget.value;
          onChange(chosen === NOTHING ? null : Number(chosen));
        }}
      >
        <option value={NOTHING}>nothing</option>
        {optionsOf(({ kind }) => kind !== 'change')}
        {HANDS.map((hand) => {
          const changes = optionsOf((one) => one.kind === 'change' && one.hand === hand);
          return (
            changes.length > 0 && (
              <optgroup key={hand} label={`Position changes, ${hand} hand`}>
                {changes}
              </optgroup>
            )
          );
        })}
      </select>
    </div>
  );
}

/** "beat 2: thumb under to G". */
function textOf(stretch: NamedStretch): string {
  switch (stretch.kind) {
    case 'all':
      return 'all of it';
    case 'up':
      return 'the way up';
    case 'down':
      return 'the way down';
    case 'arpeggio':
      return `arpeggio ${stretch.number}`;
    case 'change': {
      const { change, keys, place } = stretch.note;
      const name = displayName(keys[0]!.name, preferences.value.nameStyle);
      return `beat ${beatNumber(place)}: ${change} to ${name}`;
    }
  }
}
