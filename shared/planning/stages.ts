/**
 * Which stage is open, arpeggio by arpeggio. A stage opens when the one below holds on separate days, for the whole note
 * once it does for most chords, and closes again where it does not hold. The decision falls with a run, never between
 * runs, so it does not flicker.
 */
import { type Day, EVEN, type RunBody } from '../log/events';
import { askedStages, asksFor, type Programme, targetFor } from '../log/programme';
import { CHORD_IDS, type ChordId } from '../music/chords';
import {
  ARPEGGIO_COUNT,
  DECK,
  type Item,
  itemAt,
  roundItems,
  STAGES,
  stageIndex,
  type StartingNote,
} from '../music/deck';
import type { Learner } from '../learning/learner';
import { chanceEven } from '../learning/prediction';
import { dayNumber } from '../log/day';
import type { Tempo } from '../music/tempo';

export interface StageBook {
  /** By arpeggio index: the highest open stage, 0 to 4. */
  readonly open: Uint8Array;
  /** By item index: separate days on which the item was at least even at half its target or faster. */
  readonly evenDays: Uint8Array;
  /** By item index: the number of the last such day. */
  readonly lastEvenDay: Int32Array;
  /** By item index, two for each: the tempos of the last two such days before the next stage opened, in notes a minute. */
  readonly evenTempos: Uint16Array;
  /** By item index: the number of the day on which its stage last opened or closed for its arpeggio, and why. */
  readonly turnDay: Int32Array;
  /** A place in TURNS. */
  readonly turn: Uint8Array;
}

/** What opened a stage for an arpeggio, or closed it; in the order in which they are kept. */
export const TURNS = [
  /** The programme says so. */
  'set',
  /** The stage below holds. */
  'holds',
  /** It is open for most chords of the note. */
  'note',
  /** A run of the stage itself came out even. */
  'shown',
  /** It did not hold. */
  'closed',
] as const;
export type Turn = (typeof TURNS)[number];

/** Chance of "even" at half the target above which a stage holds, and below which it does not. */
const HOLDS = 0.7;
const FAILS = 0.3;
const DAYS_TO_HOLD = 2;
/** A stage is not closed on the evidence of fewer runs than this. */
const RUNS_TO_CLOSE = 3;

export const newStageBook = (): StageBook => ({
  open: new Uint8Array(ARPEGGIO_COUNT),
  evenDays: new Uint8Array(DECK.length),
  lastEvenDay: new Int32Array(DECK.length),
  evenTempos: new Uint16Array(2 * DECK.length),
  turnDay: new Int32Array(DECK.length),
  turn: new Uint8Array(DECK.length),
});

export const cloneStageBook = (book: StageBook): StageBook => ({
  open: book.open.slice(),
  evenDays: book.evenDays.slice(),
  lastEvenDay: book.lastEvenDay.slice(),
  evenTempos: book.evenTempos.slice(),
  turnDay: book.turnDay.slice(),
  turn: book.turn.slice(),
});

/** The highest open stage of each chord of the note that an arpeggio belongs to: a part of the book itself. */
function openOfNote({ open }: StageBook, arpeggioIndex: number): Uint8Array {
  const first = arpeggioIndex - (arpeggioIndex % CHORD_IDS.length);
  return open.subarray(first, first + CHORD_IDS.length);
}

/** Index of the highest stage in which the programme asks for a chord: there is no work on it beyond; -1 for none. */
export const lastStageOf = (programme: Programme, chord: ChordId): number =>
  STAGES.findLastIndex((stage) => asksFor(programme, stage, chord));

/** Whether a stage is open for most chords of a note, of those that the programme asks for. */
export const isOpenForMost = (
  book: StageBook,
  programme: Programme,
  [note, stage]: readonly [StartingNote, number],
): boolean => {
  const { arpeggioIndex } = roundItems(note, STAGES[0])[0]!;
  const open = openOfNote(book, arpeggioIndex);
  const asked = [...CHORD_IDS.keys()].filter((at) => lastStageOf(programme, CHORD_IDS[at]!) >= 0);
  return 2 * asked.filter((at) => open[at]! >= stage).length > asked.length;
};

