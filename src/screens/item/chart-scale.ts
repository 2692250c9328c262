/** Where things lie on the chart of an item's runs. Pure arithmetic, in pixels. */
import { dayNumber } from '../../../shared/log/day';
import type { Day } from '../../../shared/log/events';

export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** One line of an axis. */
export interface Tick {
  readonly at: number;
  readonly label: string;
}

/** Metronome marks from the bottom to the top of the chart, on round numbers around everything shown. */
export interface MarkScale {
  readonly y: (mark: number) => number;
  readonly ticks: readonly Tick[];
}

const STEPS = [5, 10, 20, 40] as const;
const MOST_TICKS = 6;

export function markScale(marks: readonly number[], frame: Frame): MarkScale {
  const lowest = Math.min(...marks);
  const highest = Math.max(...marks);
  const step = STEPS.find((size) => (highest - lowest) / size <= MOST_TICKS - 2) ?? 40;
  const first = Math.max(0, Math.floor(lowest / step) * step);
  const last = Math.max(first + step, Math.ceil(highest / step) * step);
  const y = (mark: number): number =>
    frame.bottom - ((mark - first) / (last - first)) * (frame.bottom - frame.top);
  const count = (last - first) / step + 1;
  const ticks = Array.from({ length: count }, (_, i) => first + i * step).map((mark) => ({
    at: y(mark),
    label: String(mark),
  }));
  return { y, ticks };
}

/** Days from the first run to today, at least a week, so that one run does not stand alone in the middle. */
export interface DayScale {
  /** `share` is how far into the day, 0 to 1. */
  readonly x: (day: Day, share: number) => number;
}

const FEWEST_DAYS = 7;

export function dayScale(first: Day, today: Day, frame: Frame): DayScale {
  const end = dayNumber(today) + 1;
  const start = Math.min(dayNumber(first), end - FEWEST_DAYS);
  const perDay = (frame.right - frame.left) / (end - start);
  return { x: (day, share) => frame.left + (dayNumber(day) - start + share) * perDay };
}

/** For each run, how far into its day it is drawn: those of one day stand side by side in their order. */
export function sharesOfDay(days: readonly Day[]): readonly number[] {
  const counts = new Map<Day, number>();
  for (const day of days) counts.set(day, (counts.get(day) ?? 0) + 1);
  const seen = new Map<Day, number>();
  return days.map((day) => {
    const place = (seen.get(day) ?? 0) + 1;
    seen.set(day, place);
    return place / (counts.get(day)! + 1);
  });
}
