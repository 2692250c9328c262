/** Examinations that were held: what was forecast, and how they came out. */
import { useState } from 'preact/hooks';
import { outcomeOf } from '../../../shared/planning/examination/outcome';
import type { Examination } from '../../../shared/planning/student';
import { Button } from '../../parts/button/button';
import { dateText, shortDay } from '../../parts/dates';
import { OUTCOME_KEY, outcomePicture, outcomeText } from '../../parts/outcome-picture';
import { percent } from '../../parts/percent-text';
import { Pictures } from '../../parts/picture/picture';
import { type Regretted, TakeBack } from '../../parts/take-back';
import styles from './examination.module.css';

interface PastProps {
  readonly examinations: readonly Examination[];
  /** Draws the same again. */
  readonly onAgain: (held: Examination) => void;
}

export function PastExaminations({ examinations, onAgain }: PastProps) {
  const [regretted, setRegretted] = useState<Regretted | null>(null);
  const summary = outcomeText(examinations);
  if (summary === null) return null;
  return (
    <section class={styles.section}>
      <h2>Held so far</h2>
      <p>{summary}</p>
      <Pictures pictures={[outcomePicture(examinations)]} />
      <p class={styles.note}>{OUTCOME_KEY}</p>
      <table class={styles.table}>
        <thead>
          <tr>
            <th scope="col">Day</th>
            <th scope="col">Forecast</th>
            <th scope="col">Even</th>
            <th scope="col">Result</th>
            <th scope="col">Marked by</th>
            <th scope="col">Draw</th>
            <th scope="col">
              <span class="spoken">Take back</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {examinations.toReversed().map((one) => {
            const { even, asked, isPassed } = outcomeOf(one);
            return (
              <tr key={one.id}>
                <th scope="row">{shortDay(one.day)}</th>
                <td>{percent(one.forecast)} %</td>
                <td>
                  {even} of {asked}
                </td>
                <td>{isPassed ? 'passed' : 'not passed'}</td>
                <td>{one.judge === 'teacher' ? 'a teacher' : 'the player'}</td>
                <td>
                  <Button
                    kind="quiet"
                    aria-label={`Draw ${one.seed} again`}
                    onClick={() => onAgain(one)}
                  >
                    {one.seed}
                  </Button>
                </td>
                <td>
                  <Button
                    kind="quiet"
                    aria-label={`Take back the examination of ${dateText(one.day)}`}
                    onClick={() =>
                      setRegretted({
                        id: one.id,
                        what: 'this examination',
                        which: `${even} of ${asked} on ${dateText(one.day)}`,
                      })
                    }
                  >
                    Take back
                  </Button>
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <TakeBack regretted={regretted} onClose={() => setRegretted(null)} />
    </section>
  );
}
