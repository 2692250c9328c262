/** The day's list when a hand is sore: slow work for the other hand, and rounds in the mind. Nothing is made up for. */
import { dayNumber } from '../log/day';
import type { Day } from '../log/events';
import type { Programme } from '../log/programme';
import { type Item, itemOf, roundItems, stageIndex, type StartingNote } from '../music/deck';
import type { Hand } from '../music/fingering/types';
import { playableTempo } from '../music/tempo';
import { meanOn, workingTempo } from '../learning/prediction';
import { notesOf, type Student } from './student';
import { entrySeconds } from './candidates';
import { lastStageOf } from './stages';
import { type DayPlan, type Entry, planDay } from './today';

export const SORE = ['right', 'left', 'both'] as const;
export type Sore = (typeof SORE)[number];

/** Of the tempo at which it would be practised otherwise (P). */
const SLOW = 0.6;
/** The one hand that plays gets no more than half of the day's minutes (P): it must not be the next to be sore. */
const ONE_HAND_SHARE = 0.5;
/** Minutes after which reading without sound tires (P). */
const MOST_IN_THE_MIND = 10;

/** The items that one hand may play, weakest note first. */
function roundsOf(student: Student, programme: Programme, hand: Hand, day: Day) {
  const way = `${hand}.2` as const;
  const rounds = notesOf(programme).map((note) => {
    const items = roundItems(note, way).filter(
      (item) =>
        !student.aside.has(item.id) &&
        student.stages.open[item.arpeggioIndex]! >= stageIndex(way) &&
        lastStageOf(programme, item.chord) >= stageIndex(way),
    );
    const sum = items.reduce(
      (total, item) => total + meanOn(student.learner, item, dayNumber(day)),
      0,
    );
    return { note, items, mean: sum / items.length };
  });
  // The sort keeps the order of the programme between notes that are equal.
  return rounds.filter(({ items }) => items.length > 0).toSorted((a, b) => a.mean - b.mean);
}

function slowRound(
  student: Student,
  note: StartingNote,
  items: readonly Item[],
  { day, sore }: { readonly day: Day; readonly sore: Hand },
): Entry {
  const { grouping, contraryForm } = student.programme!;
  const slowest = Math.min(...items.map((item) => workingTempo(student.learner, item, day)));
  const tempo = playableTempo(SLOW * slowest, grouping);
  const { way } = items[0]!;
  return {
    key: `${note}.${way}.slow`,
    kind: items.length === 1 ? 'single' : 'round',
    note,
    way,
    items: items.map(({ id }) => id),
    tempo,
    seconds: entrySeconds(items, tempo, contraryForm),
    reason: { kind: 'spared', sore },
  };
}

/** What the day would have had, each note once, to be gone through without playing. */
function mentalEntries(student: Student, day: Day, minutes: number): readonly Entry[] {
  const form = student.programme!.contraryForm;
  const seen = new Set<StartingNote>();
  return planDay(student, day, minutes).entries.flatMap((entry): readonly Entry[] => {
    if (seen.has(entry.note)) return [];
    seen.add(entry.note);
    const seconds = entrySeconds(entry.items.map(itemOf), entry.tempo, form);
    const reason = { kind: 'mental' } as const;
    return [{ ...entry, key: `${entry.key}.mental`, seconds, reason, isMental: true }];
  });
}

/** As many entries from the front as fit into the seconds. */
function fitting(entries: readonly Entry[], seconds: number): readonly Entry[] {
  let left = seconds;
  return entries.filter((entry) => {
    if (entry.seconds > left) return false;
    left -= entry.seconds;
    return true;
  });
}

/** The list for a day with a sore hand, in place of `planDay`. Takes the student as at the start of the day. */
export function planWithCare(student: Student, day: Day, minutes: number, sore: Sore): DayPlan {
  const { programme } = student;
  if (programme === null) return { day, minutes, entries: [], seconds: 0 };
  const other = sore === 'right' ? 'left' : 'right';
  const slow =
    sore === 'both'
      ? []
      : roundsOf(student, programme, other, day).map(({ note, items }) =>
          slowRound(student, note, items, { day, sore }),
        );
  const played = fitting(slow, minutes * 60 * ONE_HAND_SHARE);
  const left = minutes - played.reduce((sum, entry) => sum + entry.seconds, 0) / 60;
  const inTheMind = Math.min(MOST_IN_THE_MIND, left) * 60;
  const entries = [...played, ...fitting(mentalEntries(student, day, minutes), inTheMind)];
  return { day, minutes, entries, seconds: entries.reduce((sum, one) => sum + one.seconds, 0) };
}
