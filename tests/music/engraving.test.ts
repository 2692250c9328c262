import { describe, expect, it } from 'vitest';
import { DECK, type ItemId, itemOf, roundItems } from '../../shared/music/deck';
import { engravingOf, type EngravedNote } from '../../shared/music/engraving/engraving';
import { heightOf, pageOf, slotsAt, systemAt } from '../../shared/music/engraving/page';
import { inPlace, placedNotes, turnsOf } from '../../shared/music/engraving/placed';
import { ledgerLines, MOST_LEDGER_LINES, stepOnStaff } from '../../shared/music/engraving/reading';
import { breakerOf, MARGIN } from '../../shared/music/engraving/systems';
import { PARTS_OF_BEAT, type Score, type ScoreNote } from '../../shared/music/score';
import { scoreOf, type ScoreOptions } from '../../shared/music/score-of';
import type { Grouping } from '../../shared/music/tempo';
import { midiOf } from '../../shared/music/theory';

const OPTIONS: ScoreOptions = {
  title: 'An arpeggio',
  tempo: 240,
  grouping: 4,
  fingeringOf: () => null,
  pedal: false,
};
const score = (ids: readonly ItemId[], grouping: Grouping = 4): Score =>
  scoreOf(ids.map(itemOf), { ...OPTIONS, grouping });

const inKeys = (ids: readonly ItemId[]): Score =>
  scoreOf(ids.map(itemOf), { ...OPTIONS, hasKeySignatures: true });

/** "C4 - C4+E4" with equal lengths; a dash is a rest. */
const notes = (names: string, length = 6): readonly ScoreNote[] =>
  names.split(' ').map((chord) => {
    const keys = chord === '-' ? [] : chord.split('+');
    return {
      keys: keys.map((name) => ({ name, midi: midiOf(name), tone: 0 })),
      fingers: keys.map(() => null),
      length,
      change: null,
    };
  });
const rightHand = (right: readonly ScoreNote[], joins: readonly number[] = []): Score => ({
  ...score(['c.major-53.right.2']),
  right,
  joins,
});

const WHOLE = [{ from: 0, to: Infinity }];
const staffOf = (from: Score, hand = 0, stretches = WHOLE) =>
  engravingOf(from, stretches).map(({ staves }) => staves[hand]!);
const engraved = (from: Score, stretches = WHOLE): readonly EngravedNote[] =>
  staffOf(from, 0, stretches).flatMap((staff) => staff.notes);
const accidentals = (from: Score, stretches = WHOLE): string =>
  engraved(from, stretches)
    .map(({ keys }) => keys.map((key) => key.accidental ?? '-').join('+'))
    .join(' ');

/** "8. 16" as a musician says it: share, dots, "t" in a triplet, "~" tied on, "r" for a rest. */
const values = (from: Score, hand = 0): string =>
  staffOf(from, hand)[0]!
    .notes.map(({ keys, value, isTiedOn }) => {
      const { share, isDotted, isTriplet } = value;
      const rest = keys.length === 0 ? 'r' : '';
      return `${rest}${share}${isDotted ? '.' : ''}${isTriplet ? 't' : ''}${isTiedOn ? '~' : ''}`;
    })
    .join(' ');
const lasting = (...lengths: readonly number[]): readonly ScoreNote[] =>
  lengths.flatMap((length) => notes(length < 0 ? '-' : 'C5', Math.abs(length)));

