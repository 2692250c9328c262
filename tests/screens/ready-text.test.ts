import { expect, test } from 'vitest';
import type { LogEvent } from '../../shared/log/events';
import type { ItemId } from '../../shared/music/deck';
import { itemOf } from '../../shared/music/deck';
import { replay } from '../../shared/planning/student';
import type { OpenEntry, Session } from '../../src/day/session';
import { readyText } from '../../src/screens/play/ready-text';
import { event, programme, START } from '../learning/events';

const NARROW: ItemId = 'c.major-53.right.2';
const WIDE: ItemId = 'e.dominant-42.together.2';

const sessionOf = (id: ItemId, change: Partial<OpenEntry> = {}): Session => {
  const { note, way } = itemOf(id);
  return {
    day: START,
    entry: { key: id, kind: 'single', note, way, items: [id], ...change },
    at: 0,
    phase: 'playing',
    tempo: 120,
    pedal: false,
    ratings: {},
  };
};

const BEGIN = programme();
const textOf = (session: Session, ...more: readonly LogEvent[]): string =>
  readyText(replay([BEGIN, ...more]), session, {
    reason: { kind: 'again', times: 2, reach: 180 },
    day: START,
  });

test('before a run stands why it is asked for, and what its tempo should bring', () => {
  expect(textOf(sessionOf(NARROW))).toMatch(
    /^For the second time today: .* Likely even at 45\. At 30 even \w+ times in ten; half of the time at 45 \(\d+ to \d+\)\.$/,
  );
});

test('what is only thought has no tempo to come out at', () => {
  expect(textOf(sessionOf(NARROW, { isMental: true }))).not.toContain('At 30');
});

test('the first probe asks for a warm-up, and the others do not', () => {
  expect(textOf(sessionOf(NARROW, { probe: 1 }))).toContain('Warm up first');
  expect(textOf(sessionOf(NARROW, { probe: 2 }))).not.toContain('Warm up');
});

test('a probe that is wide for the hand comes with a caution', () => {
  const small = event({ kind: 'span', semitones: 11 });
  const caution = 'Wide for this hand: skip it if it pulls.';
  expect(textOf(sessionOf(WIDE, { probe: 2 }), small)).toContain(caution);
  expect(textOf(sessionOf(NARROW, { probe: 2 }))).not.toContain(caution);
});
