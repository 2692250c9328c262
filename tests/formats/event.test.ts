import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { decodeEvent, LONGEST_TEXT } from '../../shared/formats/event';
import { EVENT_SCHEMAS, isDay, isEventId } from '../../shared/formats/event-schema';
import { dayNumber, dayOfNumber } from '../../shared/log/day';
import type { LogEvent } from '../../shared/log/events';
import type { RunTake } from '../../shared/log/run-take';
import { fc } from '../learning/property';
import { SAMPLES } from './samples';

const samples = Object.values<LogEvent>(SAMPLES);
const asJson = (event: LogEvent): Record<string, unknown> =>
  JSON.parse(JSON.stringify(event)) as Record<string, unknown>;

const problemOf = (value: unknown): string => {
  const decoded = decodeEvent(value);
  return decoded.outcome === 'ok' ? 'ok' : `${decoded.outcome}, ${decoded.problem}`;
};

describe('an event of every kind', () => {
  it.each(samples)('$kind comes back as it was', (event) => {
    expect(decodeEvent(asJson(event))).toEqual({ outcome: 'ok', event });
  });

  it.each(samples)('$kind is a fresh object that keeps no foreign field', (event) => {
    const foreign = { ...asJson(event), colour: 'red' };
    const decoded = decodeEvent(foreign);
    expect(decoded).toEqual({ outcome: 'ok', event });
    expect(decoded.outcome === 'ok' && decoded.event).not.toBe(foreign);
  });

  it.each(samples)('$kind needs each of its fields', (event) => {
    for (const field of Object.keys(event)) {
      const { [field]: _, ...rest } = asJson(event);
      expect(problemOf(rest)).toMatch(new RegExp(`^damaged, ${field}: `));
    }
  });

  it('a prototype in the file stays without effect', () => {
    const text = JSON.stringify(SAMPLES.run).replace('{', '{"__proto__":{"pedal":true},');
    const decoded = decodeEvent(JSON.parse(text));
    expect(decoded).toEqual({ outcome: 'ok', event: SAMPLES.run });
    expect(Object.getPrototypeOf(decoded.outcome === 'ok' && decoded.event)).toBe(Object.prototype);
  });
});

describe('what is set aside', () => {
  it('is newer: a later version, or a kind that this version does not know', () => {
    expect(problemOf({ ...SAMPLES.run, version: 2, tempo: 'fast' })).toBe('newer, version 2');
    expect(problemOf({ ...SAMPLES.run, kind: 'dance' })).toBe('newer, an unknown kind of event');
    expect(problemOf({ ...SAMPLES.run, kind: 'toString' })).toMatch(/^newer/);
  });

  it.each<[string, LogEvent, object]>([
    ['version', SAMPLES.run, { version: 0 }],
    ['version', SAMPLES.run, { version: '1' }],
    ['kind', SAMPLES.run, { kind: 7 }],
    ['id', SAMPLES.run, { id: '22222222-2222-4222-8222-222222222222' }],
    ['id', SAMPLES.run, { id: SAMPLES.run.id.toUpperCase() }],
    ['id', SAMPLES.run, { id: 'f0000000-0000-7000-8000-000000000000' }],
    ['student', SAMPLES.run, { student: SAMPLES.run.id }],
    ['device', SAMPLES.name, { device: 'mine' }],
    ['at', SAMPLES.run, { at: -1 }],
    ['at', SAMPLES.run, { at: 1.5 }],
    ['day', SAMPLES.run, { day: '2025-02-29' }],
    ['item', SAMPLES.run, { item: 'd.major-6.right.3' }],
    ['item', SAMPLES.aside, { item: 'h.major-6.right.2' }],
    ['tempo', SAMPLES.run, { tempo: 39 }],
    ['tempo', SAMPLES.run, { tempo: 601 }],
    ['tempo', SAMPLES.run, { tempo: Number.NaN }],
    ['fluency', SAMPLES.run, { fluency: 5 }],
    ['fluency', SAMPLES.run, { fluency: 2.5 }],
    ['pedal', SAMPLES.run, { pedal: 0 }],
    ['judge', SAMPLES.run, { judge: 'parent' }],
    ['entry', SAMPLES.run, { entry: 'x'.repeat(101) }],
    ['text', SAMPLES.remark, { text: 'x'.repeat(LONGEST_TEXT + 1) }],
    ['about', SAMPLES.remark, { about: 'all' }],
    ['name', SAMPLES.name, { name: 'x'.repeat(201) }],
    ['events', SAMPLES.void, { events: [] }],
    ['events.0', SAMPLES.void, { events: ['x'] }],
    ['events', SAMPLES.void, { events: [SAMPLES.void.id] }],
  ])('is damaged in a field that it names: %s', (field, event, change) => {
    expect(problemOf({ ...event, ...change })).toMatch(new RegExp(`^damaged, ${field}: `));
  });

  it.each([
    ['notes', { notes: [] }],
    ['notes', { notes: ['c', 'd', 'c'] }],
    ['notes.1', { notes: ['c', 'cis'] }],
    ['stages', { stages: { 'right.2': { asked: true, target: 240 } } }],
    ['reached', { reached: 'right.4' }],
    ['grouping', { grouping: 5 }],
    ['contraryForm', { contraryForm: 'other' }],
    ['minutes', { minutes: 0 }],
    ['daysPerWeek', { daysPerWeek: 8 }],
    ['date', { date: '2026-13-01' }],
  ])('is damaged within a programme: %s', (field, change) => {
    const programme = { ...SAMPLES.programme.programme, ...change };
    const problem = problemOf({ ...SAMPLES.programme, programme });
    expect(problem.startsWith(`damaged, programme.${field}`)).toBe(true);
  });

  it.each([undefined, null, 7, 'text', [], () => 0, new Map()])('is no event: %s', (value) => {
    expect(problemOf(value)).toMatch(/^damaged/);
  });

  it('never throws, whatever comes', () => {
    fc.assert(
      fc.property(fc.anything(), fc.constantFrom(...samples), fc.string(), (any, event, key) => {
        expect(problemOf(any)).toMatch(/^(?:ok|newer|damaged)/);
        expect(problemOf({ ...event, [key]: any })).toMatch(/^(?:ok|newer|damaged)/);
      }),
      { numRuns: 500 },
    );
  });
});