describe('the values of lengths (common practice, no source)', () => {
  it.each([
    ['a dotted rhythm', [18, 6, 6, 18], '8. 16 16 8.'],
    ['the same in threes', [16, 8, 8, 16], '4t 8t 8t 4t'],
    ['a dotted triplet, and plain quavers beside it', [12, 4, 8, 12, 12], '8.t 16t 8t 8 8'],
    ['notes on which one stops', [24, 48, 72, 96, 36, 12], '4 2 2. 1 4. 8'],
    ['a note across a beat', [18, 12, 18], '8. 16~ 16 8.'],
    ['the end of a drill', [6, 42], '16 8.~ 4'],
    ['what no single note lasts', [30, 18, 32, 16], '4~ 16 8. 4~ 8t 4t'],
    ['rests, which hide no beat', [-24, 24, -72, -6, 18], 'r4 4 r2 r4 r16 8.'],
    ['a quaver and a rest of a triplet', [16, -8, -8, 16], '4t r8t r8t 4t'],
  ])('write %s', (_, lengths, written) => {
    expect(values(rightHand(lasting(...lengths)))).toBe(written);
  });

  it('add up to the length, with one accidental and one finger, and hold at the end', () => {
    const [held, after] = notes('F#4 G4', 42);
    const line = [{ ...held!, fingers: [1] as const, isAccented: true, overlap: 3 }, after!];
    const pieces = engraved(rightHand([...notes('A4'), ...line]));
    expect(pieces.map(({ length }) => length)).toEqual([6, 18, 24, 24, 18]);
    expect(pieces.map(({ keys }) => keys[0]!.accidental)).toEqual([
      null,
      'sharp',
      null,
      null,
      null,
    ]);
    expect(pieces.map(({ keys }) => keys[0]!.finger)).toEqual([null, 1, null, null, null]);
    expect(pieces.map(({ isAccented }) => isAccented ?? false)).toEqual([
      false,
      true,
      false,
      false,
      false,
    ]);
    expect(pieces.map(({ overlap }) => overlap ?? 0)).toEqual([0, 0, 3, 0, 0]);
    expect(pieces.map(({ isFirstHeld }) => isFirstHeld)).toEqual([
      false,
      false,
      true,
      false,
      false,
    ]);
  });

  it('refuse what cannot be written', () => {
    expect(() => values(rightHand(lasting(1, 23)))).toThrow(RangeError);
  });
});

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

  it('are not printed unless asked for', () => {
    expect(score(['d.major-6.right.2']).keySignatures).toBeUndefined();
    expect(engraved(score(['d.major-6.right.2']))[2]!.keys[0]!.accidental).toBe('flat');
  });
});

describe('beams', () => {
  it('join the sixteenths of a beat, and leave the last note alone', () => {
    const [staff] = staffOf(score(['c.major-53.right.2']));
    expect(staff!.beams).toEqual([
      [0, 1, 2, 3],
      [4, 5, 6, 7],
      [8, 9, 10, 11],
    ]);
    expect(staff!.triplets).toEqual([]);
  });

  it('join triplets by three, with the figure only where the score begins', () => {
    const triplets = score(['c.major-53.right.2'], 3);
    const systems = staffOf(triplets, 0, [
      { from: 0, to: 48 },
      { from: 48, to: Infinity },
    ]);
    const figures = systems.map(({ triplets: groups }) =>
      groups.map(({ group, hasFigure }) => `${group.join(' ')}${hasFigure ? ' with its 3' : ''}`),
    );
    expect(figures).toEqual([
      ['0 1 2 with its 3', '3 4 5'],
      ['0 1 2', '3 4 5'],
    ]);
  });

  it('leave the rest to brackets, and say 3 again where the rhythm has changed', () => {
    const [staff] = staffOf(rightHand(lasting(8, 8, 8, 16, 8, 12, 12, 8, 8, 8, 8, 8, 8)));
    expect(staff!.triplets).toEqual([
      { group: [0, 1, 2], hasBracket: false, hasFigure: true },
      { group: [3, 4], hasBracket: true, hasFigure: true },
      { group: [7, 8, 9], hasBracket: false, hasFigure: true },
      { group: [10, 11, 12], hasBracket: false, hasFigure: false },
    ]);
  });

  it('are parted by a rest, and a single note has none', () => {
    const [staff] = staffOf(rightHand(notes('C4 - E4 G4')));
    expect(staff!.beams).toEqual([[2, 3]]);
  });
});

describe('turns', () => {
  it('are where the line goes the other way', () => {
    const placed = placedNotes(score(['d.major-53.right.2']), 'right');
    expect(turnsOf(placed)).toEqual([6 * 6]);
    const repeated = inPlace(notes('C4 C4 E4 E4 - C4 C4'));
    expect(turnsOf(repeated)).toEqual([12]);
  });
});

