/** What a teacher's marks bring: the same students with a lesson a week and without, held against the hidden truth. */
import { dayOfNumber } from '../../shared/log/day';
import type { RunBody } from '../../shared/log/events';
import { roundItems } from '../../shared/music/deck';
import { chanceEven, meanOn } from '../../shared/learning/prediction';
import { applyEvents, newStudent, type Student } from '../../shared/planning/student';
import { seededRandom } from '../../src/demo/random';
import { Calibration } from './calibration';
import type { Extent } from './jobs';
import { FAMILIES, type FamilyName, isPractised, Learner } from './learner';
import { PLANNERS } from './planners';
import { NOTES, type Task } from './planners/planner';
import { FIRST_DAY, makeLearner, programmeFor, stamped } from './student-life';
import { mean, table } from './table';

const DAYS = 120;
const MINUTES = 20;
const MEASURED: ReadonlySet<number> = new Set([30, 60, 90, 120]);
/** Runs that a teacher hears in a lesson once a week, after the first two of the day. */
const HEARD = 8;
const BEFORE = 2;
const GOALS = NOTES.flatMap((note) => roundItems(note, 'together.4'));
const NONE: ReadonlySet<string> = new Set();

interface Case {
  readonly family: FamilyName;
  /** How many times as biased as the lab's other students. */
  readonly biased: number;
  /** Runs that a teacher hears in a week. */
  readonly marks: number;
}

/** What is known on the days MEASURED, against the truth as a teacher hears it. */
interface Measures {
  /** The chance of "even" at the target. */
  readonly calibration: Calibration;
  /** How far the reach is from the truth, in octaves. */
  readonly distances: number[];
}

/** A learner, half of them uniform and half uneven, who may be more biased than others. */
function learnerOf({ family, biased }: Case, number: number, seed: number): Learner {
  const group = number % 2 === 0 ? 'uniform' : 'uneven';
  const { traits, truth, random } = makeLearner({ family, group, number, seed });
  return new Learner(family, { ...traits, bias: biased * traits.bias }, truth, random);
}

function live(
  learner: Learner,
  marks: number,
  calendar: ReturnType<typeof seededRandom>,
): Measures {
  const measures: Measures = { calibration: new Calibration(), distances: [] };
  const programme = programmeFor(learner.traits, MINUTES);
  const planner = PLANNERS.app(learner, calendar.share, programme);
  const student = newStudent();
  applyEvents(student, [stamped({ kind: 'programme', programme }, FIRST_DAY)], NONE);
  let nextLesson = FIRST_DAY;
  for (let practised = 0, count = 0; count <= DAYS; count++) {
    const number = FIRST_DAY + count;
    if (MEASURED.has(count)) measure(student, learner, number, measures);
    if (!isPractised(learner.traits, count, calendar)) continue;
    const day = dayOfNumber(number);
    const morning = { student, day, number, practised, seconds: 60 * MINUTES, sitting: 1 };
    practised += 1;
    const heard = number >= nextLesson ? marks : 0;
    if (heard > 0) nextLesson = number + 7;
    const runs = runsOf(planner.plan(morning), learner, number, heard);
    for (const run of runs) applyEvents(student, [stamped(run, number)], NONE);
  }
  return measures;
}

/** The runs of a day, of which the teacher hears some. */
function* runsOf(
  tasks: Iterable<Task>,
  learner: Learner,
  number: number,
  heard: number,
): Generator<RunBody> {
  let place = 0;
  for (const { items, tempo, key } of tasks) {
    for (const { id, index } of items) {
      const judge = place >= BEFORE && place < BEFORE + heard ? 'teacher' : 'player';
      const fluency = learner.play(index, Math.log2(tempo / 4), number, judge);
      yield { kind: 'run', item: id, tempo, fluency, pedal: false, judge, entry: key };
      place += 1;
    }
  }
}

function measure(student: Student, learner: Learner, number: number, measures: Measures): void {
  const { target } = learner.traits;
  const day = dayOfNumber(number);
  for (const item of GOALS) {
    const told = chanceEven(student.learner, item, target, day);
    const { heard } = learner.chanceEven(item.index, Math.log2(target / 4), number);
    measures.calibration.add(told, heard);
    const off = meanOn(student.learner, item, number) - learner.truth.level(item.index, number);
    measures.distances.push(Math.abs(off));
  }
}

function rowOf(one: Case, { seed, students }: Extent): readonly string[] {
  const calibration = new Calibration();
  const distances: number[] = [];
  for (let number = 0; number < students; number++) {
    const calendar = seededRandom(seed * 1000 + number);
    const measures = live(learnerOf(one, number, seed), one.marks, calendar);
    calibration.merge(measures.calibration.sums);
    distances.push(mean(measures.distances));
  }
  return [mean(distances).toFixed(3), calibration.error.toFixed(3), calibration.brier.toFixed(3)];
}

/** A section of the results: for as many students a family as the extent has. */
export function marksText(extent: Extent): string {
  const rows = FAMILIES.flatMap((family) =>
    [1, 2].map((biased) => [
      `${family}${biased === 1 ? '' : ', twice as biased'}`,
      ...[0, HEARD].flatMap((marks) => rowOf({ family, biased, marks }, extent)),
    ]),
  );
  const head = ['reach off', 'at target: error', 'Brier'];
  return `## A teacher's marks

Students with 20 minutes, half of them uniform and half uneven, who differ in how soon they call a run even (spread 0.1
octaves, and twice that). Without lessons, and with one a week in which a teacher hears ${HEARD} runs and marks them in the
student's place. On days 30, 60, 90 and 120, of the 77 items: the mean distance of the reach from the truth in octaves,
and the chance of "even" at the target against the true probability that a teacher hears it so.

${table(['family', ...head, ...head.map((one) => `with marks: ${one}`)], rows)}`;
}
