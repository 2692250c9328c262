import { describe, expect, it } from 'vitest';
import { addDays } from '../../shared/log/day';
import type { LogEvent } from '../../shared/log/events';
import type { ItemId } from '../../shared/music/deck';
import { reasonText } from '../../shared/planning/reasons';
import { replay } from '../../shared/planning/student';
import { type Entry, planDay } from '../../shared/planning/today';
import { wishedOn } from '../../shared/planning/wishes';
import { event, programme, run, START } from '../learning/events';

const ASKED: ItemId = 'a.dominant-42.left.2';
const TOMORROW = addDays(START, 1);
const wish = (item: ItemId = ASKED): LogEvent => event({ kind: 'wish', item, from: TOMORROW });
const asked = (...events: readonly LogEvent[]) => replay([programme(), ...events]);
const wishedAt = (day: string, ...events: readonly LogEvent[]) =>
  planDay(asked(...events), day, 20).entries.filter(({ reason }) => reason.kind === 'wished');

const ids = (...items: readonly ItemId[]) =>
  wishedOn(asked(...items.map(wish)), TOMORROW).map(({ id }) => id);

describe('what the teacher asks for', () => {
  it('comes first on the list of its day, with the reason in words, and the list still fits', () => {
    const plan = planDay(asked(wish()), TOMORROW, 20);
    const [first, second] = plan.entries;
    expect(first).toMatchObject({ key: `${ASKED}.1`, kind: 'single', items: [ASKED] });
    expect(reasonText(first!.reason, 4)).toMatch(
      /^Asked for by your teacher\. Likely even at \d+\.$/,
    );
    expect(second!.note).not.toBe('a');
    expect(plan.seconds).toBeLessThanOrEqual(20 * 60);
  });

  it('is not there before, and waits until it has been played', () => {
    expect(wishedAt(START, wish())).toEqual([]);
    expect(wishedAt(addDays(START, 9), wish())).toHaveLength(1);
    expect(wishedAt(TOMORROW, wish(), run(ASKED, 2, 100, 0))).toHaveLength(1);
    expect(wishedAt(addDays(START, 2), wish(), run(ASKED, 2, 100, 1))).toEqual([]);
  });

  it('can be taken back, and what is set aside is not asked for', () => {
    const made = wish();
    expect(wishedAt(TOMORROW, made, event({ kind: 'void', events: [made.id] }))).toEqual([]);
    const aside = event({ kind: 'aside', item: ASKED, aside: true });
    expect(wishedAt(TOMORROW, made, aside)).toEqual([]);
  });

  it('is in the order of the deck, whatever the order of asking', () => {
    const other: ItemId = 'c.major-53.right.2';
    expect(ids(ASKED, other)).toEqual([other, ASKED]);
    expect(ids(other, ASKED)).toEqual([other, ASKED]);
  });

  it('leaves out what no longer fits into a short day', () => {
    expect(planDay(asked(wish()), TOMORROW, 0.2).entries).toEqual([]);
  });

  it('comes though the programme does not ask for it, and keeps nothing else from coming', () => {
    const beyond: ItemId = 'c.dominant-7.together.contrary';
    const after: ItemId = 'd.major-53.left.4';
    const [first, second] = planDay(asked(wish(beyond), wish(after)), TOMORROW, 20).entries;
    expect(first).toMatchObject({ items: [beyond], reason: { kind: 'wished' } });
    expect(second).toMatchObject({ items: [after], reason: { kind: 'wished' } });
  });

  it('lets a short one come where a long one before it does not fit', () => {
    const long: ItemId = 'c.dominant-7.together.4';
    const short: ItemId = 'b.major-53.right.4';
    const [{ seconds }] = planDay(asked(wish(short)), TOMORROW, 20).entries as [Entry];
    const { entries } = planDay(asked(wish(long), wish(short)), TOMORROW, seconds / 60);
    expect(entries.map(({ items }) => items)).toEqual([[short]]);
  });
});
