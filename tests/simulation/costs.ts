/** What planning and replay cost, on this machine and as ratios measured in the same run. */
import { addDays, dayNumber } from '../../shared/log/day';
import { parseItemId } from '../../shared/music/deck';
import { planDay } from '../../shared/planning/today';
import { replay } from '../../shared/planning/student';
import { longLog } from '../bench/long-log';
import { seededRandom } from '../../src/demo/random';
import { PLANNERS } from './planners';
import { makeLearner } from './student-life';

const FIVE_YEARS = 110_000;

/** Of calls after as many that are not counted, in which the engine compiles what is called. */
function median(times: number, task: () => void): number {
  for (let i = 0; i < times; i++) task();
  const measured = Array.from({ length: times }, () => {
    const start = performance.now();
    task();
    return performance.now() - start;
  });
  return measured.toSorted((a, b) => a - b)[Math.floor(times / 2)]!;
}

const ratio = (a: number, b: number): string => (a / b).toFixed(1);

/** Sentences on the time of a day's plan and of a replay of five years. */
export function costs(): string {
  const log = longLog(FIVE_YEARS);
  const student = replay(log);
  const day = addDays(log.at(-1)!.day, 1);
  const life = { family: 'skill', group: 'uniform', number: 0, seed: 1 } as const;
  const memory = PLANNERS.memory(makeLearner(life), seededRandom(1).share, student.programme!);
  const remember = (): void => {
    for (const event of log) {
      if (event.kind !== 'run') continue;
      const { tempo } = event;
      memory.noteRun!(parseItemId(event.item)!, event.fluency, {
        number: dayNumber(event.day),
        tempo,
      });
    }
  };
  const morning = {
    student,
    day,
    number: dayNumber(day),
    practised: 0,
    seconds: 20 * 60,
    sitting: 1,
  };
  const planning = median(51, () => void planDay(student, day, 20));
  const theirPlanning = median(51, () => void memory.plan(morning));
  const replaying = median(5, () => void replay(log));
  const theirReplaying = median(5, remember);
  return `A day's plan of 20 minutes over twelve notes took ${planning.toFixed(1)} ms once its code was compiled (aim: under 5), ${ratio(planning, theirPlanning)} times
what the two-component memory took over seven; ${FIVE_YEARS.toLocaleString('en')} runs, five years of them, were replayed in
${(replaying / 1000).toFixed(2)} s (aim: under 0.4), ${ratio(replaying, theirReplaying)} times what its bookkeeping alone took.`;
}
