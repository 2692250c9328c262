/** Care for the body: how long the work has gone on without a pause, and whether the week has had its days. */
import { addDays } from '../../shared/log/day';
import type { Day, RunEvent } from '../../shared/log/events';
import { itemOf } from '../../shared/music/deck';
import { intervalCount } from '../../shared/music/sequence';
import { secondsOf } from '../../shared/music/tempo';
import type { Student } from '../../shared/planning/student';

const MINUTE = 60_000;
/** A rest is offered after so many minutes of unbroken work, and asked for after more. Common teachers' advice. */
const OFFER_AFTER = 25;
const INSIST_AFTER = 50;
/** Without a run for so many minutes, the hands have rested. */
const PAUSE = 5;

/** Milliseconds of playing, as the log records a run when it has been rated. */
function playedMs(run: RunEvent): number {
  const { chord, way } = itemOf(run.item);
  return secondsOf(intervalCount(chord, way), run.tempo) * 1000;
}

/** Minutes since work began after the last pause, 0 while resting. Runs in the order of the log. */
export function unbrokenMinutes(runs: readonly RunEvent[], now: number): number {
  const last = runs.at(-1);
  if (last === undefined || now - last.at >= PAUSE * MINUTE) return 0;
  let begin = now;
  for (const run of runs.toReversed()) {
    // Runs of a round are recorded together when it has been rated, so each is counted back from what follows it.
    const end = Math.min(run.at, begin);
    if (begin - end >= PAUSE * MINUTE) break;
    begin = end - playedMs(run);
  }
  return (now - begin) / MINUTE;
}

export type RestAdvice = 'none' | 'offer' | 'insist';

export function restAdvice(runs: readonly RunEvent[], now: number): RestAdvice {
  const minutes = unbrokenMinutes(runs, now);
  if (minutes >= INSIST_AFTER) return 'insist';
  return minutes >= OFFER_AFTER ? 'offer' : 'none';
}

/** Whether the six days before had as many days of practice as the programme asks of a week, and today has none yet. */
export function isRestDay(student: Student, day: Day): boolean {
  if (student.programme === null || student.work.has(day)) return false;
  const worked = [1, 2, 3, 4, 5, 6].filter((ago) => student.work.has(addDays(day, -ago)));
  return worked.length >= student.programme.daysPerWeek;
}
