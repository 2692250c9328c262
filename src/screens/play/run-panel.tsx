/** Below the keys while playing: count-in or beat, what comes next, and the two buttons for busy hands. */
import type { Grouping, Tempo } from '../../../shared/music/tempo';
import { Button } from '../../parts/button/button';
import { Mark } from '../../parts/stepper/beat-note';
import { chordText } from '../../parts/words';
import { COUNT_IN } from '../../sound/schedule';
import { BeatLine } from './beat-line';
import type { Course } from './course';
import type { Run } from './run';
import styles from './run-panel.module.css';

interface RunPanelProps {
  readonly run: Run;
  readonly course: Course;
  readonly tempo: Tempo;
  readonly grouping: Grouping;
  /** What follows the last chord, as the label of a button. */
  readonly end: string;
}

export function RunPanel({ run, course, tempo, grouping, end }: RunPanelProps) {
  const isLast = run.part.value === course.parts.length - 1;
  return (
    <div class={styles.panel}>
      <Next course={course} at={run.part.value} />
      <div class={styles.beat}>
        <Pulse run={run} course={course} />
        <span class={styles.mark}>
          <Mark tempo={tempo} grouping={grouping} />
        </span>
      </div>
      <div class={styles.controls}>
        <Button size="stand" onClick={run.back} aria-label="Back, with a new count-in">
          Back
        </Button>
        {run.sound.value === 'interrupted' ? (
          <Button size="stand" kind="main" onClick={run.resume}>
            The sound was interrupted: go on
          </Button>
        ) : (
          <Button size="stand" onClick={run.next}>
            {isLast ? end : 'Next chord'}
          </Button>
        )}
      </div>
    </div>
  );
}

/** On its own, as it changes with every beat. */
function Pulse({ run, course }: { readonly run: Run; readonly course: Course }) {
  const count = run.count.value;
  if (count === null) return <BeatLine run={run} part={course.parts[run.part.value]!} />;
  return (
    <span class={styles.count} aria-hidden="true">
      {Array.from({ length: COUNT_IN }, (_, i) => (
        <span key={i} class={styles.number} data-now={count === i + 1}>
          {i + 1}
        </span>
      ))}
    </span>
  );
}

function Next({ course, at }: { readonly course: Course; readonly at: number }) {
  const next = course.parts[at + 1]?.item;
  if (next === undefined) return <p class={styles.next}>The last of them</p>;
  const text = chordText(next.note, next.chord);
  return (
    <p class={styles.next}>
      <span class={styles.then}>then</span> {text.name}{' '}
      <span class={styles.nextNotes}>
        <span class="spoken">{text.spoken}</span>
        <span aria-hidden="true">{text.notes}</span>
      </span>
    </p>
  );
}
