/**
 * How well a piano is heard by a microphone: `npm run bench:listening` plays seeded takes with planted faults on a recorded
 * grand, in three places and tuned from 430 to 446 Hz, and holds what is found and what is invented against what was asked
 * of it; and fewer takes on another piano. SOUND_TAKES sets how many, SOUND_SEED the first seed, and SOUND_ONLY takes of one
 * kind in one place ("contrary, phone"). No seed is one that anything was fitted on.
 */
import { mean } from '../../shared/listening/statistics';
import { rendered } from '../listening/sound/fluidsynth';
import { onGrand } from '../listening/sound/grand';
import {
  type HeardTrial,
  heardTrials,
  ofGroup,
  type Summary,
  summaryOf,
} from '../listening/sound/heard';
import { PLACES } from '../listening/sound/spoil';
import { type Group, groupOf, trialOf } from '../listening/sound/trials';

const TAKES = Number(process.env.SOUND_TAKES ?? 240);
const OTHER_PIANO = 0.25;
const FIRST_SEED = Number(process.env.SOUND_SEED ?? 2001);
const ONLY = process.env.SOUND_ONLY;
/** Rendered at once: all of them would not fit into memory. */
const AT_ONCE = 20;
const GROUPS: readonly Group[] = ['one hand', 'octaves', 'contrary'];
const WAITS = [0.08, 0.12, 0.15];

interface Row {
  readonly name: string;
  readonly of: (summary: Summary, heard: readonly HeardTrial[]) => number | null;
  readonly unit?: '%' | 'ms' | 'points' | '';
  /** What was asked, at least or at most; for one hand, and for two. */
  readonly asked?: { readonly least: readonly [number, number] } | { readonly most: number };
}

const share = (found: readonly boolean[]): number | null =>
  found.length === 0 ? null : (100 * found.filter(Boolean).length) / found.length;

/** Of all that was told, what was there. */
const precision = (found: readonly boolean[], falsely: number): number | null => {
  const right = found.filter(Boolean).length;
  return right + falsely === 0 ? null : (100 * right) / (right + falsely);
};

/** Hesitations of a size, told or not. */
const waitsOf = (heard: readonly HeardTrial[], seconds: number): readonly boolean[] =>
  heard.flatMap(({ trial, outcome }) =>
    outcome.found.hesitation.filter((_, i) => trial.planted.waits![i]!.seconds === seconds),
  );

const least = (one: number, two = one) => ({ least: [one, two] }) as const;

const ROWS: readonly Row[] = [
  { name: 'takes', of: ({ runs }) => runs, unit: '' },
  { name: 'onsets, F1 in 25 ms', of: (s) => 100 * s.within25, asked: least(99, 98.5) },
  { name: 'onsets, F1 in 50 ms', of: (s) => 100 * s.within50 },
  { name: 'onsets, mean error', of: ({ error }) => error, unit: 'ms' },
  { name: 'wrong notes found', of: ({ found }) => share(found.wrong), asked: least(97) },
  { name: 'wrong notes, precision', of: (s) => precision(s.found.wrong, s.falsely.wrong) },
  { name: 'missed notes found', of: ({ found }) => share(found.missed) },
  {
    name: 'missed notes, precision',
    of: (s) => precision(s.found.missed, s.falsely.missed),
    asked: least(90),
  },
  ...WAITS.map((wait): Row => ({
    name: `waits of ${1000 * wait} ms found`,
    of: (_, heard) => share(waitsOf(heard, wait)),
    ...(wait === 0.12 ? { asked: least(98) } : {}),
  })),
  { name: 'waits told falsely', of: ({ falsely }) => falsely.hesitation, unit: '' },
  { name: 'right notes not called faults', of: ({ right }) => 100 * right },
  { name: 'notes not sure', of: ({ unsure }) => unsure, unit: '' },
  { name: 'clean takes', of: ({ cleanRuns }) => cleanRuns, unit: '' },
  {
    name: 'false reports in 40 clean takes',
    of: ({ clean, cleanRuns }) => (cleanRuns === 0 ? null : (40 * (cleanRuns - clean)) / cleanRuns),
    unit: '',
    asked: { most: 1 },
  },
  { name: 'tempo, mean error', of: ({ tempo }) => tempo },
  {
    name: 'unevenness, mean error',
    of: ({ unevenness }) => unevenness,
    unit: 'points',
    asked: { most: 0.7 },
  },
  {
    name: 'work, of one core',
    of: (_, heard) => 100 * mean(heard.map(({ work, length }) => work / length))!,
    asked: { most: 5 },
  },
];

const WIDTH = 13;

function textOf(
  { of, unit = '%', asked }: Row,
  heard: readonly HeardTrial[],
  hands: 0 | 1,
): string {
  const value = heard.length === 0 ? null : of(summaryOf(heard), heard);
  if (value === null) return '-'.padStart(WIDTH);
  const isShort =
    asked && ('most' in asked ? value > asked.most : value < asked.least[hands]) ? '!' : ' ';
  const digits = Number.isInteger(value) ? 0 : 2;
  return `${value.toFixed(digits)}${unit === '' ? '' : ` ${unit}`}${isShort}`.padStart(WIDTH);
}

function askedText({ asked }: Row): string {
  if (asked === undefined) return '';
  if ('most' in asked) return `at most ${asked.most}`;
  return `at least ${[...new Set(asked.least)].join(', ')}`;
}

/** A table of all measures: a column for each group of takes. */
function print(title: string, columns: Readonly<Record<string, readonly HeardTrial[]>>): void {
  const head = Object.keys(columns).map((name) => name.padStart(WIDTH));
  console.log(`\n${title.padEnd(32)}${head.join('')}   asked (! = short of it)`);
  for (const row of ROWS) {
    const cells = Object.entries(columns).map(([name, heard]) =>
      textOf(row, heard, name === 'one hand' ? 0 : 1),
    );
    console.log(`${row.name.padEnd(32)}${cells.join('')}   ${askedText(row)}`);
  }
}

const byHands = (heard: readonly HeardTrial[]) =>
  Object.fromEntries(GROUPS.map((group) => [group, ofGroup(heard, group)]));

/** The first seeds of the kind that is asked for. */
function seedsOf(takes: number): readonly number[] {
  const seeds: number[] = [];
  for (let seed = FIRST_SEED; seeds.length < takes; seed++) {
    const { item, place } = trialOf(seed);
    if (ONLY === undefined || ONLY === `${groupOf(item)}, ${place}`) seeds.push(seed);
  }
  return seeds;
}

function benchPiano(name: string, takes: number, play: typeof rendered): void {
  const heard: HeardTrial[] = [];
  const seeds = seedsOf(takes);
  for (let first = 0; first < takes; first += AT_ONCE) {
    heard.push(...heardTrials(seeds.slice(first, first + AT_ONCE), play));
  }
  print(`${name}, all places`, { ...byHands(heard), all: heard });
  for (const place of Object.keys(PLACES)) {
    print(`${name}, ${place}`, byHands(heard.filter(({ trial }) => trial.place === place)));
  }
  const { rss } = process.memoryUsage();
  console.log(`\nmemory: ${(rss / 1e6).toFixed(0)} MB with the sounds of ${AT_ONCE} takes`);
}

export function benchSound(): void {
  benchPiano('recorded grand', TAKES, onGrand);
  benchPiano('sound font', Math.ceil(OTHER_PIANO * TAKES), rendered);
}
