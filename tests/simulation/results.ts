/** What the lab writes: every number here is measured by the run that writes it. */
import { Calibration } from './calibration';
import { costs } from './costs';
import { FINDINGS } from './findings';
import { FAMILIES, type FamilyName } from './learner';
import { placementText } from './placement';
import { type Cell, CELLS, type Extent, type JobResult } from './jobs';
import { PLANNER_TEXTS, type PlannerName } from './planners';
import { LONGEST, type Outcome } from './student-life';
import { mean, percent, table } from './table';

const NAMES = Object.keys(PLANNER_TEXTS) as PlannerName[];

const cellText = ({ group, minutes }: Cell): string => `${group}, ${minutes} minutes`;

/** Mean days to 90 %; those who do not get there count as LONGEST, which flatters the slower ways. */
const meanDays = (outcomes: readonly Outcome[]): number =>
  mean(outcomes.map(({ days }) => days ?? LONGEST));

class Book {
  constructor(readonly results: readonly JobResult[]) {}

  outcomes(family: FamilyName, cell: Cell, planner: PlannerName): readonly Outcome[] {
    return this.results
      .filter(({ job }) => job.family === family && job.planner === planner)
      .filter(({ job }) => job.group === cell.group && job.minutes === cell.minutes)
      .flatMap(({ outcomes }) => outcomes);
  }

  calibration(family: FamilyName, key: 'atTarget' | 'nextRun'): Calibration {
    const sum = new Calibration();
    for (const result of this.results) {
      if (result.job.family === family && result.job.planner === 'app') sum.merge(result[key]);
    }
    return sum;
  }

  /** Days of the app as a share of another way's, on the same students. */
  ratio(family: FamilyName, cell: Cell, other: PlannerName): number {
    const theirs = this.outcomes(family, cell, other);
    const ours = this.outcomes(family, cell, 'app').slice(0, theirs.length);
    return meanDays(ours) / meanDays(theirs);
  }
}

function dayTables(book: Book): string {
  return FAMILIES.map((family) => {
    const rows = NAMES.map((name) => [
      PLANNER_TEXTS[name],
      ...CELLS.map((cell) => {
        const outcomes = book.outcomes(family, cell, name);
        const there = outcomes.filter(({ days }) => days !== null).length;
        const missing = there < outcomes.length ? ` (${there} of ${outcomes.length} there)` : '';
        return `${meanDays(outcomes).toFixed(0)}${missing}`;
      }),
    ]);
    return `### ${family}\n\n${table(['mean days', ...CELLS.map(cellText)], rows)}`;
  }).join('\n\n');
}

