import { describe, expect, it, test } from 'vitest';
import type { Examination } from '../../../shared/planning/student';
import { DEFAULT_PROGRAMME, type Programme } from '../../../shared/log/programme';
import { itemOf, type Stage } from '../../../shared/music/deck';
import { chanceOf } from '../../../shared/planning/examination/chance';
import {
  askedTempo,
  defaultSettings,
  drawFrom,
  drawItems,
  poolOf,
  settingsFor,
} from '../../../shared/planning/examination/draw';
import { factorOf } from '../../../shared/planning/examination/factor';
import { outcomeOf, trackRecord } from '../../../shared/planning/examination/outcome';
import { passChance, pivotChance, tallyOf } from '../../../shared/planning/examination/tally';
import { reportOf } from '../../../shared/planning/report';
import { newStudent, replay } from '../../../shared/planning/student';
import { event, programme } from '../../learning/events';
import { SAMPLES } from '../../formats/samples';

const settings = defaultSettings(DEFAULT_PROGRAMME);
const drawn = (of: typeof settings, seed: number) => drawItems(DEFAULT_PROGRAMME, of, seed);

describe('a draw', () => {
  it('is the same for the same seed, and another for most others', () => {
    expect(drawn(settings, 20_614)).toEqual(drawn(settings, 20_614));
    const draws = new Set(
      Array.from({ length: 200 }, (_, seed) =>
        drawn(settings, seed + 1)
          .map(({ id }) => id)
          .join(),
      ),
    );
    expect(draws.size).toBe(200);
  });

  it('has so many different items of the pool; a small pool is asked whole', () => {
    const pool = poolOf(DEFAULT_PROGRAMME, settings);
    expect(pool).toHaveLength(7 * 11 * 4);
    for (let seed = 1; seed < 50; seed++) {
      const items = drawn(settings, seed);
      expect(new Set(items).size).toBe(6);
      expect(items.every((item) => pool.includes(item))).toBe(true);
    }
    const one = { ...settings, notes: ['d'], chords: ['major-6'], stages: ['right.2'] } as const;
    expect(drawn(one, 5).map(({ id }) => id)).toEqual(['d.major-6.right.2']);
  });

  it('is fair in every place', () => {
    // Chi square with 11 degrees of freedom exceeds 31.26 once in a thousand (table in any textbook of statistics).
    const pool = Array.from({ length: 12 }, (_, i) => i);
    const counts = [0, 1, 2].map(() => pool.map(() => 0));
    const draws = 6000;
    for (let seed = 1; seed <= draws; seed++) {
      drawFrom(pool, 3, chanceOf(seed).share).forEach((one, place) => {
        counts[place]![one]! += 1;
      });
    }
    for (const ofPlace of counts) {
      const expected = draws / pool.length;
      const square = ofPlace.reduce((sum, count) => sum + (count - expected) ** 2 / expected, 0);
      expect(square).toBeLessThan(31.26);
    }
  });

  it('asks each item at its part of the target, as a whole metronome mark', () => {
    const item = itemOf('c.major-53.together.contrary');
    expect(askedTempo(DEFAULT_PROGRAMME, item, 100)).toBe(216);
    expect(askedTempo(DEFAULT_PROGRAMME, item, 90)).toBe(4 * 49);
  });

  it('asks for no chord in a stage for which the programme does not', () => {
    const stages = {
      ...DEFAULT_PROGRAMME.stages,
      'together.4': { asked: true, target: 240, chords: ['major-53', 'minor-53'] },
    } as const;
    const asked = { ...DEFAULT_PROGRAMME, stages };
    const pool = poolOf(asked, settings);
    expect(pool).toHaveLength(7 * (11 * 3 + 2));
    expect(pool.filter(({ way, chord }) => way === 'together.4' && chord === 'major-6')).toEqual(
      [],
    );
    const seventh = {
      ...settings,
      chords: ['dominant-7'],
      stages: ['together.4'],
      count: 1,
    } as const;
    expect(settingsFor(asked, seventh)).toBeNull();
  });

  it('takes settings over to another programme only as far as it asks for them', () => {
    const later = { ...DEFAULT_PROGRAMME, notes: ['d'] } as const;
    expect(settingsFor(later, settings)).toEqual({ ...settings, notes: ['d'] });
    const few = { ...settings, chords: ['major-6'], stages: ['right.2'] } as const;
    expect(settingsFor(later, few)).toBeNull();
  });
});

