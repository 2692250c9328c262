/** What a pianist sees on the page that a notation program makes of our files. */
import { type DirectionType, type NoteEntry, parse } from 'musicxml-io';
import { describe, expect, it } from 'vitest';
import { musicXml } from '../../shared/formats/musicxml';
import { itemOf } from '../../shared/music/deck';
import type { ScoreNote } from '../../shared/music/score';
import { scoreOf } from '../../shared/music/score-of';
import { barsIn, notesIn } from './musicxml-reader';
import { fingered, note, OPTIONS, score } from './scores';

/** The right hand's notes, one word each, by what `show` says of them. */
const seen = (
  notes: readonly ScoreNote[],
  show: (entry: NoteEntry) => string | number | undefined,
): string =>
  notesIn(musicXml(score(notes)), 'right')
    .map((entry) => show(entry) ?? '-')
    .join(' ');

const SIGNS = {
  sharp: '#',
  flat: 'b',
  natural: '=',
  'double-sharp': 'x',
  'flat-flat': 'bb',
} as const;
const sign = ({ accidental, pitch }: NoteEntry): string =>
  `${pitch?.step ?? 'rest'}${accidental ? SIGNS[accidental.value as keyof typeof SIGNS] : ''}`;
const shape = ({ noteType, dots, timeModification, rest }: NoteEntry): string =>
  `${rest ? 'r' : ''}${noteType}${dots ? '.' : ''}${timeModification ? '/3' : ''}`;
const beams = ({ beam = [] }: NoteEntry): string =>
  beam
    .map(
      ({ type }) =>
        ({ begin: '<', continue: '=', end: '>', 'forward hook': '(', 'backward hook': ')' })[type],
    )
    .join('') || '-';

const tuplet = ({ notations = [] }: NoteEntry): string | undefined =>
  notations.map((one) => (one.type === 'tuplet' ? one.tupletType : '')).join('') || undefined;

const notationsOf = ({ notations = [] }: NoteEntry): readonly string[] =>
  notations.map((one) => {
    if (one.type === 'technical') return `${one.technical} ${one.text}`;
    if (one.type === 'articulation') return one.articulation;
    return 'tiedType' in one ? `${one.type} ${one.tiedType}` : one.type;
  });

/** Directions and notes of one bar in the order of the file, as short words. */
const kindsOf = (type: DirectionType): string => {
  if (type.kind === 'octave-shift') return `8 ${type.type}`;
  if (type.kind === 'pedal') return `pedal ${type.type}`;
  if (type.kind === 'words') return type.text;
  return type.kind;
};
const orderOf = (xml: string, bar: number): string =>
  (barsIn(xml)[bar] ?? [])
    .flatMap((entry): readonly string[] => {
      if (entry.type === 'direction') return entry.directionTypes.map(kindsOf);
      if (entry.type === 'note')
        return [entry.pitch ? `${entry.pitch.step}${entry.pitch.octave}` : 'rest'];
      if (entry.type === 'attributes')
        return (entry.attributes.clef ?? []).map(
          ({ sign: clef, staff }) => `clef ${clef} on ${staff}`,
        );
      return [entry.type];
    })
    .join(', ');

const bracket = ({ notations = [] }: NoteEntry) =>
  notations
    .flatMap((one) => ('bracket' in one && one.bracket !== undefined ? [String(one.bracket)] : []))
    .join() || undefined;

const sixteenths = (names: string, more: Partial<ScoreNote> = {}): readonly ScoreNote[] =>
  names.split(' ').map((name) => note(name, 6, more));

/** Four notes, one of them with a touch of the pedal. */
const touched = (place: number): readonly ScoreNote[] =>
  sixteenths('D4 F4 A4 D5').map((one, i) => ({ ...one, hasPedal: i === place }));