describe('systems', () => {
  const four = score(['d.dominant-7.together.4']);

  it('show everything once and break only at beats', () => {
    const rounds = scoreOf(roundItems('eb', 'together.2'), { ...OPTIONS, grouping: 3 });
    const stretches = breakerOf(rounds)(70);
    expect(stretches.length).toBeGreaterThan(4);
    expect(stretches.map(({ from }) => from % PARTS_OF_BEAT)).toEqual(stretches.map(() => 0));
    const places = engravingOf(rounds, stretches).flatMap(({ staves }) =>
      staves[0]!.notes.filter((note) => !note.isTiedBack).map(({ place }) => place),
    );
    expect(places).toEqual(placedNotes(rounds, 'right').map(({ place }) => place));
  });

  it('break where no note is held over, even while one hand rests', () => {
    const length = 6 * PARTS_OF_BEAT;
    const held = { ...four, right: lasting(12, length - 12), left: lasting(-length) };
    expect(breakerOf(held)(MARGIN + 1).map(({ from }) => from)).toEqual([0]);
    const free = { ...four, right: lasting(...Array<number>(24).fill(6)), left: lasting(-length) };
    expect(breakerOf(free)(MARGIN + 1).map(({ from }) => from)).toEqual([0, 96]);
  });

  it('break four octaves at the top, where the halves are nearly equal', () => {
    expect(breakerOf(four)(1000)).toHaveLength(1);
    expect(breakerOf(four)(90).map(({ from }) => from)).toEqual([0, 16 * 6]);
  });

  it('never break within a beat, however narrow the page', () => {
    expect(breakerOf(four)(MARGIN + 1).map(({ from }) => from)).toEqual(
      Array.from({ length: 9 }, (_, beat) => beat * PARTS_OF_BEAT),
    );
  });

  it('show a part of a score, and know whether it is the end', () => {
    const [part] = engravingOf(four, breakerOf(four, 24, 48)(1000));
    expect(part!.staves[0]!.notes.map(({ place }) => place)).toEqual([24, 30, 36, 42]);
    expect(part!.isEnd).toBe(false);
    expect(engravingOf(four, breakerOf(four)(1000))[0]!.isEnd).toBe(true);
    expect(breakerOf(four, 5000)(1000)).toEqual([]);
  });
});

describe('the page', () => {
  const four = score(['gb.dominant-7.together.4']);

  it('shows all as large as fits', () => {
    const wide = pageOf(four, { width: 1024, height: 600 });
    expect(wide.slots).toBe(wide.systems.length);
    expect(wide.space).toBeGreaterThanOrEqual(8);
    const heights = wide.systems.map((system) => heightOf(system) * wide.space);
    expect(heights.reduce((sum, height) => sum + height, 0)).toBeLessThanOrEqual(600);
    expect(pageOf(four, { width: 500, height: 600 }).space).toBeLessThan(wide.space);
  });

  it('shows only some systems of what is too long, and still at least one', () => {
    const round = scoreOf(roundItems('d', 'together.4'), OPTIONS);
    const page = pageOf(round, { width: 1024, height: 500 });
    expect(page.slots).toBe(2);
    expect(page.systems.length).toBeGreaterThan(5);
    expect(pageOf(round, { width: 1024, height: 60 }).slots).toBe(1);
    const { systems } = page;
    expect(
      [null, 0, systems[1]!.from, systems[1]!.from - 1, 1e6].map((at) => systemAt(systems, at)),
    ).toEqual([0, 0, 1, 0, systems.length - 1]);
  });

  it('shows in a round the arpeggio that runs and the next, as large as that allows', () => {
    const round = scoreOf(roundItems('d', 'together.2'), OPTIONS);
    const starts = [0, ...round.joins];
    for (const box of [
      { width: 980, height: 420 },
      { width: 350, height: 560 },
      { width: 1180, height: 560 },
    ]) {
      const { systems, slots, space } = pageOf(round, box);
      expect(space).toBeGreaterThanOrEqual(7);
      const systemsOf = (from: number, to: number) =>
        systems.flatMap((system, i) => (system.from < to && system.to > from ? [i] : []));
      starts.slice(0, -1).forEach((start, k) => {
        const next = systemsOf(starts[k + 1]!, starts[k + 1]! + 1)[0]!;
        for (const now of systemsOf(start, starts[k + 1]!)) {
          expect(slotsAt(now, slots, systems.length)).toContain(next);
        }
      });
    }
  });

  it('turns without moving what is still to be read', () => {
    const turning = [0, 1, 2, 3, 4].map((now) => slotsAt(now, 2, 5));
    expect(turning).toEqual([
      [0, 1],
      [2, 1],
      [2, 3],
      [4, 3],
      [4, 3],
    ]);
    expect(slotsAt(0, 3, 2)).toEqual([0, 1]);
    expect(slotsAt(1, 1, 2)).toEqual([1]);
  });
});
