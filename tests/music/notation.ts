/** A small notation for the tests: "D4 F4 Bb4" for the keys of one hand. */
import type { Step } from '../../shared/music/sequence';

export const hand = (steps: readonly Step[], which: 'right' | 'left'): string =>
  steps.map((step) => step[which]?.name ?? '-').join(' ');
