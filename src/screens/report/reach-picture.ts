/** The reach of one stage over time, as a line with its first and last number, against the broken line of the target. */
import { daysBetween } from '../../../shared/log/day';
import { type Grouping, markOf } from '../../../shared/music/tempo';
import type { Mark, Picture, Point } from '../../../shared/formats/picture';
import type { StageProgress } from '../../../shared/planning/progress';
import { shortDay } from '../../parts/dates';
import { wayText } from '../../parts/words';

const WIDTH = 136;
const HEIGHT = 74;
/** Room for the numbers at both ends, above the highest line, and below for the days. */
const SIDE = 14;
const TOP = 12;
const FOOT = 60;
/** The number of the target stands above the beginning of its line: a stage begins below it. */
const ABOVE = 2.5;
const HALF_LETTER = 3;
/** Of the line above that of the days. */
const LIFT = 6;

const label = (at: Point, text: string, align: 'left' | 'right'): Mark => ({
  kind: 'text',
  at,
  text,
  align,
});

export function reachPicture(progress: StageProgress, grouping: Grouping): Picture {
  const { stage, target, points } = progress;
  const marks = points.map(({ tempo }) => markOf(tempo, grouping));
  const asked = markOf(target, grouping);
  const most = Math.max(asked, ...marks);
  const least = Math.min(asked, ...marks);
  const [first, last] = [points[0]!, points.at(-1)!];
  const span = daysBetween(first.day, last.day);
  const yOf = (mark: number): number =>
    FOOT - LIFT - ((mark - least) / Math.max(1, most - least)) * (FOOT - LIFT - TOP);
  const xOf = (day: string): number =>
    SIDE + (daysBetween(first.day, day) / span) * (WIDTH - 2 * SIDE);
  const line = points.map(({ day }, i): Point => [xOf(day), yOf(marks[i]!)]);
  return {
    title: wayText(stage),
    alt: `Reach of ${wayText(stage)}: ${marks[0]} on ${shortDay(first.day)}, ${marks.at(-1)} on ${shortDay(last.day)}; asked ${asked}.`,
    width: WIDTH,
    height: HEIGHT,
    marks: [
      {
        kind: 'path',
        points: [
          [SIDE, FOOT],
          [WIDTH - SIDE, FOOT],
        ],
        look: 'thin',
      },
      {
        kind: 'path',
        points: [
          [SIDE, yOf(asked)],
          [WIDTH - SIDE, yOf(asked)],
        ],
        look: 'dashed',
      },
      label([SIDE, yOf(asked) - ABOVE], String(asked), 'left'),
      { kind: 'path', points: line, look: 'strong' },
      { kind: 'dot', at: line.at(-1)!, radius: 2, look: 'full' },
      label([SIDE - 3, line[0]![1] + HALF_LETTER], String(marks[0]), 'right'),
      label([WIDTH - SIDE + 4, line.at(-1)![1] + HALF_LETTER], String(marks.at(-1)), 'left'),
      label([SIDE, HEIGHT - 4], shortDay(first.day), 'left'),
      label([WIDTH - SIDE, HEIGHT - 4], shortDay(last.day), 'right'),
    ],
  };
}
