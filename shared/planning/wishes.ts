/** What the teacher asks for: it comes first on the list, until it has been played. */
import type { Day } from '../log/events';
import { type Item, itemOf } from '../music/deck';
import type { Student } from './student';

/** The items that are due on a day, in the order of the deck. What is set aside is not asked for. */
export const wishedOn = ({ wishes, aside }: Student, day: Day): readonly Item[] =>
  [...wishes]
    .filter(([id, { from }]) => from <= day && !aside.has(id))
    .map(([id]) => itemOf(id))
    .toSorted((a, b) => a.index - b.index);
