/** What is said before a run: why it is asked for, and what the tempo is expected to bring. */
import type { Day } from '../../../shared/log/events';
import { type Item, itemOf } from '../../../shared/music/deck';
import { fingeringFor } from '../../../shared/planning/chosen-fingering';
import { type Reason, reasonText } from '../../../shared/planning/reasons';
import type { Student } from '../../../shared/planning/student';
import { tempoReason } from '../../../shared/planning/tempo-reason';
import type { Session } from '../../day/session';

const WARM_UP =
  'Warm up first with something easy. Then play this once and rate it as it went: nothing is expected.';
const ONCE = 'Play it once and rate it as it went. If it does not come out, that tells as much.';
const WIDE = 'Wide for this hand: skip it if it pulls.';

interface ReadyTextOptions {
  /** Why the entry is on the list; null once the list has moved on without it. */
  readonly reason: Reason | null;
  readonly day: Day;
}

/** In a few sentences. Of a student with a programme. */
export function readyText(
  student: Student,
  { entry, tempo }: Session,
  { reason, day }: ReadyTextOptions,
): string {
  const { grouping } = student.programme!;
  const items = entry.items.map(itemOf);
  if (entry.probe !== undefined) return probeText(student, items, entry.probe);
  const why = reason === null ? '' : reasonText(reason, grouping);
  if (entry.isMental) return why;
  return `${why} ${tempoReason(student.learner, items, { tempo, day, grouping })}`.trim();
}

/** Of a run by which the student is placed: with a caution where a hand has to stretch. */
function probeText(student: Student, items: readonly Item[], probe: number): string {
  const text = probe === 1 ? WARM_UP : ONCE;
  return items.some((item) => isWideFor(student, item)) ? `${text} ${WIDE}` : text;
}

const isWideFor = (student: Student, item: Item): boolean =>
  (['right', 'left'] as const).some((hand) =>
    fingeringFor(student, item, hand)?.positions.some(({ stretches }) => stretches.length > 0),
  );
