import { describe, expect, it } from 'vitest';
import { DECK, type ItemId } from '../../../shared/music/deck';
import { engravingOf } from '../../../shared/music/engraving/engraving';
import {
  ledgerLines,
  MOST_LEDGER_LINES,
  stepOnStaff,
} from '../../../shared/music/engraving/reading';
import { breakerOf } from '../../../shared/music/engraving/systems';
import { PARTS_OF_BEAT } from '../../../shared/music/score';
import { accidentals, engraved, inKeys, notes, rightHand, score, staffOf, WHOLE } from './scores';

describe('clefs and octave signs', () => {
  it('keep every note of the deck within three ledger lines', { timeout: 60_000 }, () => {
    const most = DECK.flatMap((item) =>
      engravingOf(score([item.id]), WHOLE).flatMap(({ staves }) =>
        staves.flatMap((staff) =>
          staff.notes.flatMap(({ keys, reading }) =>
            keys.map((key) => ledgerLines(stepOnStaff(key.written, { ...reading, octaves: 0 }))),
          ),
        ),
      ),
    );
    expect(Math.max(...most)).toBe(MOST_LEDGER_LINES);
  });

  it('counts the lines of C, E, A and C as taught: middle C has one, high C two (common knowledge)', () => {
    const treble = { clef: 'treble', octaves: 0 } as const;
    const bass = { clef: 'bass', octaves: 0 } as const;
    const lines = (name: string, reading: typeof treble | typeof bass) =>
      ledgerLines(stepOnStaff(name, reading));
    expect(['C4', 'B3', 'A3', 'F5', 'G5', 'A5', 'C6'].map((n) => lines(n, treble))).toEqual([
      1, 1, 2, 0, 0, 1, 2,
    ]);
    expect(['C4', 'E4', 'E2', 'C2', 'G2', 'F2'].map((n) => lines(n, bass))).toEqual([
      1, 2, 1, 2, 0, 0,
    ]);
  });

  it('leave two octaves from middle C in one clef, without a sign', () => {
    const readings = engraved(score(['c.major-53.right.2'])).map(({ reading }) => reading);
    expect(new Set(readings)).toEqual(new Set([{ clef: 'treble', octaves: 0 }]));
  });

  it('change at a beat, and write an octave lower what stands under 8va', () => {
    const all = engraved(score(['c.major-53.right.4']));
    const changes = all.filter(({ reading }, i) => i > 0 && reading !== all[i - 1]!.reading);
    expect(changes.map(({ place }) => place % PARTS_OF_BEAT)).toEqual(changes.map(() => 0));
    const top = all[12]!;
    expect(top.reading).toEqual({ clef: 'treble', octaves: 1 });
    expect(top.keys[0]!.written).toBe('C6');
  });

  it('change rather than pile up ledger lines, and never within a beat', () => {
    const [staff] = staffOf(score(['eb.minor-53.left.2']));
    const lines = staff!.notes.flatMap(({ keys, reading }) =>
      keys.map((key) => ledgerLines(stepOnStaff(key.written, { ...reading, octaves: 0 }))),
    );
    // E flat 4 in the bass clef, B flat 3 and G flat 3 in the treble clef.
    expect(lines.join('')).toBe('0002000000120');
    expect(staff!.notes.map(({ reading }) => reading.clef[0]).join('')).toBe('bbbbttttttttb');
  });

  it('print the next clef at the end of a line that goes on in another', () => {
    const systems = staffOf(rightHand(notes('C5 E5 G5 C5 C2 E2 G2 C2')), 0, [
      { from: 0, to: PARTS_OF_BEAT },
      { from: PARTS_OF_BEAT, to: Infinity },
    ]);
    expect(systems.map(({ nextClef }) => nextClef)).toEqual(['bass', null]);
  });
});

