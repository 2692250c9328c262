/** What the overview keeps while the app is open, so that coming back to it is quick and finds it as it was. */
import { type Signal, signal } from '@preact/signals';
import { useEffect, useState } from 'preact/hooks';
import type { StudentId } from '../../../shared/log/events';
import { useStore } from '../../store-context';
import type { Overview, Students } from '../../store/store';
import type { Order } from './order';

interface Memory {
  readonly order: Signal<Order>;
  /** How the students stand, as far as it has been read. */
  readonly overviews: Signal<ReadonlyMap<StudentId, Overview>>;
}

const memories = new WeakMap<Students, Memory>();

export function memoryOf(students: Students): Memory {
  const known = memories.get(students);
  if (known !== undefined) return known;
  const made: Memory = {
    order: signal({ column: 'name', isFalling: false }),
    overviews: signal(new Map()),
  };
  memories.set(students, made);
  return made;
}

/**
 * Reads how some students stand, and again when the record of the one who is shown or the day changes. What went wrong, or
 * null.
 */
export function useReading(students: Students, ids: readonly StudentId[]): string | null {
  const store = useStore();
  const [failure, setFailure] = useState<string | null>(null);
  const today = store.today.value;
  const student = store.student.value;
  const wanted = ids.join();
  useEffect(() => {
    const { overviews } = memoryOf(students);
    const over = new AbortController();
    const isKnown = (id: StudentId) => Number(overviews.peek().has(id));
    // Those of whom nothing is known yet come first.
    const inTurn = ids.toSorted((a, b) => isKnown(a) - isKnown(b));
    const tell = (overview: Overview) => {
      overviews.value = new Map(overviews.peek()).set(overview.student, overview);
    };
    setFailure(null);
    students
      .overlook({ students: inTurn, today, tell, over: over.signal })
      .catch((error: unknown) => {
        setFailure(error instanceof Error ? error.message : 'This could not be read.');
      });
    return () => over.abort();
    // oxlint-disable-next-line react-hooks/exhaustive-deps -- the same ids in another array are the same
  }, [students, wanted, today, student]);
  return failure;
}
