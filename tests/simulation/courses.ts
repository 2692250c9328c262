/** What is asked of a student: notes, stage and date; and how the day's minutes are spent. */
import { addDays, dayOfNumber } from '../../shared/log/day';
import { askedStages, DEFAULT_PROGRAMME, type Programme } from '../../shared/log/programme';
import {
  type Stage,
  type StartingNote,
  STARTING_NOTES,
  WHITE_NOTES,
} from '../../shared/music/deck';
import type { Traits } from './learner';

/** 2026-01-05, a Monday. */
export const FIRST_DAY = 20_458;

export interface Course {
  readonly notes: readonly StartingNote[];
  /** The stages that are asked for, easiest first. */
  readonly goals: readonly Stage[];
  /** Sittings that the day's minutes are spent in. */
  readonly sittings: 1 | 2;
  /** Days until the examination, if the programme names its date. */
  readonly date: number | null;
  /** The day on which the share that is ready is taken. */
  readonly milestone: number;
}

const USUAL: Course = {
  notes: WHITE_NOTES,
  goals: ['together.4'],
  sittings: 1,
  date: null,
  milestone: 120,
};
const HUNDRED = 100;

export const COURSES = {
  usual: USUAL,
  stages: { ...USUAL, goals: askedStages(DEFAULT_PROGRAMME) },
  contrary: { ...USUAL, goals: ['together.contrary'] },
  twelve: { ...USUAL, notes: STARTING_NOTES },
  sittings: { ...USUAL, sittings: 2 },
  undated: { ...USUAL, milestone: HUNDRED },
  dated: { ...USUAL, date: HUNDRED, milestone: HUNDRED },
} as const satisfies Readonly<Record<string, Course>>;

export type CourseName = keyof typeof COURSES;

/** Contrary motion is asked for a step slower, as in the programme that the app proposes. */
const CONTRARY_SHARE = 0.9;

/** What is below the stages asked for, and not asked for itself, is a step on the way. */
export function programmeFor(
  traits: Traits,
  minutes: number,
  { notes, goals, date }: Course = USUAL,
): Programme {
  const goal = (stage: Stage, share = 1) => ({
    asked: goals.includes(stage),
    target: share * traits.target,
  });
  return {
    ...DEFAULT_PROGRAMME,
    notes,
    stages: {
      'right.2': goal('right.2'),
      'left.2': goal('left.2'),
      'together.2': goal('together.2'),
      'together.4': goal('together.4'),
      'together.contrary': goal('together.contrary', CONTRARY_SHARE),
    },
    reached: traits.isHalfWay ? 'together.2' : 'right.2',
    minutes,
    date: date === null ? null : addDays(dayOfNumber(FIRST_DAY), date),
  };
}
