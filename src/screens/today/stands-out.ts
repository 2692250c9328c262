/** A sentence or two about what is particular today, for the head of the list. */
import { daysBetween } from '../../../shared/log/day';
import type { Day } from '../../../shared/log/events';
import { daysOfEve } from '../../../shared/planning/dates';
import type { Student } from '../../../shared/planning/student';
import { closedOn } from '../../../shared/planning/turns';
import type { DayPlan } from '../../../shared/planning/today';
import { dateText } from '../../parts/dates';
import { noteText, wayText } from '../../parts/words';

/** From so many days on, the date is near enough to be named every day. */
const DATE_IN_SIGHT = 60;
const FURTHER_DATE_IN_SIGHT = 7;
const LONG_PAUSE = 7;

const FIRST_DAY =
  'The first day: the tempos are guesses. Play, rate as it went, and from tomorrow the list follows you.';

/** `student` as at the start of the day. */
export function whatStandsOut(student: Student, plan: DayPlan): readonly string[] {
  const { day } = plan;
  const hasPractised = student.work.size > 0;
  return [
    ...(hasPractised ? [pause(student, day), opened(plan), ...closed(student)] : [FIRST_DAY]),
    date(student, day),
    ...furtherDates(student, day),
  ].filter((sentence) => sentence !== null);
}

const lastDay = ({ work }: Student): Day => [...work.keys()].reduce((a, b) => (a > b ? a : b));

function pause(student: Student, day: Day): string | null {
  const days = daysBetween(lastDay(student), day);
  if (days < LONG_PAUSE) return null;
  return `${days} days since the last practice: the tempos begin a little lower, and nothing is to be made up for.`;
}

function opened(plan: DayPlan): string | null {
  const entry = plan.entries.find(({ reason }) => reason.kind === 'new' && reason.below !== null);
  return entry ? `New today: ${wayText(entry.way)}, from ${noteText(entry.note)}.` : null;
}

/** By what was played last. */
const closed = (student: Student): readonly string[] =>
  closedOn(student, lastDay(student)).map(({ stage, arpeggios }) => {
    const chords = arpeggios === 1 ? 'one chord' : `${arpeggios} chords`;
    return `Closed again for ${chords}, as it did not hold: ${wayText(stage)}.`;
  });

function date(student: Student, day: Day): string | null {
  const set = student.programme?.date ?? null;
  if (set === null) return null;
  const days = daysBetween(day, set);
  if (days < 0 || days > DATE_IN_SIGHT) return null;
  if (days === 0) return 'Today is the day of the programme.';
  const left = days === 1 ? 'One day left.' : `${days} days left until ${dateText(set)}.`;
  const isEve = daysOfEve(student.programme!, day) !== null;
  if (!isEve) return left;
  // To whoever has played nothing all of it is new.
  const isNew = student.work.size === 0;
  return `${left} The lists grow shorter${isNew ? '' : ', and nothing new comes'}.`;
}

/** "Tomorrow: lesson." */
function furtherDates({ programme }: Student, day: Day): readonly string[] {
  return (programme?.furtherDates ?? []).flatMap((one) => {
    const days = daysBetween(day, one.day);
    if (days < 0 || days > FURTHER_DATE_IN_SIGHT) return [];
    const when = days === 0 ? 'Today' : days === 1 ? 'Tomorrow' : `In ${days} days`;
    return `${when}: ${one.words.trim() || 'a date of the programme'}.`;
  });
}
