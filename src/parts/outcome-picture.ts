/** Forecast against outcome: each examination at its forecast, passed above the line, not passed below it. */
import type { Mark, Picture } from '../../shared/formats/picture';
import { outcomeOf, trackRecord } from '../../shared/planning/examination/outcome';
import type { Examination } from '../../shared/planning/student';

const WIDTH = 136;
/** Room at both ends for half a dot and half a number. */
const EDGE = 8;
const MIDDLE = 18;
const RISE = 9;
const RADIUS = 3.5;
const HEIGHT = 42;

const xOf = (share: number): number => EDGE + share * (WIDTH - 2 * EDGE);

function markOf(one: Examination): Mark {
  const { isPassed } = outcomeOf(one);
  const at = [xOf(one.forecast), isPassed ? MIDDLE - RISE : MIDDLE + RISE] as const;
  return { kind: 'dot', at, radius: RADIUS, look: isPassed ? 'full' : 'hollow' };
}

export const OUTCOME_KEY =
  'Each examination at its forecast in per cent: a full dot above the line passed, a hollow one below it did not.';

export const outcomePicture = (examinations: readonly Examination[]): Picture => ({
  title: 'Forecast and outcome',
  alt: 'Each examination at its forecast: passed above the line, not passed below. The table has the numbers.',
  width: WIDTH,
  height: HEIGHT,
  marks: [
    {
      kind: 'path',
      points: [
        [xOf(0), MIDDLE],
        [xOf(1), MIDDLE],
      ],
      look: 'thin',
    },
    ...[0, 50, 100].map((per): Mark => ({
      kind: 'text',
      at: [xOf(per / 100), HEIGHT - 2],
      text: String(per),
      align: 'middle',
    })),
    ...examinations.map(markOf),
  ],
});

/** "2 of 3 passed; by the forecasts it would have been 1.8." Null before the first. */
export function outcomeText(examinations: readonly Examination[]): string | null {
  const record = trackRecord(examinations);
  if (record === null) return null;
  const { held, passed, expected } = record;
  return `${passed} of ${held} passed; by the forecasts it would have been ${expected.toFixed(1)}.`;
}
