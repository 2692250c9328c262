/** The light of a note: a disc behind its head that is seen once the note has been heard. */
import type { Hand } from '../../../shared/music/fingering/types';
import { add, round, SPACE } from './drawing';
import { middleOf } from './marks';
import type { DrawnNote } from './notes';

export interface Light {
  readonly hand: Hand;
  /** Of the note, in parts of a beat. */
  readonly place: number;
  readonly discs: readonly Element[];
}

/** Of a disc: it stands out around the head and clear of its neighbours. */
const HALF_WIDTH = 1.05 * SPACE;
const HALF_HEIGHT = 0.9 * SPACE;

/** Adds the light of a note to the note's own group, behind it and unlit. */
export function lightOf(group: Element, hand: Hand, drawn: DrawnNote): Light {
  const { keys, place } = drawn.source;
  const discs = (keys.length === 0 ? [] : drawn.note.getYs()).map((y) => {
    const disc = add(group, 'ellipse', {
      class: 'light',
      cx: round(middleOf(drawn)),
      cy: round(y),
      rx: HALF_WIDTH,
      ry: HALF_HEIGHT,
      fill: 'none',
      stroke: 'none',
    });
    group.prepend(disc);
    return disc;
  });
  return { hand, place, discs };
}
