/**
 * The strokes of each kind of drill on a run of one hand, up over two octaves and down again. What they are for is
 * common practice of teachers, no source.
 */
import type { ScoreNote } from '../../music/score';
import type { JoinKind, RunKind } from './kinds';
import { BEAT, endOnBeat, HALF, indices, QUARTER, rest, type Stroke, strokesOn } from './strokes';

type Run = readonly ScoreNote[];

interface HandSize {
  /** The widest comfortable reach, in semitones. */
  readonly span: number;
  /** The fingering asks this hand for stretches. */
  readonly isWide: boolean;
}

const LARGEST_GROUP = 5;

const topOf = (run: Run): number => (run.length - 1) / 2;
const all = (run: Run): readonly number[] => run.map((_, i) => i);
const fingerAt = (run: Run, index: number) => run[index]!.fingers[0]!;

/** The last note before the change, the note of arrival and the next one, to and fro. */
function joinStrokes(run: Run, place: number): readonly Stroke[] {
  const before = place - 1;
  const after = place + 1 < run.length ? place + 1 : before;
  const loop = [before, place, after, place];
  return endOnBeat(strokesOn([...loop, ...loop, ...loop, ...loop, before], HALF));
}

/** From the beginning of the position before the change to the end of the one after it, and back, twice. */
function outAndBackStrokes(run: Run, place: number): readonly Stroke[] {
  const top = topOf(run);
  const [lowest, highest] = place <= top ? [0, top] : [top, run.length - 1];
  let from = place - 1;
  while (from > lowest && run[from]!.change === null) from -= 1;
  let to = place;
  while (to < highest && run[to + 1]!.change === null) to += 1;
  const back = indices(to, from).slice(1);
  return endOnBeat(
    strokesOn([...indices(from, to), ...back, ...indices(from, to).slice(1), ...back], QUARTER),
  );
}

/**
 * Two to five notes, quick, with a stop on the thumb: before it where the thumb goes under, so that it arrives on the
 * beat; after it where the hand goes over.
 */
function groupStrokes(run: Run, place: number): readonly Stroke[] {
  const isUnder = run[place]!.change === 'thumb under';
  const thumb = isUnder ? place : place - 1;
  const room = isUnder ? thumb + 1 : run.length - thumb;
  return indices(2, Math.min(LARGEST_GROUP, room)).flatMap((size): readonly Stroke[] => {
    const quick = size - 1;
    const gap = BEAT - quick * QUARTER;
    const stop: Stroke = { at: [thumb], length: BEAT };
    if (isUnder) {
      const lead = gap > 0 ? [rest(gap)] : [];
      return [...lead, ...strokesOn(indices(thumb - quick, thumb - 1), QUARTER), stop];
    }
    const over = strokesOn(indices(thumb + 1, thumb + quick), QUARTER);
    return [stop, ...over.slice(0, -1), { ...over.at(-1)!, length: QUARTER + gap }];
  });
}

/**
 * The notes of each position together, up and down, with a rest in which the hand moves. A chord wider than the hand
 * reaches leaves out the note at its far end; a hand that has to stretch stays within the first positions.
 */
function chordStrokes(run: Run, { span, isWide }: HandSize): readonly Stroke[] {
  const positions: number[][] = [];
  for (const index of indices(0, topOf(run))) {
    if (index === 0 || run[index]!.change !== null) positions.push([]);
    positions.at(-1)!.push(index);
  }
  const midiOf = (index: number) => run[index]!.keys[0]!.midi;
  const chords = positions.map((position) =>
    position.filter((index) => midiOf(index) - midiOf(position[0]!) <= span),
  );
  const up = isWide ? chords.slice(0, 2) : chords;
  return [...up, ...up.toReversed().slice(1)].flatMap((at) => [{ at, length: BEAT }, rest(BEAT)]);
}

const dotted = (run: Run, lengths: readonly [number, number]): readonly Stroke[] =>
  endOnBeat(all(run).map((index) => ({ at: [index], length: lengths[index % 2]! })));

/** The thumb is put on its keys in time and presses none of them. */
const silentThumbStrokes = (run: Run): readonly Stroke[] =>
  endOnBeat(
    all(run).map((index) => ({
      at: [index],
      length: HALF,
      ...(fingerAt(run, index) === 1 ? { isSilent: true } : {}),
    })),
  );

/** Each key is held until the next finger stands; over a change it is let go, as holding on would pull at the hand. */
const transferStrokes = (run: Run): readonly Stroke[] =>
  endOnBeat(
    all(run).map((index) => {
      const next = run[index + 1];
      const isHeld = next !== undefined && next.change === null;
      return { at: [index], length: BEAT, ...(isHeld ? { overlap: HALF } : {}) };
    }),
  );

/** The whole run once for each finger that has a part in it, thumb first. */
function accentStrokes(run: Run): readonly Stroke[] {
  const fingers = [...new Set(all(run).map((index) => fingerAt(run, index)!))].toSorted();
  const passes = fingers.flatMap((finger) =>
    all(run)
      .slice(0, -1)
      .map((index) => ({
        at: [index],
        length: HALF,
        ...(fingerAt(run, index) === finger ? { isAccented: true } : {}),
      })),
  );
  return endOnBeat([...passes, { at: [0], length: HALF }]);
}

/** Around the note of arrival of a position change. */
export const joinDrill: Readonly<Record<JoinKind, (run: Run, place: number) => readonly Stroke[]>> =
  { join: joinStrokes, 'out-and-back': outAndBackStrokes, groups: groupStrokes };

/** Over the whole run. */
export const runDrill: Readonly<Record<RunKind, (run: Run, hand: HandSize) => readonly Stroke[]>> =
  {
    chords: chordStrokes,
    'long-short': (run) => dotted(run, [BEAT - QUARTER, QUARTER]),
    'short-long': (run) => dotted(run, [QUARTER, BEAT - QUARTER]),
    'silent-thumb': silentThumbStrokes,
    transfer: transferStrokes,
    accents: accentStrokes,
  };
