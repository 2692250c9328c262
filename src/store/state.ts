/** What is derived from the log, as signals, kept in step with the log one piece of work after another. */
import { batch, computed, type ReadonlySignal, signal } from '@preact/signals';
import type { Day, RunEvent, StudentId } from '../../shared/log/events';
import { newStudent, type Student } from '../../shared/planning/student';
import { StoreError } from './errors';
import {
  catchUp,
  emptyLog,
  isCheckpointDue,
  keepCheckpoint,
  openLog,
  type Position,
} from './follow';
import type { Connection } from './open';
import { type Listed, newlyListed } from './roster';
import type { UnreadEvent, View } from './timeline';

export type StoreStatus =
  | 'opening'
  /** A long log is being read from its beginning. */
  | 'reading'
  | 'ready'
  /** A newer version of the app has the database: this page can only be reloaded. */
  | 'outdated'
  | 'failed';

export interface StateSignals {
  readonly status: ReadonlySignal<StoreStatus>;
  /** What the person should know about storage; its message says what to do. */
  readonly problem: ReadonlySignal<StoreError | null>;
  /** Replay of the whole log. */
  readonly student: ReadonlySignal<Student>;
  /** The same without today's runs: the basis of today's plan. */
  readonly dayStart: ReadonlySignal<Student>;
  readonly today: ReadonlySignal<Day>;
  /** Not voided, oldest first. */
  readonly todaysRuns: ReadonlySignal<readonly RunEvent[]>;
  /** Damaged or newer events that were set aside. */
  readonly unread: ReadonlySignal<readonly UnreadEvent[]>;
  /** Who is shown; null as long as nothing has been recorded. */
  readonly shown: ReadonlySignal<StudentId | null>;
  /** All students of this device, in the order in which they came to it. */
  readonly listed: ReadonlySignal<readonly Listed[]>;
}

export interface LogState {
  readonly signals: StateSignals;
  /** Takes in what came into the log since, from this window or another. Never rejects: `problem` tells. */
  sync(): Promise<void>;
  /** Follows the calendar. Never rejects. */
  followDay(): Promise<void>;
  /** The log has been deleted. */
  reset(): Promise<void>;
  outdated(): void;
  /** Another window keeps the database from opening, or no longer does. */
  blocked(isBlocked: boolean): void;
  close(): void;
}

/** Calls back when the page has nothing better to do; Safari has no idle callback. */
const whenIdle = (task: () => void): void => {
  if ('requestIdleCallback' in globalThis) requestIdleCallback(task, { timeout: 5000 });
  else setTimeout(task, 1000);
};

export function followLog(connection: Connection, dayNow: () => Day): LogState {
  const nobody = newStudent();
  const status = signal<StoreStatus>('opening');
  const problem = signal<StoreError | null>(null);
  const today = signal(dayNow());
  const view = signal<View>({ student: nobody, dayStart: nobody, todaysRuns: [], unread: [] });
  const shown = signal<StudentId | null>(null);
  const roster = signal<readonly Listed[]>([]);
  const listed = computed((): readonly Listed[] => {
    if (shown.value === null) return [];
    const all = roster.value.length === 0 ? [newlyListed(shown.value)] : roster.value;
    const { name } = view.value.student;
    return all.map((one) => (one.id === shown.value ? { ...one, name } : one));
  });
  let position: Position | null = null;
  let isClosed = false;
  let work = Promise.resolve();

  /** One after another, so that no two pieces of work change the position at once. */
  const inTurn = (task: () => Promise<void>): Promise<void> => {
    work = work.then(() => (isClosed ? undefined : task().catch(fail)));
    return work;
  };

  const fail = (error: unknown) => {
    if (status.peek() === 'outdated' || isClosed) return;
    batch(() => {
      problem.value =
        error instanceof StoreError ? error : new StoreError('failed', { cause: error });
      status.value = position === null ? 'failed' : 'ready';
    });
  };

  const publish = (reached: Position, day: Day = today.value) => {
    position = reached;
    batch(() => {
      today.value = day;
      view.value = reached.timeline.view(day);
      shown.value = reached.student;
      roster.value = reached.roster;
      status.value = 'ready';
      problem.value = null;
    });
    if (isCheckpointDue(reached)) whenIdle(() => void inTurn(keep));
  };

  const keep = async () => {
    const reached = position;
    if (reached === null || !isCheckpointDue(reached)) return;
    position = await connection.run((database) => keepCheckpoint(database, reached));
  };

  const onLong = () => {
    status.value = 'reading';
  };

  const start = async (day: Day = today.value) => {
    const reached = await connection.run((database) => openLog(database, { today: day, onLong }));
    publish(reached, day);
  };

  const reread = async (day?: Day) => {
    await start(day);
    await takeIn();
  };

  const takeIn = async () => {
    const from = position;
    if (from === null) return start();
    const reached = await connection.run((database) => catchUp(database, from, today.value));
    if (reached === null) return reread();
    if (reached !== from) publish(reached);
    else problem.value = null;
  };

  /** The day and what is shown of it change at once, also where the log has to be read for it. */
  const turnTo = async (day: Day) => {
    if (position === null) {
      today.value = day;
      return;
    }
    if (!position.timeline.canStandOn(day)) return reread(day);
    position.timeline.add([], day);
    publish(position, day);
  };

  return {
    signals: {
      status,
      problem,
      student: computed(() => view.value.student),
      dayStart: computed(() => view.value.dayStart),
      today,
      todaysRuns: computed(() => view.value.todaysRuns),
      unread: computed(() => view.value.unread),
      shown,
      listed,
    },
    sync: () => inTurn(takeIn),
    followDay: () => {
      const day = dayNow();
      return day === today.peek() ? work : inTurn(() => turnTo(day));
    },
    reset: () => inTurn(async () => publish(emptyLog())),
    outdated: () =>
      batch(() => {
        status.value = 'outdated';
        problem.value = new StoreError('outdated');
      }),
    blocked: (isBlocked) => {
      if (isBlocked) problem.value = new StoreError('blocked');
      else if (problem.peek()?.kind === 'blocked') problem.value = null;
    },
    close: () => {
      isClosed = true;
    },
  };
}
