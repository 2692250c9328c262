/** The forecast in words: when each stage will be ready at the present pace, what would change it, and how true it was. */
import { addDays, daysBetween } from '../../../shared/log/day';
import type { Day } from '../../../shared/log/events';
import { askedStages, type Programme } from '../../../shared/log/programme';
import { type Learner, TENTHS } from '../../../shared/learning/learner';
import { readinessOf } from '../../../shared/learning/readiness';
import {
  type Forecast,
  forecastOf,
  minutesFor,
  programmeForecast,
  paceWindowOf,
} from '../../../shared/planning/forecast';
import type { Student } from '../../../shared/planning/student';
import { dateText } from '../../parts/dates';
import { wayText } from '../../parts/words';

const MORE_MINUTES = 10;
/** So near a date more practice changes little. */
const FEW_DAYS = 14;
/** With fewer runs nothing can be said of past forecasts. */
const FEWEST_RUNS = 100;

/** What a forecast says after a colon. */
function expectation(forecast: Forecast, today: Day): string {
  switch (forecast.kind) {
    case 'ready':
      return 'nine items in ten are there';
    case 'early':
      return 'too early to tell; it takes four weeks of practice';
    case 'stalled':
      return 'no gain in the last weeks that leads there within a year; fewer notes, a slower tempo or more days may help';
    case 'expected': {
      const [about, from, to] = [forecast.days, forecast.soonest, forecast.latest].map((days) =>
        dateText(addDays(today, days)),
      );
      return `about ${about}; eight in ten of such forecasts come true between ${from} and ${to}`;
    }
  }
}

/** A line for each stage, and what the date and another pace would mean. */
export function forecastTexts(student: Student, programme: Programme, today: Day) {
  const lately = paceWindowOf(student, programme, today);
  const stages = askedStages(programme).map(
    (stage) => `${wayText(stage)}: ${expectation(forecastOf(programme, stage, lately), today)}.`,
  );
  const forecast = programmeForecast(programme, lately);
  if (forecast.kind !== 'expected') return { stages, pace: [] };
  const { minutes, daysPerWeek } = programme;
  const when = (pace: number): string => {
    const other = programmeForecast(programme, { ...lately, pace });
    return other.kind === 'expected'
      ? `about ${dateText(addDays(today, other.days))}`
      : 'not in sight';
  };
  const pace = [
    `All of it with ${MORE_MINUTES} minutes more a day: ${when((minutes + MORE_MINUTES) / minutes)}.`,
    ...(daysPerWeek > 1
      ? [`With one more day off a week: ${when((daysPerWeek - 1) / daysPerWeek)}.`]
      : []),
  ];
  return {
    stages,
    pace: [...dateTexts(forecast, { learner: student.learner, programme, today }), ...pace],
  };
}

/** Early and without blame, whether the date of the programme can be met. */
function dateTexts(
  forecast: Forecast & { readonly kind: 'expected' },
  {
    learner,
    programme,
    today,
  }: { readonly learner: Learner; readonly programme: Programme; readonly today: Day },
): readonly string[] {
  const { date, minutes } = programme;
  if (date === null || date <= today) return [];
  const left = daysBetween(today, date);
  if (forecast.latest <= left) return [`The pace is enough for ${dateText(date)}.`];
  if (forecast.days <= left) return [`The pace is just enough for ${dateText(date)}.`];
  if (left <= FEW_DAYS) {
    const even = Math.round(100 * readinessOf(learner, programme, date).share);
    return [
      `By ${dateText(date)} more practice changes little: of a hundred items about ${even} would come out even on that day.`,
    ];
  }
  const needed = minutesFor(forecast, left, minutes);
  return [
    needed === null
      ? `All of it by ${dateText(date)} is out of reach, as things stand: fewer notes or a slower tempo would be within it.`
      : `All of it by ${dateText(date)} would take about ${needed} minutes a day in place of ${minutes}.`,
  ];
}

/** One dot of the reliability diagram: shares 0 to 1 and the number of runs. */
export interface Dot {
  readonly foretold: number;
  readonly happened: number;
  readonly runs: number;
}

export interface Hindsight {
  readonly dots: readonly Dot[];
  readonly text: string;
}

/** How forecasts of single runs have turned out; null while there are too few. */
export function hindsightOf({ foretold }: Learner): Hindsight | null {
  const dots = Array.from({ length: TENTHS }, (_, i): Dot => {
    const runs = foretold[2 * TENTHS + i]!;
    return { foretold: foretold[i]! / runs, happened: foretold[TENTHS + i]! / runs, runs };
  }).filter(({ runs }) => runs > 0);
  const runs = dots.reduce((sum, dot) => sum + dot.runs, 0);
  if (runs < FEWEST_RUNS) return null;
  const inHundred = (share: (dot: Dot) => number): number =>
    Math.round((100 * dots.reduce((sum, dot) => sum + share(dot) * dot.runs, 0)) / runs);
  const brier = foretold[3 * TENTHS]! / runs;
  return {
    dots,
    text:
      `Before each of ${runs} runs the model gave it a chance to come out even: ${inHundred((dot) => dot.foretold)} in a hundred on average, ` +
      `and ${inHundred((dot) => dot.happened)} did. The mean squared error (Brier score) is ${brier.toFixed(2)}: 0 would be to know each run, 0.25 is to guess.`,
  };
}
