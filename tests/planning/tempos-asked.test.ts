/** A programme may ask for some chords of a stage at a tempo of their own: whatever is measured by a target goes by it. */
import { describe, expect, it } from 'vitest';
import { programmeSchema } from '../../shared/formats/event-schema';
import { packOffer, unpackOffer } from '../../shared/formats/programme-offer';
import { reportCsv } from '../../shared/formats/report-csv';
import { chanceEven } from '../../shared/learning/prediction';
import { readinessOf } from '../../shared/learning/readiness';
import { addDays } from '../../shared/log/day';
import {
  DEFAULT_PROGRAMME,
  type Programme,
  targetFor,
  targetRange,
} from '../../shared/log/programme';
import { CHORD_IDS, type ChordId } from '../../shared/music/chords';
import { itemOf, roundItems, STAGES } from '../../shared/music/deck';
import { askedTempo } from '../../shared/planning/examination/draw';
import { milestoneOf } from '../../shared/planning/forecast';
import { isReadyForPedal } from '../../shared/planning/pedal';
import { cellsOf, sharesOf } from '../../shared/planning/map';
import { nextProbe } from '../../shared/planning/placement';
import { weakestOf } from '../../shared/planning/reason-for';
import { reportOf } from '../../shared/planning/report';
import { replay, type Student } from '../../shared/planning/student';
import { planDay } from '../../shared/planning/today';
import { changesOf } from '../../src/parts/programme-offer/changes';
import { standingText } from '../../src/screens/item/standing';
import { targetsText } from '../../src/screens/report/report-words';
import { event, programme, run, START } from '../learning/events';
import * as v from 'valibot';

const SEVENTHS = ['dominant-7', 'dominant-65', 'dominant-43', 'dominant-42', 'diminished-7'];
const isSeventh = (chord: ChordId) => SEVENTHS.includes(chord);

/** The same with these tempos in each stage. */
function withTargets(base: Programme, targets: Partial<Record<ChordId, number>>): Programme {
  const stages = STAGES.map((stage) => [stage, { ...base.stages[stage], targets }] as const);
  return { ...base, stages: Object.fromEntries(stages) as unknown as Programme['stages'] };
}

const PLAIN: Programme = { ...DEFAULT_PROGRAMME, notes: ['d', 'e'], date: '2026-02-20' };
/** Sevenths at half the tempo. */
const SLOW = withTargets(PLAIN, Object.fromEntries(SEVENTHS.map((chord) => [chord, 120])));

const ITEMS = roundItems('d', 'right.2');
const [TRIAD, SEVENTH] = [itemOf('d.major-53.right.2'), itemOf('d.dominant-7.right.2')];
/** All of a round came out the same on three days. */
const played = (tempo: number) =>
  [0, 1, 2].flatMap((day) => ITEMS.map(({ id }) => run(id, 3, tempo, day)));

describe('the tempo that is asked for', () => {
  it('is that of the chord, or else that of the stage; one hand over four octaves serves both', () => {
    expect(targetFor(SLOW, TRIAD)).toBe(240);
    expect(targetFor(SLOW, SEVENTH)).toBe(120);
    const four = {
      ...PLAIN,
      stages: {
        ...PLAIN.stages,
        'together.4': { asked: true, target: 200, targets: { 'dominant-7': 160 } },
      },
    };
    const asked = (id: Parameters<typeof itemOf>[0]) => targetFor(four, itemOf(id));
    expect(asked('d.dominant-7.left.4')).toBe(160);
    expect(asked('d.major-6.right.4')).toBe(200);
    expect(asked('d.dominant-7.right.2')).toBe(240);
  });

  it('has a slowest and a fastest among the chords that the stage asks for', () => {
    expect(targetRange(SLOW, 'left.2')).toEqual([120, 240]);
    expect(targetRange(PLAIN, 'left.2')).toEqual([240, 240]);
    const triads = CHORD_IDS.filter((chord) => !isSeventh(chord));
    const goal = { ...SLOW.stages['left.2'], chords: triads };
    const only = { ...SLOW, stages: { ...SLOW.stages, 'left.2': goal } };
    expect(targetRange(only, 'left.2')).toEqual([240, 240]);
    expect(targetsText([120, 240], 4)).toBe('30–60');
    expect(targetsText([240, 240], 4)).toBe('60');
  });
});

/** Thirty days of what the list asks for, with ratings that vary; each day's plan, and the report at the end. */
function life(asked: Programme) {
  const events = [{ ...programme(asked), id: '0' }];
  const plans: unknown[] = [];
  for (let day = 0; day < 30; day++) {
    const plan = planDay(replay(events), addDays(START, day), 20);
    plans.push(plan);
    const runs = plan.entries.flatMap(({ items, tempo }, place) =>
      items.map((id, i) => run(id, (((day * 7 + i * 3 + place) % 4) + 1) as 1, tempo, day)),
    );
    events.push(...runs.map((one, i) => ({ ...one, id: `${100 + day}.${100 + i}` })));
  }
  const student = replay(events);
  const report = reportOf(student, asked, addDays(START, 30));
  return { plans, report, stages: student.stages, milestones: student.milestones };
}

