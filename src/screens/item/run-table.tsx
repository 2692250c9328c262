/** The runs behind the chart, newest first. */
import { useState } from 'preact/hooks';
import { FLUENCIES, type RunEvent } from '../../../shared/log/events';
import { type Grouping, markOf } from '../../../shared/music/tempo';
import { Button } from '../../parts/button/button';
import { dateText, shortDay } from '../../parts/dates';
import { type Regretted, TakeBack } from '../../parts/take-back';
import styles from './run-table.module.css';

interface RunTableProps {
  /** Oldest first. */
  readonly runs: readonly RunEvent[];
  readonly grouping: Grouping;
}

export function RunTable({ runs, grouping }: RunTableProps) {
  const [regretted, setRegretted] = useState<Regretted | null>(null);
  const regret = (run: RunEvent) =>
    setRegretted({
      id: run.id,
      what: 'this run',
      which: `${dateText(run.day)}: ${FLUENCIES[run.fluency]} at ${markOf(run.tempo, grouping)}.`,
    });
  return (
    <details>
      <summary>{runs.length === 1 ? 'The run' : `The ${runs.length} runs`} as a table</summary>
      <div class={styles.scroll}>
        <table class={styles.table}>
          <thead>
            <tr>
              <th scope="col">Day</th>
              <th scope="col">Tempo</th>
              <th scope="col">How it went</th>
              <th scope="col">Pedal</th>
              <td />
            </tr>
          </thead>
          <tbody>
            {runs.toReversed().map((run) => (
              <tr key={run.id}>
                <td>{shortDay(run.day)}</td>
                <td>{markOf(run.tempo, grouping)}</td>
                <td>
                  {FLUENCIES[run.fluency]}
                  {run.judge === 'teacher' && <span class="soft"> (teacher)</span>}
                </td>
                <td>{run.pedal ? 'pedal' : 'dry'}</td>
                <td>
                  <Button kind="quiet" onClick={() => regret(run)}>
                    Take back
                    <span class="spoken">
                      {' '}
                      the run of {shortDay(run.day)} at {markOf(run.tempo, grouping)}
                    </span>
                  </Button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <TakeBack regretted={regretted} onClose={() => setRegretted(null)} />
    </details>
  );
}