describe('a run that was heard', () => {
  const take: RunTake = {
    source: 'midi',
    certainty: 1,
    tempo: 240,
    drift: 0,
    notes: 13,
    right: 12,
    faults: [{ kind: 'wrong', hand: 'right', step: 3, midi: 61 }],
    breaks: [],
    lead: null,
    looseness: null,
    hands: {
      right: {
        waits: [null, 4, -3],
        unevenness: 8.5,
        overlap: 20,
        thumbLate: 0,
        loudness: 6,
        thumbAccent: null,
      },
      left: null,
    },
  };

  it('keeps the measures of its take, and no foreign field of them', () => {
    const event = { ...SAMPLES.run, take };
    const foreign = { ...event, take: { ...take, notesPlayed: [60], colour: 'red' } };
    expect(decodeEvent(JSON.parse(JSON.stringify(event)))).toEqual({ outcome: 'ok', event });
    expect(decodeEvent(foreign)).toEqual({ outcome: 'ok', event });
  });

  it.each<[string, object]>([
    ['take.source', { source: 'rumour' }],
    ['take.certainty', { certainty: 2 }],
    ['take.tempo', { tempo: Infinity }],
    ['take.drift', { drift: Number.NaN }],
    ['take.notes', { notes: 1e9 }],
    ['take.faults', { faults: Array.from({ length: 25 }, () => take.faults[0]) }],
    ['take.faults.0.midi', { faults: [{ ...take.faults[0], midi: 128 }] }],
    ['take.breaks.0', { breaks: [-1] }],
    [
      'take.hands.left.waits',
      { hands: { ...take.hands, left: { ...take.hands.right, waits: 'x' } } },
    ],
  ])('is damaged in a field that it names: %s', (field, change) => {
    const problem = problemOf({ ...SAMPLES.run, take: { ...take, ...change } });
    expect(problem).toMatch(new RegExp(`^damaged, ${field}: `));
  });

  it('is damaged with an empty take, rather than silently without one', () => {
    expect(problemOf({ ...SAMPLES.run, take: null })).toMatch(/^damaged, take: /);
  });
});

describe('a run is decoded by hand', () => {
  const fields = Object.keys(SAMPLES.run);
  const nearMiss = fc.oneof(
    fc.anything(),
    fc.constantFrom(...Object.values(SAMPLES.run)),
    fc.constantFrom(SAMPLES.void.id, '2024-02-29', '1900-02-29', 'teacher', 'c.minor-6.left.4'),
    fc.integer({ min: -1, max: 700 }),
    fc.double({ min: -1, max: 5 }),
  );

  it('with the same outcome as by the schema', () => {
    fc.assert(
      fc.property(fc.constantFrom(...fields), nearMiss, fc.boolean(), (field, value, isMissing) => {
        const { [field]: _, ...rest } = asJson(SAMPLES.run);
        const changed = isMissing ? rest : { ...rest, [field]: value };
        if (changed['version'] !== 1 || changed['kind'] !== 'run') return;
        const bySchema = v.safeParse(EVENT_SCHEMAS.run, changed);
        const decoded = decodeEvent(changed);
        const byHand = decoded.outcome === 'ok' ? decoded.event : decoded.outcome;
        expect(byHand).toStrictEqual(bySchema.success ? bySchema.output : 'damaged');
      }),
      { numRuns: 2000 },
    );
  });
});

describe('days and ids', () => {
  it('knows the calendar from 1900 to 2099', () => {
    const days = Array.from(
      { length: dayNumber('2099-12-31') - dayNumber('1900-01-01') + 1 },
      (_, i) => dayOfNumber(dayNumber('1900-01-01') + i),
    );
    expect(days.every(isDay)).toBe(true);
    const strangers = [
      '2026-00-10',
      '2026-10-00',
      '2026-11-31',
      '1900-02-29',
      '2100-01-01',
      '26-1-1',
    ];
    expect(strangers.some(isDay)).toBe(false);
  });

  it('takes version 7 UUIDs (RFC 9562, appendix A.6) of a time before 2100', () => {
    expect(isEventId('017f22e2-79b0-7cc3-98c4-dc0c0c07398f')).toBe(true);
    expect(isEventId('03bb2cc3-d7ff-7fff-bfff-ffffffffffff')).toBe(true);
    expect(isEventId('03bb2cc3-d800-7000-8000-000000000000')).toBe(false);
    expect(isEventId('017f22e2-79b0-7cc3-c8c4-dc0c0c07398f')).toBe(false);
  });
});
