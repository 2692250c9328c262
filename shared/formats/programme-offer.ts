/**
 * A programme as somebody gives it to a student: in a file, or packed for a link and a QR code. Both come from outside
 * and are decoded field by field.
 */
import * as v from 'valibot';
import type { Day } from '../log/events';
import type { Programme, StageGoal } from '../log/programme';
import { CHORD_IDS } from '../music/chords';
import { STAGES, STARTING_NOTES } from '../music/deck';
import type { Tempo } from '../music/tempo';
import { studentFileName } from './backup';
import { LONGEST_NAME, LONGEST_TEXT, programmeSchema } from './event-schema';
import { findFault } from './limits';

export const OFFER_FORMAT = 'arpeggiary-programme';
export const OFFER_VERSION = 1;
export const OFFER_MIME = 'application/vnd.arpeggiary.programme+json';

/** "arpeggiary-programme-ada-2026-11-25.arpeggiary". */
export const offerFileName = (name: string | null, day: Day): string =>
  studentFileName(name === null ? 'programme' : `programme ${name}`, day);

/** Characters of a file, or of what a link holds when it is unpacked: the longest programme has half of it. */
export const LONGEST_OFFER = 20_000;

export interface ProgrammeOffer {
  readonly programme: Programme;
  /** For whom it is, as the giver calls them; null if that is not said. */
  readonly name: string | null;
}

/** What is wrong with a file or link, in words for the person. */
export class OfferError extends Error {
  override readonly name = 'OfferError';
}

const NO_OFFER = 'This holds no programme of Arpeggiary. Ask for it once more.';

const damaged = (place: string): OfferError =>
  new OfferError(
    `This programme is damaged (${place}). Nothing was changed. Ask for it once more.`,
  );

const tooNew = (): OfferError =>
  new OfferError(
    'This programme was made by a later version of Arpeggiary. Update the app here, then open it again.',
  );

const offer = v.object({
  programme: v.pipe(
    programmeSchema,
    v.check(({ stages }) => STAGES.some((stage) => stages[stage].asked), 'asks for no stage'),
  ),
  name: v.nullable(v.pipe(v.string(), v.maxLength(LONGEST_NAME))),
});

function decodeOffer(value: unknown): ProgrammeOffer {
  const result = v.safeParse(offer, value, { abortEarly: true });
  if (result.success) return result.output;
  const [issue] = result.issues;
  throw damaged(`${v.getDotPath(issue) ?? 'its form'}: ${issue.message}`.slice(0, 160));
}

function parse(text: string): unknown {
  if (text.length > LONGEST_OFFER) throw new OfferError(NO_OFFER);
  try {
    return JSON.parse(text) as unknown;
  } catch {
    throw new OfferError(NO_OFFER);
  }
}

/** The text of a file. */
export const offerFile = (made: ProgrammeOffer): string =>
  `${JSON.stringify({ format: OFFER_FORMAT, version: OFFER_VERSION, ...made })}\n`;

const Header = v.object({
  format: v.literal(OFFER_FORMAT),
  version: v.pipe(v.number(), v.integer(), v.minValue(1)),
});

/** Whether a file that begins with this text means to be a programme. */
export const isOfferFile = (beginning: string): boolean =>
  beginning.trimStart().startsWith(`{"format":"${OFFER_FORMAT}"`);

/** Reads the text of a file. Throws an OfferError. */
export function readOfferFile(text: string): ProgrammeOffer {
  const value = parse(text);
  const header = v.safeParse(Header, value);
  if (!header.success) throw new OfferError(NO_OFFER);
  if (header.output.version > OFFER_VERSION) throw tooNew();
  const fault = findFault(value);
  if (fault !== null) throw damaged(fault);
  return decodeOffer(value);
}

const FORMS = ['formula', 'plain'] as const;

/** A bit for each that is among some, the first one lowest. */
const bitsOf = <T>(all: readonly T[], some: (one: T) => boolean): number =>
  all.reduce((bits, one, place) => (some(one) ? bits | (1 << place) : bits), 0);

const hasBit = (bits: number, place: number): boolean => (bits & (1 << place)) !== 0;

/** Chords as bits, for each tempo that some of a stage have of their own. */
const tempoBits = ({ targets = {} }: StageGoal): readonly (readonly [Tempo, number])[] =>
  [...new Set(CHORD_IDS.flatMap((chord) => targets[chord] ?? []))].map((tempo) => [
    tempo,
    bitsOf(CHORD_IDS, (chord) => targets[chord] === tempo),
  ]);

