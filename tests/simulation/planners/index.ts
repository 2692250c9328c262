/** All ways of planning that are compared, with what the results call them. */
import { app } from './app';
import { doublingIntervals, twoComponentMemory } from './memories';
import { oracle } from './oracle';
import type { MakePlanner } from './planner';
import { nextNoteByStaircase, noteADayByStaircase, noteAWeekByStaircase } from './staircase';
import { nextNote, nextNoteLookingBack, oneNoteADay, oneNoteAWeek, randomNote } from './rotations';

export const PLANNERS = {
  app,
  day: oneNoteADay,
  week: oneNoteAWeek,
  next: nextNote,
  back: nextNoteLookingBack,
  stairDay: noteADayByStaircase,
  stairWeek: noteAWeekByStaircase,
  stairBack: nextNoteByStaircase,
  random: randomNote,
  doubling: doublingIntervals,
  memory: twoComponentMemory,
  oracle,
} as const satisfies Readonly<Record<string, MakePlanner>>;

export type PlannerName = keyof typeof PLANNERS;

export const PLANNER_TEXTS: Readonly<Record<PlannerName, string>> = {
  app: 'the app',
  day: 'one note a day',
  week: 'one note a week',
  next: 'next note each round',
  back: 'the same with look-back',
  stairDay: 'one note a day, no model',
  stairWeek: 'one note a week with look-back, no model',
  stairBack: 'next note with look-back, no model',
  random: 'random note',
  doubling: 'doubling intervals, single items',
  memory: 'two-component memory in rounds',
  oracle: 'oracle',
};
