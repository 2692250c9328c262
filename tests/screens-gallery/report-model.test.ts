import { describe, expect, it } from 'vitest';
import { addDays } from '../../shared/log/day';
import type { EventBody, LogEvent } from '../../shared/log/events';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';
import { CHORD_IDS } from '../../shared/music/chords';
import { minutesOn } from '../../shared/planning/dates';
import { parseDrillId } from '../../shared/planning/drills/kinds';
import { handedOut, reportOf } from '../../shared/planning/report';
import { replay } from '../../shared/planning/student';
import { evidenceText, passText } from '../../src/screens/report/report-words';
import { weakestPart } from '../../src/screens/report/standing-parts';
import { SAMPLES } from '../formats/samples';
import { event, programme, run, START } from '../learning/events';

const { stages } = DEFAULT_PROGRAMME;
const ONLY_RIGHT = {
  ...stages,
  'left.2': { ...stages['left.2'], asked: false },
  'together.2': { ...stages['together.2'], asked: false },
  'together.4': { ...stages['together.4'], asked: false },
};
const TODAY = addDays(START, 3);
const report = (change: Parameters<typeof programme>[0], ...events: readonly LogEvent[]) => {
  const student = replay([programme({ notes: ['d'], stages: ONLY_RIGHT, ...change }), ...events]);
  return reportOf(student, student.programme!, TODAY);
};

/** All eleven chords from D, the later in the table the worse. */
const allPlayed = CHORD_IDS.map((chord, i) => run(`d.${chord}.right.2`, i < 4 ? 4 : 1, 160, 1));

/** The same runs again, a day later. */
const dayLater = (events: readonly LogEvent[]): readonly LogEvent[] =>
  events.map((one) => event({ ...one } as EventBody, 2));

