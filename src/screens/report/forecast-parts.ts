/** Where it goes: reach over time, when each stage will be ready, and how true forecasts were. */
import { type Grouping, markOf } from '../../../shared/music/tempo';
import type { Mark, Picture, Point } from '../../../shared/formats/picture';
import type { Block, Part } from '../../../shared/formats/report-document';
import { outcomeOf } from '../../../shared/planning/examination/outcome';
import type { Programme } from '../../../shared/log/programme';
import { WINDOW } from '../../../shared/planning/forecast';
import type { Report } from '../../../shared/planning/report';
import type { Examination, Student } from '../../../shared/planning/student';
import { shortDay } from '../../parts/dates';
import { OUTCOME_KEY, outcomePicture, outcomeText } from '../../parts/outcome-picture';
import { percent } from '../../parts/percent-text';
import { wayText } from '../../parts/words';
import { list, note, part, text } from './blocks';
import { type Dot, forecastTexts, hindsightOf } from './forecast-words';
import { reachPicture } from './reach-picture';

/** Columns of the table behind the lines, and lines of that of examinations. */
const DAYS = 4;
const EXAMINATIONS = 3;

export function pacePart(student: Student, programme: Programme, { today }: Report): Part {
  const { stages, pace } = forecastTexts(student, programme, today);
  return part(
    'At the present pace',
    list([...stages, ...pace]),
    note(
      `Ready: nine items in ten as often even as not at the target tempo; from what the slowest tenth has gained in the last ${WINDOW / 7} weeks, carried on a little more slowly.`,
    ),
  );
}

/** Reach over time against the target; null in the first week. */
export function progressPart({ progress }: Report, grouping: Grouping): Part | null {
  const [first] = progress;
  if (first === undefined) return null;
  const places = evenly(first.points.length, DAYS);
  return part('Reach over time', {
    kind: 'pictures',
    pictures: progress.map((one) => reachPicture(one, grouping)),
    key: `Beats a minute, ${grouping} notes a beat, that nine items in ten reach at least; the broken line is what is asked.`,
    table: {
      columns: [
        { name: 'Stage', look: 'text', width: 0.5 },
        ...places.map((place) => ({
          name: shortDay(first.points[place]!.day),
          look: 'number' as const,
          width: 0.4 / places.length,
        })),
        { name: 'Asked', look: 'number', width: 0.1 },
      ],
      rows: progress.map(({ stage, target, points }) => [
        wayText(stage),
        ...places.map((place) => String(markOf(points[place]!.tempo, grouping))),
        String(markOf(target, grouping)),
      ]),
    },
  });
}

/** So many places of a row, the first and the last among them. */
function evenly(length: number, most: number): readonly number[] {
  const count = Math.min(length, most);
  return Array.from({ length: count }, (_, i) => Math.round((i * (length - 1)) / (count - 1)));
}

export function examinationsPart({ examinations }: Report): Part {
  const more = examinations.length - EXAMINATIONS;
  return part(
    'Examinations held here',
    text(`${outcomeText(examinations)} ${judgeText(examinations)}`),
    {
      kind: 'pictures',
      pictures: [outcomePicture(examinations)],
      key: OUTCOME_KEY,
      table: {
        columns: [
          { name: 'Day', look: 'text', width: 0.22 },
          { name: 'Forecast', look: 'number', width: 0.23 },
          { name: 'Even', look: 'number', width: 0.2 },
          { name: 'Result', look: 'text', width: 0.35 },
        ],
        rows: examinations.slice(0, EXAMINATIONS).map(examinationRow),
      },
    },
    ...(more > 0 ? [note(`And ${more} more in the app.`)] : []),
  );
}

function judgeText(examinations: readonly Examination[]): string {
  const byTeacher = examinations.filter(({ judge }) => judge === 'teacher').length;
  if (byTeacher === 0) return 'Marked by the player.';
  if (byTeacher === examinations.length) return 'Marked by a teacher.';
  return `${byTeacher} marked by a teacher, the others by the player.`;
}

function examinationRow(one: Examination): readonly string[] {
  const { even, asked, isPassed } = outcomeOf(one);
  return [
    shortDay(one.day),
    `${percent(one.forecast)} %`,
    `${even} of ${asked}`,
    isPassed ? 'passed' : 'not passed',
  ];
}

/** How forecasts of single runs came out, in words; null while there are too few. */
export function hindsightNote({ learner }: Student): Block | null {
  const hindsight = hindsightOf(learner);
  return hindsight && note(hindsight.text);
}

/** The same with a picture. */
export function hindsightPart({ learner }: Student): Part | null {
  const hindsight = hindsightOf(learner);
  if (hindsight === null) return null;
  const { dots, text: words } = hindsight;
  return part('Forecasts so far', text(words), {
    kind: 'pictures',
    pictures: [hindsightPicture(dots)],
    key: 'To the right what was foretold, upwards what happened, the larger a dot the more runs: on the broken line both agree.',
    table: {
      columns: [
        { name: 'Foretold, %', look: 'number', width: 0.34 },
        { name: 'Came out even, %', look: 'number', width: 0.4 },
        { name: 'Runs', look: 'number', width: 0.26 },
      ],
      rows: dots.map(({ foretold, happened, runs }) => [
        String(percent(foretold)),
        String(percent(happened)),
        String(runs),
      ]),
    },
  });
}

const SIDE = 100;
const MARGIN = 5;
const SMALLEST = 1.5;

function hindsightPicture(dots: readonly Dot[]): Picture {
  const most = Math.max(...dots.map(({ runs }) => runs));
  const at = (right: number, up: number): Point => [
    MARGIN + SIDE * right,
    MARGIN + SIDE * (1 - up),
  ];
  return {
    title: 'Foretold and happened',
    alt: 'What was foretold, to the right, against what happened, upwards. The table has the numbers.',
    width: SIDE + 2 * MARGIN,
    height: SIDE + 2 * MARGIN,
    marks: [
      { kind: 'path', points: [at(0, 1), at(0, 0), at(1, 0)], look: 'thin' },
      { kind: 'path', points: [at(0, 0), at(1, 1)], look: 'dashed' },
      ...dots.map(({ foretold, happened, runs }): Mark => ({
        kind: 'dot',
        at: at(foretold, happened),
        radius: SMALLEST + 3 * Math.sqrt(runs / most),
        look: 'full',
      })),
    ],
  };
}
