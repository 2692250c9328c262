/**
 * What lights up of a run by the microphone while it goes on, and whether it is followed: seeded rounds with planted faults
 * and restarts on a recorded grand and a sound font, in three places and tuned from 430 to 446 Hz, the tempo not quite as set.
 * LIVE_TAKES sets how many of each group. No seed is one that anything was fitted on.
 */
import { hear } from '../../shared/listening/sound/hear';
import type { Sound } from '../../shared/listening/sound/spectrum';
import { rendered } from '../listening/sound/fluidsynth';
import { onGrand } from '../listening/sound/grand';
import {
  type LiveOutcome,
  liveOutcomeOf,
  type LiveSummary,
  liveSummaryOf,
} from '../listening/sound/live-heard';
import {
  LIVE_GROUPS,
  type LiveGroup,
  liveSounds,
  type LiveTrial,
  liveTrialOf,
} from '../listening/sound/live-trials';
import { PLACES } from '../listening/sound/spoil';

const TAKES = Number(process.env.LIVE_TAKES ?? 9);
const FIRST_SEED = 3001;
const WIDTH = 14;

interface Played {
  readonly trial: LiveTrial;
  readonly outcome: LiveOutcome;
  /** Seconds of work of the whole, after the run. */
  readonly afterwards: number;
}

function heardAfterwards({ expected, set }: LiveTrial, sound: Sound): number {
  const start = process.cpuUsage();
  hear(sound, expected, { tempo: set, tuning: null, isFiltered: false });
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1e6;
}

/** One after another, as all of them would not fit into memory. */
const playedBy = (play: typeof rendered): readonly Played[] =>
  (Object.keys(LIVE_GROUPS) as LiveGroup[]).flatMap((group) =>
    Array.from({ length: TAKES }, (_, i): Played => {
      const trial = liveTrialOf(FIRST_SEED + i, group);
      const [sound] = liveSounds([trial], play);
      const outcome = liveOutcomeOf(trial, sound!);
      return { trial, outcome, afterwards: heardAfterwards(trial, sound!) };
    }),
  );

/** Of no takes nothing can be said. */
const percent = (share: number): string =>
  Number.isNaN(share) ? '-' : `${(100 * share).toFixed(2)} %`;
const milliseconds = (seconds: number): string =>
  Number.isNaN(seconds) ? '-' : `${(1000 * seconds).toFixed(0)} ms`;

const ROWS: Readonly<Record<string, (summary: LiveSummary, played: readonly Played[]) => string>> =
  {
    runs: ({ runs }) => String(runs),
    'right notes lit': ({ lit }) => percent(lit),
    'lights that are false': ({ falsely }) => percent(falsely),
    'wrong and missed notes lit': ({ faultsLit }) => percent(faultsLit),
    'from a note to its light, median': ({ median }) => milliseconds(median),
    '  nine in ten': ({ most }) => milliseconds(most),
    'ends of arpeggios followed': ({ ends, endsRight }) => `${endsRight} of ${ends}`,
    'runs turned too early': ({ early }) => String(early),
    'work meanwhile, of one core': ({ work }) => percent(work),
    'work afterwards': (_, played) =>
      percent(
        played.reduce((sum, one) => sum + one.afterwards, 0) /
          played.reduce((sum, one) => sum + one.outcome.length, 0),
      ),
  };

function print(title: string, columns: Readonly<Record<string, readonly Played[]>>): void {
  const head = Object.keys(columns).map((name) => name.padStart(WIDTH));
  console.log(`\n${title.padEnd(34)}${head.join('')}`);
  for (const [name, textOf] of Object.entries(ROWS)) {
    const cells = Object.values(columns).map((played) =>
      textOf(liveSummaryOf(played.map(({ outcome }) => outcome)), played).padStart(WIDTH),
    );
    console.log(`${name.padEnd(34)}${cells.join('')}`);
  }
}

export function benchLiveSound(): void {
  for (const [piano, play] of Object.entries({
    'recorded grand': onGrand,
    'sound font': rendered,
  })) {
    const all = playedBy(play);
    const groups = Object.keys(LIVE_GROUPS).map((group) => [
      group,
      all.filter(({ trial }) => trial.group === group),
    ]);
    const places = Object.keys(PLACES).map((place) => [
      place,
      all.filter(({ trial }) => trial.place === place),
    ]);
    print(`by the microphone, ${piano}`, Object.fromEntries(groups));
    print(`by the microphone, ${piano}`, { ...Object.fromEntries(places), all });
  }
}
