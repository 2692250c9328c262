/** How long it takes to rebuild a student from a log, and to plan a day, as ratios measured in one run. */
import { addDays } from '../../shared/log/day';
import type { LogEvent } from '../../shared/log/events';
import { planDay } from '../../shared/planning/today';
import { replay } from '../../shared/planning/student';
import { longLog } from './long-log';

/** Median time in ms of several calls. */
function median(times: number, task: () => void): number {
  const measured = Array.from({ length: times }, () => {
    const start = performance.now();
    task();
    return performance.now() - start;
  });
  return measured.toSorted((a, b) => a - b)[Math.floor(times / 2)]!;
}

const ms = (value: number): string => `${value.toFixed(1)} ms`;

export function benchModel(): void {
  const text = JSON.stringify(longLog(100_000));
  const parsed = JSON.parse(text) as LogEvent[];
  const parsing = median(5, () => void JSON.parse(text));
  const replaying = median(5, () => void replay(parsed));
  console.log(
    `replay of 100,000 runs: ${ms(replaying)}, JSON.parse of the same log: ${ms(parsing)}`,
  );
  console.log(`  ratio ${(replaying / parsing).toFixed(2)} (at most 3)`);

  console.log('one day of 20 minutes over 924 items, by the length of the log:');
  for (const runs of [1000, 10_000, 100_000]) {
    const log = longLog(runs);
    const student = replay(log);
    const day = addDays(log.at(-1)!.day, 1);
    const planning = median(21, () => void planDay(student, day, 20));
    console.log(`  ${runs} runs: ${ms(planning)} (at most 10 ms)`);
  }
}