function noteTurn(book: StageBook, { index }: Item, turn: Turn, day: number): void {
  book.turn[index] = TURNS.indexOf(turn);
  book.turnDay[index] = day;
}

interface Opening {
  readonly stage: number;
  readonly turn: Turn;
  readonly day: number;
}

function openTo(book: StageBook, arpeggioIndex: number, { stage, turn, day }: Opening): void {
  for (let opened = book.open[arpeggioIndex]! + 1; opened <= stage; opened++) {
    noteTurn(book, itemAt(arpeggioIndex, STAGES[opened]!), turn, day);
    book.open[arpeggioIndex] = opened;
  }
}

/** Opens a stage for an arpeggio, and for the others of its note once it is open for most of them. */
function openStage(
  book: StageBook,
  programme: Programme,
  { arpeggioIndex, note }: Item,
  opening: Opening,
): void {
  openTo(book, arpeggioIndex, opening);
  if (!isOpenForMost(book, programme, [note, opening.stage])) return;
  for (const other of roundItems(note, STAGES[0])) {
    openTo(book, other.arpeggioIndex, { ...opening, turn: 'note' });
  }
}

/** Index of the highest stage that the programme asks for: nothing opens beyond it. */
export const topStage = (programme: Programme): number =>
  Math.max(0, ...askedStages(programme).map(stageIndex));

/** Opens every arpeggio up to the stage that a programme says is reached. */
export function openReached(book: StageBook, programme: Programme): void {
  book.open.fill(Math.min(stageIndex(programme.reached), topStage(programme)));
  book.turn.fill(TURNS.indexOf('set'));
  book.turnDay.fill(0);
}

function countEvenDay(book: StageBook, item: Item, day: number): void {
  if (book.lastEvenDay[item.index] === day) return;
  book.lastEvenDay[item.index] = day;
  book.evenDays[item.index] = Math.min(255, book.evenDays[item.index]! + 1);
}

/** Keeps the fastest even tempo of a day beside that of the day before. */
function noteEvenTempo(book: StageBook, { index }: Item, tempo: Tempo, isNewDay: boolean): void {
  const { evenTempos } = book;
  const last = 2 * index + 1;
  if (isNewDay) {
    evenTempos[last - 1] = evenTempos[last]!;
    evenTempos[last] = 0;
  }
  evenTempos[last] = Math.max(evenTempos[last]!, Math.round(tempo));
}

/** Takes a run in, after the learner has. Changes the book. */
export function noteRun(
  book: StageBook,
  learner: Learner,
  programme: Programme,
  item: Item,
  run: Pick<RunBody, 'tempo' | 'fluency'> & { readonly day: Day },
): void {
  const stage = stageIndex(item.way);
  if (stage < 0) return;
  const half = targetFor(programme, item) / 2;
  const isEven = run.fluency >= EVEN && run.tempo >= half;
  const day = dayNumber(run.day);
  const open = book.open[item.arpeggioIndex]!;
  if (isEven) {
    // What opened the next stage stays as it was.
    if (stage >= open) noteEvenTempo(book, item, run.tempo, book.lastEvenDay[item.index] !== day);
    countEvenDay(book, item, day);
  }

  const top = topStage(programme);
  if (stage > open) {
    if (isEven)
      openStage(book, programme, item, { stage: Math.min(stage, top), turn: 'shown', day });
    return;
  }
  if (stage < open) return;
  if (isEven) {
    const holds = book.evenDays[item.index]! >= DAYS_TO_HOLD;
    const isLikely = () => chanceEven(learner, item, half, run.day) >= HOLDS;
    if (open < top && holds && isLikely()) {
      openStage(book, programme, item, { stage: open + 1, turn: 'holds', day });
    }
    return;
  }
  const isKnown = learner.runs[item.index]! >= RUNS_TO_CLOSE;
  if (open > 0 && isKnown && chanceEven(learner, item, half, run.day) < FAILS) {
    book.open[item.arpeggioIndex] = open - 1;
    noteTurn(book, item, 'closed', day);
    book.evenDays[itemAt(item.arpeggioIndex, STAGES[open - 1]!).index] = 0;
  }
}
