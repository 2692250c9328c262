import { describe, expect, test } from 'vitest';
import { DEFAULT_PROGRAMME } from '../../../shared/log/programme';
import { CHORD_IDS } from '../../../shared/music/chords';
import { STARTING_NOTES } from '../../../shared/music/deck';
import type { Hand } from '../../../shared/music/fingering/types';
import { PARTS_OF_BEAT, type ScoreNote } from '../../../shared/music/score';
import { markOf } from '../../../shared/music/tempo';
import type { Player } from '../../../shared/planning/chosen-fingering';
import { drillOf } from '../../../shared/planning/drills/drills';
import {
  DRILL_KINDS,
  type DrillKind,
  isJoinKind,
  parseDrillId,
} from '../../../shared/planning/drills/kinds';

const player: Player = { fingerings: new Map(), span: null, programme: DEFAULT_PROGRAMME };
const drill = (id: string, who: Player = player) =>
  drillOf(who, parseDrillId(id)!, { title: 'a drill', working: 240 });

/** "C4:1/12": names, fingers and length in parts of a beat; `s` silent, `>` accent, `~` held over, `^` change before. */
const written = (notes: readonly ScoreNote[]): string =>
  notes
    .map(({ keys, fingers, length, change, isSilent, isAccented, overlap }) => {
      const names = keys.map(({ name }) => name).join('+') || '-';
      const marks = `${isSilent ? 's' : ''}${isAccented ? '>' : ''}${overlap ? '~' : ''}`;
      return `${change ? '^' : ''}${names}${fingers.length > 0 ? ':' : ''}${fingers.join('')}/${length}${marks}`;
    })
    .join(' ');

const notesOf = (id: string, hand: Hand, who = player): readonly ScoreNote[] =>
  drill(id, who)?.score[hand] ?? [];

const right = (kind: DrillKind) => written(notesOf(`c.major-53.right.${kind}`, 'right'));

describe('C major, root position, right hand 1 2 3 1 2 3 5 (reference/fingering-triads)', () => {
  test('the join: the note before the thumb, the thumb, the next, to and fro', () => {
    const loop = 'G4:3/12 ^C5:1/12 E5:2/12 C5:1/12';
    const again = loop.replace('G4', '^G4');
    expect(right('join')).toBe([loop, again, again, again, '^G4:3/24'].join(' '));
  });

  test('over the join and back', () => {
    const out = 'C4:1/6 E4:2/6 G4:3/6 ^C5:1/6 E5:2/6 G5:3/6 C6:5/6';
    const back = 'G5:3/6 E5:2/6 C5:1/6 ^G4:3/6 E4:2/6 C4:1';
    expect(right('out-and-back')).toBe(`${out} ${back}/6 ${out.slice(7)} ${back}/24`);
  });

  test('groups of two, three and four stop on the thumb, which comes on the beat', () => {
    expect(right('groups')).toBe(
      '-/18 G4:3/6 ^C5:1/24 -/12 ^E4:2/6 G4:3/6 ^C5:1/24 -/6 ^C4:1/6 E4:2/6 G4:3/6 ^C5:1/24',
    );
  });

  test('positions as chords', () => {
    const [low, high] = ['C4+E4+G4:123/24 -/24', 'C5+E5+G5+C6:1235/24 -/24'];
    expect(right('chords')).toBe([low, high, low].join(' '));
  });

  test('dotted rhythms, either note long', () => {
    expect(right('long-short')).toMatch(/^C4:1\/18 E4:2\/6 G4:3\/18 \^C5:1\/6 .*C4:1\/24$/);
    expect(right('short-long')).toMatch(/^C4:1\/6 E4:2\/18 G4:3\/6 \^C5:1\/18 .*C4:1\/24$/);
  });

  test('the thumb only touches', () => {
    expect(right('silent-thumb')).toMatch(/^C4:1\/12s E4:2\/12 G4:3\/12 \^C5:1\/12s E5:2\/12 /);
  });

  test('slow with overlap, but not over the change', () => {
    expect(right('transfer')).toMatch(/^C4:1\/24~ E4:2\/24~ G4:3\/24 \^C5:1\/24~ E5:2\/24~ /);
  });

  test('an accent on 1, 2, 3 and 5 in turn', () => {
    const accents = notesOf('c.major-53.right.accents', 'right').filter((one) => one.isAccented);
    expect(accents.map(({ fingers }) => fingers[0])).toEqual([1, 1, 1, 2, 2, 2, 2, 3, 3, 3, 3, 5]);
  });

  test('opposite directions: two octaves outwards and back, each hand in its own fingering', () => {
    const { right: outer, left } = drill('c.major-53.right.opposite')!.score;
    expect(written(outer)).toMatch(
      /^C4:1\/12 E4:2\/12 G4:3\/12 \^C5:1\/12 .* C6:5\/12 .* C4:1\/24$/,
    );
    expect(
      left
        .map(({ keys }) => keys[0]!.name)
        .slice(0, 7)
        .join(' '),
    ).toBe('C3 G2 E2 C2 G1 E1 C1');
  });
});

