/** A store in memory with the contract of the real one, for the tests of the screens. */
import { computed, signal } from '@preact/signals';
import { addDays } from '../../shared/log/day';
import {
  type Day,
  type EventBody,
  isAtKeys,
  type LogEvent,
  type RunEvent,
} from '../../shared/log/events';
import { replay, voidedBy } from '../../shared/planning/student';
import type { Store } from '../../src/store/store';

export interface FakeStore extends Store {
  readonly log: readonly LogEvent[];
  /** While it is set, nothing can be recorded. */
  failure: Error | null;
  nextDay(): void;
}

const isRun = (event: LogEvent): event is RunEvent => event.kind === 'run';

export function fakeStore(
  bodies: readonly EventBody[],
  kept: Record<string, unknown> = {},
): FakeStore {
  const today = signal<Day>('2026-11-25');
  const log = signal<readonly LogEvent[]>([]);
  const records = new Map(Object.entries(kept));
  const add = (more: readonly EventBody[]): readonly LogEvent[] => {
    const events = more.map((body, i): LogEvent => {
      const id = String(log.value.length + i).padStart(6, '0');
      const at = Date.parse(`${today.value}T10:00:00Z`);
      return {
        ...body,
        id,
        at,
        version: 1,
        day: today.value,
        device: 'device',
        student: 'student',
      };
    });
    log.value = [...log.value, ...events];
    return events;
  };
  add(bodies);
  const counted = computed(() => {
    const voided = voidedBy(log.value);
    return log.value.filter((event) => !voided.has(event.id));
  });
  return {
    status: signal('ready'),
    student: computed(() => replay(log.value)),
    dayStart: computed(() =>
      replay(counted.value.filter((event) => !isAtKeys(event) || event.day !== today.value)),
    ),
    today,
    todaysRuns: computed(() =>
      counted.value.filter(isRun).filter((event) => event.day === today.value),
    ),
    unread: signal([]),
    get log() {
      return log.value;
    },
    failure: null,
    nextDay() {
      today.value = addDays(today.value, 1);
    },
    async record(more) {
      if (this.failure) throw this.failure;
      return add(more);
    },
    runsOf: async (item) => counted.value.filter(isRun).filter((event) => event.item === item),
    backup: async () => new Blob([]),
    previewBackup: () => Promise.reject(new Error('not in this test')),
    restore: () => Promise.reject(new Error('not in this test')),
    keep: async (key, value) => void records.set(key, structuredClone(value)),
    kept: async (key) => records.get(key),
    wipe: async () => undefined,
    close: () => undefined,
  };
}
