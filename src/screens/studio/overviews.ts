/** How the students stand, as far as it has been read; it stays while the app is open, so that coming back is quick. */
import { type ReadonlySignal, signal } from '@preact/signals';
import { useEffect, useState } from 'preact/hooks';
import type { StudentId } from '../../../shared/log/events';
import { useStore } from '../../store-context';
import type { Overview, Students } from '../../store/store';

const known = signal<ReadonlyMap<StudentId, Overview>>(new Map());
export const overviews: ReadonlySignal<ReadonlyMap<StudentId, Overview>> = known;

/** Reads how some students stand, and again when the record of the one who is shown or the day changes. */
export function useOverviews(students: Students, ids: readonly StudentId[]): string | null {
  const store = useStore();
  const [failure, setFailure] = useState<string | null>(null);
  const today = store.today.value;
  const student = store.student.value;
  const key = ids.join();
  useEffect(() => {
    const over = new AbortController();
    const wanted = key === '' ? [] : key.split(',');
    // Those of whom nothing is known yet come first.
    const order = wanted.toSorted(
      (a, b) => Number(known.peek().has(a)) - Number(known.peek().has(b)),
    );
    const tell = (overview: Overview) => {
      known.value = new Map(known.peek()).set(overview.student, overview);
    };
    setFailure(null);
    students
      .overlook({ students: order, today, tell, over: over.signal })
      .catch((error: unknown) => {
        setFailure(error instanceof Error ? error.message : 'This could not be read.');
      });
    return () => over.abort();
  }, [students, key, today, student]);
  return failure;
}
