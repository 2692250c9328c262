/** Today's list as the screens use it: the plan, what of it is done, the person's wishes for today, and what is open. */
import { computed, signal, type ReadonlySignal } from '@preact/signals';
import * as v from 'valibot';
import type { Day, EventId, RunEvent } from '../../shared/log/events';
import type { ItemId } from '../../shared/music/deck';
import { planWithCare, SORE, type Sore } from '../../shared/planning/care';
import { minutesOn } from '../../shared/planning/dates';
import {
  DRILL_SECONDS,
  type DrillOffer,
  isPlayed,
  offerDrills,
} from '../../shared/planning/drills/offer';
import { applyEvents, cloneStudent, type Student } from '../../shared/planning/student';
import { type DayPlan, type Entry, planDay } from '../../shared/planning/today';
import { WISHES } from '../store/own-keys';
import type { Store } from '../store/store';
import { logKeyOf, newSession, readSession, SESSION_KEY, type Session } from './session';

export interface ListedEntry {
  readonly entry: Entry;
  readonly state: 'open' | 'done' | 'left out';
  /** Items of it that have no run yet today. */
  readonly open: readonly ItemId[];
}

/** A drill before the rounds. */
export interface ListedDrill {
  readonly offer: DrillOffer;
  readonly state: 'open' | 'done' | 'left out';
}

/** What the person wants of this one day; the next day begins without. */
interface Wishes {
  readonly day: Day;
  /** Null: as many as the programme says. */
  readonly minutes: number | null;
  /** Keys of entries and ids of drills. */
  readonly leftOut: readonly string[];
  readonly sore: Sore | null;
  /** Keys of entries that were gone through in the mind; nothing of them is in the log. */
  readonly thought: readonly string[];
  /** The last run before each further list of the day: a second sitting goes on from there. */
  readonly listsAfter: readonly EventId[];
}

const wishesSchema = v.object({
  day: v.string(),
  minutes: v.nullable(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(240))),
  leftOut: v.array(v.string()),
  sore: v.optional(v.nullable(v.picklist(SORE)), null),
  thought: v.optional(v.array(v.string()), []),
  listsAfter: v.optional(v.array(v.string()), []),
});

export interface DayList {
  /** What the plan rests on: the start of the day, and what was played before the list was begun. */
  readonly basis: ReadonlySignal<Student>;
  /** Null until the log and the day's wishes have been read, and without a programme. */
  readonly plan: ReadonlySignal<DayPlan | null>;
  readonly entries: ReadonlySignal<readonly ListedEntry[]>;
  /** Played before the entries. */
  readonly drills: ReadonlySignal<readonly ListedDrill[]>;
  /** The first that is open. */
  readonly next: ReadonlySignal<ListedEntry | null>;
  readonly minutes: ReadonlySignal<number>;
  /** Which of the day's lists it is: 1 for the first. */
  readonly sitting: ReadonlySignal<number>;
  /** The hand that is to rest today. */
  readonly sore: ReadonlySignal<Sore | null>;
  /** What has begun and is not yet in the log. */
  readonly session: ReadonlySignal<Session | null>;
  /** The same, or else the next entry from its beginning; null at the end of the list. */
  readonly current: ReadonlySignal<Session | null>;
  /** False until what the device keeps about today has been read. */
  readonly isRead: ReadonlySignal<boolean>;
  setMinutes(minutes: number): void;
  setSore(sore: Sore | null): void;
  /** Makes another list for the same day, from what has been played so far. */
  makeAnother(): void;
  /** An entry was gone through in the mind. */
  noteThought(key: string): void;
  leaveOut(key: string): void;
  putBack(key: string): void;
  /** Rejects if it could not be kept; it holds all the same until the page is left. */
  setSession(session: Session | null): Promise<void>;
  /** Tells that what is open stands on the music stand, where it outlasts midnight; returns what tells that it is left. */
  standUp(): () => void;
}

const ofStore = new WeakMap<Store, DayList>();

/** The list of a store; the same one for every screen. */
export function dayListOf(store: Store): DayList {
  const known = ofStore.get(store);
  if (known !== undefined) return known;
  const list = createDayList(store);
  ofStore.set(store, list);
  return list;
}

