/** The state of a student: everything that is derived from the log, by replay in the order of the event ids. */
import type {
  Day,
  EventId,
  ExaminationBody,
  Fluency,
  Judge,
  LogEvent,
  ReportBody,
  RunEvent,
} from '../log/events';
import { dayNumber } from '../log/day';
import { heardOf } from '../log/heard';
import type { Programme } from '../log/programme';
import {
  type ArpeggioId,
  type ItemId,
  itemOf,
  type Stage,
  STAGES,
  STARTING_NOTES,
  type StartingNote,
} from '../music/deck';
import { CHORD_IDS } from '../music/chords';
import type { FingerPlan, Hand } from '../music/fingering/types';
import { intervalCount } from '../music/sequence';
import { secondsOf, type Tempo } from '../music/tempo';
import { cloneLearner, type Learner, newLearner } from '../learning/learner';
import { observe, observeMark } from '../learning/observe';
import { handOfDrill } from './drills/kinds';
import { type LateNote, lateNoteOf } from './drills/late-note';
import { isMilestone, type Milestone, milestoneOf } from './forecast';
import { cloneStageBook, newStageBook, noteRun, openReached, type StageBook } from './stages';

/** Raise it when the shape or the meaning of a Student changes: states that were kept are then rebuilt from the log. */
export const STUDENT_VERSION = 12;

export interface LastRun {
  readonly day: Day;
  readonly tempo: Tempo;
  readonly fluency: Fluency;
  readonly pedal: boolean;
}

export interface Remark {
  readonly id: EventId;
  readonly day: Day;
  readonly about: ItemId | null;
  readonly text: string;
  readonly join: string | null;
  readonly by: Judge;
}

export interface Wish {
  readonly id: EventId;
  readonly from: Day;
}

/** Something that was recorded, without its kind, with its day and its id for taking it back. */
type Kept<Body> = Readonly<Omit<Body, 'kind'>> & { readonly id: EventId; readonly day: Day };
export type Examination = Kept<ExaminationBody>;
export type HandedReport = Kept<ReportBody>;

export interface Work {
  readonly runs: number;
  /** Of playing, without the pauses between. */
  readonly seconds: number;
}

/** How many entries of the list a starting note has had, and the last of them. */
export interface NoteCount {
  readonly entries: number;
  readonly last: string;
}

/** Drills that were played for a hand of an arpeggio, and the last of them. */
export interface DrillWork {
  readonly times: number;
  readonly drill: string;
  readonly day: Day;
}

/** One hand of an arpeggio: "d.major-6.left". */
export type HandOfArpeggio = `${ArpeggioId}.${Hand}`;

/** Plain data that IndexedDB can keep as it is. */
export interface Student {
  readonly name: string | null;
  readonly programme: Programme | null;
  readonly learner: Learner;
  readonly stages: StageBook;
  readonly lastRuns: ReadonlyMap<ItemId, LastRun>;
  readonly aside: ReadonlySet<ItemId>;
  readonly remarks: readonly Remark[];
  /** Those that the person chose. */
  readonly fingerings: ReadonlyMap<HandOfArpeggio, FingerPlan>;
  readonly drills: ReadonlyMap<HandOfArpeggio, DrillWork>;
  /** Of items whose last run was heard: where it waited longest, if it did. */
  readonly lateNotes: ReadonlyMap<ItemId, LateNote>;
  /** In semitones; null for an average hand. */
  readonly span: number | null;
  readonly work: ReadonlyMap<Day, Work>;
  readonly noteCounts: ReadonlyMap<StartingNote, NoteCount>;
  /** What the teacher asks for; gone once it has been played on its day or later. */
  readonly wishes: ReadonlyMap<ItemId, Wish>;
  readonly examinations: readonly Examination[];
  /** Those that were handed out. */
  readonly reports: readonly HandedReport[];
  /** Week by week, oldest first; begun anew when the programme has other notes or chords. */
  readonly milestones: readonly Milestone[];
  readonly lastEvent: EventId | null;
  readonly eventCount: number;
}

type Mutable<T> = { -readonly [K in keyof T]: T[K] };
type Draft = Mutable<
  Omit<
    Student,
    | 'lastRuns'
    | 'aside'
    | 'remarks'
    | 'fingerings'
    | 'drills'
    | 'lateNotes'
    | 'work'
    | 'noteCounts'
    | 'wishes'
    | 'examinations'
    | 'reports'
    | 'milestones'
  >
> & {
  lastRuns: Map<ItemId, LastRun>;
  aside: Set<ItemId>;
  remarks: Remark[];
  fingerings: Map<HandOfArpeggio, FingerPlan>;
  drills: Map<HandOfArpeggio, DrillWork>;
  lateNotes: Map<ItemId, LateNote>;
  work: Map<Day, Work>;
  noteCounts: Map<StartingNote, NoteCount>;
  wishes: Map<ItemId, Wish>;
  examinations: Examination[];
  reports: HandedReport[];
  milestones: Milestone[];
};

export const newStudent = (): Student => ({
  name: null,
  programme: null,
  learner: newLearner(),
  stages: newStageBook(),
  lastRuns: new Map(),
  aside: new Set(),
  remarks: [],
  fingerings: new Map(),
  drills: new Map(),
  lateNotes: new Map(),
  span: null,
  work: new Map(),
  noteCounts: new Map(),
  wishes: new Map(),
  examinations: [],
  reports: [],
  milestones: [],
  lastEvent: null,
  eventCount: 0,
});

