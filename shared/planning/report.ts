/** What the readiness report says, as numbers. The words and the layout are in src/screens/report. */
import type { Day } from '../log/events';
import { askedStages, type Programme } from '../log/programme';
import { type Item, roundItems, type Stage } from '../music/deck';
import type { Tempo } from '../music/tempo';
import { type Reach, reachOf } from '../learning/model';
import { deckOf, type Readiness, readinessOf } from '../learning/readiness';
import type { LastRun, Student } from './student';
import { type Week, weeksOf } from './weeks';

export interface StageLine {
  readonly stage: Stage;
  readonly target: Tempo;
  /** Mean chance on the date of the report. */
  readonly share: number;
  readonly items: number;
  /** Of these, those that were played at least once. */
  readonly played: number;
}

export interface WeakItem {
  readonly item: Item;
  readonly target: Tempo;
  /** Today. */
  readonly reach: Reach;
  /** On the date of the report. */
  readonly chance: number;
  readonly last: LastRun;
}

export interface Report {
  readonly today: Day;
  /** The day that readiness is given for: that of the programme, or today if it has none or it is over. */
  readonly date: Day;
  readonly onDate: Readiness;
  readonly now: Readiness;
  readonly stages: readonly StageLine[];
  readonly played: number;
  /** Few of the items have been played, so most of the readiness is inferred from the others. */
  readonly isThin: boolean;
  readonly weakest: readonly WeakItem[];
  readonly weeks: readonly Week[];
  readonly aside: readonly Item[];
}

const WEEKS = 12;
/** Lines of the table of weakest items; each stage gets its part of them, so that no stage hides another. */
const WEAKEST = 10;
const FEWEST_OF_A_STAGE = 2;
/** Share of the deck below which the evidence is called thin. */
const THIN = 0.5;

export function reportOf(student: Student, programme: Programme, today: Day): Report {
  const date = programme.date !== null && programme.date > today ? programme.date : today;
  const onDate = readinessOf(student.learner, programme, date);
  const deck = deckOf(programme);
  const isPlayed = (item: Item): boolean => student.lastRuns.has(item.id);
  const stages = askedStages(programme).map((stage): StageLine => {
    const items = itemsOf(programme, stage);
    return {
      stage,
      target: programme.stages[stage].target,
      share: onDate.byStage.get(stage)!,
      items: items.length,
      played: items.filter(isPlayed).length,
    };
  });
  const played = deck.filter(isPlayed).length;
  return {
    today,
    date,
    onDate,
    now: readinessOf(student.learner, programme, today),
    stages,
    played,
    isThin: played < THIN * deck.length,
    weakest: weakestOf(student, programme, onDate, today),
    weeks: weeksOf(student.work, today, WEEKS),
    aside: deck.filter((item) => student.aside.has(item.id)),
  };
}

const itemsOf = (programme: Programme, stage: Stage): readonly Item[] =>
  programme.notes.flatMap((note) => roundItems(note, stage));

/** The weakest items of each stage that have been played and are not set aside, by their chance on the date. */
function weakestOf(
  student: Student,
  programme: Programme,
  { chances }: Readiness,
  today: Day,
): readonly WeakItem[] {
  const stages = askedStages(programme);
  const ofEach = Math.max(FEWEST_OF_A_STAGE, Math.floor(WEAKEST / Math.max(1, stages.length)));
  return stages.flatMap((stage) =>
    itemsOf(programme, stage)
      .filter((item) => student.lastRuns.has(item.id) && !student.aside.has(item.id))
      .map((item): WeakItem => ({
        item,
        target: programme.stages[stage].target,
        reach: reachOf(student.learner, item, today),
        chance: chances.get(item.id)!,
        last: student.lastRuns.get(item.id)!,
      }))
      .toSorted((a, b) => a.chance - b.chance || a.item.index - b.item.index)
      .slice(0, ofEach),
  );
}
