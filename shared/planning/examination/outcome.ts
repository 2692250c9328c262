/** How examinations came out, and what their forecasts were worth. */
import { EVEN } from '../../log/events';
import type { Examination } from '../student';

export interface Outcome {
  readonly even: number;
  readonly asked: number;
  readonly isPassed: boolean;
}

export function outcomeOf({ items, settings }: Pick<Examination, 'items' | 'settings'>): Outcome {
  const even = items.filter(({ fluency }) => fluency >= EVEN).length;
  const isPassed = even >= Math.min(settings.toPass, items.length);
  return { even, asked: items.length, isPassed };
}

export interface TrackRecord {
  readonly held: number;
  readonly passed: number;
  /** How many would have been passed by the forecasts. */
  readonly expected: number;
  /** Mean squared error of the forecasts (Brier 1950): 0 is perfect, 0.25 what always saying one half gives. */
  readonly error: number;
}

/** Null before the first examination. */
export function trackRecord(examinations: readonly Examination[]): TrackRecord | null {
  const held = examinations.length;
  if (held === 0) return null;
  const results = examinations.map((one) => ({
    forecast: one.forecast,
    came: outcomeOf(one).isPassed ? 1 : 0,
  }));
  const sumOf = (value: (result: (typeof results)[number]) => number): number =>
    results.reduce((sum, result) => sum + value(result), 0);
  return {
    held,
    passed: sumOf(({ came }) => came),
    expected: sumOf(({ forecast }) => forecast),
    error: sumOf(({ forecast, came }) => (forecast - came) ** 2) / held,
  };
}
