/**
 * The events of the log: all that a person does. The log is the one truth; every other number is derived from it by
 * replay. Events are plain data; they are decoded in shared/formats/event.ts.
 */
import type { ArpeggioId, ItemId, Stage } from '../music/deck';
import type { FingerPlan, Hand } from '../music/fingering/types';
import type { Tempo } from '../music/tempo';
import type { ExaminationSettings, MarkedItem } from './examination';
import type { Programme } from './programme';
import type { RunTake } from './run-take';

/** A version 7 UUID (RFC 9562): sorts by the time at which the event was recorded. Replay follows this order. */
export type EventId = string;

/** A calendar day where the person was, "2026-11-25". Kept in the event, so that replay needs no time zone. */
export type Day = string;

/** Bad to good, an ordinal scale: 0 broke down … 4 effortless. */
export const FLUENCIES = ['broke down', 'stopped', 'uneven', 'even', 'effortless'] as const;
export type Fluency = 0 | 1 | 2 | 3 | 4;
export const EVEN: Fluency = 3;

/** The version of event that this program writes and the highest that it understands. */
export const EVENT_VERSION = 1;

/** Who judges what was played. */
export const JUDGES = ['player', 'teacher'] as const;
export type Judge = (typeof JUDGES)[number];

interface Stamp {
  readonly id: EventId;
  readonly version: typeof EVENT_VERSION;
  /** Milliseconds since 1970 UTC, by the clock of the device. */
  readonly at: number;
  readonly day: Day;
  /** The device that recorded it. */
  readonly device: string;
  readonly student: StudentId;
}

/** A version 4 UUID given to a student once. */
export type StudentId = string;

export interface RunBody {
  readonly kind: 'run';
  readonly item: ItemId;
  readonly tempo: Tempo;
  readonly fluency: Fluency;
  readonly pedal: boolean;
  readonly judge: Judge;
  /** The entry of the day's list that it belongs to ("d.right.2.1"), or null for a run outside the list. */
  readonly entry: string | null;
  /** What was heard of it, if the app listened. A reader that does not know the field leaves it out. */
  readonly take?: RunTake;
}

export interface ProgrammeBody {
  readonly kind: 'programme';
  readonly programme: Programme;
}

/** What the student is called on screen and in the report. */
export interface NameBody {
  readonly kind: 'name';
  readonly name: string;
}

/** An item set aside (`aside` true) or taken back. */
export interface AsideBody {
  readonly kind: 'aside';
  readonly item: ItemId;
  readonly aside: boolean;
}

export interface RemarkBody {
  readonly kind: 'remark';
  /** The item it is about; null for the student as a whole. */
  readonly about: ItemId | null;
  readonly text: string;
  /** The join that it is about, as the drill for it is called: "d.major-6.left.join.4". */
  readonly join?: string;
  /** Who made it; without it, the player did. */
  readonly by?: Judge;
}

/** How a person plays one hand of an arpeggio, over any number of octaves. */
export interface FingeringBody {
  readonly kind: 'fingering';
  readonly arpeggio: ArpeggioId;
  readonly hand: Hand;
  /** Null goes back to what is computed. */
  readonly plan: FingerPlan | null;
}

/** The widest comfortable reach from thumb to fifth finger. */
export interface SpanBody {
  readonly kind: 'span';
  /** Null: an average hand. */
  readonly semitones: number | null;
}

/** A drill that was played; it has no rating. */
export interface DrillBody {
  readonly kind: 'drill';
  /** "d.major-6.left.join", see planning/drills/kinds.ts. */
  readonly drill: string;
}

/** The teacher asks for an item: it is on the list from a day on, until it has been played. */
export interface WishBody {
  readonly kind: 'wish';
  readonly item: ItemId;
  readonly from: Day;
}

/** An examination that was held. Its runs are kept here only: they are no practice, but tell of the level. */
export interface ExaminationBody {
  readonly kind: 'examination';
  /** With the same settings and programme it draws the same items again. */
  readonly seed: number;
  readonly settings: ExaminationSettings;
  /** In the order in which they were asked. */
  readonly items: readonly MarkedItem[];
  readonly judge: Judge;
  /** The chance to pass that was told before it began, 0 to 1. */
  readonly forecast: number;
}

/** A report that was handed out, with the figures in it, so that the next one can tell what has changed. */
export interface ReportBody {
  readonly kind: 'report';
  /** Readiness on that day, 0 to 1: of the programme, and of each stage that it asks for. */
  readonly share: number;
  readonly stages: readonly StageShare[];
  /** Items played at least once. */
  readonly played: number;
}

export interface StageShare {
  readonly stage: Stage;
  readonly share: number;
}

/** A correction: the named earlier events no longer count. They stay in the log. */
export interface VoidBody {
  readonly kind: 'void';
  readonly events: readonly EventId[];
}

/** What a screen asks the store to record; the store adds id, time, day, device and student. */
export type EventBody =
  | RunBody
  | ProgrammeBody
  | NameBody
  | AsideBody
  | RemarkBody
  | FingeringBody
  | SpanBody
  | DrillBody
  | WishBody
  | ExaminationBody
  | ReportBody
  | VoidBody;

export type LogEvent = Stamp & EventBody;
export type EventKind = EventBody['kind'];
export type RunEvent = Stamp & RunBody;

/** Whether an event is work at the keys, which leaves the list of its day as it is. */
export const isAtKeys = ({ kind }: LogEvent): boolean =>
  kind === 'run' || kind === 'drill' || kind === 'examination';
