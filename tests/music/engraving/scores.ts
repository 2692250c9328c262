/** Small scores and what the engraving makes of them, in a musician's shorthand. */
import { type ItemId, itemOf } from '../../../shared/music/deck';
import { engravingOf, type EngravedNote } from '../../../shared/music/engraving/engraving';
import type { Score, ScoreNote } from '../../../shared/music/score';
import { scoreOf, type ScoreOptions } from '../../../shared/music/score-of';
import type { Grouping } from '../../../shared/music/tempo';
import { midiOf } from '../../../shared/music/theory';

export const OPTIONS: ScoreOptions = {
  title: 'An arpeggio',
  tempo: 240,
  grouping: 4,
  fingeringOf: () => null,
  pedal: false,
};
export const score = (ids: readonly ItemId[], grouping: Grouping = 4): Score =>
  scoreOf(ids.map(itemOf), { ...OPTIONS, grouping });

export const inKeys = (ids: readonly ItemId[]): Score =>
  scoreOf(ids.map(itemOf), { ...OPTIONS, hasKeySignatures: true });

/** "C4 - C4+E4" with equal lengths; a dash is a rest. */
export const notes = (names: string, length = 6): readonly ScoreNote[] =>
  names.split(' ').map((chord) => {
    const keys = chord === '-' ? [] : chord.split('+');
    return {
      keys: keys.map((name) => ({ name, midi: midiOf(name), tone: 0 })),
      fingers: keys.map(() => null),
      length,
      change: null,
    };
  });
export const rightHand = (right: readonly ScoreNote[], joins: readonly number[] = []): Score => ({
  ...score(['c.major-53.right.2']),
  right,
  joins,
});

export const WHOLE = [{ from: 0, to: Infinity }];
export const staffOf = (from: Score, hand = 0, stretches = WHOLE) =>
  engravingOf(from, stretches).map(({ staves }) => staves[hand]!);
export const engraved = (from: Score, stretches = WHOLE): readonly EngravedNote[] =>
  staffOf(from, 0, stretches).flatMap((staff) => staff.notes);
export const accidentals = (from: Score, stretches = WHOLE): string =>
  engraved(from, stretches)
    .map(({ keys }) => keys.map((key) => key.accidental ?? '-').join('+'))
    .join(' ');

/** "8. 16" as a musician says it: share, dots, "t" in a triplet, "~" tied on, "r" for a rest. */
export const values = (from: Score, hand = 0): string =>
  staffOf(from, hand)[0]!
    .notes.map(({ keys, value, isTiedOn }) => {
      const { share, isDotted, isTriplet } = value;
      const rest = keys.length === 0 ? 'r' : '';
      return `${rest}${share}${isDotted ? '.' : ''}${isTriplet ? 't' : ''}${isTiedOn ? '~' : ''}`;
    })
    .join(' ');
export const lasting = (...lengths: readonly number[]): readonly ScoreNote[] =>
  lengths.flatMap((length) => notes(length < 0 ? '-' : 'C5', Math.abs(length)));
