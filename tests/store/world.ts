/** What the store's tests stand on: a clock that can be set, stores of a fresh database, and the raw database below. */
import { deleteDB, openDB } from 'idb';
import { decodeKept } from '../../shared/formats/kept';
import { dayOf } from '../../src/clock';
import {
  type EventBody,
  type EventId,
  isAtKeys,
  type LogEvent,
  type RunBody,
  type StudentId,
} from '../../shared/log/events';
import { DEFAULT_PROGRAMME, type Programme } from '../../shared/log/programme';
import { DECK } from '../../shared/music/deck';
import { replay, type Student, voidedBy } from '../../shared/planning/student';
import { type Checkpoint, readCheckpoint } from '../../src/store/checkpoint';
import {
  type LogDatabase,
  type LogRecord,
  type LogSchema,
  SCHEMA_VERSION,
  upgrade,
} from '../../src/store/schema';
import { openStore, type Store } from '../../src/store/store';
import { read } from '../../src/store/transaction';
import { same, until } from './check';

export const DAY = 86_400_000;
/** Four in the afternoon of a Wednesday, by the clock of the place. */
export const START = new Date(2026, 10, 25, 16).getTime();

export const run = (change: Partial<RunBody> = {}): RunBody => ({
  kind: 'run',
  item: 'd.major-6.right.2',
  tempo: 120,
  fluency: 3,
  pedal: false,
  judge: 'player',
  entry: null,
  ...change,
});

export const programme = (change: Partial<Programme> = {}): EventBody => ({
  kind: 'programme',
  programme: { ...DEFAULT_PROGRAMME, ...change },
});

/** As many different runs. */
export const runs = (count: number): readonly RunBody[] =>
  Array.from({ length: count }, (_, i) =>
    run({
      item: DECK[(i * 31) % DECK.length]!.id,
      tempo: 80 + ((i * 7) % 100),
      fluency: ([3, 2, 4, 1, 0] as const)[i % 5]!,
    }),
  );

type OpenStore = ReturnType<typeof openStore>;

let worlds = 0;

/** One device: a database of its own and a clock. */
export class World {
  at = START;
  private readonly stores: Store[] = [];

  constructor(readonly name = `arpeggiary-test-${(worlds += 1)}`) {}

  open(): OpenStore {
    const store = openStore({ name: this.name, now: () => this.at, dayOf });
    this.stores.push(store);
    return store;
  }

  /** Opens a store and waits until it has read the log. */
  async ready(): Promise<OpenStore> {
    const store = this.open();
    await until(() => store.status.value === 'ready');
    return store;
  }

  /** Works on the database behind the back of all stores. */
  async raw<T>(work: (database: LogDatabase) => Promise<T>): Promise<T> {
    const database = await openDB<LogSchema>(this.name, SCHEMA_VERSION, { upgrade });
    try {
      return await work(database);
    } finally {
      database.close();
    }
  }

  records(): Promise<readonly LogRecord[]> {
    return this.raw((database) => database.getAll('events'));
  }

  async events(): Promise<readonly LogEvent[]> {
    const records = await this.records();
    return records.flatMap((record) => {
      const decoded = decodeKept(record);
      return decoded.outcome === 'ok' ? [decoded.event] : [];
    });
  }

  /**
   * The student as the log has it, rebuilt from nothing: the only one unless another is named; without the runs of one
   * day if that is given (one that was voided tells nothing, and is left in).
   */
  async rebuilt(student?: StudentId, without?: string): Promise<Student> {
    const events = (await this.events()).filter(
      (event) => event.student === (student ?? event.student),
    );
    const voided = voidedBy(events);
    return replay(
      events.filter((event) => event.day !== without || !isAtKeys(event) || voided.has(event.id)),
    );
  }

  /** What a store shows is what the log says, to the last digit. */
  async agrees(store: Store, student?: StudentId): Promise<void> {
    same(store.student.value, await this.rebuilt(student), 'student');
    same(store.dayStart.value, await this.rebuilt(student, store.today.value), 'start of the day');
  }

  /** The same, once the store has heard of what another window did. */
  async inStep(store: Store): Promise<void> {
    const { length } = await this.events();
    await until(() => store.student.value.eventCount === length);
    await this.agrees(store);
  }

  /** Waits until a store that was told to has caught up with the calendar. */
  async settled(store: Store): Promise<void> {
    comeBack();
    await until(() => store.today.value === dayOf(this.at));
  }

  checkpoint(): Promise<Checkpoint | null> {
    return this.raw((database) => read(database, readCheckpoint));
  }

  /**
   * Five runs a day for some days from now; then the next day, with the checkpoint written and no store open. The ids of
   * the runs, oldest first.
   */
  async practise(days: number): Promise<readonly EventId[]> {
    const store = await this.ready();
    await store.record([programme()]);
    const ids: EventId[] = [];
    for (let day = 0; day < days; day++) {
      ids.push(...(await store.record(runs(5))).map(({ id }) => id));
      this.at += DAY;
    }
    store.close();
    const next = await this.ready();
    // The first store may have kept one of an earlier day.
    await until(async () => (await this.checkpoint())?.base.upTo === ids.at(-1));
    next.close();
    return ids;
  }

  /** The log as a file, as a window of its own writes it. */
  async backup(): Promise<File> {
    const store = await this.ready();
    const file = new File([await store.backup()], 'log.arpeggiary');
    store.close();
    return file;
  }

  async end(): Promise<void> {
    for (const store of this.stores) store.close();
    await deleteDB(this.name);
  }
}

/** What the store promises, each with its name. */
export type Promises = Readonly<Record<string, (world: World) => Promise<void>>>;

/** What a browser tells a page when the person comes back to it. */
export const comeBack = (): boolean => document.dispatchEvent(new Event('visibilitychange'));
