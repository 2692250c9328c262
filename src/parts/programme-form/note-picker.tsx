/** The starting notes: the white ones, all twelve, or some, chosen on an octave of keys. */
import { useState } from 'preact/hooks';
import {
  isBlack,
  STARTING_NOTES,
  type StartingNote,
  WHITE_NOTES,
} from '../../../shared/music/deck';
import { bottomNames, pitchClassOf } from '../../../shared/music/spelling';
import { displayName, spokenName } from '../../../shared/music/names';
import { preferences } from '../../preferences';
import { Choice } from '../choice/choice';
import styles from './note-picker.module.css';

interface NotePickerProps {
  readonly notes: readonly StartingNote[];
  readonly onChange: (notes: readonly StartingNote[]) => void;
}

type Kind = 'white' | 'all' | 'some';

const KINDS = [
  { value: 'white', label: 'the seven white' },
  { value: 'all', label: 'all twelve' },
  { value: 'some', label: 'choose' },
] as const;

const KEYS = STARTING_NOTES.toSorted((a, b) => pitchClassOf(a) - pitchClassOf(b));

function kindOf(notes: readonly StartingNote[]): Kind {
  if (notes.length === STARTING_NOTES.length) return 'all';
  const isWhite = notes.length === WHITE_NOTES.length && !notes.some(isBlack);
  return isWhite ? 'white' : 'some';
}

export function NotePicker({ notes, onChange }: NotePickerProps) {
  const [isChoosing, setChoosing] = useState(kindOf(notes) === 'some');
  const choose = (kind: Kind) => {
    setChoosing(kind === 'some');
    if (kind === 'white') onChange(WHITE_NOTES);
    if (kind === 'all') onChange(STARTING_NOTES);
  };
  return (
    <section class={styles.picker}>
      <h2>Which starting notes?</h2>
      <Choice<Kind>
        legend="Starting notes"
        isLegendHidden
        options={KINDS}
        value={isChoosing ? 'some' : kindOf(notes)}
        onChange={choose}
      />
      {isChoosing && (
        <fieldset class={styles.keys}>
          <legend class="spoken">Each starting note</legend>
          {KEYS.map((note) => (
            <NoteKey
              key={note}
              note={note}
              isChosen={notes.includes(note)}
              isLast={notes.length === 1}
              onChange={(isChosen) =>
                onChange(
                  STARTING_NOTES.filter((other) =>
                    other === note ? isChosen : notes.includes(other),
                  ),
                )
              }
            />
          ))}
        </fieldset>
      )}
    </section>
  );
}

interface NoteKeyProps {
  readonly note: StartingNote;
  readonly isChosen: boolean;
  /** A programme has at least one note. */
  readonly isLast: boolean;
  readonly onChange: (isChosen: boolean) => void;
}

function NoteKey({ note, isChosen, isLast, onChange }: NoteKeyProps) {
  const { nameStyle } = preferences.value;
  const names = bottomNames(note);
  return (
    <label class={isBlack(note) ? styles.black : styles.white} data-note={note}>
      <input
        type="checkbox"
        class={styles.input}
        checked={isChosen}
        disabled={isChosen && isLast}
        onChange={(event) => onChange(event.currentTarget.checked)}
      />
      <span class={styles.face}>
        <span class="spoken">{names.map((name) => spokenName(name, nameStyle)).join(' or ')}</span>
        {names.map((name) => (
          <span key={name} aria-hidden="true">
            {displayName(name, nameStyle)}
          </span>
        ))}
      </span>
    </label>
  );
}
