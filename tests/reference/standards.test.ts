import { Note } from 'tonal';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { programmeSchema } from '../../shared/formats/event-schema';
import { askedStages, DEFAULT_PROGRAMME, targetFor, targetRange } from '../../shared/log/programme';
import { CHORD_IDS } from '../../shared/music/chords';
import { itemOf, roundItems } from '../../shared/music/deck';
import { intervalCount, sequenceOf } from '../../shared/music/sequence';
import { secondsOf, tempoOf } from '../../shared/music/tempo';
import { STANDARDS, targetOf, withStandard } from '../../src/parts/programme-form/standards';

/** Four octaves hands together: derived from the published tempos of examination boards. */
describe('lengths of four octaves, hands together', () => {
  const rows = [
    [120, 12.0, 16.0],
    [180, 8.0, 10.7],
    [240, 6.0, 8.0],
    [264, 5.5, 7.3],
    [368, 3.9, 5.2],
    [480, 3.0, 4.0],
  ] as const;

  it.each(rows)(
    'at %i notes a minute a triad takes %f s, a seventh %f s',
    (tempo, triad, seventh) => {
      const seconds = (chord: 'major-53' | 'dominant-7') =>
        secondsOf(intervalCount(chord, 'together.4'), tempo);
      expect(seconds('major-53')).toBeCloseTo(triad, 1);
      expect(seconds('dominant-7')).toBeCloseTo(seventh, 1);
    },
  );

  it('has 25 notes a hand in a triad and 33 in a seventh', () => {
    expect(sequenceOf(itemOf('c.major-53.together.4'))).toHaveLength(25);
    expect(sequenceOf(itemOf('c.dominant-7.together.4'))).toHaveLength(33);
  });
});

describe('published tempos', () => {
  it('asks by default for the tempo of LCM Grade 8 (2021): minim 60 in quavers', () => {
    expect(DEFAULT_PROGRAMME.stages['together.4'].target).toBe(tempoOf(60, 4));
  });

  it.each([
    ['LCM Grade 7, minim 52 in quavers', 52, 4, 208],
    ['AMEB Third Grade, 76 with two notes a beat', 38, 4, 152],
    ['Arkansas State University, triplets at 60', 60, 3, 180],
    ['Arkansas State University, triplets at 72', 72, 3, 216],
  ] as const)('%s', (_, mark, grouping, notesPerMinute) => {
    expect(tempoOf(mark, grouping)).toBe(notesPerMinute);
  });
});

describe('standards as beginnings of a programme', () => {
  const published = [
    ['LCM, Grade 8', 240],
    ['LCM, Grade 7', 208],
    ['LCM, Grade 6', 192],
    ['AMEB', 152],
    ['ABRSM, Grade 8', 264],
    ['IPPEC', null],
    ['Michigan', 240],
    ['Arkansas', 180],
    ['Arkansas', 216],
  ] as const;

  it('have the notes a minute of the published lists, in their order', () => {
    const given = STANDARDS.map(({ source }, i) => source.startsWith(published[i]?.[0] ?? '?'));
    expect(given).toEqual(published.map(() => true));
    expect(STANDARDS.map(targetOf)).toEqual(published.map(([, tempo]) => tempo));
  });

  it('ask for the inversions of the barrier examination at 60 (Arkansas State University)', () => {
    const barrier = withStandard(DEFAULT_PROGRAMME, STANDARDS.at(-1)!);
    const asked = CHORD_IDS.map((chord) => targetFor(barrier, { way: 'together.4', chord }));
    expect(asked).toEqual([216, 216, 180, 180, 180, 180, 216, 180, 180, 180, 216]);
    const plain = withStandard(barrier, STANDARDS[0]!);
    expect(targetRange(plain, 'together.4')).toEqual([240, 240]);
    const untimed = withStandard(
      barrier,
      STANDARDS.find(({ mark }) => mark === null)!,
    );
    expect(targetRange(untimed, 'together.contrary')).toEqual([216, 216]);
    expect(targetFor(untimed, { way: 'together.4', chord: 'dominant-7' })).toBe(216);
    expect(targetFor(untimed, { way: 'together.4', chord: 'dominant-65' })).toBe(180);
  });

  it.each(STANDARDS.map((standard) => [standard.source, standard] as const))(
    '%s makes a programme that can be kept, and leaves alone what it does not speak of',
    (_, standard) => {
      const own = { ...DEFAULT_PROGRAMME, grouping: 3, minutes: 35, date: '2027-05-01' } as const;
      const made = withStandard(own, standard);
      expect(v.parse(programmeSchema, made)).toEqual(made);
      expect([made.minutes, made.date, made.reached]).toEqual([35, '2027-05-01', own.reached]);
      expect(askedStages(made)).toEqual(standard.asked);
      expect(made.stages['together.4'].target).toBe(targetOf(standard) ?? 240);
    },
  );
});

describe('pitch', () => {
  it('has A above middle C at 440 Hz (ISO 16:1975) as MIDI 69', () => {
    const [step] = sequenceOf(itemOf('a.major-53.right.4'));
    expect(step!.right).toMatchObject({ name: 'A2', midi: 45 });
    const key = sequenceOf(itemOf('a.major-53.right.4'))[6]!.right!;
    expect(key).toMatchObject({ name: 'A4', midi: 69 });
    expect(Note.freq(key.name)).toBe(440);
  });

  it('sounds every key at 440 x 2^((m - 69) / 12) Hz by tonal, the bounds being A0 and C8', () => {
    expect([Note.midi('A0'), Note.midi('C8')]).toEqual([21, 108]);
    const keys = roundItems('gb', 'together.contrary').flatMap((item) =>
      sequenceOf(item).flatMap(({ right, left }) => [right!, left!]),
    );
    const cents = keys.map(({ name, midi }) =>
      Math.abs(1200 * Math.log2(Note.freq(name)! / (440 * 2 ** ((midi - 69) / 12)))),
    );
    expect(Math.max(...cents)).toBeLessThan(1e-6);
  });
});
