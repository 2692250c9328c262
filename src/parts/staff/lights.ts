/** The light of a note: a ring around its head that is seen once the note has been heard. */
import type { Hand } from '../../../shared/music/fingering/types';
import { add, round, SPACE } from './drawing';
import { middleOf } from './marks';
import type { DrawnNote } from './notes';

export interface Light {
  readonly hand: Hand;
  /** Of the note, in parts of a beat. */
  readonly place: number;
  readonly rings: readonly Element[];
}

/** Of a ring, so that it stands clear of the head and of its neighbours. */
const HALF_WIDTH = 1.05 * SPACE;
const HALF_HEIGHT = 0.9 * SPACE;

/** Adds the light of a note to the note's own group, behind it and unlit. */
export function lightOf(group: Element, hand: Hand, drawn: DrawnNote): Light {
  const { keys, place } = drawn.source;
  const rings = (keys.length === 0 ? [] : drawn.note.getYs()).map((y) => {
    const ring = add(group, 'ellipse', {
      class: 'light',
      cx: round(middleOf(drawn)),
      cy: round(y),
      rx: HALF_WIDTH,
      ry: HALF_HEIGHT,
      fill: 'none',
      stroke: 'none',
    });
    group.prepend(ring);
    return ring;
  });
  return { hand, place, rings };
}
