/** A programme may ask for other chords in each stage: what it does not ask for is neither counted, planned nor examined. */
import { describe, expect, it } from 'vitest';
import { packOffer, unpackOffer } from '../../shared/formats/programme-offer';
import { programmeSchema } from '../../shared/formats/event-schema';
import { deckOf } from '../../shared/learning/readiness';
import { addDays } from '../../shared/log/day';
import { DEFAULT_PROGRAMME, type Programme } from '../../shared/log/programme';
import { type ChordId, CHORD_IDS } from '../../shared/music/chords';
import { itemOf, stageIndex } from '../../shared/music/deck';
import { fingeringChart } from '../../shared/planning/fingering-chart';
import { reportOf } from '../../shared/planning/report';
import { isOpenForMost, lastStageOf } from '../../shared/planning/stages';
import { replay } from '../../shared/planning/student';
import { planDay } from '../../shared/planning/today';
import { changesOf } from '../../src/parts/programme-offer/changes';
import { STANDARDS, withStandard } from '../../src/parts/programme-form/standards';
import { documentOf } from '../../src/screens/report/document-of';
import { event, programme, run, START } from '../learning/events';
import * as v from 'valibot';

const ROOT: readonly ChordId[] = ['major-53', 'minor-53'];
const { stages } = DEFAULT_PROGRAMME;
/** Right hand: root position and first inversion; left: root position; nothing beyond. */
const ASKED: Programme = {
  ...DEFAULT_PROGRAMME,
  notes: ['d', 'e'],
  stages: {
    ...stages,
    'right.2': { ...stages['right.2'], chords: [...ROOT, 'major-6', 'minor-6'] },
    'left.2': { ...stages['left.2'], chords: ROOT },
    'together.2': { ...stages['together.2'], asked: false },
    'together.4': { ...stages['together.4'], asked: false },
  },
};

/** Every day's list is played, and comes out even at the target. */
function practised(days: number) {
  const events = [programme(ASKED)];
  for (let day = 0; day < days; day++) {
    const { entries } = planDay(replay(events), addDays(START, day), 20);
    events.push(...entries.flatMap(({ items }) => items.map((id) => run(id, 3, 240, day))));
  }
  return events;
}

describe('chords asked for in some stages only', () => {
  it('are the deck, by stage', () => {
    expect(deckOf(ASKED).map(({ id }) => id)).toEqual([
      ...['d', 'e'].flatMap((note) =>
        ['major-53', 'minor-53', 'major-6', 'minor-6'].map((chord) => `${note}.${chord}.right.2`),
      ),
      ...['d', 'e'].flatMap((note) => ROOT.map((chord) => `${note}.${chord}.left.2`)),
    ]);
    expect(CHORD_IDS.map((chord) => lastStageOf(ASKED, chord)).join(' ')).toBe(
      '1 1 0 0 -1 -1 -1 -1 -1 -1 -1',
    );
  });

  it('are all that is ever practised, each up to its last stage', () => {
    const events = practised(8);
    const items = events.flatMap((one) => (one.kind === 'run' ? [itemOf(one.item)] : []));
    expect(items.length).toBeGreaterThan(40);
    for (const { way, chord } of items) {
      expect(stageIndex(way)).toBeLessThanOrEqual(lastStageOf(ASKED, chord));
    }
    // The left hand is reached for what is asked of it, though few of the eleven chords are played.
    expect(items.some(({ way }) => way === 'left.2')).toBe(true);
    expect(isOpenForMost(replay(events).stages, ASKED, ['d', 1])).toBe(true);
  });

  it('are what the report counts and shows', () => {
    const student = replay(practised(3));
    const report = reportOf(student, ASKED, addDays(START, 3));
    expect(report.stages.map(({ stage, items }) => [stage, items])).toEqual([
      ['right.2', 8],
      ['left.2', 4],
    ]);
    const map = documentOf(report, student, ASKED).parts[1]!;
    expect(JSON.stringify(map)).toContain('Map of left hand, two octaves');
    expect(map).toMatchObject({ heading: 'Map' });
  });

  it('alone are in the fingering chart', () => {
    const charts = fingeringChart(replay([]), ASKED);
    expect(charts.map(({ note, rows }) => [note, rows.map(({ item }) => item.chord)])).toEqual([
      ['d', [...ROOT, 'major-6', 'minor-6']],
      ['e', [...ROOT, 'major-6', 'minor-6']],
    ]);
    expect(fingeringChart(replay([]), DEFAULT_PROGRAMME)[0]!.rows).toHaveLength(11);
  });

  it('go over in a link, and a change of them is told', () => {
    const offer = { programme: ASKED, name: null };
    expect(unpackOffer(packOffer(offer))).toEqual(offer);
    const dated = { ...ASKED, furtherDates: [{ day: '2026-12-01', words: 'concert' }] };
    expect(unpackOffer(packOffer({ programme: dated, name: 'A' })).programme).toEqual(dated);
    expect(v.parse(programmeSchema, ASKED)).toEqual(ASKED);
    const all = { ...ASKED, stages: { ...ASKED.stages, 'left.2': stages['left.2'] } };
    expect(changesOf(all, ASKED)).toEqual([
      { what: 'left hand, two octaves', before: 'at 60', after: 'at 60, triads, root position' },
    ]);
  });

  it('begin the past anew only where it can no longer be compared', () => {
    const events = practised(5);
    const before = replay(events);
    expect(before.milestones.length).toBeGreaterThan(0);
    const slower = { ...ASKED, minutes: 30 };
    expect(replay([...events, event({ kind: 'programme', programme: slower }, 6)])).toMatchObject({
      milestones: before.milestones,
      lastRuns: before.lastRuns,
    });
    const wider = { ...ASKED, stages };
    const after = replay([...events, event({ kind: 'programme', programme: wider }, 6)]);
    expect(after.milestones).toEqual([]);
    expect(after.lastRuns).toEqual(before.lastRuns);
  });

  it('come with a published list that names them', () => {
    const grade = STANDARDS.find(({ source }) => source === 'LCM, Grade 7')!;
    // Check values: root position and first inversion.
    expect(withStandard(DEFAULT_PROGRAMME, grade).stages['together.4'].chords).toEqual([
      ...ROOT,
      'major-6',
      'minor-6',
    ]);
    const eight = STANDARDS.find(({ source }) => source === 'LCM, Grade 8')!;
    expect(withStandard(ASKED, eight).stages['right.2'].chords).toBeUndefined();
  });
});
