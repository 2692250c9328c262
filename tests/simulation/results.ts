/** What the lab writes: every number here is measured by the run that writes it. */
import { calibrationAimTable, dayAimTable } from './aims';
import { Book, cellText, meanDays, NAMES } from './book';
import { costs } from './costs';
import type { CourseName } from './courses';
import { FINDINGS } from './findings';
import { CELLS, type Extent, type JobResult, OTHER_CELLS, OTHER_PLANNERS } from './jobs';
import { FAMILIES } from './learner';
import { marksText } from './marks';
import { placementText } from './placement';
import { PLANNER_TEXTS } from './planners';
import { FOLLOWED, LONGEST, type Outcome } from './student-life';
import { mean, percent, table } from './table';

const COURSE_TEXTS: Readonly<Record<CourseName, string>> = {
  usual: '',
  stages: ', each of the four stages asked for, as the app proposes',
  contrary: ', contrary motion asked for',
  twelve: ', all twelve notes',
  sittings: ', in two sittings',
  undated: ', ready on day 100, which the programme does not name',
  dated: ', the same with the date named and the minutes tapered',
};

const IN_HINDSIGHT = 'best of all for each, in hindsight';

const daysText = (outcomes: readonly Outcome[]): string => {
  const there = outcomes.filter(({ days }) => days !== null).length;
  const missing = there < outcomes.length ? ` (${there} of ${outcomes.length} there)` : '';
  return `${meanDays(outcomes).toFixed(0)}${missing}`;
};

const meanShare = (outcomes: readonly Outcome[]): number =>
  mean(outcomes.map((outcome) => outcome.share));

function dayTables(book: Book): string {
  return FAMILIES.map((family) => {
    const rows = NAMES.map((name) => [
      PLANNER_TEXTS[name],
      ...CELLS.map((cell) => daysText(book.outcomes(family, cell, name))),
    ]);
    const best = [IN_HINDSIGHT, ...CELLS.map((cell) => daysText(book.best(family, cell)))];
    const ofFew = CELLS.map((cell) => {
      const count = book.best(family, cell).length;
      return daysText(book.outcomes(family, cell, 'app').slice(0, count));
    });
    const few = ['the app, on the students of the two rows above', ...ofFew];
    const head = ['mean days', ...CELLS.map(cellText)];
    return `### ${family}\n\n${table(head, [...rows, best, few])}`;
  }).join('\n\n');
}

function shareTables(book: Book): string {
  return FAMILIES.map((family) => {
    const rows = NAMES.map((name) => [
      PLANNER_TEXTS[name],
      ...CELLS.map((cell) => {
        const outcomes = book.outcomes(family, cell, name);
        return `${percent(meanShare(outcomes))}, ${percent(mean(outcomes.map(({ kept }) => kept)))}`;
      }),
    ]);
    return `### ${family}\n\n${table(['ready, kept', ...CELLS.map(cellText)], rows)}`;
  }).join('\n\n');
}

/** Each with days, and share ready on the day of the milestone. */
function otherTable(book: Book): string {
  const rows = OTHER_CELLS.flatMap((cell) =>
    OTHER_PLANNERS.map((planner) => [
      `${cellText(cell)}${COURSE_TEXTS[cell.course ?? 'usual']}: ${PLANNER_TEXTS[planner]}`,
      ...FAMILIES.map((family) => {
        const outcomes = book.outcomes(family, cell, planner);
        return `${daysText(outcomes)}, ${percent(meanShare(outcomes))}`;
      }),
    ]),
  );
  return table(['mean days, ready', ...FAMILIES], rows);
}

function calibrationTable(book: Book): string {
  const rows = FAMILIES.map((family) => {
    const target = book.calibration(family, 'atTarget');
    const next = book.calibration(family, 'nextRun');
    const both = [target, next].flatMap((one) => [one.error.toFixed(3), one.brier.toFixed(3)]);
    return [family, ...both, String(next.count)];
  });
  const head = ['family', 'at target: error', 'Brier', 'next run: error', 'Brier', 'runs'];
  return table(head, rows);
}

function reliabilityTable(book: Book): string {
  const rows = FAMILIES.flatMap((family) =>
    (['atTarget', 'nextRun'] as const).map((key) => [
      `${family}, ${key === 'atTarget' ? 'at target' : 'next run'}`,
      ...book
        .calibration(family, key)
        .bins.map(([expected, happened, count]) =>
          count < 20 ? '' : `${percent(expected)}: ${percent(happened)}`,
        ),
    ]),
  );
  return table(['forecast: happened', ...Array.from({ length: 10 }, (_, i) => `${i + 1}`)], rows);
}

