/** How the truths find an item's parts: all by its index, so that no objects are made while a run is played. */
import { CHORDS } from '../../../shared/music/chords';
import { ARPEGGIO_COUNT, DECK, STARTING_NOTES } from '../../../shared/music/deck';

export const CHORD_COUNT = CHORDS.length;
export const NOTE_COUNT = STARTING_NOTES.length;
export const ARPEGGIOS = ARPEGGIO_COUNT;
export const ITEMS = DECK.length;

/** In the order of the deck: right 2, left 2, together 2, together 4, contrary, right 4, left 4. */
export const [RIGHT_2, LEFT_2, TOGETHER_2, TOGETHER_4, CONTRARY, RIGHT_4, LEFT_4] = [
  0, 1, 2, 3, 4, 5, 6,
] as const;

export const wayOf = (index: number): number => Math.floor(index / ARPEGGIOS);
export const arpeggioOf = (index: number): number => index % ARPEGGIOS;

export const usesRight = (way: number): boolean => way !== LEFT_2 && way !== LEFT_4;
export const usesLeft = (way: number): boolean => way !== RIGHT_2 && way !== RIGHT_4;
export const isLong = (way: number): boolean => way >= TOGETHER_4;

/** The lower of two levels, rounded where they meet: the slower hand decides. */
export const slower = (a: number, b: number): number =>
  Math.min(a, b) - 0.1 * Math.log2(1 + 2 ** (-Math.abs(a - b) / 0.1));