/**
 * What a programme did not have from the first, only where it is: further dates, the chords of each stage as bits, and
 * the tempos that chords have of their own.
 */
function later({ furtherDates, stages }: Programme): readonly unknown[] {
  const goals = STAGES.map((stage) => stages[stage]);
  const dates = furtherDates?.map(({ day, words }) => [day, words]) ?? null;
  const chords = goals.map(({ chords: ofStage }) =>
    ofStage === undefined ? 0 : bitsOf(CHORD_IDS, (chord) => ofStage.includes(chord)),
  );
  if (goals.some(({ targets }) => targets !== undefined))
    return [dates, chords, goals.map(tempoBits)];
  if (goals.some(({ chords: ofStage }) => ofStage !== undefined)) return [dates, chords];
  return dates === null ? [] : [dates];
}

/** The values by place instead of by name, so that a QR code has few dots: it is read from a screen a metre away. */
export function packOffer({ programme, name }: ProgrammeOffer): string {
  return JSON.stringify([
    OFFER_VERSION,
    bitsOf(STARTING_NOTES, (note) => programme.notes.includes(note)),
    bitsOf(STAGES, (stage) => programme.stages[stage].asked),
    STAGES.map((stage) => programme.stages[stage].target),
    STAGES.indexOf(programme.reached),
    programme.grouping,
    FORMS.indexOf(programme.contraryForm),
    programme.minutes,
    programme.daysPerWeek,
    programme.date,
    programme.requirements ?? null,
    name,
    ...later(programme),
  ]);
}

const place = (most: number) => v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(most));

const packed = v.tuple([
  v.number(),
  place(2 ** STARTING_NOTES.length - 1),
  place(2 ** STAGES.length - 1),
  v.tuple([v.number(), v.number(), v.number(), v.number(), v.number()]),
  place(STAGES.length - 1),
  v.number(),
  place(FORMS.length - 1),
  v.number(),
  v.number(),
  v.nullable(v.string()),
  v.nullable(v.pipe(v.string(), v.maxLength(LONGEST_TEXT))),
  v.nullable(v.string()),
  // A reader of before there were any takes the twelve that it knows.
  v.nullish(v.array(v.tuple([v.string(), v.string()]))),
  v.optional(v.array(place(2 ** CHORD_IDS.length - 1))),
  v.optional(v.array(v.array(v.tuple([v.number(), place(2 ** CHORD_IDS.length - 1)])))),
]);

/** Reads what a link holds, unpacked. Throws an OfferError. */
export function unpackOffer(text: string): ProgrammeOffer {
  const value = parse(text);
  if (Array.isArray(value) && Number.isInteger(value[0]) && value[0] > OFFER_VERSION)
    throw tooNew();
  const result = v.safeParse(packed, value);
  if (!result.success) throw new OfferError(NO_OFFER);
  const [
    ,
    notes,
    asked,
    targets,
    reached,
    grouping,
    form,
    minutes,
    daysPerWeek,
    date,
    words,
    name,
    furtherDates,
    chords,
    tempos,
  ] = result.output;
  const stages = STAGES.map((stage, i) => {
    const bits = chords?.[i] ?? 0;
    const ofStage = CHORD_IDS.filter((_, chord) => hasBit(bits, chord));
    const own = (tempos?.[i] ?? []).flatMap(([tempo, ofTempo]) =>
      CHORD_IDS.filter((_, chord) => hasBit(ofTempo, chord)).map((chord) => [chord, tempo]),
    );
    const goal = {
      asked: hasBit(asked, i),
      target: targets[i],
      ...(own.length > 0 && { targets: Object.fromEntries(own) as unknown }),
      ...(bits !== 0 && { chords: ofStage }),
    };
    return [stage, goal] as const;
  });
  return decodeOffer({
    programme: {
      notes: STARTING_NOTES.filter((_, i) => hasBit(notes, i)),
      stages: Object.fromEntries(stages),
      reached: STAGES[reached],
      grouping,
      contraryForm: FORMS[form],
      minutes,
      daysPerWeek,
      date: date as Day | null,
      ...(furtherDates && {
        furtherDates: furtherDates.map(([day, what]) => ({ day, words: what })),
      }),
      ...(words === null ? {} : { requirements: words }),
    },
    name,
  });
}
