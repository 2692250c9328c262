/**
 * How well a piano is heard by a microphone: `npm run bench:listening` renders seeded takes with planted faults, in three
 * places and with pianos from 430 to 446 Hz, and counts what is found and what is invented. SOUND_TAKES sets how many.
 */
import { mean } from '../../shared/listening/statistics';
import { rendered } from '../listening/sound/fluidsynth';
import { onGrand } from '../listening/sound/grand';
import { type HeardTrial, heardTrials, type Summary, summaryOf } from '../listening/sound/heard';
import type { Group } from '../listening/sound/trials';

const TAKES = Number(process.env.SOUND_TAKES ?? 320);
/** Rendered at once: all of them would not fit into memory. */
const AT_ONCE = 40;
const GROUPS: readonly Group[] = ['one hand', 'octaves', 'contrary'];
const WAITS = [0.08, 0.12, 0.15];

const percent = (share: number): string => `${(100 * share).toFixed(2)} %`;
const countOf = (found: readonly boolean[]): string =>
  `${found.filter(Boolean).length} of ${found.length}`;

function print(group: Group, one: Summary): void {
  console.log(`\n${group}: ${one.runs} takes`);
  console.log(
    `  onsets: F1 ${percent(one.within25)} within 25 ms, ${percent(one.within50)} within 50`,
  );
  console.log(
    `  onsets: ${one.error.toFixed(1)} ms off on average, offset ${one.offset.toFixed(1)} ms`,
  );
  console.log(`  right notes not called faults: ${percent(one.right)}, not sure: ${one.unsure}`);
  for (const kind of ['wrong', 'missed'] as const) {
    console.log(`  ${kind}: ${countOf(one.found[kind])} found`);
  }
  console.log(`  invented: ${one.invented}`);
  console.log(`  takes without a fault of which nothing is said: ${one.clean} of ${one.cleanRuns}`);
  console.log(`  tempo: ${one.tempo.toFixed(2)} % off on average`);
  console.log(`  unevenness: ${one.unevenness.toFixed(2)} points off on average`);
}

/** Hesitations of a size, told or not. */
const waitsOf = (heard: readonly HeardTrial[], seconds: number): readonly boolean[] =>
  heard.flatMap(({ trial, outcome }) =>
    outcome.found.hesitation.filter((_, i) => trial.planted.waits![i]!.seconds === seconds),
  );

function benchPiano(name: string, play: typeof rendered): void {
  const heard: HeardTrial[] = [];
  for (let first = 1; first <= TAKES; first += AT_ONCE) {
    const count = Math.min(AT_ONCE, TAKES - first + 1);
    heard.push(
      ...heardTrials(
        Array.from({ length: count }, (_, i) => first + i),
        play,
      ),
    );
  }
  console.log(`\n== ${name}, seeds 1 to ${TAKES}`);
  for (const group of GROUPS) print(group, summaryOf(heard, group));
  console.log('');
  for (const wait of WAITS) {
    console.log(`hesitations of ${wait * 1000} ms: ${countOf(waitsOf(heard, wait))} found`);
  }
  const load = mean(heard.map(({ work, length }) => work / length))!;
  console.log(`work: ${percent(load)} of one core while it sounds, done once after the run`);
  console.log(
    `memory: ${(process.memoryUsage().rss / 1e6).toFixed(0)} MB with the sounds of ${AT_ONCE}`,
  );
}

export function benchSound(): void {
  benchPiano('sound font', rendered);
  benchPiano('recorded grand', onGrand);
}