export const cloneStudent = (student: Student): Student => ({
  ...student,
  learner: cloneLearner(student.learner),
  stages: cloneStageBook(student.stages),
  lastRuns: new Map(student.lastRuns),
  aside: new Set(student.aside),
  remarks: [...student.remarks],
  fingerings: new Map(student.fingerings),
  drills: new Map(student.drills),
  lateNotes: new Map(student.lateNotes),
  work: new Map(student.work),
  noteCounts: new Map(student.noteCounts),
  wishes: new Map(student.wishes),
  examinations: [...student.examinations],
  reports: [...student.reports],
  milestones: [...student.milestones],
});

function applyRun(draft: Draft, run: RunEvent): void {
  const item = itemOf(run.item);
  const { tempo, fluency, day, pedal, judge, take } = run;
  if (draft.programme && !draft.work.has(day) && isMilestone(draft.milestones, day)) {
    draft.milestones.push(milestoneOf(draft.learner, draft.programme, day));
  }
  const heard = take ? heardOf(take, draft.programme?.grouping ?? 4) : null;
  observe(draft.learner, item, { tempo, fluency, day: dayNumber(day), judge, heard });
  if (draft.programme) noteRun(draft.stages, draft.learner, draft.programme, item, run);
  draft.lastRuns.set(item.id, { day, tempo, fluency, pedal });
  const late = take ? lateNoteOf(take) : null;
  if (late !== null) draft.lateNotes.set(item.id, late);
  else if (draft.lateNotes.size > 0) draft.lateNotes.delete(item.id);
  const wish = draft.wishes.get(item.id);
  if (wish !== undefined && day >= wish.from) draft.wishes.delete(item.id);

  const form = draft.programme?.contraryForm;
  const seconds = secondsOf(intervalCount(item.chord, item.way, form), tempo);
  const work = draft.work.get(day);
  draft.work.set(day, { runs: (work?.runs ?? 0) + 1, seconds: (work?.seconds ?? 0) + seconds });

  if (run.entry !== null) {
    const count = draft.noteCounts.get(item.note);
    const last = `${day} ${run.entry}`;
    if (count?.last !== last) {
      draft.noteCounts.set(item.note, { entries: (count?.entries ?? 0) + 1, last });
    }
  }
}

/** What milestones are about: they cannot be compared where it is another. */
const scopeOf = (programme: Programme): string =>
  [programme.notes, ...STAGES.map((stage) => scopeOfStage(programme, stage))].join(';');

const scopeOfStage = (programme: Programme, stage: Stage): readonly unknown[] => {
  const { chords = [], targets = {}, target } = programme.stages[stage];
  const own = CHORD_IDS.flatMap((chord) => {
    const tempo = targets[chord];
    return tempo === undefined ? [] : [`${chord} ${tempo / target}`];
  });
  return [...chords, ...own];
};

function applyEvent(draft: Draft, event: LogEvent): void {
  switch (event.kind) {
    case 'run':
      applyRun(draft, event);
      break;
    case 'programme': {
      const isReset = draft.programme?.reached !== event.programme.reached;
      if (draft.programme && scopeOf(draft.programme) !== scopeOf(event.programme))
        draft.milestones = [];
      draft.programme = event.programme;
      if (isReset) openReached(draft.stages, event.programme);
      break;
    }
    case 'name':
      draft.name = event.name;
      break;
    case 'aside':
      if (event.aside) draft.aside.add(event.item);
      else draft.aside.delete(event.item);
      break;
    case 'remark': {
      const { id, day, about, text, join = null, by = 'player' } = event;
      draft.remarks.push({ id, day, about, text, join, by });
      break;
    }
    case 'fingering': {
      const key = `${event.arpeggio}.${event.hand}` as const;
      if (event.plan === null) draft.fingerings.delete(key);
      else draft.fingerings.set(key, event.plan);
      break;
    }
    case 'span':
      draft.span = event.semitones;
      break;
    case 'drill': {
      const key = handOfDrill(event.drill);
      const times = (draft.drills.get(key)?.times ?? 0) + 1;
      draft.drills.set(key, { times, drill: event.drill, day: event.day });
      // A day with nothing but drills is a day of practice; how long they took is not known.
      draft.work.set(event.day, draft.work.get(event.day) ?? { runs: 0, seconds: 0 });
      break;
    }
    case 'wish':
      draft.wishes.set(event.item, { id: event.id, from: event.from });
      break;
    case 'examination': {
      const { id, day, seed, settings, items, judge, forecast } = event;
      draft.examinations.push({ id, day, seed, settings, items, judge, forecast });
      for (const { item, tempo, fluency } of items) {
        observeMark(draft.learner, itemOf(item), { tempo, fluency, day: dayNumber(day), judge });
      }
      break;
    }
    case 'report': {
      const { id, day, share, stages, played } = event;
      draft.reports.push({ id, day, share, stages, played });
      break;
    }
    case 'void':
      break;
  }
}

/**
 * Takes events in, in the order given, which must be the order of their ids; those in `voided` are passed over.
 * Changes the student.
 */
export function applyEvents(
  student: Student,
  events: Iterable<LogEvent>,
  voided: ReadonlySet<EventId>,
): void {
  const draft = student as Draft;
  for (const event of events) {
    if (!voided.has(event.id)) applyEvent(draft, event);
    draft.lastEvent = event.id;
    draft.eventCount += 1;
  }
}

/** The ids that the void events among these name. */
export const voidedBy = (events: readonly LogEvent[]): ReadonlySet<EventId> =>
  new Set(events.flatMap((event) => (event.kind === 'void' ? event.events : [])));

/** The state after a whole log, whatever the order of the array. */
export function replay(events: readonly LogEvent[]): Student {
  const sorted = events.toSorted((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));
  const student = newStudent();
  applyEvents(student, sorted, voidedBy(sorted));
  return student;
}

/** Starting notes of a programme, in the order of the deck. */
export const notesOf = (programme: Programme): readonly StartingNote[] =>
  STARTING_NOTES.filter((note) => programme.notes.includes(note));