function createDayList(store: Store): DayList {
  const wishes = signal<Wishes | null>(null);
  const session = signal<Session | null>(null);
  const isOnStand = signal(false);
  const isRead = signal(false);
  void readKept(store).then((kept) => {
    wishes.value = kept.wishes;
    session.value = kept.session;
    isRead.value = true;
  });

  const wishesToday = computed<Wishes>(() => {
    const day = store.today.value;
    const ofToday = wishes.value?.day === day ? wishes.value : null;
    return ofToday ?? { day, minutes: null, leftOut: [], sore: null, thought: [], listsAfter: [] };
  });
  const programme = computed(() => store.student.value.programme);
  const minutes = computed(() => {
    const usual = programme.value === null ? 0 : minutesOn(programme.value, store.today.value);
    return wishesToday.value.minutes ?? usual;
  });
  const after = computed(() => wishesToday.value.listsAfter.at(-1) ?? null);
  const sitting = computed(() => wishesToday.value.listsAfter.length + 1);
  const isReady = computed(() => isRead.value && store.status.value === 'ready');
  // On its own: other wishes, as what is left out, must not have the day planned anew.
  const sore = computed(() => wishesToday.value.sore);
  const offers = computed(() =>
    sore.value === null && sitting.value === 1
      ? offerDrills(store.dayStart.value, store.today.value, minutes.value)
      : [],
  );
  // As text, so that the day is not planned anew for each run of the list.
  const idsBefore = computed(() =>
    runsBeforeList(store.todaysRuns.value, after.value)
      .map(({ id }) => id)
      .join(),
  );
  const basis = computed(() =>
    idsBefore.value === ''
      ? store.dayStart.value
      : withRuns(store.dayStart.value, runsBeforeList(store.todaysRuns.peek(), after.value)),
  );
  const plan = computed((): DayPlan | null => {
    if (!isReady.value || programme.value === null) return null;
    const [student, day] = [basis.value, store.today.value];
    if (sore.value !== null) return planWithCare(student, day, minutes.value, sore.value);
    const forDrills = (offers.value.length * DRILL_SECONDS) / 60;
    return planDay(student, day, minutes.value - forDrills, sitting.value);
  });
  const entries = computed(() =>
    (plan.value?.entries ?? []).map((entry) =>
      listed(entry, store.todaysRuns.value, wishesToday.value),
    ),
  );
  const drills = computed(() =>
    offers.value.map((offer): ListedDrill => {
      if (isPlayed(store.student.value, offer.drill, store.today.value)) {
        return { offer, state: 'done' };
      }
      const isLeftOut = wishesToday.value.leftOut.includes(offer.drill);
      return { offer, state: isLeftOut ? 'left out' : 'open' };
    }),
  );
  // A page that died between recording and forgetting must not ask for the same ratings again.
  const openSession = computed(() => {
    const { value } = session;
    if (value === null) return null;
    // What was left on an earlier day is not taken up again: the new day has a list of its own.
    if (value.day !== store.today.value && !isOnStand.value) return null;
    const { items } = value.entry;
    const played = playedOf(logKeyOf(value.entry), store.todaysRuns.value);
    return items.some((item) => played.has(item)) ? null : value;
  });
  const next = computed(() => entries.value.find(({ state }) => state === 'open') ?? null);
  const setWishes = (change: Partial<Wishes>) => {
    wishes.value = { ...wishesToday.value, ...change };
    // A wish that could not be kept holds until the page is left; it is no loss worth a message.
    store.keep(WISHES, wishes.value).catch(() => undefined);
  };

  const setSession = (changed: Session | null) => {
    session.value = changed;
    return store.keep(SESSION_KEY, changed ?? undefined);
  };

  return {
    basis,
    plan,
    entries,
    drills,
    next,
    minutes,
    sitting,
    sore,
    session: openSession,
    current: computed(() => {
      if (openSession.value !== null || next.value === null) return openSession.value;
      return newSession(store.today.value, next.value.entry, next.value.open);
    }),
    isRead,
    setMinutes: (wish) => setWishes({ minutes: wish }),
    setSore: (hand) => {
      setWishes({ sore: hand });
      // What was begun with the hand that hurts is not gone on with; what waits for its rating is not lost.
      if (openSession.value?.phase === 'playing') setSession(null).catch(() => undefined);
    },
    makeAnother: () => {
      const last = store.todaysRuns.value.at(-1);
      if (last === undefined) throw new Error('another list before anything was played');
      setWishes({ listsAfter: [...wishesToday.value.listsAfter, last.id] });
    },
    noteThought: (key) => setWishes({ thought: [...wishesToday.value.thought, key] }),
    leaveOut: (key) => setWishes({ leftOut: [...wishesToday.value.leftOut, key] }),
    putBack: (key) =>
      setWishes({ leftOut: wishesToday.value.leftOut.filter((other) => other !== key) }),
    setSession,
    standUp: () => {
      if (openSession.peek() === null) session.value = null;
      isOnStand.value = true;
      return () => {
        const [open, day] = [openSession.peek(), store.today.peek()];
        // Played through midnight, it is of the day that has begun.
        if (open !== null && open.day !== day) setSession({ ...open, day }).catch(() => undefined);
        isOnStand.value = false;
      };
    },
  };
}

async function readKept(store: Store) {
  const [wishes, session] = await Promise.all([
    store.kept(WISHES).catch(() => null),
    store.kept(SESSION_KEY).catch(() => null),
  ]);
  const read = v.safeParse(wishesSchema, wishes);
  return { wishes: read.success ? read.output : null, session: readSession(session) };
}

/**
 * Those that came before the list was begun: earlier lists of the day up to the run `after`, and what was outside a
 * list, as placement, a lesson or a recording.
 */
function runsBeforeList(runs: readonly RunEvent[], after: EventId | null): readonly RunEvent[] {
  const begun = runs.findIndex(({ id, entry }) => entry !== null && (after === null || id > after));
  return begun < 0 ? runs : runs.slice(0, begun);
}

function withRuns(student: Student, runs: readonly RunEvent[]): Student {
  const changed = cloneStudent(student);
  applyEvents(changed, runs, new Set());
  return changed;
}

/** Items that have a run today under an entry of the list, or outside it. */
const playedOf = (key: string | null, runs: readonly RunEvent[]): ReadonlySet<ItemId> =>
  new Set(runs.filter((run) => run.entry === key).map((run) => run.item));

function listed(
  entry: Entry,
  runs: readonly RunEvent[],
  { leftOut, thought }: Wishes,
): ListedEntry {
  const played = playedOf(entry.key, runs);
  const open = entry.items.filter((item) => !played.has(item));
  if (open.length === 0 || thought.includes(entry.key)) return { entry, state: 'done', open };
  return { entry, state: leftOut.includes(entry.key) ? 'left out' : 'open', open };
}