describe('a programme that names each chord at the tempo of its stage', () => {
  it('is planned, opened, forecast, examined and reported as one that names none', () => {
    const each = Object.fromEntries(CHORD_IDS.map((chord) => [chord, 240]));
    const base = { ...PLAIN, stages: { ...PLAIN.stages } };
    for (const stage of STAGES) base.stages[stage] = { ...base.stages[stage], target: 240 };
    expect(life(withTargets(base, each))).toEqual(life(base));
  });

  it('leaves links without any as they were', () => {
    // What the version before this one made of them.
    expect(packOffer({ programme: { ...DEFAULT_PROGRAMME, notes: ['c', 'd'] }, name: 'Ada' })).toBe(
      '[1,3,15,[240,240,240,240,216],0,4,0,20,6,null,null,"Ada"]',
    );
    const goal = { asked: true, target: 208, chords: ['major-53', 'minor-53', 'major-6'] } as const;
    const some = { ...DEFAULT_PROGRAMME, stages: { ...DEFAULT_PROGRAMME.stages, 'right.2': goal } };
    expect(packOffer({ programme: { ...some, notes: ['d', 'eb'] }, name: null })).toBe(
      '[1,258,15,[208,240,240,240,216],0,4,0,20,6,null,null,null,null,[7,0,0,0,0]]',
    );
  });
});

const opened = (asked: Programme) => {
  const { open } = replay([programme(asked), ...played(64)]).stages;
  return ITEMS.filter((item) => open[item.arpeggioIndex]! > 0).map(({ chord }) => chord);
};

const grown = (asked: Programme): Student => {
  const runs = [...Array(12).keys()].flatMap((after) =>
    ITEMS.map(({ id }) => run(id, 4, 240, after)),
  );
  return replay([programme(asked), ...runs]);
};

const tenth = (asked: Programme) => {
  const even = ITEMS.map(({ id, chord }) => run(id, 3, isSeventh(chord) ? 120 : 240));
  const learner = replay([programme(asked), ...even]).learner;
  const only = { ...asked, notes: ['d'] as const };
  return milestoneOf(learner, only, START).tenths[0]!;
};

const milestonesAfter = (before: Programme, after: Programme) => {
  const events = [programme(before), ...played(120)];
  return replay([...events, event({ kind: 'programme', programme: after }, 3)]).milestones;
};