describe('the report', () => {
  it('is for the date of the programme, or for today where there is none or it is over', () => {
    expect(report({ date: addDays(TODAY, 5) }).date).toBe(addDays(TODAY, 5));
    expect(report({ date: null }).date).toBe(TODAY);
    expect(report({ date: addDays(TODAY, -1) }).date).toBe(TODAY);
  });

  it('expects less on a later day than today, if something was played', () => {
    const { onDate, now } = report({ date: addDays(TODAY, 60) }, ...allPlayed);
    expect(onDate.share).toBeLessThan(now.share);
  });

  it('has a line for each stage that is asked, with what of it was played', () => {
    const { stages: lines } = report({ stages }, run('d.major-53.right.2', 3, 160));
    expect(lines.map(({ stage, items, played }) => [stage, items, played])).toEqual([
      ['right.2', 11, 1],
      ['left.2', 11, 0],
      ['together.2', 11, 0],
      ['together.4', 11, 0],
    ]);
  });

  it('calls the evidence thin while less than half has been played', () => {
    expect(report({}, ...allPlayed.slice(0, 5)).isThin).toBe(true);
    expect(report({}, ...allPlayed.slice(0, 6)).isThin).toBe(false);
  });

  it('says what it knows nothing of, and which day it speaks of', () => {
    expect(evidenceText(report({}))).toBe('Nothing has been played yet: the figures are guesses.');
    expect(evidenceText(report({}, ...allPlayed))).toBe('11 of 11 items have been played.');
    expect(passText(report({ date: null }))).toMatch(/^Of an examination today that draws 6 items/);
    const one = {
      ...ONLY_RIGHT,
      'right.2': { ...stages['right.2'], chords: ['major-53'] as const },
    };
    expect(passText(report({ stages: one }))).toMatch(
      / draws one item, at least even at the tempo/,
    );
    expect(passText(report({ date: addDays(TODAY, 5) }))).toMatch(/examination on that day that/);
  });

  it('lists the weakest first, and neither what was never played nor what is set aside', () => {
    const aside = event({ kind: 'aside', item: 'd.diminished-7.right.2', aside: true }, 2);
    const { weakest, aside: listed } = report({}, ...allPlayed.slice(3), aside);
    expect(weakest).toHaveLength(7);
    const chances = weakest.map(({ chance }) => chance);
    expect(chances).toEqual(chances.toSorted((a, b) => a - b));
    expect(weakest.at(-1)!.item.id).toBe('d.minor-6.right.2');
    expect(weakest.map(({ item }) => item.id)).not.toContain('d.diminished-7.right.2');
    expect(listed.map((item) => item.id)).toEqual(['d.diminished-7.right.2']);
  });

  it('gives every stage its part of the weakest', () => {
    const both = CHORD_IDS.map((chord) => run(`d.${chord}.together.4`, 0, 100, 2));
    const ways = report({ stages }, ...allPlayed, ...both).weakest.map(({ item }) => item.way);
    expect(ways).toEqual(['right.2', 'right.2', 'together.4', 'together.4']);
  });

  it('shows the work of twelve weeks up to this one', () => {
    const { weeks } = report({}, ...allPlayed);
    expect(weeks).toHaveLength(12);
    expect(weeks.at(-1)).toMatchObject({ monday: START, runs: 11, days: 1 });
  });

  it('gives the chance to pass as the last examination was, and the reach of each stage', () => {
    const { pass, stages: lines } = report({}, ...allPlayed);
    expect(pass.settings).toMatchObject({ count: 6, toPass: 5, stages: ['right.2'] });
    expect(pass.chance).toBeGreaterThan(0);
    expect(pass.costly[0]!.item.id).not.toBe('d.major-53.right.2');
    // Seven of eleven stopped, so the middle one is among them.
    expect(lines[0]!.reach).toBeLessThan(lines[0]!.targets[0]);
    const { kind: _, ...held } = SAMPLES.examination;
    const settings = { ...held.settings, notes: ['d'], stages: ['right.2'] } as const;
    const asked = event({ kind: 'examination', ...held, settings }, 2);
    const later = report({}, ...allPlayed, asked).pass;
    expect(later.settings).toEqual(settings);
    expect(later.chance).toBeGreaterThan(pass.chance);
  });

  it('tells what has changed since the report that was handed out before today', () => {
    expect(report({}, ...allPlayed).change).toBeNull();
    const before = report({}, ...allPlayed.slice(0, 4));
    const given = event(handedOut(before), 1);
    const ofToday = event({ ...handedOut(before), share: 0.99 }, 3);
    const after = report(
      {},
      ...allPlayed.slice(0, 4),
      given,
      ...dayLater(allPlayed.slice(4)),
      ofToday,
    );
    expect(after.change).toMatchObject({
      day: addDays(START, 1),
      played: [4, 11],
      days: 1,
      runs: 7,
      share: [before.now.share, after.now.share],
    });
    expect(after.change!.stages).toEqual([
      { stage: 'right.2', share: [before.now.byStage.get('right.2'), after.now.share] },
    ]);
  });

  it('names the hardest join of what was last less than even, and what is planned next', () => {
    const { joins, planned } = report({}, ...allPlayed);
    expect(joins).toHaveLength(4);
    for (const { item, join, evidence } of joins) {
      expect(evidence).toMatchObject({ kind: 'rated', fluency: 1, day: addDays(START, 1) });
      expect(join.hand).toBe('right');
      expect(parseDrillId(join.id)!.item.arpeggio).toBe(item.arpeggio);
    }
    // Nothing was played today, so today's list is still to come.
    expect(planned.day).toBe(TODAY);
    expect(planned.entries.length).toBeGreaterThan(0);
    const played = report({}, ...allPlayed, run('d.major-53.right.2', 3, 160, 3));
    expect(played.planned.day).toBe(addDays(TODAY, 1));
  });

  it('plans the shorter list that a day of the week before the date has', () => {
    const { planned } = report({ date: addDays(TODAY, 1) }, ...allPlayed);
    expect(planned.minutes).toBe(
      minutesOn({ ...DEFAULT_PROGRAMME, date: addDays(TODAY, 1) }, TODAY),
    );
    expect(planned.minutes).toBeLessThan(DEFAULT_PROGRAMME.minutes);
  });

  it("has the teacher's remarks, newest first, and not the player's", () => {
    const remarks = [1, 2, 3, 4, 5, 6].map((i) =>
      event(
        { kind: 'remark', about: null, text: String(i), by: i === 3 ? 'player' : 'teacher' },
        1,
      ),
    );
    const { teacherRemarks } = report({}, ...remarks);
    expect(teacherRemarks.map(({ text }) => text)).toEqual(['6', '5', '4', '2', '1']);
  });
});

const weakestBlocks = (...events: readonly LogEvent[]) =>
  weakestPart(report({}, ...events), 4).blocks;

describe('the weakest items in words', () => {
  it('tells where nothing was played from where all that was played is set aside', () => {
    const aside = allPlayed.flatMap((one) =>
      one.kind === 'run' ? [event({ kind: 'aside', item: one.item, aside: true })] : [],
    );
    expect(weakestBlocks()).toEqual([{ kind: 'text', text: 'Nothing has been played yet.' }]);
    expect(weakestBlocks(...allPlayed, ...aside)).toEqual([
      { kind: 'text', text: 'All that was played has been set aside.' },
    ]);
  });
});
