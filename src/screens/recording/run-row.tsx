/** One run of a recording: when, what, how it was heard, and what the person makes of it. */
import { FLUENCIES, type Fluency } from '../../../shared/log/events';
import { Choice } from '../../parts/choice/choice';
import { Mark } from '../../parts/stepper/beat-note';
import { TakeWords } from '../../parts/take/take-words';
import { chordText, wayText } from '../../parts/words';
import { hrefOf } from '../../route';
import type { FoundRun } from './found-runs';
import styles from './recording-screen.module.css';

interface RunRowProps {
  readonly run: FoundRun;
  readonly fluency: Fluency;
  readonly isWanted: boolean;
  readonly onChange: (change: { readonly fluency?: Fluency; readonly isWanted?: boolean }) => void;
}

const OPTIONS = FLUENCIES.map((label, value) => ({ value: value as Fluency, label }));

/** Seconds as "2:05". */
const clock = (seconds: number): string =>
  `${Math.floor(seconds / 60)}:${String(Math.floor(seconds % 60)).padStart(2, '0')}`;

export function RunRow({ run, fluency, isWanted, onChange }: RunRowProps) {
  const { item, from, take, tempo, pedal, score } = run;
  const { title } = chordText(item.note, item.chord);
  return (
    <li class={styles.run} data-wanted={isWanted}>
      <p class={styles.head}>
        <span class={styles.time}>{clock(from)}</span>
        <a class="music" href={hrefOf('item', item.id)}>
          {title}
        </a>
        <span class="soft">
          {wayText(item.way)}, <Mark tempo={tempo} grouping={score.grouping} />
          {pedal && ', with pedal'}
        </span>
      </p>
      <TakeWords take={take} score={score} />
      <div class={styles.says}>
        <Choice
          legend={`How it went: ${title}`}
          isLegendHidden
          options={OPTIONS}
          value={fluency}
          onChange={(chosen) => onChange({ fluency: chosen })}
        />
        <label class={styles.wanted}>
          <input
            type="checkbox"
            checked={isWanted}
            onChange={(event) => onChange({ isWanted: event.currentTarget.checked })}
          />
          record it
        </label>
      </div>
    </li>
  );
}