describe('counting', () => {
  it('agrees with the binomial distribution where all chances are equal', () => {
    // 10 tosses of a coin: 252 of 1024 ways give five heads.
    expect(tallyOf(Array(10).fill(0.5))[5]).toBeCloseTo(252 / 1024, 12);
    expect(passChance(Array(10).fill(0.5), 9)).toBeCloseTo(11 / 1024, 12);
  });

  it('asks for all where fewer are drawn than must be even', () => {
    expect(passChance([0.5, 0.5], 5)).toBeCloseTo(0.25, 12);
    expect(pivotChance([0.5, 0.5], 0, 5)).toBeCloseTo(0.5, 12);
  });

  it('factors a covariance, also one that has no full rank', () => {
    for (const matrix of [
      [
        [4, 2],
        [2, 3],
      ],
      [
        [1, 1, 1],
        [1, 1, 1],
        [1, 1, 5],
      ],
    ]) {
      const factor = factorOf(matrix);
      const back = factor.map((one) =>
        factor.map((other) => one.reduce((sum, value, k) => sum + value * other[k]!, 0)),
      );
      back.forEach((row, i) =>
        row.forEach((value, j) => expect(value).toBeCloseTo(matrix[i]![j]!, 12)),
      );
    }
  });
});

describe('an examination in the log', () => {
  const { kind: _, ...held } = SAMPLES.examination;
  const examination = (fluency: 1 | 3, forecast: number): Examination => ({
    ...held,
    forecast,
    items: held.items.map((one) => ({ ...one, fluency })),
  });

  it('is kept with the student, is no practice, and can be taken back', () => {
    const asked = event(SAMPLES.examination, 3);
    const before = replay([programme()]);
    const student = replay([programme(), asked]);
    expect(student.examinations).toMatchObject([{ seed: 20_614, day: '2026-01-08' }]);
    for (const part of ['runs', 'lastDay', 'stability', 'runsThatDay', 'foretold'] as const) {
      expect(student.learner[part]).toEqual(before.learner[part]);
    }
    expect(student.stages).toEqual(before.stages);
    expect(student.work.size + student.lastRuns.size + student.milestones.length).toBe(0);
    const undone = replay([programme(), asked, event({ kind: 'void', events: [asked.id] }, 3)]);
    expect(undone.examinations).toEqual([]);
    expect(undone.learner).toEqual(before.learner);
  });

  it('is passed with enough that are at least even', () => {
    expect(outcomeOf(SAMPLES.examination)).toEqual({ even: 1, asked: 2, isPassed: true });
    expect(outcomeOf(examination(1, 0.5))).toEqual({ even: 0, asked: 2, isPassed: false });
  });

  it('shows what forecasts were worth', () => {
    expect(trackRecord([])).toBeNull();
    const record = trackRecord([examination(3, 0.8), examination(1, 0.6)])!;
    expect(record).toMatchObject({ held: 2, passed: 1 });
    expect(record.expected).toBeCloseTo(1.4, 12);
    expect(record.error).toBeCloseTo((0.04 + 0.36) / 2, 12);
  });
});

test('no more is drawn of a small programme than it asks for, in the report as well', () => {
  const { stages } = DEFAULT_PROGRAMME;
  const not = (stage: Stage) => ({ ...stages[stage], asked: false });
  const small: Programme = {
    ...DEFAULT_PROGRAMME,
    notes: ['d'],
    stages: {
      ...stages,
      'right.2': { ...stages['right.2'], chords: ['major-53', 'minor-53'] },
      'left.2': not('left.2'),
      'together.2': not('together.2'),
      'together.4': not('together.4'),
    },
  };
  expect(defaultSettings(small)).toMatchObject({ count: 2, toPass: 2 });
  expect(drawItems(small, defaultSettings(small), 1)).toHaveLength(2);
  expect(
    reportOf({ ...newStudent(), programme: small }, small, '2026-11-25').pass.settings.count,
  ).toBe(2);
});
