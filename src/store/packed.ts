/** The long tables of a student by columns, which IndexedDB keeps in a third of the room and reads faster. */
import type { Day, Fluency } from '../../shared/log/events';
import type { ItemId } from '../../shared/music/deck';
import type { LastRun, Student, Work } from '../../shared/planning/student';

export interface PackedLastRuns {
  /** Separated by spaces, as all texts here. */
  readonly items: string;
  readonly days: string;
  readonly tempos: Float64Array;
  readonly fluencies: Uint8Array;
  readonly pedals: Uint8Array;
}

export interface PackedWork {
  readonly days: string;
  readonly runs: Uint32Array;
  readonly seconds: Float64Array;
}

export function packLastRuns(lastRuns: Student['lastRuns']): PackedLastRuns {
  const runs = [...lastRuns.values()];
  return {
    items: [...lastRuns.keys()].join(' '),
    days: runs.map(({ day }) => day).join(' '),
    tempos: Float64Array.from(runs, ({ tempo }) => tempo),
    fluencies: Uint8Array.from(runs, ({ fluency }) => fluency),
    pedals: Uint8Array.from(runs, ({ pedal }) => Number(pedal)),
  };
}

export function unpackLastRuns(packed: PackedLastRuns): Student['lastRuns'] {
  const { tempos, fluencies, pedals } = packed;
  const days = packed.days.split(' ');
  const lastRuns = new Map<ItemId, LastRun>();
  for (let i = 0, items = packed.items.split(' '); i < tempos.length; i++) {
    lastRuns.set(items[i] as ItemId, {
      day: days[i]!,
      tempo: tempos[i]!,
      fluency: fluencies[i] as Fluency,
      pedal: pedals[i] === 1,
    });
  }
  return lastRuns;
}

export function packWork(work: Student['work']): PackedWork {
  const days = [...work.values()];
  return {
    days: [...work.keys()].join(' '),
    runs: Uint32Array.from(days, ({ runs }) => runs),
    seconds: Float64Array.from(days, ({ seconds }) => seconds),
  };
}

export function unpackWork(packed: PackedWork): Student['work'] {
  const { runs, seconds } = packed;
  const work = new Map<Day, Work>();
  for (let i = 0, days = packed.days.split(' '); i < runs.length; i++) {
    work.set(days[i]!, { runs: runs[i]!, seconds: seconds[i]! });
  }
  return work;
}
