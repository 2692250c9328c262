/** What each field of an event may hold. */
import * as v from 'valibot';
import { type Day, EVENT_VERSION, type EventKind, JUDGES, type LogEvent } from '../log/events';
import {
  type ExaminationSettings,
  FASTEST_PERCENT,
  LARGEST_SEED,
  MOST_DRAWN,
  SLOWEST_PERCENT,
} from '../log/examination';
import { MOST_FURTHER_DATES, type Programme } from '../log/programme';
import { MOST_FAULTS, MOST_STEPS, type RunTake, TAKE_SOURCES } from '../log/run-take';
import { CHORD_IDS, chordOf } from '../music/chords';
import {
  type ArpeggioId,
  DECK,
  type ItemId,
  parseItemId,
  STAGES,
  STARTING_NOTES,
} from '../music/deck';
import type { Finger } from '../music/fingering/types';
import { LARGEST_SPAN, SMALLEST_SPAN } from '../music/fingering/spans';
import { FASTEST, SLOWEST } from '../music/tempo';
import { type DrillId, parseDrillId } from '../planning/drills/kinds';

/** Characters of a remark. */
export const LONGEST_TEXT = 2000;
/** Characters of a student's name. */
export const LONGEST_NAME = 200;
export const LONGEST_ENTRY = 100;
/** Characters of what a date of the programme is called. */
export const LONGEST_DATE_WORDS = 60;
/** Keeps a void event within one line of a backup. */
const MOST_VOIDED = 400;

/** Milliseconds: 2100-01-01 UTC. A later time is a fault, and an id must leave room for the ids that follow it. */
export const LATEST = Date.UTC(2100, 0, 1);
const LATEST_ID = LATEST.toString(16).padStart(12, '0').replace(/^.{8}/, '$&-');

const UUID_V7 = /^[\da-f]{8}-[\da-f]{4}-7[\da-f]{3}-[89ab][\da-f]{3}-[\da-f]{12}$/;
const UUID_V4 = /^[\da-f]{8}-[\da-f]{4}-4[\da-f]{3}-[89ab][\da-f]{3}-[\da-f]{12}$/;

/** Whether a value can be the id of an event: a version 7 UUID in lower case, of a time before the year 2100. */
export const isEventId = (value: unknown): value is string =>
  typeof value === 'string' && UUID_V7.test(value) && value < LATEST_ID;

/** Whether a value can be the id of a student or of a device: a version 4 UUID in lower case. */
export const isStudentId = (value: unknown): value is string =>
  typeof value === 'string' && UUID_V4.test(value);

const DAYS_OF_MONTH = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** Whether a value is a day of the calendar: "2024-02-29" is one, "2025-02-29" is not. */
export function isDay(value: unknown): value is Day {
  if (typeof value !== 'string' || !/^(?:19|20)\d\d-\d\d-\d\d$/.test(value)) return false;
  const year = Number(value.slice(0, 4));
  const month = Number(value.slice(5, 7));
  const day = Number(value.slice(8));
  // 1900 had no 29 February; all other years of the two centuries follow the rule of four.
  const isLeapDay = month === 2 && day === 29 && year % 4 === 0 && year !== 1900;
  return isLeapDay || (day >= 1 && day <= (DAYS_OF_MONTH[month - 1] ?? 0));
}

const isItemId = (value: unknown): value is ItemId =>
  typeof value === 'string' && parseItemId(value) !== null;

const isArpeggioId = (value: unknown): value is ArpeggioId =>
  typeof value === 'string' && parseItemId(`${value}.right.2`) !== null;

const isDrillId = (value: unknown): value is DrillId =>
  typeof value === 'string' && parseDrillId(value) !== null;

const eventId = v.custom<string>(isEventId, 'not the id of an event');
const uuid = v.custom<string>(isStudentId, 'not a version 4 UUID');
const day = v.custom<Day>(isDay, 'not a day of the calendar');
const item = v.custom<ItemId>(isItemId, 'not an item');
const tempo = v.pipe(v.number(), v.minValue(SLOWEST), v.maxValue(FASTEST));
const whole = (least: number, most: number) =>
  v.pipe(v.number(), v.integer(), v.minValue(least), v.maxValue(most));