describe('sevenths that are asked for slower', () => {
  const student = replay([programme(SLOW), ...played(120)]);
  const day = addDays(START, 3);

  it('are as ready as they are at their own tempo', () => {
    const { chances } = readinessOf(student.learner, SLOW, day);
    expect(chances.get(SEVENTH.id)).toBe(chanceEven(student.learner, SEVENTH, 120, day));
    expect(chances.get(TRIAD.id)).toBe(chanceEven(student.learner, TRIAD, 240, day));
    expect(chances.get(SEVENTH.id)!).toBeGreaterThan(2 * chances.get(TRIAD.id)!);
  });

  it('are examined at their own tempo, and may have the pedal there', () => {
    expect(askedTempo(SLOW, SEVENTH, 100)).toBe(120);
    expect(askedTempo(SLOW, TRIAD, 90)).toBe(216);
    expect(isReadyForPedal(student, SLOW, [SEVENTH.id])).toBe(true);
    expect(isReadyForPedal(student, SLOW, [TRIAD.id])).toBe(false);
  });

  it('open the next stage by half of their own tempo', () => {
    expect(opened(SLOW)).toEqual(SEVENTHS);
    expect(opened(PLAIN)).toEqual([]);
    const text = (chord: ChordId) =>
      standingText(replay([programme(SLOW)]), SLOW, itemOf(`d.${chord}.left.2`));
    expect(text('dominant-7')).toContain('at 15 or faster');
    expect(text('major-53')).toContain('at 30 or faster');
  });

  it('are no longer asked for at more than a fifth above it', () => {
    const later = addDays(START, 13);
    const tempos = (asked: Programme) =>
      planDay(grown(asked), later, 60).entries.flatMap(({ items, tempo }) =>
        items.every((id) => isSeventh(itemOf(id).chord)) ? [tempo] : [],
      );
    for (const tempo of tempos(SLOW)) expect(tempo).toBeLessThanOrEqual(144);
    const probe = (asked: Programme) => {
      const alone = STAGES.map((stage) => {
        return [stage, { ...asked.stages[stage], asked: stage === 'right.2' }] as const;
      });
      const without = new Set(ITEMS.filter(({ chord }) => !isSeventh(chord)).map(({ id }) => id));
      const stages = Object.fromEntries(alone) as unknown as Programme['stages'];
      const only = { ...asked, notes: ['d'] as const, stages };
      return nextProbe(grown(asked).learner, only, { day: later, without })!;
    };
    expect([probe(SLOW), probe(PLAIN)].map(({ item }) => isSeventh(item.chord))).toEqual([
      true,
      true,
    ]);
    expect(probe(SLOW).tempo).toBeLessThanOrEqual(144);
    expect(probe(PLAIN).tempo).toBeGreaterThan(144);
  });

  it('COLD: keep a cold round at the slowest tempo that is asked for in it', () => {
    const four = [0, 1, 2, 3].flatMap((after) =>
      roundItems('d', 'together.4').map(({ id }) => run(id, 4, 240, after)),
    );
    const before = { reached: 'together.4', date: addDays(START, 10) } as const;
    const [entry] = planDay(
      replay([programme({ ...SLOW, ...before }), ...four]),
      addDays(START, 5),
      20,
    ).entries;
    expect(entry).toMatchObject({ kind: 'round', tempo: 120, reason: { kind: 'cold' } });
    expect(entry!.items).toHaveLength(11);
  });

  it('are shown on the map by the chance at their own tempo', () => {
    const cells = cellsOf(student, SLOW, { note: 'd', way: 'right.2', day });
    for (const { item, chance } of cells) {
      expect(chance).toBe(chanceEven(student.learner, item, targetFor(SLOW, item), day));
    }
    expect(sharesOf(student, SLOW, day).get('right.2')).toBeCloseTo(
      readinessOf(student.learner, SLOW, day).byStage.get('right.2')!,
      12,
    );
  });

  it('do not hide a triad that is further from what is asked', () => {
    expect(weakestOf(student, ITEMS, day).item.chord).not.toMatch(/^d[oi]m/);
    const slower = ITEMS.map(({ id, chord }) => run(id, 3, isSeventh(chord) ? 100 : 140, 4));
    expect(weakestOf(replay([programme(PLAIN), ...slower]), ITEMS, day).item.chord).toMatch(
      /^d[oi]m/,
    );
    expect(weakestOf(replay([programme(SLOW), ...slower]), ITEMS, day).item.chord).not.toMatch(
      /^d[oi]m/,
    );
  });

  it('are reported against their own tempo', () => {
    const report = reportOf(student, SLOW, day);
    expect(report.stages[0]).toMatchObject({ stage: 'right.2', targets: [120, 240] });
    for (const { item, target } of report.weakest) expect(target).toBe(targetFor(SLOW, item));
    const csv = reportCsv({ student, programme: SLOW, today: day, nameStyle: 'letters' });
    const row = (chord: string) =>
      csv.split('\r\n').find((line) => line.startsWith(`"D",${chord},`))!;
    expect(row('"dominant seventh, root position"').split(',')[6]).toBe('30');
    expect(row('"major triad, root position"').split(',')[6]).toBe('60');
  });

  it('are as far in the pace of a stage as they are from their own tempo', () => {
    // In octaves: what is asked at half the tempo needs one less.
    expect(tenth(SLOW) - tenth(PLAIN)).toBeGreaterThan(0.2);
    const halved = withTargets(PLAIN, Object.fromEntries(CHORD_IDS.map((chord) => [chord, 120])));
    expect(tenth(halved) - tenth(PLAIN)).toBeCloseTo(1, 9);
  });

  it('begin the pace anew, as it can no longer be compared', () => {
    expect(milestonesAfter(PLAIN, SLOW)).toEqual([]);
    expect(milestonesAfter(SLOW, PLAIN)).toEqual([]);
    expect(milestonesAfter(SLOW, { ...SLOW, minutes: 30 })).toEqual(student.milestones);
    expect(student.milestones).toHaveLength(1);
  });
});

const refused = (targets: unknown) => {
  const goal = { ...PLAIN.stages['left.2'], targets };
  const stages = { ...PLAIN.stages, 'left.2': goal };
  return !v.safeParse(programmeSchema, { ...PLAIN, stages }).success;
};

describe('tempos by chord', () => {
  it('go over in a link, of which an earlier version reads the rest', () => {
    const offer = { programme: SLOW, name: null };
    expect(unpackOffer(packOffer(offer))).toEqual(offer);
    const known = JSON.parse(packOffer(offer)) as unknown[];
    expect(unpackOffer(JSON.stringify(known.slice(0, 14))).programme).toEqual(PLAIN);
  });

  it('are checked as all that comes from outside', () => {
    expect(v.parse(programmeSchema, SLOW)).toEqual(SLOW);
    for (const bad of [{}, { 'major-7': 120 }, { 'major-6': 0 }, { 'major-6': '120' }, [120], null])
      expect(refused(bad)).toBe(true);
    expect(refused({ 'major-6': 120 })).toBe(false);
  });

  it('are told where an offered programme changes them', () => {
    const goal = { ...PLAIN.stages['left.2'], targets: SLOW.stages['left.2'].targets! };
    const one = { ...PLAIN, stages: { ...PLAIN.stages, 'left.2': goal } };
    expect(changesOf(PLAIN, one)).toEqual([
      {
        what: 'left hand, two octaves',
        before: 'at 60',
        after:
          'at 60 (dominant sevenths, root position; dominant sevenths, inversions; diminished sevenths at 30)',
      },
    ]);
  });
});
