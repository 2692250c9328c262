/** Seeded runs over several arpeggios, at a tempo that was not quite set, and what of them is right. */
import { type Expected, expectedOf } from '../../../shared/listening/expected';
import type { Sound } from '../../../shared/listening/sound/spectrum';
import type { Take } from '../../../shared/listening/take';
import { type Item, roundItems, STARTING_NOTES, type Way } from '../../../shared/music/deck';
import type { Hand } from '../../../shared/music/fingering/types';
import { scoreOf } from '../../../shared/music/score-of';
import { OPTIONS } from '../../formats/scores';
import { perform, type Planted, seededRandom } from '../performer';
import { rendered, SILENCE } from './fluidsynth';
import { PLACES, retuned, spoiled } from './spoil';
import { SPREAD } from './trials';

const MARKS = [40, 60, 80, 100, 120];
/** Cents of pianos from 430 to 446 Hz. */
const TUNINGS = [-40, -20, 0, 0, 23];

export const LIVE_GROUPS = {
  'one hand': ['right.2', 'left.2', 'right.4', 'left.4'],
  'two octaves': ['together.2'],
  'four octaves': ['together.4'],
  contrary: ['together.contrary'],
} as const satisfies Readonly<Record<string, readonly Way[]>>;
export type LiveGroup = keyof typeof LIVE_GROUPS;

export interface Struck {
  readonly step: number;
  /** Seconds of the sound. */
  readonly on: number;
  readonly midi: number;
}

export interface LiveTrial {
  readonly seed: number;
  readonly group: LiveGroup;
  readonly items: readonly Item[];
  readonly expected: Expected;
  /** Notes a minute as set, and as played. */
  readonly set: number;
  readonly tempo: number;
  readonly place: keyof typeof PLACES;
  readonly tuning: number;
  readonly planted: Planted;
  readonly take: Take;
  /** In the order of playing. */
  readonly struck: readonly Struck[];
}

const pick = <T>(values: readonly T[], random: () => number): T =>
  values[Math.floor(random() * values.length)]!;

export function liveTrialOf(seed: number, group: LiveGroup): LiveTrial {
  const random = seededRandom(seed);
  const way = pick<Way>(LIVE_GROUPS[group], random);
  const first = Math.floor(random() * 8);
  const count = way.endsWith('2') ? 3 : 2;
  const items = roundItems(pick(STARTING_NOTES, random), way).slice(first, first + count);
  const expected = expectedOf(scoreOf(items, { ...OPTIONS, pedal: false }));
  const planted = random() < 0.35 ? {} : plantedIn(expected, random);
  const tempo = 4 * pick(MARKS, random);
  const tuning = pick(TUNINGS, random);
  const place = pick(['dry', 'room', 'phone'] as const, random);
  const set = tempo / (0.75 + 0.5 * random());
  const onsets: { readonly step: number; readonly on: number }[] = [];
  const take = perform(expected, {
    random,
    tempo,
    spread: SPREAD,
    planted,
    onNote: (step, on) => void onsets.push({ step, on }),
  });
  // The silence before it and the tuning count.
  const shrink = 2 ** (tuning / 1200);
  const struck = take.notes.flatMap(({ midi, on }): readonly Struck[] => {
    const one = onsets.find((onset) => onset.on === on);
    return one === undefined ? [] : [{ step: one.step, on: (on + SILENCE) / shrink, midi }];
  });
  return { seed, group, items, expected, set, tempo, place, tuning, planted, take, struck };
}

/** A wait, a wrong note and a missed one, each in most of the runs and at places of their own; or an arpeggio is begun again. */
function plantedIn({ steps, parts }: Expected, random: () => number): Planted {
  const last = steps.length - 1;
  const places = [2, 5, 8, 10].map((place) => Math.floor((place * last) / 12));
  const [wait, wrong, missed, restart] = places.toSorted(() => random() - 0.5);
  const hand: Hand = pick(steps[0]!, random).hand;
  const isIn = () => random() < 0.6;
  const keyAt = (step: number) => steps[step]!.find((note) => note.hand === hand)!.key.midi;
  // Not the key before or after: it would have to be struck again while it is down.
  const by = [-2, -1, 1, 2].filter((one) =>
    [wrong! - 1, wrong! + 1].every((step) => keyAt(step) !== keyAt(wrong!) + one),
  );
  const from = parts.findLast((part) => part.from < restart!)!.from;
  return {
    waits: isIn() ? [{ step: wait!, seconds: pick([0.12, 0.4, 1.5], random) }] : [],
    wrong: isIn() ? [{ step: wrong!, hand, by: pick(by, random) }] : [],
    missed: isIn() ? [{ step: missed!, hand }] : [],
    restarts: random() < 0.25 ? [{ at: restart!, from, pause: pick([0.3, 1, 2], random) }] : [],
  };
}

/** The sound of each, as it comes out of the microphone. */
export function liveSounds(trials: readonly LiveTrial[], play = rendered): readonly Sound[] {
  return play(trials.map(({ take }) => take)).map((sound, i) => {
    const { tuning, place, seed } = trials[i]!;
    return spoiled(retuned(sound, tuning), PLACES[place], seededRandom(seed));
  });
}