const text = (longest: number) => v.pipe(v.string(), v.maxLength(longest));
const areUnique = (values: readonly string[]) => new Set(values).size === values.length;

const stageGoal = v.object({
  asked: v.boolean(),
  target: tempo,
  targets: v.exactOptional(
    v.pipe(
      v.record(v.picklist(CHORD_IDS), tempo),
      v.check((targets) => Object.keys(targets).length > 0, 'names no chord'),
    ),
  ),
  chords: v.exactOptional(
    v.pipe(
      v.array(v.picklist(CHORD_IDS)),
      v.minLength(1),
      v.maxLength(CHORD_IDS.length),
      v.check((chords) => areUnique(chords), 'a chord comes twice'),
    ),
  ),
});

export const furtherDates = v.pipe(
  v.array(v.object({ day, words: text(LONGEST_DATE_WORDS) })),
  v.maxLength(MOST_FURTHER_DATES),
);

export const programmeSchema = v.object({
  notes: v.pipe(
    v.array(v.picklist(STARTING_NOTES)),
    v.minLength(1),
    v.check((notes) => areUnique(notes), 'a starting note comes twice'),
  ),
  stages: v.object({
    'right.2': stageGoal,
    'left.2': stageGoal,
    'together.2': stageGoal,
    'together.4': stageGoal,
    'together.contrary': stageGoal,
  }),
  reached: v.picklist(STAGES),
  grouping: v.picklist([3, 4]),
  contraryForm: v.picklist(['formula', 'plain']),
  minutes: whole(1, 600),
  daysPerWeek: whole(1, 7),
  date: v.nullable(day),
  furtherDates: v.exactOptional(furtherDates),
  requirements: v.exactOptional(text(LONGEST_TEXT)),
}) satisfies v.GenericSchema<unknown, Programme>;

/** Notes of the chord in an octave. */
const sizeOf = (arpeggio: ArpeggioId): number =>
  chordOf(parseItemId(`${arpeggio}.right.2`)!.chord).intervals.length;

/** As many as a chord has notes, at most. */
const fingers = v.pipe(
  v.array(v.picklist<readonly Finger[]>([1, 2, 3, 4, 5])),
  v.minLength(1),
  v.maxLength(4),
);
const fingerPlan = v.object({ low: fingers, pattern: fingers, high: fingers });

const hand = v.picklist(['right', 'left']);
const known = v.nullable(v.pipe(v.number(), v.finite()));
const step = whole(0, MOST_STEPS);
const short = <T extends v.GenericSchema>(entry: T, most: number) =>
  v.pipe(v.array(entry), v.maxLength(most));

const handTake = v.nullable(
  v.object({
    waits: short(known, MOST_STEPS),
    unevenness: known,
    overlap: known,
    thumbLate: known,
    loudness: known,
    thumbAccent: known,
  }),
);

export const takeSchema = v.object({
  source: v.picklist(TAKE_SOURCES),
  certainty: v.pipe(v.number(), v.minValue(0), v.maxValue(1)),
  tempo: v.nullable(tempo),
  drift: known,
  notes: whole(0, 2 * MOST_STEPS),
  right: whole(0, 2 * MOST_STEPS),
  faults: short(
    v.object({
      kind: v.picklist(['wrong', 'missed', 'extra']),
      hand,
      step,
      midi: v.nullable(whole(0, 127)),
    }),
    MOST_FAULTS,
  ),
  breaks: short(step, MOST_FAULTS),
  lead: known,
  looseness: known,
  hands: v.object({ right: handTake, left: handTake }),
}) satisfies v.GenericSchema<unknown, RunTake>;

const judge = v.picklist(JUDGES);
const fluency = v.picklist([0, 1, 2, 3, 4]);
const chance = v.pipe(v.number(), v.minValue(0), v.maxValue(1));
const isJoin = (value: unknown): value is DrillId =>
  isDrillId(value) && parseDrillId(value)!.kind === 'join';
