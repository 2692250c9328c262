/**
 * How each of several students stands: from the parked checkpoint and what came after it, or else from the whole log,
 * which then leaves a checkpoint, so that it is read once. Long work: a thread of its own does it (studio-thread.ts).
 */
import type { Day, EventId, LogEvent, StudentId } from '../../shared/log/events';
import { type StudioFigures, studioFigures } from '../../shared/planning/studio';
import { readCheckpoint, writeCheckpoint } from './checkpoint';
import { isCheckpointDue, type Position, rebuild } from './follow';
import { readExchange } from './hand-over';
import type { Connection } from './open';
import { after, BATCH, readStanding } from './read';
import { DEVICE, type LogDatabase } from './schema';
import { entryOf, Timeline } from './timeline';
import { note, read } from './transaction';

export interface Overview {
  readonly student: StudentId;
  readonly figures: StudioFigures;
  /**
   * When the last file from elsewhere was made, in milliseconds since 1970 UTC: of a student who practises on another
   * device, or else null.
   */
  readonly cameAt: number | null;
  /** The day of the last hand-over from here, if there is something that it lacks. */
  readonly givenOn: Day | null;
}

export interface StudioOrder {
  readonly students: readonly StudentId[];
  readonly today: Day;
}

export interface StudioAsk extends StudioOrder {
  /** Told of each student as soon as it is known, in the order given. */
  readonly tell: (overview: Overview) => void;
  /** Ends the reading, which is then as good as done. */
  readonly over: AbortSignal;
}

const nothing = () => undefined;

/** The record of a student from its checkpoint, if there is one that can be used. */
async function openRecord(
  database: LogDatabase,
  student: StudentId,
  today: Day,
): Promise<Position> {
  const opening = await read(database, async (transaction) => {
    const standing = await readStanding(transaction);
    const parked = standing.student === student ? null : student;
    const checkpoint = await readCheckpoint(transaction, parked);
    if (checkpoint?.student !== student) return null;
    const index = transaction.objectStore('events').index('replay');
    const records = await index.getAll(after(student, checkpoint.base.upTo), BATCH);
    return { ...standing, base: checkpoint.base, records };
  });
  if (opening === null || opening.records.length === BATCH) {
    return rebuild(database, { today, onLong: nothing }, student);
  }
  const { base, records, ...standing } = opening;
  const { upTo } = base;
  const timeline = new Timeline(base);
  timeline.add(records.map(entryOf), today);
  return { ...standing, student, timeline, keptUpTo: upTo };
}

/** Keeps the fold for the next time, unless something has happened meanwhile that it may lack. */
const park = (database: LogDatabase, { student, sequence, timeline }: Position): Promise<void> =>
  note(database, async (transaction) => {
    const { student: shown, roster, sequence: now } = await readStanding(transaction);
    const isParked = student !== shown && roster.some(({ id }) => id === student);
    if (student === null || !isParked || now !== sequence) return;
    await writeCheckpoint(transaction, { student, base: timeline.folded }, true);
  });

/** The least id of an event of a time (RFC 9562: version 7 begins with 48 bits of milliseconds). */
const idAt = (time: number): EventId => {
  const hex = time.toString(16).padStart(12, '0');
  return `${hex.slice(0, 8)}-${hex.slice(8)}`;
};

/** What the teacher rates in the lesson is no practice. */
const isByPlayer = (event: LogEvent): boolean => event.kind === 'run' && event.judge === 'player';

const readWaiting = (database: LogDatabase, student: StudentId) =>
  read(database, async (transaction): Promise<Pick<Overview, 'cameAt' | 'givenOn'>> => {
    const { given, came } = await readExchange(transaction, student);
    const index = transaction.objectStore('events').index('replay');
    const [device, lacking, later] = await Promise.all([
      transaction.objectStore('kept').get(DEVICE),
      given === null ? 0 : index.count(after(student, given.mark.event)),
      came === null ? [] : index.getAll(after(student, idAt(came)), BATCH),
    ]);
    const practisesHere = later.some((record) => {
      const { decoded } = entryOf(record);
      if (decoded.outcome !== 'ok') return false;
      return decoded.event.device === device && isByPlayer(decoded.event);
    });
    return {
      cameAt: practisesHere ? null : came,
      givenOn: given === null || lacking === 0 ? null : given.day,
    };
  });

/** Rejects with a StoreError. */
export async function readStudio(
  connection: Connection,
  { students, today, tell, over }: StudioAsk,
): Promise<void> {
  for (const student of students) {
    if (over.aborted) return;
    await connection.run(async (database) => {
      const position = await openRecord(database, student, today);
      const waiting = await readWaiting(database, student);
      const figures = studioFigures(position.timeline.view(today).student, today);
      tell({ student, figures, ...waiting });
      if (isCheckpointDue(position)) await park(database, position);
    });
  }
}