test('the left hand, going up, goes over: groups stop on the thumb and then go on', () => {
  expect(written(notesOf('c.major-53.left.groups.4', 'left'))).toMatch(
    /^C4:1\/24 \^E4:4\/24 \^C4:1\/24 \^E4:4\/6 G4:2\/18 /,
  );
});

test.each(STARTING_NOTES)(
  'every hand of every arpeggio from %s has all drills, on the beat',
  (note) => {
    for (const chord of CHORD_IDS) {
      for (const id of [`${note}.${chord}.right`, `${note}.${chord}.left`]) {
        for (const kind of DRILL_KINDS) {
          const { score, change, address } = drill(`${id}.${kind}`)!;
          for (const hand of ['right', 'left'] as const) {
            const total = score[hand].reduce((sum, { length }) => sum + length, 0);
            expect(total % PARTS_OF_BEAT).toBe(0);
            for (const { fingers } of score[hand]) expect(fingers).not.toContain(null);
          }
          expect(score[address.hand].length).toBeGreaterThan(1);
          expect(change === null).toBe(!isJoinKind(kind));
        }
      }
    }
  },
);

test('the hardest join is meant where none is named', () => {
  const { change } = drill('d.dominant-7.left.join')!;
  const places = Array.from({ length: 16 }, (_, i) => drill(`d.dominant-7.left.join.${i + 1}`));
  const others = places.flatMap((one) => one?.change?.difficulty ?? []);
  expect(change!.difficulty).toBe(Math.max(...others));
});

test('a place without a change of position means the nearest that has one', () => {
  for (const place of [1, 3, 6]) {
    expect(drill(`c.major-53.right.join.${place}`)!.change!.kind).toBe('thumb under');
  }
  for (const place of [7, 10, 12]) {
    expect(drill(`c.major-53.right.join.${place}`)!.change!.kind).toBe('hand over');
  }
});

test('a small hand leaves the far note of a wide chord out', () => {
  const small: Player = { ...player, span: 9 };
  const widest = notesOf('c.major-53.right.chords', 'right', small)
    .filter(({ keys }) => keys.length > 0)
    .map(({ keys }) => keys.at(-1)!.midi - keys[0]!.midi);
  expect(Math.max(...widest)).toBeLessThanOrEqual(9);
});

test('only what has a stretch for this hand in it is marked as wide', () => {
  const isWide = (id: string, span: number) => drill(id, { ...player, span })!.isWide;
  expect(isWide('c.dominant-42.right.chords', 9)).toBe(true);
  expect(isWide('c.dominant-42.right.chords', 14)).toBe(false);
  const joins = Array.from({ length: 16 }, (_, i) => `c.dominant-42.right.join.${i + 1}`);
  const small = { ...player, span: 9 };
  const wide = joins.flatMap((id) => drill(id, small)?.isWide ?? []);
  expect(wide).toContain(false);
});

test('a drill is no faster than the arpeggio is practised', () => {
  for (const kind of DRILL_KINDS) {
    const { score } = drill(`c.major-53.right.${kind}`)!;
    expect(markOf(score.tempo, 4)).toBeLessThanOrEqual(60);
  }
});

test.each([
  'c.major-53.right.waltz',
  'h.major-53.right.join',
  'c.major-53.both.join',
  'c.major-53.right.chords.3',
  'c.major-53.right.join.0',
  'c.major-53.right.join.17',
  'c.major-53.right.join.03',
  'c.major-53.right',
  '',
])('"%s" is no drill', (text) => {
  expect(parseDrillId(text)).toBeNull();
});
