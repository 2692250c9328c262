/** Drills for one hand of an arpeggio: notes, rhythm, fingering and tempo, made for this person's fingering and hand. */
import { type Item, itemAt } from '../../music/deck';
import type { PositionChange } from '../../music/fingering/positions';
import type { Fingering } from '../../music/fingering/result';
import { AVERAGE_SPAN } from '../../music/fingering/spans';
import { keysOfHand, type Score, type ScoreNote } from '../../music/score';
import { scoreOf } from '../../music/score-of';
import type { BlackNames } from '../../music/spelling';
import { playableTempo, type Tempo, tempoOf } from '../../music/tempo';
import { fingeringFor, type Player } from '../chosen-fingering';
import {
  type DrillAddress,
  type DrillKind,
  isJoinKind,
  type JoinKind,
  type RunKind,
} from './kinds';
import { joinDrill, runDrill } from './patterns';
import { endOnBeat, HALF, type Stroke, strokesOn, written } from './strokes';

export interface Drill {
  readonly address: DrillAddress;
  readonly score: Score;
  /** The position change that it is about; null for a whole run. */
  readonly change: PositionChange | null;
  /** This hand has to stretch for it: to be kept short. */
  readonly isWide: boolean;
}

export interface DrillOptions {
  readonly title: string;
  /** Notes per minute at which the arpeggio is practised today. */
  readonly working: Tempo;
  readonly blackNames?: BlackNames;
}

/**
 * A drill's beat against the item's with four notes to it, and the highest metronome mark. Common practice, no source.
 */
const PACES: Readonly<Record<DrillKind, { readonly share: number; readonly most: number }>> = {
  join: { share: 1, most: 120 },
  'out-and-back': { share: 0.8, most: 120 },
  groups: { share: 0.9, most: 120 },
  chords: { share: 0.7, most: 66 },
  'long-short': { share: 0.7, most: 120 },
  'short-long': { share: 0.7, most: 120 },
  'silent-thumb': { share: 0.8, most: 100 },
  transfer: { share: 0.6, most: 54 },
  accents: { share: 0.8, most: 120 },
  opposite: { share: 0.8, most: 100 },
};

/** Four sixteenths to a beat, whatever the programme's grouping: a drill has rhythms of its own. */
const GROUPING = 4;

function tempoOfDrill(kind: DrillKind, working: Tempo): Tempo {
  const { share, most } = PACES[kind];
  return playableTempo(Math.min(share * working, tempoOf(most, GROUPING)), GROUPING);
}

/** An item's own score in this person's fingering, from which a drill takes its notes. */
function materialOf(
  player: Player,
  item: Item,
  { blackNames, title, working }: DrillOptions,
): Score {
  return scoreOf([item], {
    title,
    tempo: working,
    grouping: GROUPING,
    pedal: false,
    ...(player.programme ? { contraryForm: player.programme.contraryForm } : {}),
    ...(blackNames ? { blackNames } : {}),
    fingeringOf: (asked, hand) => fingeringFor(player, asked, hand)?.plan ?? null,
  });
}

/** A position change and the index of the note to which it leads. */
interface PlacedChange {
  readonly place: number;
  readonly change: PositionChange;
}

/**
 * The change nearest to a place, as another fingering may have moved it; without a place the first of the hardest. Null
 * where the hand changes no position.
 */
function changeAt(
  run: readonly ScoreNote[],
  { changes }: Fingering,
  place: number | null,
): PlacedChange | null {
  const placed = run
    .flatMap(({ change }, i) => (change === null ? [] : [i]))
    .map((at, i): PlacedChange => ({ place: at, change: changes[i]! }));
  const rank = ({ place: at, change }: PlacedChange): number =>
    place === null ? -change.difficulty : Math.abs(at - place);
  return placed.toSorted((a, b) => rank(a) - rank(b) || a.place - b.place)[0] ?? null;
}

const slowly = (run: readonly ScoreNote[]) => endOnBeat(strokesOn([...run.keys()], HALF));

type Content = Pick<Drill, 'score' | 'change'>;

/** Both hands from notes an octave apart outwards and back. */
function oppositeContent(player: Player, { item }: DrillAddress, options: DrillOptions): Content {
  const programme = player.programme && { ...player.programme, contraryForm: 'plain' as const };
  const contrary = itemAt(item.arpeggioIndex, 'together.contrary');
  const score = materialOf({ ...player, programme }, contrary, options);
  const right = written('right', score.right, slowly(score.right));
  const left = written('left', score.left, slowly(score.left));
  return { score: { ...score, right, left }, change: null };
}

function handContent(
  player: Player,
  { item, hand, kind, place }: DrillAddress & { readonly kind: JoinKind | RunKind },
  options: DrillOptions,
): Content | null {
  const score = materialOf(player, item, options);
  const run = score[hand];
  const fingering = fingeringFor(player, item, hand)!;
  const withStrokes = (strokes: readonly Stroke[]): Score => ({
    ...score,
    [hand]: written(hand, run, strokes),
  });
  if (!isJoinKind(kind)) {
    const size = { span: player.span ?? AVERAGE_SPAN, isWide: stretchesOf(fingering).length > 0 };
    return { score: withStrokes(runDrill[kind](run, size)), change: null };
  }
  const at = changeAt(run, fingering, place);
  return at && { score: withStrokes(joinDrill[kind](run, at.place)), change: at.change };
}

const stretchesOf = ({ positions }: Fingering) => positions.flatMap(({ stretches }) => stretches);

/** Whether a stretch of the fingering comes in the notes of a drill. */
function hasStretch(fingering: Fingering, notes: readonly ScoreNote[]): boolean {
  const keys = keysOfHand(notes);
  return stretchesOf(fingering).some(
    ({ lower, upper }) => keys.includes(lower.key) && keys.includes(upper.key),
  );
}

/**
 * A drill as this person plays it; null for a join where a fingering of the person's own has none. Of a player with a
 * programme.
 */
export function drillOf(
  player: Player,
  address: DrillAddress,
  options: DrillOptions,
): Drill | null {
  const { item, hand, kind } = address;
  const content =
    kind === 'opposite'
      ? oppositeContent(player, address, options)
      : handContent(player, { ...address, kind }, options);
  if (content === null) return null;
  const score = { ...content.score, tempo: tempoOfDrill(kind, options.working) };
  const isWide = hasStretch(fingeringFor(player, item, hand)!, score[hand]);
  return { ...content, address, score, isWide };
}
