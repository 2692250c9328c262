import { useEffect, useState } from 'preact/hooks';
import type { RunEvent } from '../../../shared/log/events';
import type { Student } from '../../../shared/planning/student';
import type { Store } from '../../store/store';

/** More would not change which joins wait longest, and each is read from the log. */
const MOST_ITEMS = 40;
const NONE: readonly RunEvent[] = [];

/** All runs of the items whose last one was heard to wait somewhere; none until they have been read. */
export function useHeardRuns(store: Store, { lateNotes }: Student): readonly RunEvent[] {
  const [runs, setRuns] = useState(NONE);
  useEffect(() => {
    let isGone = false;
    const items = [...lateNotes.keys()].slice(-MOST_ITEMS);
    Promise.all(items.map((item) => store.runsOf(item))).then(
      (all) => {
        if (!isGone) setRuns(all.flat());
      },
      // The report then says what ratings say.
      () => undefined,
    );
    return () => {
      isGone = true;
    };
  }, [store, lateNotes]);
  return runs;
}