/** At least one of a list, none twice. */
const some = <const T extends string>(options: readonly T[]) =>
  v.pipe(
    v.array(v.picklist(options)),
    v.minLength(1),
    v.check((chosen) => areUnique(chosen), 'comes twice'),
  );

export const examinationSettings = v.pipe(
  v.object({
    notes: some(STARTING_NOTES),
    chords: some(CHORD_IDS),
    stages: some(STAGES),
    count: whole(1, MOST_DRAWN),
    toPass: whole(1, MOST_DRAWN),
    tempoPercent: whole(SLOWEST_PERCENT, FASTEST_PERCENT),
    beat: v.boolean(),
  }),
  v.check(({ count, toPass }) => toPass <= count, 'more to pass than are drawn'),
) satisfies v.GenericSchema<unknown, ExaminationSettings>;

export const markedItem = v.object({ item, tempo, fluency });
export const examinationSeed = whole(1, LARGEST_SEED);

const stamp = {
  id: eventId,
  version: v.literal(EVENT_VERSION),
  at: whole(0, LATEST),
  day,
  device: uuid,
  student: uuid,
};

/** One schema for each kind of event; a kind that is missing here does not compile. */
export const EVENT_SCHEMAS = {
  run: v.object({
    ...stamp,
    kind: v.literal('run'),
    item,
    tempo,
    fluency,
    pedal: v.boolean(),
    judge,
    entry: v.nullable(text(LONGEST_ENTRY)),
    take: v.exactOptional(takeSchema),
  }),
  programme: v.object({ ...stamp, kind: v.literal('programme'), programme: programmeSchema }),
  name: v.object({ ...stamp, kind: v.literal('name'), name: text(LONGEST_NAME) }),
  aside: v.object({ ...stamp, kind: v.literal('aside'), item, aside: v.boolean() }),
  remark: v.object({
    ...stamp,
    kind: v.literal('remark'),
    about: v.nullable(item),
    text: text(LONGEST_TEXT),
    join: v.exactOptional(v.custom<DrillId>(isJoin, 'not a join')),
    by: v.exactOptional(judge),
  }),
  fingering: v.pipe(
    v.object({
      ...stamp,
      kind: v.literal('fingering'),
      arpeggio: v.custom<ArpeggioId>(isArpeggioId, 'not an arpeggio'),
      hand,
      plan: v.nullable(fingerPlan),
    }),
    v.check(
      ({ arpeggio, plan }) => plan === null || plan.pattern.length === sizeOf(arpeggio),
      'not a finger for each note',
    ),
  ),
  span: v.object({
    ...stamp,
    kind: v.literal('span'),
    semitones: v.nullable(whole(SMALLEST_SPAN, LARGEST_SPAN)),
  }),
  drill: v.object({
    ...stamp,
    kind: v.literal('drill'),
    drill: v.custom<DrillId>(isDrillId, 'not a drill'),
  }),
  wish: v.object({ ...stamp, kind: v.literal('wish'), item, from: day }),
  examination: v.object({
    ...stamp,
    kind: v.literal('examination'),
    seed: examinationSeed,
    settings: examinationSettings,
    items: v.pipe(v.array(markedItem), v.minLength(1), v.maxLength(MOST_DRAWN)),
    judge,
    forecast: chance,
  }),
  report: v.object({
    ...stamp,
    kind: v.literal('report'),
    share: chance,
    stages: short(v.object({ stage: v.picklist(STAGES), share: chance }), STAGES.length),
    played: whole(0, DECK.length),
  }),
  void: v.pipe(
    v.object({
      ...stamp,
      kind: v.literal('void'),
      events: v.pipe(v.array(eventId), v.minLength(1), v.maxLength(MOST_VOIDED)),
    }),
    // A correction follows what it corrects, so a replay up to some id never needs to look ahead for what it folds later.
    v.check((event) => event.events.every((id) => id < event.id), 'names a later event'),
  ),
} satisfies { readonly [K in EventKind]: v.GenericSchema<unknown, LogEvent> };
