/**
 * The log of a student in the order of its ids, folded as far as it can be: everything before the first event of today
 * is one state (`base`), the rest stays event by event (`tail`), to be folded with and without today's runs.
 */
import type { Decoded } from '../../shared/formats/event';
import { decodeKept, goesBefore, type KeptEvent } from '../../shared/formats/kept';
import {
  type Day,
  type EventId,
  isAtKeys,
  type LogEvent,
  type RunEvent,
} from '../../shared/log/events';
import { applyEvents, cloneStudent, newStudent, type Student } from '../../shared/planning/student';

/** An event that was set aside: it stays in the log and in backups. */
export interface UnreadEvent {
  readonly id: EventId;
  readonly outcome: 'newer' | 'damaged';
  readonly problem: string;
}

export interface Entry {
  readonly id: EventId;
  readonly decoded: Decoded;
}

export interface View {
  readonly student: Student;
  /** The same without today's runs; one that was voided tells nothing, and may be folded already. */
  readonly dayStart: Student;
  /** Not voided. */
  readonly todaysRuns: readonly RunEvent[];
  readonly unread: readonly UnreadEvent[];
}

export interface Base {
  readonly state: Student;
  /** The last id that is folded; '' before the first. */
  readonly upTo: EventId;
  readonly unread: readonly UnreadEvent[];
}

export const entryOf = (kept: KeptEvent): Entry => ({ id: kept.id, decoded: decodeKept(kept) });

const eventsOf = (entries: readonly Entry[]): readonly LogEvent[] =>
  entries.flatMap(({ decoded }) => (decoded.outcome === 'ok' ? [decoded.event] : []));

const unreadOf = (entries: readonly Entry[]): readonly UnreadEvent[] =>
  entries.flatMap(({ id, decoded }) =>
    decoded.outcome === 'ok' ? [] : [{ id, outcome: decoded.outcome, problem: decoded.problem }],
  );

const isOf = (day: Day, { decoded }: Entry): boolean =>
  decoded.outcome === 'ok' && decoded.event.day === day;

const byId = (a: Entry, b: Entry): number => (a.id < b.id ? -1 : 1);

export class Timeline {
  private base: { state: Student; upTo: EventId; unread: readonly UnreadEvent[] };
  private tail: readonly Entry[] = [];
  private readonly voided = new Set<EventId>();
  /** Whether a view shows the folded state itself, which must then not be changed any more. */
  private isShown = false;
  private dayStart: { readonly key: string; readonly student: Student } | null = null;

  constructor(base?: Base) {
    this.base = base ? { ...base } : { state: newStudent(), upTo: '', unread: [] };
  }

  get folded(): Base {
    return this.base;
  }

  /** Makes corrections known before the events that they void are added. */
  hear(entries: readonly Entry[]): void {
    for (const event of eventsOf(entries)) {
      if (event.kind === 'void') for (const id of event.events) this.voided.add(id);
    }
  }

  /** Whether the fold can stand on this day: not if a run of that very day is part of it (the clock was put back). */
  canStandOn(today: Day): boolean {
    return !this.base.state.work.has(today);
  }

  /** Whether these can be added without touching what is folded. */
  canTake(entries: readonly Entry[]): boolean {
    const { upTo } = this.base;
    return (
      entries.every(({ id }) => id > upTo) &&
      eventsOf(entries).every(
        (event) => event.kind !== 'void' || event.events.every((id) => id > upTo),
      )
    );
  }

  /**
   * Adds entries in any order, and folds what lies before the first event of today. One that is there already is passed
   * over, unless a damaged one has been mended.
   */
  add(entries: readonly Entry[], today: Day): void {
    this.hear(entries);
    const all = new Map(this.tail.map((entry) => [entry.id, entry]));
    for (const entry of entries) {
      const before = all.get(entry.id)?.decoded.outcome;
      if (goesBefore(entry.decoded.outcome, before)) all.set(entry.id, entry);
    }
    const open = [...all.values()].toSorted(byId);
    const firstOfToday = open.findIndex((entry) => isOf(today, entry));
    const split = firstOfToday < 0 ? open.length : firstOfToday;
    this.tail = open.slice(split);
    this.fold(open.slice(0, split));
  }

  private fold(entries: readonly Entry[]): void {
    const last = entries.at(-1);
    if (last === undefined) return;
    if (this.isShown) this.base.state = cloneStudent(this.base.state);
    this.isShown = false;
    applyEvents(this.base.state, eventsOf(entries), this.voided);
    this.base.upTo = last.id;
    this.base.unread = [...this.base.unread, ...unreadOf(entries)];
  }

  view(today: Day): View {
    const events = eventsOf(this.tail);
    const isOfToday = (event: LogEvent) =>
      isAtKeys(event) && event.day === today && !this.voided.has(event.id);
    const runs = events.filter(isOfToday).filter((event) => event.kind === 'run');
    return {
      student: this.after(events),
      dayStart: this.dayStartAfter(events.filter((event) => !isOfToday(event))),
      todaysRuns: runs,
      unread: [...this.base.unread, ...unreadOf(this.tail)],
    };
  }

  /** A copy is only made where it is needed: that of a long log takes a while. */
  private after(events: readonly LogEvent[]): Student {
    if (events.length === 0) {
      this.isShown = true;
      return this.base.state;
    }
    const student = cloneStudent(this.base.state);
    applyEvents(student, events, this.voided);
    return student;
  }

  /** The same object as long as nothing but runs of today comes in, so that the day is not planned anew for each. */
  private dayStartAfter(events: readonly LogEvent[]): Student {
    const key = [this.base.upTo, ...events.map((event) => event.id)].join();
    if (this.dayStart?.key !== key) this.dayStart = { key, student: this.after(events) };
    return this.dayStart.student;
  }
}