function shareTables(book: Book): string {
  return FAMILIES.map((family) => {
    const rows = NAMES.map((name) => [
      PLANNER_TEXTS[name],
      ...CELLS.map((cell) => {
        const outcomes = book.outcomes(family, cell, name);
        const share = mean(outcomes.map((outcome) => outcome.share));
        return `${percent(share)}, ${percent(mean(outcomes.map(({ kept }) => kept)))}`;
      }),
    ]);
    return `### ${family}\n\n${table(['ready, kept', ...CELLS.map(cellText)], rows)}`;
  }).join('\n\n');
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
        .filter((forecast) => forecast.made < (outcome.days ?? LONGEST))
        .map((forecast) => ({ ...forecast, came: (outcome.days ?? Infinity) - forecast.made })),
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

const fewer = (ratio: number): string =>
  ratio <= 1 ? `${percent(1 - ratio)} fewer` : `${percent(ratio - 1)} more`;
const met = (isMet: boolean): string => (isMet ? 'yes' : '**no**');

function reachTable(book: Book): string {
  const UNEVEN: Cell = { group: 'uneven', minutes: 12 };
  const against = (cell: Cell, other: PlannerName): readonly number[] =>
    FAMILIES.map((family) => book.ratio(family, cell, other));
  const together =
    FAMILIES.reduce((sum, f) => sum + meanDays(book.outcomes(f, UNEVEN, 'app')), 0) /
    FAMILIES.reduce((sum, f) => sum + meanDays(book.outcomes(f, UNEVEN, 'back')), 0);
  const oracleTogether = FAMILIES.map((f) => {
    const theirs = book.outcomes(f, UNEVEN, 'oracle');
    return meanDays(theirs) / meanDays(book.outcomes(f, UNEVEN, 'back').slice(0, theirs.length));
  });
  const oracle = oracleTogether.map(fewer).join('; ');
  const list = (ratios: readonly number[]): string => ratios.map(fewer).join('; ');
  const ofDay = CELLS.map((cell) => [
    `against one note a day, ${cellText(cell)}: at least 40 % fewer days in each family`,
    list(against(cell, 'day')),
    met(against(cell, 'day').every((ratio) => ratio <= 0.6)),
  ]);
  const slowest = Math.max(...against(UNEVEN, 'back'));
  const errors = (key: 'atTarget' | 'nextRun'): readonly number[] =>
    FAMILIES.map((family) => book.calibration(family, key).error);
  const rows = [
    ...ofDay,
    [
      `against rotation with look-back, ${cellText(UNEVEN)}: at least 25 % fewer days together`,
      `${fewer(together)} (${list(against(UNEVEN, 'back'))}; the oracle: ${oracle})`,
      met(together <= 0.75),
    ],
    ['the same: in no family more than 5 % slower', fewer(slowest), met(slowest <= 1.05)],
    [
      'calibration error at target at most 0.04 in each family',
      errors('atTarget')
        .map((error) => error.toFixed(3))
        .join('; '),
      met(Math.max(...errors('atTarget')) <= 0.04),
    ],
    [
      'calibration error of the next run at most 0.06',
      errors('nextRun')
        .map((error) => error.toFixed(3))
        .join('; '),
      met(Math.max(...errors('nextRun')) <= 0.06),
    ],
  ];
  return table(['aim', `measured (${FAMILIES.join('; ')})`, 'met'], rows);
}

export function resultsText(results: readonly JobResult[], extent: Extent): string {
  const book = new Book(results);
  const { seed, students, oracleStudents } = extent;
  return `# What the lab says

Written by \`npm run simulate\`; do not edit. ${students} invented students a family and kind (${oracleStudents} for the oracle), drawn from
seed ${seed}, which tuning never used. They say which rules are robust, not how fast people learn. What is assumed of
the students stands, with its anchors, in learner.ts and truths/.

Four octaves together are asked for, of the 77 white items, at 240 notes a minute (LCM Grade 8), for beginners at 180
(Arkansas State, first year). "Ready" is the hidden truth: at the target a run comes out even at least half the time.
All baselines are given the app's own tempi and stages; what is compared is the choice alone. The oracle sees the truth
and looks one round ahead. One day in seven is missed, and a week between the 41st and the 77th day; one student in five
learns at little more than half speed; one in four, beginners apart, enters half-way.

## Aims

${reachTable(book)}

${costs()}

## Days to 90 % of the items

Mean over students; who is not there after ${LONGEST} days counts as ${LONGEST}, which flatters the slower ways.

${dayTables(book)}

## Share ready on day 120, and of these still ready after 30 days away

${shareTables(book)}

## Calibration of the app

Expected calibration error in ten bins and Brier score. At target: the chance of "even" at the target for all 77 items on
days 30, 60, 90 and 120, against the true probability that the student would rate it so. Next run: each run's chance
before it is played, against its rating.

${calibrationTable(book)}

${reliabilityTable(book)}

## Forecast of the date

Made on days 42, 70, 98, 126 and 154 of each life with the app, for four octaves together, and held against the day on
which 90 % were ready in truth. The interval was meant to hold eight in ten.

${forecastTable(book)}

${placementText(extent)}

${FINDINGS}
`;
}