describe('accidentals', () => {
  it('stand at every octave, and hold at their own within a beam', () => {
    expect(accidentals(rightHand(notes('F#4 A4 F#5 F#4')))).toBe('sharp - sharp -');
  });

  it('are printed again after a turn, from the next beat on', () => {
    expect(accidentals(rightHand(notes('Bb4 D5 Bb5 D5 Bb4 G4 Bb4 G4')))).toBe(
      'flat - flat - flat - - -',
    );
  });

  it('are printed again in the next system, and in the next arpeggio', () => {
    const line = notes('Bb4 Bb4 Bb4 Bb4 Bb4 Bb4');
    const beats = [
      { from: 0, to: PARTS_OF_BEAT },
      { from: PARTS_OF_BEAT, to: Infinity },
    ];
    expect(accidentals(rightHand(line), beats)).toBe('flat - - - flat -');
    expect(accidentals(rightHand(line, [12]))).toBe('flat - flat - - -');
  });

  it('take back a sign that still holds, and know double ones', () => {
    expect(accidentals(rightHand(notes('Cb5 C5 F##4 F#4')))).toBe(
      'flat natural double sharp sharp',
    );
    expect(accidentals(rightHand(notes('Bbb4+D5')))).toBe('double flat+-');
  });
});

/** The least width, in spaces, of a line that holds the first arpeggio of two and ends with it. */
function widthBefore(next: ItemId): number {
  const breakInto = breakerOf(inKeys(['c.major-53.right.2', next]));
  const widths = Array.from({ length: 80 }, (_, i) => 20 + i);
  return widths.find((width) => breakInto(width)[0]!.to === 72)!;
}

describe('key signatures', () => {
  it('leave accidentals to what is not in the key', () => {
    const flats = inKeys(['d.major-6.right.2']);
    expect(flats.keySignatures).toEqual([{ fifths: -2, mode: 'major' }]);
    expect(accidentals(flats)).toBe('- '.repeat(13).trim());
    expect(engravingOf(flats, WHOLE)[0]!.key).toEqual({ fifths: -2, isTakenBack: false });
    // D diminished is the seventh degree of E flat minor, which has C flat and D flat.
    expect(accidentals(inKeys(['d.diminished-7.right.2'])).slice(0, 9)).toBe('natural -');
    expect(accidentals(inKeys(['c.diminished-7.right.2'])).slice(0, 18)).toBe('- flat flat double');
  });

  it('change where the chord does, and are taken back by naturals', () => {
    const round = inKeys(['d.major-53.right.2', 'd.major-6.right.2', 'f.diminished-7.right.2']);
    const [system] = engravingOf(round, WHOLE);
    expect(system!.key).toEqual({ fifths: 2, isTakenBack: false });
    expect(system!.joins).toEqual([
      { place: 72, key: { fifths: -2, isTakenBack: false } },
      { place: 144, key: { fifths: -2, isTakenBack: true } },
    ]);
    const later = engravingOf(round, [{ from: 144, to: Infinity }]);
    expect(later[0]!.key).toEqual({ fifths: 0, isTakenBack: false });
    const same = engravingOf(inKeys(['d.major-53.right.2', 'd.major-53.right.2']), WHOLE);
    expect(same[0]!.joins[0]!.key.fifths).toBe(0);
  });

  it('are printed at the end of a system when the next one begins in another key', () => {
    const round = inKeys(['d.major-53.right.2', 'd.major-6.right.2', 'f.diminished-7.right.2']);
    const ends = (...places: readonly number[]) => {
      const stretches = places.map((to, i) => ({ from: places[i - 1] ?? 0, to }));
      return engravingOf(round, stretches).map(({ nextJoin }) => nextJoin);
    };
    expect(ends(72, 144, Infinity)).toEqual([
      { place: 72, key: { fifths: -2, isTakenBack: false } },
      { place: 144, key: { fifths: -2, isTakenBack: true } },
      null,
    ]);
    expect(ends(48, Infinity)).toEqual([null, null]);
    // Of a part nothing is foretold that is not shown.
    expect(ends(72)).toEqual([null]);
  });

  it('take room at the end of a system, four flats at least four spaces', () => {
    const four = widthBefore('c.major-6.right.2') - widthBefore('c.major-53.right.2');
    expect(four).toBeGreaterThanOrEqual(4);
  });

  it('are not printed unless asked for', () => {
    expect(score(['d.major-6.right.2']).keySignatures).toBeUndefined();
    expect(engraved(score(['d.major-6.right.2']))[2]!.keys[0]!.accidental).toBe('flat');
  });
});
