/** A take against what was expected: the measures of every arpeggio of it. */
import { type HandTake, MOST_FAULTS, type RunTake, type TakeFault } from '../log/run-take';
import type { Hand } from '../music/fingering/types';
import { FASTEST, SLOWEST } from '../music/tempo';
import { align, type Alignment, type Extra, handsIn, type Played, usualInterval } from './align';
import { attemptAt, type Attempt, notesOfPart, type Onset, onsetsOf } from './attempt';
import type { Expected } from './expected';
import { handTake, ms, tenth } from './hand';
import { momentsOf, pulseOf } from './pulse';
import { deviation, mean, median } from './statistics';
import { type Take, UNSURE } from './take';

/** Share of the notes that must have been played for a part to be judged at all. */
const LEAST_PLAYED = 0.2;
/** Octaves by which a player may sit elsewhere on the keyboard than the item says. */
const SHIFTS = [0, 12, -12] as const;
/** Share of right notes below which another octave is tried. */
const HARDLY_RIGHT = 0.75;
/** Milliseconds that hearing one hand or two adds to the spread of the times from note to note (tests/bench/sound.ts). */
const HEARING = { one: 3, two: 4 };
/** Fewest moments with both hands for saying how they are together. */
const FEWEST_TOGETHER = 4;

/** One for each part of what was expected; null where too little of it was played. */
export function judge(expected: Expected, take: Take): readonly (RunTake | null)[] {
  const alignment = inBestOctave(expected, take);
  const interval = usualInterval(take.notes, handsIn(expected));
  return expected.parts.map((part) =>
    runTake(expected, take, attemptAt(part, alignment.passes), interval),
  );
}

/** What is not sure counts neither for nor against the player, and has no time. */
const isSure = ({ heard }: Played): boolean => heard.confidence >= UNSURE;

const rightIn = ({ passes }: Alignment): number =>
  passes.reduce((sum, { played }) => sum + played.filter(({ isRight }) => isRight).length, 0);

function inBestOctave(expected: Expected, take: Take): Alignment {
  let best = align(expected, take.notes);
  for (const shift of SHIFTS.slice(1)) {
    if (rightIn(best) >= HARDLY_RIGHT * take.notes.length) break;
    const moved = take.notes.map((note) => ({ ...note, midi: note.midi + shift }));
    const other = align(expected, moved);
    if (other.cost < best.cost) best = other;
  }
  return best;
}

function runTake(expected: Expected, take: Take, attempt: Attempt, usual: number): RunTake | null {
  const { part, breaks } = attempt;
  const notes = notesOfPart(expected, part);
  const played = attempt.passes.flatMap((pass) => pass.played);
  if (played.length < LEAST_PLAYED * notes.length) return null;
  const sure = played.filter(isSure);
  const count = part.to - part.from + 1;
  const right = onsetsOf(attempt, 'right').filter(isSure);
  const left = onsetsOf(attempt, 'left').filter(isSure);
  const pulse = pulseOf(momentsOf([right, left]), count - 1);
  const tempo = pulse && 60 / pulse.interval;
  const takeOfHand = (hand: Hand): HandTake | null => {
    if (!notes.some((note) => note.hand === hand)) return null;
    const [own, other] = hand === 'right' ? [right, left] : [left, right];
    const timing = { count, pulse, other: take.hasTimeOfEachHand ? [] : other };
    return asPlayed(handTake(own, timing), take, other);
  };
  return {
    source: take.source,
    certainty: tenth(mean(played.map(({ heard }) => heard.confidence)) ?? 0),
    tempo: tempo === null || tempo < SLOWEST || tempo > FASTEST ? null : tenth(tempo),
    drift: pulse && tenth(pulse.drift),
    notes: notes.length - (played.length - sure.length),
    right: sure.filter(({ isRight }) => isRight).length,
    faults: faultsOf(attempt, usual).slice(0, MOST_FAULTS),
    breaks: breaks.slice(0, MOST_FAULTS),
    ...togetherOf(right, left, take),
    hands: { right: takeOfHand('right'), left: takeOfHand('left') },
  };
}

/**
 * Without what a microphone adds to the unevenness, and never less than that, which it cannot tell from nothing. Of two
 * hands it is that of the moments, which lie between both: of which hand the thumb is late cannot be told.
 */
function asPlayed(hand: HandTake, { source }: Take, other: readonly Onset[]): HandTake {
  if (source !== 'microphone') return hand;
  const isAlone = other.length === 0;
  const hearing = isAlone ? HEARING.one : HEARING.two;
  const { unevenness: heard } = hand;
  const played = Math.sqrt(Math.max(0, (heard ?? 0) ** 2 - hearing ** 2));
  return {
    ...hand,
    unevenness: heard === null ? null : tenth(Math.max(hearing, played)),
    thumbLate: isAlone ? hand.thumbLate : null,
  };
}

/** In the order of the notes. Notes that were never reached are no faults: the place of the break says it. */
function faultsOf({ part, passes }: Attempt, usual: number): readonly TakeFault[] {
  const faults = passes.flatMap((pass): readonly TakeFault[] => {
    const times = pass.played.map(({ heard }) => heard.on);
    const [first, last] = [Math.min(...times) - usual, Math.max(...times) + usual];
    const isDuring = ({ heard }: Extra) => heard.on > first && heard.on < last;
    return [
      ...pass.played
        .filter((one) => !one.isRight && isSure(one))
        .map(({ note, step, heard }) => fault('wrong', note.hand, step, heard.midi)),
      ...pass.missed.map(({ note, step }) => fault('missed', note.hand, step, null)),
      ...pass.extra
        .filter((extra) => extra.heard.confidence >= UNSURE && isDuring(extra))
        .map(({ step, heard }) => fault('extra', handOf(pass, heard.midi), step, heard.midi)),
    ];
  });
  return faults
    .map((one) => ({ ...one, step: one.step - part.from }))
    .toSorted((a, b) => a.step - b.step || a.kind.localeCompare(b.kind));
}

const fault = (
  kind: TakeFault['kind'],
  hand: TakeFault['hand'],
  step: number,
  midi: number | null,
): TakeFault => ({ kind, hand, step, midi });

/** The hand whose notes lie nearer to a key. */
function handOf({ played }: Attempt['passes'][number], midi: number): TakeFault['hand'] {
  const distance = (hand: TakeFault['hand']): number =>
    Math.min(
      ...played
        .filter(({ note }) => note.hand === hand)
        .map(({ note }) => Math.abs(note.key.midi - midi)),
    );
  return distance('left') < distance('right') ? 'left' : 'right';
}

/** Asynchrony of the hands, left minus right: median (lead) and standard deviation (looseness). */
function togetherOf(right: readonly Onset[], left: readonly Onset[], take: Take) {
  const none = { lead: null, looseness: null };
  if (!take.hasTimeOfEachHand) return none;
  const times = new Map(right.map(({ step, heard }) => [step, heard.on]));
  const apart = left.flatMap(({ step, heard }) => {
    const other = times.get(step);
    return other === undefined ? [] : [heard.on - other];
  });
  if (apart.length < FEWEST_TOGETHER) return none;
  return { lead: ms(median(apart)!), looseness: tenth(deviation(apart)! * 1000) };
}
