/** What a teacher's mark, an examination and a take tell beside the player's own ratings. */
import { describe, expect, it } from 'vitest';
import type { Fluency, Judge, LogEvent, RunBody } from '../../shared/log/events';
import { dayOfNumber } from '../../shared/log/day';
import { DECK, itemOf } from '../../shared/music/deck';
import {
  cloneLearner,
  EFFECTS,
  isAnchored,
  KINDNESS,
  type Learner,
  newLearner,
  TENTHS,
} from '../../shared/learning/learner';
import { observe, observeMark } from '../../shared/learning/observe';
import { chanceEven, reachOf, workingTempo } from '../../shared/learning/prediction';
import { replay } from '../../shared/planning/student';
import { seededRandom } from '../../src/demo/random';
import { event, programme, run, START } from './events';
import { fc } from './property';

const DAY = 20_000;
const item = itemOf('d.major-6.right.2');

const reach = (learner: Learner, day = DAY): number =>
  reachOf(learner, item, dayOfNumber(day)).tempo;

interface Rated {
  readonly index: number;
  readonly tempo: number;
  readonly fluency: Fluency;
}
const fluencies = fc.constantFrom<Fluency[]>(0, 1, 2, 3, 4);
const histories = fc.array(
  fc.record({ index: fc.nat(400), tempo: fc.integer({ min: 100, max: 300 }), fluency: fluencies }),
  { maxLength: 40 },
);
function after(history: readonly Rated[]): Learner {
  const learner = newLearner();
  history.forEach(({ index, tempo, fluency }, i) => {
    observe(learner, DECK[index]!, { tempo, fluency, day: DAY - 20 + Math.floor(i / 2) });
  });
  return learner;
}

/** A player who is even at 220 notes a minute, and says so `kindness` octaves too soon. */
function live(kindness: number, marksAWeek: number): Learner {
  const random = seededRandom(5);
  const learner = newLearner();
  for (let i = 0; i < 400; i++) {
    const day = DAY + Math.floor(i / 10);
    const other = DECK[(7 * i) % 60]!;
    const tempo = workingTempo(learner, other, dayOfNumber(day));
    const judge: Judge = i % 70 < marksAWeek ? 'teacher' : 'player';
    const over = Math.log2(220 / tempo) + 0.28 * random.normal();
    const heard = judge === 'teacher' ? over : over + kindness;
    const fluency = [-0.8, -0.4, 0, 0.45].filter((cut) => heard >= cut).length as Fluency;
    observe(learner, other, { tempo, fluency, day, judge });
  }
  return learner;
}
/** Mean of how many octaves the reaches lie above the truth. */
const errorOf = (learner: Learner): number =>
  DECK.slice(0, 60).reduce(
    (sum, one) => sum + Math.log2(reachOf(learner, one, dayOfNumber(DAY + 40)).tempo / 220) / 60,
    0,
  );

describe('without an anchor', () => {
  it('all is as before: values of the model that had no anchors, to rounding', () => {
    const learner = newLearner();
    for (let i = 0; i < 300; i++) {
      observe(learner, DECK[(i * 37) % 200]!, {
        tempo: 120 + ((i * 53) % 160),
        fluency: ((i * 7 + (i >> 3)) % 5) as Fluency,
        day: DAY + (i >> 2),
      });
    }
    const reaches = [0, 37, 74, 150, 400].map(
      (index) => reachOf(learner, DECK[index]!, dayOfNumber(DAY + 80)).tempo,
    );
    const before = [
      130.7699119935807, 167.80033289354157, 187.1521618996374, 171.63166170604342,
      134.96354200265696,
    ];
    reaches.forEach((tempo, i) => expect(tempo).toBeCloseTo(before[i]!, 9));
    const chance = chanceEven(learner, DECK[111]!, 200, dayOfNumber(DAY + 90));
    expect(chance).toBeCloseTo(0.24314200760562854, 9);
    expect(learner.foretold[3 * TENTHS]).toBeCloseTo(86.98672825033186, 9);
  });

  it('nothing is said of how kindly the player rates', () => {
    fc.assert(
      fc.property(histories, (history) => {
        const learner = after(history);
        expect(isAnchored(learner)).toBe(false);
        expect(learner.effects[KINDNESS]).toBe(0);
      }),
    );
  });
});

