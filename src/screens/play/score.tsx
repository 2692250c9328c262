/** What is to be played now, in big type, and on the drawn keyboard. */
import { type ReadonlySignal, useComputed } from '@preact/signals';
import { useMemo, useRef } from 'preact/hooks';
import type { Lit } from '../../../shared/listening/follower';
import { placeOfStep } from '../../../shared/music/engraving/engraving';
import { placementAt } from '../../../shared/music/placement';
import { keysOfHand, type Score as MusicScore, type ScoreNote } from '../../../shared/music/score';
import { Figures } from '../../parts/figures/figures';
import { Keyboard, type PlacedHand } from '../../parts/keyboard/keyboard';
import { useMedia } from '../../parts/media';
import { useTitleFocus } from '../../parts/page/page';
import { Staff } from '../../parts/staff/staff';
import { chordText } from '../../parts/words';
import { preferences } from '../../preferences';
import { midi } from '../../sound/midi-input';
import type { Course, Part } from './course';
import type { Run } from './run';
import styles from './score.module.css';

interface ScoreProps {
  readonly course: Course;
  readonly at: number;
  readonly run: Run | null;
  /** Steps of the course that have been heard. */
  readonly lit: ReadonlySignal<Lit>;
}

export function Score({ course, at, run, lit }: ScoreProps) {
  const part = course.parts[at]!;
  const { note, chord } = part.item;
  const text = chordText(note, chord);
  const [kind, place] = text.name.split(', ');
  const heading = useTitleFocus(text.title);
  return (
    <div class={styles.score} data-picture={preferences.value.picture}>
      <h1 ref={heading} tabIndex={-1} class={styles.chord}>
        <span class={styles.sign}>
          {text.bottom}
          <Figures chord={chord} />
        </span>
        <span class={styles.name}>
          {place === undefined ? kind : `${kind},`} <span class={styles.place}>{place}</span>
        </span>
      </h1>
      <p class={styles.notes} data-long={text.notes.length > 12}>
        <span class="spoken">{text.spoken}</span>
        <span aria-hidden="true">{text.notes}</span>
      </p>
      <div class={preferences.value.picture === 'keys' ? styles.keys : styles.notesOnStaff}>
        {preferences.value.picture === 'keys' ? (
          <Keys part={part} run={run} label={`The keys: ${text.spoken}`} />
        ) : (
          <Notes
            course={course}
            at={at}
            run={run}
            lit={lit}
            description={`${text.title}: ${text.spoken}`}
          />
        )}
      </div>
    </div>
  );
}

interface KeysProps {
  readonly part: Part;
  readonly run: Run | null;
  readonly label: string;
}

/** On its own, as it is drawn anew with every note. */
function Keys({ part, run, label }: KeysProps) {
  const { score } = part;
  const { right, left, lowest, highest } = useMemo(() => rangeOf(score), [score]);
  const isPortrait = useMedia('(orientation: portrait)');
  const index = useStep(part.start, run) ?? 0;
  const hands = {
    ...(right.length > 0 && { right: placed(score.right, index) }),
    ...(left.length > 0 && { left: placed(score.left, index) }),
  };
  const now = [hands.right?.now, hands.left?.now].filter((key) => typeof key === 'number');
  return (
    <Keyboard
      lowest={lowest}
      highest={highest}
      right={right}
      left={left}
      now={now}
      heard={midi.down.value}
      hands={hands}
      label={label}
      length={lengthFor(highest - lowest, isPortrait)}
    />
  );
}

interface NotesProps extends ScoreProps {
  readonly description: string;
}

/** The engraved music in place of the keys, from where the run begins: the running arpeggio and the next, turning with the beat or the player. */
function Notes({ course, at, run, lit, description }: NotesProps) {
  const score = course.whole();
  const first = useRef(at);
  // During a run all stays in its place, unless one goes back to before it.
  if (run === null || at < first.current) first.current = at;
  const step = useStep(0, run);
  const heard = useComputed(() => {
    const placesOf = (steps: ReadonlySet<number>) =>
      new Set([...steps].map((one) => placeOfStep(score, one)));
    return { right: placesOf(lit.value.right), left: placesOf(lit.value.left) };
  });
  return (
    <Staff
      score={score}
      from={placeOfStep(score, course.parts[first.current]!.start)}
      at={step === null ? null : placeOfStep(score, step)}
      heard={heard}
      description={description}
    />
  );
}

/** The step that sounds now, counted from `start`; null before the run. May lie before its first note or after its last. */
function useStep(start: number, run: Run | null): number | null {
  // Who asks for less motion sees the page change with the beat and not with every note.
  const isCalm = useMedia('(prefers-reduced-motion: reduce)');
  if (run === null) return null;
  const position = isCalm ? run.calmPosition.value : run.position.value;
  return position - start;
}

/** After the last note the hand stays as it lies. */
function placed(notes: readonly ScoreNote[], index: number): PlacedHand {
  const at = Math.min(Math.max(0, index), notes.length - 1);
  return { placement: placementAt(notes, at), now: notes[index]?.keys[0]?.midi ?? null };
}

/** Few keys are drawn shorter and many longer than they are, so that each kind fills the room well. */
function lengthFor(semitones: number, isPortrait: boolean): number {
  if (semitones <= 26) return isPortrait ? 54 : 46;
  if (semitones <= 38) return isPortrait ? 76 : 50;
  return isPortrait ? 110 : 64;
}

function rangeOf(score: MusicScore) {
  const [right, left] = [keysOfHand(score.right), keysOfHand(score.left)];
  const all = [...right, ...left];
  return { right, left, lowest: Math.min(...all), highest: Math.max(...all) };
}
