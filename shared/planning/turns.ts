/** Why a stage has opened or closed for an arpeggio, as data and in a sentence whose numbers come from the log. */
import { dayNumber, dayOfNumber } from '../log/day';
import type { Day } from '../log/events';
import { DECK, type Item, itemAt, STAGES, stageIndex, type Way } from '../music/deck';
import { type Grouping, markOf, type Tempo } from '../music/tempo';
import type { Student } from './student';
import { type Turn, TURNS } from './stages';

export interface StageTurn {
  readonly turn: Exclude<Turn, 'set'>;
  readonly day: Day;
  /** What held below, hand by hand: the fastest even tempos of two days. Only where that opened it. */
  readonly held: readonly {
    readonly way: Way;
    readonly tempos: readonly [earlier: Tempo, later: Tempo];
  }[];
}

/** Null where the stage stands as the programme says, and off the path. */
export function turnOf({ stages }: Student, item: Item): StageTurn | null {
  const turn = TURNS[stages.turn[item.index]!]!;
  const stage = stageIndex(item.way);
  if (turn === 'set' || stage < 0) return null;
  const day = dayOfNumber(stages.turnDay[item.index]!);
  const below = turn === 'holds' ? waysBelow(stage) : [];
  const held = below.flatMap((way) => {
    const { index } = itemAt(item.arpeggioIndex, way);
    const tempos = [stages.evenTempos[2 * index]!, stages.evenTempos[2 * index + 1]!] as const;
    return tempos[0] === 0 ? [] : [{ way, tempos }];
  });
  return { turn, day, held };
}

/** For how many arpeggios each stage has closed on a day, and not opened again since; easiest first. */
export const closedOn = ({ stages }: Student, day: Day) =>
  STAGES.map((stage) => {
    const closed = DECK.filter(
      ({ way, index }) =>
        way === stage &&
        TURNS[stages.turn[index]!] === 'closed' &&
        stages.turnDay[index] === dayNumber(day),
    );
    return { stage, arpeggios: closed.length };
  }).filter(({ arpeggios }) => arpeggios > 0);

/** Hands together stand on both hands alone. */
const waysBelow = (stage: number): readonly Way[] =>
  STAGES[stage] === 'together.2' ? STAGES.slice(0, stage) : STAGES.slice(stage - 1, stage);

const SHORT: Partial<Readonly<Record<Way, string>>> = {
  'right.2': 'right hand',
  'left.2': 'left hand',
  'together.2': 'hands together',
  'together.4': 'four octaves',
};

const heldText = (held: StageTurn['held'], grouping: Grouping): string =>
  held
    .map(({ way, tempos }, i) => {
      const [earlier, later] = tempos.map((tempo) => markOf(tempo, grouping));
      return i === 0
        ? `${SHORT[way]} even at ${earlier} and ${later} on two days`
        : `${SHORT[way]} at ${earlier} and ${later}`;
    })
    .join(', ');

/** What follows "opened yesterday" or "closed again": ": right hand even at 64 and 66 on two days, left hand at 60 and 63". */
export function turnText({ turn, held }: StageTurn, grouping: Grouping): string {
  switch (turn) {
    case 'holds':
      return held.length === 0 ? ', as the stage below holds' : `: ${heldText(held, grouping)}`;
    case 'note':
      return ', as it is for most chords of the note';
    case 'shown':
      return ', as a run of it came out even';
    case 'closed':
      return ', as it did not hold';
  }
}
