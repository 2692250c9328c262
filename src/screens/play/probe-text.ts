/** What is said before a probe, by which a student is placed. */
import { type Item, type ItemId, itemOf } from '../../../shared/music/deck';
import { fingeringFor } from '../../../shared/planning/chosen-fingering';
import type { Student } from '../../../shared/planning/student';

const WARM_UP =
  'Warm up first with something easy. Then play this once and rate it as it went: nothing is expected.';
const ONCE = 'Play it once and rate it as it went. If it does not come out, that tells as much.';
const WIDE = 'Wide for this hand: skip it if it pulls.';

const isWideFor = (student: Student, item: Item): boolean =>
  (['right', 'left'] as const).some((hand) =>
    fingeringFor(student, item, hand)?.positions.some(({ stretches }) => stretches.length > 0),
  );

/** In a sentence or two, with a caution where a hand has to stretch. */
export function probeText(student: Student, items: readonly ItemId[], probe: number): string {
  const text = probe === 1 ? WARM_UP : ONCE;
  return items.some((id) => isWideFor(student, itemOf(id))) ? `${text} ${WIDE}` : text;
}
