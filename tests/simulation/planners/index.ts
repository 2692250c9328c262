/** All ways of planning that are compared, with what the results call them. */
import { app } from './app';
import { doublingIntervals, twoComponentMemory } from './memories';
import { oracle } from './oracle';
import type { MakePlanner } from './planner';
import { nextNoteByStaircase, noteADayByStaircase, noteAWeekByStaircase } from './staircase';
import { told } from './told';
import { nextNote, nextNoteLookingBack, oneNoteADay, oneNoteAWeek, randomNote } from './rotations';

export const PLANNERS = {
  app,
  stairDay: noteADayByStaircase,
  stairWeek: noteAWeekByStaircase,
  stairBack: nextNoteByStaircase,
  day: oneNoteADay,
  week: oneNoteAWeek,
  next: nextNote,
  back: nextNoteLookingBack,
  random: randomNote,
  doubling: doublingIntervals,
  memory: twoComponentMemory,
  told,
  oracle,
} as const satisfies Readonly<Record<string, MakePlanner>>;

export type PlannerName = keyof typeof PLANNERS;

/** "By ear": the metronome and the stages move by what was heard, without any model. The others are given the app's. */
export const PLANNER_TEXTS: Readonly<Record<PlannerName, string>> = {
  app: 'the app',
  stairDay: 'one note a day, by ear',
  stairWeek: 'one note a week with look-back, by ear',
  stairBack: 'next note with look-back, by ear',
  day: 'one note a day',
  week: 'one note a week',
  next: 'next note each round',
  back: 'the same with look-back',
  random: 'random note',
  doubling: 'doubling intervals, single items',
  memory: 'two-component memory in rounds',
  told: 'the app, told the true levels each morning',
  oracle: 'sees the truth, one round ahead',
};
