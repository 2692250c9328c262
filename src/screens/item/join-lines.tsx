/** How long each join has waited from take to take: the weakest first, each with its line. */
import { displayName } from '../../../shared/music/names';
import type { Score } from '../../../shared/music/score';
import { dayNumber } from '../../../shared/log/day';
import { type Join, joinsOf } from '../../../shared/listening/findings';
import { mean } from '../../../shared/listening/statistics';
import { shortDay } from '../../parts/dates';
import { preferences } from '../../preferences';
import type { HeardEvent } from './heard-section';
import styles from './join-lines.module.css';

/** More would be a page of lines. */
const MOST_JOINS = 6;
const WIDTH = 120;
const HEIGHT = 36;
/** Milliseconds from the lower to the upper edge; what is beyond stays at the edge. */
const LOWEST = -40;
const HIGHEST = 160;

const y = (wait: number): number => {
  const shown = Math.min(HIGHEST, Math.max(LOWEST, wait));
  return HEIGHT * (1 - (shown - LOWEST) / (HIGHEST - LOWEST));
};

interface JoinOverTime {
  readonly join: Join;
  /** A wait for each take that has one, oldest first; over several days the mean of each day. */
  readonly waits: readonly { readonly day: string; readonly wait: number }[];
}

const keyOf = ({ hand, way, tone }: Join): string => `${hand} ${way} ${tone}`;

type DayWait = JoinOverTime['waits'][number];

function meanOfDays(waits: readonly DayWait[]): readonly DayWait[] {
  const byDay = new Map<string, readonly number[]>();
  for (const { day, wait } of waits) byDay.set(day, [...(byDay.get(day) ?? []), wait]);
  if (byDay.size === 1) return waits;
  return [...byDay].map(([day, all]) => ({ day, wait: mean(all)! }));
}

const lastOf = ({ waits }: JoinOverTime): number => waits.at(-1)!.wait;

export function joinsOverTime(runs: readonly HeardEvent[], score: Score): readonly JoinOverTime[] {
  const byKey = new Map<string, JoinOverTime>();
  for (const { day, take } of runs) {
    for (const join of joinsOf(take, score)) {
      const before = byKey.get(keyOf(join))?.waits ?? [];
      byKey.set(keyOf(join), { join, waits: [...before, { day, wait: join.wait }] });
    }
  }
  return [...byKey.values()]
    .map(({ join, waits }) => ({ join, waits: meanOfDays(waits) }))
    .toSorted((a, b) => lastOf(b) - lastOf(a) || keyOf(a.join).localeCompare(keyOf(b.join)))
    .slice(0, MOST_JOINS);
}

interface JoinLinesProps {
  /** Oldest first, at least one. */
  readonly runs: readonly HeardEvent[];
  readonly score: Score;
}

export function JoinLines({ runs, score }: JoinLinesProps) {
  const [first, last] = [runs[0]!.day, runs.at(-1)!.day];
  const days = Math.max(1, dayNumber(last) - dayNumber(first));
  /** On one day the takes stand side by side. */
  const x = (day: string, i: number, count: number): number =>
    4 +
    (first === last ? i / Math.max(1, count - 1) : (dayNumber(day) - dayNumber(first)) / days) *
      (WIDTH - 8);
  return (
    <table class={styles.joins}>
      <caption>
        The joins, the one that waits longest first:{' '}
        {first === last ? shortDay(first) : `${shortDay(first)} to ${shortDay(last)}`}
      </caption>
      <tbody>
        {joinsOverTime(runs, score).map(({ join, waits }) => (
          <tr key={keyOf(join)}>
            <th scope="row">{nameOf(join, score)}</th>
            <td>
              <svg class={styles.line} width={WIDTH} height={HEIGHT} aria-hidden="true">
                <line class={styles.zero} x1={0} x2={WIDTH} y1={y(0)} y2={y(0)} />
                <polyline
                  class={styles.waits}
                  points={waits
                    .map(({ day, wait }, i) => `${x(day, i, waits.length)},${y(wait)}`)
                    .join(' ')}
                />
                <circle
                  class={styles.last}
                  cx={x(waits.at(-1)!.day, waits.length - 1, waits.length)}
                  cy={y(waits.at(-1)!.wait)}
                  r={3}
                />
              </svg>
            </td>
            <td class={styles.size}>{sizeText(waits.at(-1)!.wait)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Milliseconds as "0.06 s"; what comes sooner than steady, or on time, waits for nothing. */
const sizeText = (wait: number): string => (wait < 5 ? 'no wait' : `${(wait / 1000).toFixed(2)} s`);

/** "left hand, going down: thumb under to F". */
function nameOf({ hand, way, tone, change }: Join, score: Score): string {
  const key = score[hand].find(({ keys }) => keys[0]!.tone === tone)!.keys[0]!;
  const name = displayName(key.name, preferences.value.nameStyle);
  return `${hand} hand, going ${way}: ${change} to ${name}`;
}