describe('the notation in MusicXML', () => {
  it('writes an accidental where the bar does not say it already, octave by octave', () => {
    const line = sixteenths(
      'F#4 F#4 F#5 F4 F4 F#4 Ebb4 E4 G##4 Gb4 G4 F#4 D4 D4 D4 D4 F#4 D4 D4 D4',
    );
    expect(seen(line, sign)).toBe('F# F F# F= F F# Ebb E= Gx Gb G= F D D D D F# D D D rest rest');
  });

  it('writes note values, with dots, triplets and ties at beats and bars', () => {
    const lengths = [36, 12, 18, 6, 24, 8, 16, 8, 8, 8, 48, 3, 9, 12, 96].map((length) =>
      note('D4', length),
    );
    expect(seen(lengths, shape)).toBe(
      'quarter. eighth eighth. 16th quarter eighth/3 quarter/3 eighth/3 eighth/3 eighth/3 half 32nd 16th. eighth half. quarter rquarter rhalf',
    );
    expect(seen([note('D4', 72), note('E4', 36)], shape)).toBe(
      'half. quarter eighth reighth rquarter rhalf',
    );
    expect(seen([note('', 8), note('D4', 24)], shape)).toBe(
      'reighth/3 quarter/3 eighth/3 rquarter/3 rhalf',
    );
    expect(seen([note('D4', 96)], shape)).toBe('whole');
    expect(() => musicXml(score([note('D4', 7)]))).toThrow(RangeError);
  });

  it('beams within the beat, and shows odd sixteenths with a hook', () => {
    expect(seen(sixteenths('D4 F4 A4 D5 F5 A5 D6 F6'), beams)).toBe(
      '<< == == >> << == == >>' + ' -'.repeat(1),
    );
    expect(seen([note('D4', 18), note('D4', 6), note('D4', 6), note('D4', 18)], beams)).toBe(
      '< >) <( > -',
    );
    expect(
      seen(
        [
          note('D4', 12),
          note('', 12),
          note('D4', 24),
          note('D4', 12),
          note('D4', 12),
          note('', 24),
        ],
        beams,
      ),
    ).toBe('- - - < > -');
  });

  it('binds triplets beat by beat', () => {
    const beat = [note('D4', 8), note('E4', 8), note('F4', 8)];
    expect(seen([...beat, note('A4', 24), ...beat], tuplet)).toBe('start - stop - start - stop -');
  });

  it('writes fingers, accents, silent and held notes once, at the beginning of a tied note', () => {
    const notes = [
      fingered('D4 F4', 24, 1, 2),
      note('A4', 24, { isAccented: true }),
      note('A4', 24, { isSilent: true }),
      { ...fingered('D5', 48, 5), overlap: 4, isAccented: true },
    ];
    const all = notesIn(musicXml(score(notes)), 'right');
    expect(all.slice(0, 6).map((entry) => notationsOf(entry).join(', '))).toEqual([
      'fingering 1',
      'fingering 2',
      'accent',
      '',
      'tied start, accent, fingering 5',
      'tied stop, tied let-ring',
    ]);
    expect(all.flatMap(({ notehead }, i) => (notehead ? [[i, notehead.value]] : []))).toEqual([
      [3, 'x'],
    ]);
    expect(all[3]!.dynamics).toBe(0);
  });

  it('says in a word that notes are held into the next, and ties each openly', () => {
    const xml = musicXml(score([note('D4', 24), ...sixteenths('F4 A4', { overlap: 2 })]));
    expect(orderOf(xml, 0)).toMatch(/^metronome, D4, legatissimo, F4, A4, rest/);
    expect(seen([note('D4 F4', 24, { overlap: 2 })], (entry) => notationsOf(entry).join())).toMatch(
      /^tied let-ring tied let-ring/,
    );
  });

  it('brackets a triplet that no beam holds together', () => {
    expect(seen([note('D4', 16), note('E4', 8)], bracket)).toMatch(/^true -/);
    expect(seen([note('D4', 8), note('E4', 8), note('F4', 8)], bracket)).toMatch(/^false - -/);
  });

  it('writes the key of each arpeggio where it begins, and accidentals beside it', () => {
    const items = (['d.major-53.left.2', 'd.major-6.left.2'] as const).map(itemOf);
    const xml = musicXml(scoreOf(items, { ...OPTIONS, pedal: false, hasKeySignatures: true }));
    const keys = barsIn(xml).map((bar) =>
      bar.flatMap((entry) =>
        entry.type === 'attributes' && entry.attributes.key ? [entry.attributes.key.fifths] : [],
      ),
    );
    expect(parse(xml).parts[0]!.measures[0]!.attributes?.key).toEqual({ fifths: 2, mode: 'major' });
    expect(keys).toEqual([[-2], []]);
    const words = notesIn(xml, 'left').map(sign);
    expect(words.slice(0, 24).every((word) => !/[#b=]/.test(word))).toBe(true);
  });

  it('repeats an accidental for certain where the key changes within a bar', () => {
    const items = (['c.diminished-7.right.2', 'c.minor-53.right.2'] as const).map(itemOf);
    const made = scoreOf(items, { ...OPTIONS, grouping: 3, hasKeySignatures: true });
    const words = notesIn(musicXml(made), 'right').map(sign);
    // No key has all the notes of the first; the second is in three flats, and its first E flat and G stand in the same bar.
    expect(words.slice(12, 20).join(' ')).toBe('C Bbb Gb Eb C Eb G= C');
  });

  it('gives a hand that rests whole bars of rest', () => {
    const left = notesIn(musicXml(scoreOf([itemOf('d.major-53.right.4')], OPTIONS)), 'left');
    expect(left.map(({ rest, duration }) => [rest?.measure, duration])).toEqual([
      [true, 96],
      [true, 96],
    ]);
  });

  it('changes clefs and writes an octave sign where the ledger lines would be many', () => {
    const item = itemOf('c.major-53.together.4');
    const xml = musicXml(scoreOf([item], { ...OPTIONS, pedal: false }));
    expect(parse(xml).parts[0]!.measures[0]!.attributes?.clef).toMatchObject([
      { sign: 'F', staff: 1 },
      { sign: 'F', staff: 2 },
    ]);
    expect(orderOf(xml, 0)).toBe(
      'metronome, C3, E3, G3, C4, clef G on 1, E4, G4, C5, E5, ' +
        '8 down, G5, C6, E6, G6, C7, G6, E6, C6, 8 stop, backup, ' +
        'C2, E2, G2, C3, E3, G3, C4, E4, clef G on 2, G4, C5, E5, G5, C6, G5, E5, C5',
    );
    const low = musicXml(score([], [note('C1', 24), note('C3', 24)]));
    expect(orderOf(low, 0)).toBe('metronome, rest, backup, 8 up, C1, C3, 8 stop, rest');
  });

  it('marks touches of the pedal below the staves, both hands in one', () => {
    expect(orderOf(musicXml(score(touched(0), touched(1))), 0)).toBe(
      'metronome, D4, F4, A4, D5, rest, rest, backup, ' +
        'pedal start, D4, pedal stop, pedal start, F4, pedal stop, A4, D5, rest, rest',
    );
    expect(orderOf(musicXml(score(touched(2))), 0)).toBe(
      'metronome, D4, F4, pedal start, A4, pedal stop, D5, rest, rest, backup, rest',
    );
    // Down 3 parts of a beat after the first note has begun, up one and a half after the second.
    const xml = musicXml(score(touched(0)));
    expect(xml).toMatch(/type="start"[^>]*><\/direction-type><offset>3<\/offset>/);
    expect(xml).toMatch(/type="stop"[^>]*><\/direction-type><offset>1.5<\/offset>/);
  });

  it('names itself and its tempo, with every character that XML can hold', () => {
    const made = {
      ...score([note('D4', 24)]),
      title: 'D & "F\u266F" <5\u0000>',
      tempo: 180,
      grouping: 3 as const,
    };
    const { metadata, parts } = parse(musicXml(made));
    expect(metadata?.workTitle).toBe('D & "F\u266F" <5>');
    expect(musicXml(made)).toContain('<sound tempo="60"/>');
    expect(parts).toHaveLength(1);
  });
});
