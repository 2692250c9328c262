/** What was heard of the runs of an item: the picture of a take, and how the joins have gone from take to take. */
import { useState } from 'preact/hooks';
import { FLUENCIES, type RunEvent } from '../../../shared/log/events';
import type { RunTake } from '../../../shared/log/run-take';
import type { Score } from '../../../shared/music/score';
import { markOf } from '../../../shared/music/tempo';
import { dateText } from '../../parts/dates';
import { TakePicture } from '../../parts/take/take-picture';
import { TakeFigures, TakeWords } from '../../parts/take/take-words';
import { JoinLines } from './join-lines';
import styles from './heard-section.module.css';
import itemStyles from './item-screen.module.css';

interface HeardSectionProps {
  /** Oldest first. */
  readonly runs: readonly RunEvent[];
  /** As it is fingered today; asked for only where something was heard. */
  readonly scoreOf: () => Score;
}

export type HeardEvent = RunEvent & { readonly take: RunTake };
const isHeard = (run: RunEvent): run is HeardEvent => run.take !== undefined;

export function HeardSection({ runs, scoreOf }: HeardSectionProps) {
  const heard = runs.filter(isHeard);
  const [chosen, setChosen] = useState<string | null>(null);
  const shown = heard.find(({ id }) => id === chosen) ?? heard.at(-1);
  if (shown === undefined) return null;
  const score = scoreOf();
  return (
    <section class={itemStyles.section}>
      <h2 class={itemStyles.heading}>Heard</h2>
      <label class={styles.which}>
        Run
        <select value={shown.id} onChange={(event) => setChosen(event.currentTarget.value)}>
          {heard.toReversed().map((run) => (
            <option key={run.id} value={run.id}>
              {dateText(run.day)}, {FLUENCIES[run.fluency]} at {markOf(run.tempo, score.grouping)}
            </option>
          ))}
        </select>
      </label>
      <div class={styles.take}>
        <TakeWords take={shown.take} score={score} />
        <TakePicture take={shown.take} score={score} />
        <TakeFigures take={shown.take} score={score} />
      </div>
      {heard.length > 1 && <JoinLines runs={heard} score={score} />}
    </section>
  );
}
