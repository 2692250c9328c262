/** A programme: what the teacher or the student sets. */
import { CHORD_IDS, type ChordId } from '../music/chords';
import {
  type Item,
  STAGES,
  type Stage,
  type StartingNote,
  type Way,
  WHITE_NOTES,
} from '../music/deck';
import type { ContraryForm } from '../music/sequence';
import type { Grouping, Tempo } from '../music/tempo';
import type { Day } from './events';

export interface StageGoal {
  /** Whether the programme asks for this stage; one that it does not ask for is only a step on the way. */
  readonly asked: boolean;
  readonly target: Tempo;
  /** Of chords that are asked for at another tempo than the rest. A reader that does not know it leaves it out. */
  readonly targets?: Readonly<Partial<Record<ChordId, Tempo>>>;
  /** The chords that are asked for in this stage, where not all eleven are. A reader that does not know it leaves it out. */
  readonly chords?: readonly ChordId[];
}

/** A lesson, a rehearsal, a concert: what happens on a day beside the examination. */
export interface FurtherDate {
  readonly day: Day;
  /** What it is, as the person calls it; may be empty. */
  readonly words: string;
}

export const MOST_FURTHER_DATES = 12;

export interface Programme {
  /** In the order of the deck, at least one. */
  readonly notes: readonly StartingNote[];
  readonly stages: Readonly<Record<Stage, StageGoal>>;
  /** The stage that the student has reached: it and all below are open from the first day. */
  readonly reached: Stage;
  readonly grouping: Grouping;
  readonly contraryForm: ContraryForm;
  readonly minutes: number;
  readonly daysPerWeek: number;
  /** Of the examination, or null. */
  readonly date: Day | null;
  /** Other dates to be ready for, in the order in which they were set. A reader that does not know the field leaves it out. */
  readonly furtherDates?: readonly FurtherDate[];
  /** What else is asked for, in words. A reader that does not know the field leaves it out. */
  readonly requirements?: string;
}

/**
 * Targets in notes per minute. 240 is what published standards ask for at four octaves together (LCM Grade 8: minim 60
 * in quavers; check values in tests/reference/standards.test.ts); contrary motion is kept one step below.
 */
export const DEFAULT_PROGRAMME: Programme = {
  notes: WHITE_NOTES,
  stages: {
    'right.2': { asked: true, target: 240 },
    'left.2': { asked: true, target: 240 },
    'together.2': { asked: true, target: 240 },
    'together.4': { asked: true, target: 240 },
    'together.contrary': { asked: false, target: 216 },
  },
  reached: 'right.2',
  grouping: 4,
  contraryForm: 'formula',
  minutes: 20,
  daysPerWeek: 6,
  date: null,
};

/** The stages that the programme asks for, easiest first. */
export const askedStages = (programme: Programme): readonly Stage[] =>
  STAGES.filter((stage) => programme.stages[stage].asked);

/** Whether the programme asks for a chord in a stage. */
export function asksFor(programme: Programme, stage: Stage, chord: ChordId): boolean {
  const { asked, chords } = programme.stages[stage];
  return asked && (chords === undefined || chords.includes(chord));
}

/** One hand over four octaves serves four octaves together. */
const goalOf = ({ stages }: Programme, way: Way): StageGoal =>
  stages[way === 'right.4' || way === 'left.4' ? 'together.4' : way];

/** The tempo that a programme asks for an item. */
export function targetFor(
  programme: Programme,
  { way, chord }: Pick<Item, 'way' | 'chord'>,
): Tempo {
  const { target, targets } = goalOf(programme, way);
  return targets?.[chord] ?? target;
}

/** The tempo of a way of playing as a whole: single chords may have their own. */
export const targetOfMost = (programme: Programme, way: Way): Tempo =>
  goalOf(programme, way).target;

/** The slowest and the fastest tempo that a programme asks for in a way of playing. */
export function targetRange(programme: Programme, way: Way): readonly [Tempo, Tempo] {
  const { chords = CHORD_IDS } = goalOf(programme, way);
  const tempos = chords.map((chord) => targetFor(programme, { way, chord }));
  return [Math.min(...tempos), Math.max(...tempos)];
}