describe("a teacher's mark", () => {
  it('moves the reach by more than the same rating by the player', () => {
    const extremes = fc.constantFrom<Fluency[]>(0, 4);
    fc.assert(
      fc.property(
        histories,
        fc.integer({ min: 120, max: 280 }),
        extremes,
        (history, tempo, fluency) => {
          const [own, marked] = [after(history), after(history)];
          observe(own, item, { tempo, fluency, day: DAY });
          observe(marked, item, { tempo, fluency, day: DAY, judge: 'teacher' });
          const further = Math.log2(reach(marked) / reach(own));
          expect(fluency === 4 ? further : -further).toBeGreaterThan(0);
        },
      ),
    );
  });

  it('leaves sums of ability and kindness as they were, until more is known', () => {
    fc.assert(
      fc.property(histories, (history) => {
        const [before, learner] = [after(history), after(history)];
        observe(learner, item, { tempo: 180, fluency: 3, day: DAY, judge: 'teacher' });
        const { covariance } = learner;
        for (let i = 0; i < EFFECTS; i++) {
          expect(covariance[i * (EFFECTS + 1)]).toBeGreaterThan(0);
          for (let j = 0; j < i; j++) {
            expect(covariance[i * EFFECTS + j]).toBeCloseTo(covariance[j * EFFECTS + i]!, 12);
          }
        }
        const sum =
          covariance[0]! + 2 * covariance[KINDNESS]! + covariance[KINDNESS * (EFFECTS + 1)]!;
        // Three days of drift at most come between.
        expect(sum).toBeLessThan(before.covariance[0]! + 3 * 0.016 ** 2);
      }),
    );
  });

  it('ANCHOR: lets a lenient rater end lower than without marks, and a strict one higher', () => {
    for (const kindness of [0.15, 0.3]) {
      expect(errorOf(live(kindness, 8))).toBeLessThan(errorOf(live(kindness, 0)) - 0.05);
      expect(errorOf(live(-kindness, 8))).toBeGreaterThan(errorOf(live(-kindness, 0)) + 0.05);
    }
  });

  it('brings the reach near the truth, where own ratings are off by all of their kindness', () => {
    expect(errorOf(live(0.3, 0))).toBeGreaterThan(0.2);
    const known = live(0.3, 8);
    // Forty-eight marks; some of what is left is gain that the model expects and this player does not have.
    expect(Math.abs(errorOf(known))).toBeLessThan(0.15);
    expect(Math.abs(known.effects[KINDNESS]! - 0.3)).toBeLessThan(0.1);
  });

  it('still lets the player be told how the own next rating will come out', () => {
    const { foretold } = live(0.3, 8);
    const sum = (from: number) => foretold.slice(from, from + TENTHS).reduce((a, b) => a + b, 0);
    expect(Math.abs(sum(0) - sum(TENTHS)) / sum(2 * TENTHS)).toBeLessThan(0.05);
  });
});

describe('a mark in an examination', () => {
  it("tells of the level like a teacher's mark, and is no practice", () => {
    fc.assert(
      fc.property(histories, fluencies, (history, fluency) => {
        const [before, learner] = [after(history), after(history)];
        observeMark(learner, item, { tempo: 180, fluency, day: DAY, judge: 'teacher' });
        expect(learner.effects).not.toEqual(before.effects);
        for (const part of ['runs', 'lastDay', 'runsThatDay', 'stability', 'foretold'] as const) {
          expect(learner[part]).toEqual(before[part]);
        }
      }),
    );
  });

  it('corrects nothing when the player was the judge', () => {
    const learner = newLearner();
    observeMark(learner, item, { tempo: 180, fluency: 2, day: DAY });
    expect(isAnchored(learner)).toBe(false);
    expect(reach(learner)).toBeLessThan(reach(newLearner()));
  });
});

/** After a run that the player called even, with or without what a take says of it. */
const taken = (certainty: number | null, fluency: Fluency): Learner => {
  const learner = cloneLearner(after([{ index: item.index, tempo: 170, fluency: 3 }]));
  const heard = certainty === null ? null : { fluency, certainty };
  observe(learner, item, { tempo: 180, fluency: 3, day: DAY, heard });
  return learner;
};

describe('a take', () => {
  it('weighs by its certainty against the rating of the same run', () => {
    const reaches = [0, 0.3, 0.6, 1].map((certainty) => reach(taken(certainty, 1)));
    expect(reaches).toEqual(reaches.toSorted((a, b) => b - a));
    expect(new Set(reaches).size).toBe(4);
    expect(taken(0, 1)).toEqual(taken(null, 1));
  });

  it('is one run, not two', () => {
    expect(taken(1, 3).runs[item.index]).toBe(taken(null, 3).runs[item.index]);
    expect(taken(1, 3).foretold).toEqual(taken(null, 3).foretold);
  });
});

const marked = (fluency: Fluency, day: number): LogEvent => {
  const own = run('d.major-6.right.2', fluency, 180, day) as LogEvent & RunBody;
  return { ...own, judge: 'teacher' };
};

describe('the log', () => {
  it('gives the same student in whatever order it is read, and without a mark that is taken back', () => {
    const log = [
      programme(),
      run('d.major-6.right.2', 4, 180, 0),
      run('g.major-53.left.2', 3, 180, 0),
      marked(1, 1),
      run('d.major-6.right.2', 4, 190, 2),
    ];
    expect(replay(log.toReversed())).toEqual(replay(log));
    const wrong = log[3]!;
    const undone = replay([...log, event({ kind: 'void', events: [wrong.id] }, 3)]);
    const without = replay(log.filter((one) => one !== wrong));
    expect(undone.learner).toEqual(without.learner);
    expect(isAnchored(undone.learner)).toBe(false);
    const by = (student: typeof undone) => reachOf(student.learner, item, START).tempo;
    expect(by(replay(log))).toBeLessThan(by(without));
  });
});