/** Forecasts of the date, made on several days, against the day that came. */
function forecastTable(book: Book): string {
  const rows = FAMILIES.map((family) => {
    const made = CELLS.flatMap((cell) => book.outcomes(family, cell, 'app')).flatMap((outcome) =>
      outcome.forecasts
        .filter((forecast) => forecast.made < (outcome.arrived ?? FOLLOWED))
        .map((forecast) => ({ ...forecast, came: (outcome.arrived ?? Infinity) - forecast.made })),
    );
    const share = (is: (one: (typeof made)[number]) => boolean): string =>
      percent(made.filter(is).length / made.length);
    const ratios = made.map(({ days, came }) => days / came).toSorted((a, b) => a - b);
    return [
      family,
      String(made.length),
      ratios[Math.floor(ratios.length / 2)]!.toFixed(2),
      share(({ came, soonest }) => came < soonest),
      share(({ came, soonest, latest }) => came >= soonest && came <= latest),
      share(({ came, latest }) => came > latest),
    ];
  });
  const head = [
    'family',
    'forecasts',
    'expected by happened (median)',
    'sooner',
    'within',
    'later',
  ];
  return table(head, rows);
}

export function resultsText(results: readonly JobResult[], extent: Extent): string {
  const book = new Book(results);
  const { seed, students, oracleStudents, otherStudents } = extent;
  return `# What the lab says

Written by \`npm run simulate\`; do not edit. ${students} invented students a family and kind (${oracleStudents} for the oracle), drawn from
seed ${seed}, which tuning never used. They say which rules are robust, not how fast people learn. What is assumed of
the students stands, with its anchors, in learner.ts and truths/.

Four octaves together are asked for, of the 77 white items, at 240 notes a minute (LCM Grade 8), for beginners at 180
(Arkansas State, first year). "Ready" is the hidden truth: at the target a run comes out even at least half the time.
One day in seven is missed, and a week between the 41st and the 77th day; one student in five
learns at little more than half speed; one in four, beginners apart, enters half-way.

There are two kinds of yardstick. "By ear" is what a teacher's rotation is: the metronome goes up or down a notch by how
the round went, and a stage opens when most chords of the note were even at half the target on two days; it needs no
model. The rows without these words are given the app's own tempi and stages, so that the choice alone is compared: no
teacher has those numbers, so the aims are held against the rows by ear, and what comes of the stricter comparison
stands beside them. "Sees the truth" tries rounds on a copy of the student and takes the one that brings most a second;
it looks one round ahead, so others may be better. The last row but one takes for each student the way that was best for
this one in hindsight, so no row can be better, and no planner can know it: where an aim is beyond it, no way that is
compared here reaches it. Both are of the first ${oracleStudents} students.

An aim on days is held against the students whom the way that it names brings there within ${LONGEST} days: for some of
the uneven ones the tempo asked is beyond all that they can ever learn, and such a student would count as ${LONGEST} days with
every way. This leaves out those who get there with the app alone.

## Aims

${dayAimTable(book)}

${calibrationAimTable(book)}

${costs()}

## Where an aim is not met

All that is not met is in the family of traces, with the uniform student and the beginner. There nearly nothing passes
from one arpeggio to another, so a way of planning can save no more than the time that goes into anything but runs of what
lacks most. The last column tells what is left to save: for these students about what is asked, and no more. It is the
planner that sees the truth that is best there, and what the app lacks of it comes of three things. It has to find out by
playing what each item lacks: told the true levels each morning it saves 2 to 3 in a hundred more (below). Only who knows
them can see to the last first: with the shortfall to the power of 4 in place of 2 the app that is told needs another 1 to 5 %
fewer days, and the one that finds out 6 to 13 % more, as it works at what was rated badly by chance and lets lie what was
rated well (seed 51, 16 students). And the planner that sees the truth knows what each run will bring, and gives four octaves
together 99 % of the minutes of the first twenty days, the app less than half, as hands come alone first. That the stages are
kept costs little, though: with hands together open from the first day the app needs up to 2 % fewer days, and no other form
of the shortfall brings more than it costs (below).

## Days to 90 % of the items

Mean over students; who is not there after ${LONGEST} days counts as ${LONGEST}. For some of the uneven ones the tempo asked is beyond what
they can ever reach, so these means say less than the aims, which leave out whom the compared way never brings there.

${dayTables(book)}

## Share ready on day 120, and of these still ready after 30 days away

${shareTables(book)}

## Other courses

${otherStudents} students each. Days to 90 % of what is asked, and the share ready on day 120 (with five minutes and in
two sittings too), or on day 100 where that is the day to be ready for. The date and the taper are the app's own; the rotation has no
use for the date but is given the same minutes.

${otherTable(book)}

## Calibration of the app

Expected calibration error in ten bins and Brier score. At target: the chance of "even" at the target for all 77 items on
days 30, 60, 90 and 120, against the true probability that the student would rate it so. Next run: each run's chance
before it is played, against its rating.

${calibrationTable(book)}

${reliabilityTable(book)}

## Forecast of the date

Made on days 42, 70, 98, 126 and 154 of each life with the app, for four octaves together, and held against the day on
which 90 % were ready in truth, for which students are followed to day ${FOLLOWED}. The interval is meant to hold eight in ten.

${forecastTable(book)}

${marksText(extent)}

${placementText(extent)}

${FINDINGS}
`;
}
