import { describe, expect, it } from 'vitest';
import {
  type Backup,
  BackupError,
  backupFileName,
  eventLines,
  headerLine,
  previewOf,
} from '../../shared/formats/backup';
import { BackupReader, checkSize, LONGEST_LINE } from '../../shared/formats/backup-reader';
import { isEventId, LONGEST_TEXT } from '../../shared/formats/event';
import type { KeptEvent } from '../../shared/formats/kept';
import type { LogEvent } from '../../shared/log/events';
import { fc } from '../learning/property';
import { manyEvents, SAMPLES } from './samples';
import { seededNumbers, spoil } from './spoil';

const MADE = Date.UTC(2026, 10, 25, 16);

const NOTHING_HERE = { events: new Map<string, 'ok'>(), names: new Map<string, string | null>() };

const keptOf = (event: LogEvent): KeptEvent => ({ id: event.id, student: event.student, event });
const textOf = (events: readonly KeptEvent[], announced = events.length): string =>
  headerLine(MADE, announced) + eventLines(events);
const samples = Object.values<LogEvent>(SAMPLES).map(keptOf);

function read(...pieces: readonly string[]): Backup {
  const reader = new BackupReader();
  for (const piece of pieces) reader.push(piece);
  return reader.end();
}

function refusal(...pieces: readonly string[]): BackupError {
  try {
    read(...pieces);
  } catch (error) {
    if (error instanceof BackupError) return error;
    throw error;
  }
  throw new Error('it was not refused');
}

describe('a backup', () => {
  it('begins with a header and has one event a line', () => {
    const lines = textOf(samples).split('\n');
    expect(lines[0]).toBe(
      '{"format":"arpeggiary-log","version":1,"made":"2026-11-25T16:00:00.000Z","events":12}',
    );
    expect(JSON.parse(lines[1]!)).toEqual(SAMPLES.run);
    expect([lines.length, lines.at(-1)]).toEqual([samples.length + 2, '']);
    expect(backupFileName('2026-11-25')).toBe('arpeggiary-2026-11-25.arpeggiary');
  });

  it('comes back as it was, however the text is cut', () => {
    const text = textOf(samples);
    fc.assert(
      fc.property(fc.array(fc.nat(text.length), { maxLength: 20 }), (cuts) => {
        const places = [0, ...cuts.toSorted((a, b) => a - b), text.length];
        const backup = read(...places.slice(1).map((end, i) => text.slice(places[i], end)));
        expect(backup.entries.map(({ event }) => event)).toEqual(samples.map(({ event }) => event));
      }),
      { numRuns: 50 },
    );
  });

  it('the longest events fit into a line', () => {
    const text = '\u0000'.repeat(LONGEST_TEXT);
    const before = Array.from({ length: 400 }, (_, i) =>
      SAMPLES.void.id.replace(/-8000-.{12}$/, `-0${String(i).padStart(3, '0')}-000000000000`),
    ).filter((id) => id < SAMPLES.void.id);
    const events = [
      { ...SAMPLES.remark, text },
      { ...SAMPLES.void, events: before },
    ].map(keptOf);
    expect(
      Math.max(
        ...textOf(events)
          .split('\n')
          .map(({ length }) => length),
      ),
    ).toBeLessThan(LONGEST_LINE);
    expect(read(textOf(events)).entries).toHaveLength(2);
  });

  it('takes what an editor may have done to it: carriage returns and empty lines', () => {
    expect(read(`${textOf(samples).replaceAll('\n', '\r\n')}\r\n\n`).entries).toHaveLength(
      samples.length,
    );
    expect(read(textOf(samples).trimEnd()).entries).toHaveLength(samples.length);
  });

  it('counts an event once, the first time', () => {
    const twice = [samples[0]!, { ...samples[0]!, event: { ...SAMPLES.run, fluency: 4 } }];
    expect(read(textOf(twice)).entries.map(({ event }) => event)).toEqual([SAMPLES.run]);
  });

  it('keeps a newer event as it is', () => {
    const event = { ...SAMPLES.run, version: 3, kind: 'dance', steps: [{ to: [1, 2] }] };
    const [entry] = read(textOf([keptOf(event as unknown as LogEvent)])).entries;
    expect(entry).toMatchObject({ event, decoded: { outcome: 'newer' } });
  });

  it('keeps what was damaged in our own log, and it survives a second backup', () => {
    const damaged = { ...samples[0]!, event: { ...SAMPLES.run, tempo: 'fast' } };
    const first = read(textOf([damaged]));
    expect(first.entries[0]).toMatchObject({ ...damaged, decoded: { outcome: 'damaged' } });
    expect(textOf(first.entries)).toBe(textOf([damaged]));
  });
});

describe('a backup is refused, with the line and what to do', () => {
  const lines = textOf(samples).split('\n');
  const withLine = (place: number, line: string) => lines.with(place, line).join('\n');

  it.each([
    ['empty', '', /empty/],
    ['another format', '{"format":"other"}\n', /not an Arpeggiary file/],
    ['no JSON', 'MThd\u0000\u0000', /not an Arpeggiary file/],
    ['a list', '[]\n', /not an Arpeggiary file/],
    [
      'of a later version',
      withLine(0, lines[0]!.replace('"version":1', '"version":2')),
      /Update the app/,
    ],
    ['cut off between lines', `${lines.slice(0, 4).join('\n')}\n`, /stops after 3 of 12 events/],
    [
      'cut off within a line',
      textOf(samples).slice(0, 900),
      /stops after \d+ of 12 events.*Copy it again/,
    ],
    ['longer than announced', textOf(samples, 5), /Line 7 .*beyond the number of events/],
  ])('%s', (_, text, message) => {
    expect(refusal(text).message).toMatch(message);
  });

  it.each([
    ['not JSON', '{"id":', /not JSON/],
    ['a number', '7', /not an event/],
    ['null', 'null', /not an event/],
    ['without an id', '{"student":"x"}', /id: /],
    ['without a student', lines[1]!.replace('"student"', '"pupil"'), /student: /],
    ['a damaged field', lines[1]!.replace('132', '13'), /tempo: /],
    ['another prototype', lines[1]!.replace('{', '{"__proto__":{},'), /__proto__/],
    ['a constructor within', lines[1]!.replace('{', '{"a":[{"constructor":1}],'), /constructor/],
    ['nested too deeply', lines[1]!.replace('{', '{"a":[[[[[[[[[]]]]]]]]],'), /nested too deeply/],
    ['too long', lines[1]!.replace('{', `{"a":"${'x'.repeat(LONGEST_LINE)}",`), /too long/],
  ])('%s', (_, line, problem) => {
    const error = refusal(withLine(3, line));
    expect(error.line).toBe(4);
    expect(error.message).toMatch(/^Line 4 .*Nothing was changed\. Choose another file\.$/);
    expect(error.message).toMatch(problem);
  });

  it('a line without an end is refused before it fills the memory', () => {
    const reader = new BackupReader();
    reader.push(headerLine(MADE, 1));
    expect(() => reader.push('x'.repeat(LONGEST_LINE + 1))).toThrow(BackupError);
  });

  it('a file larger than any log is refused before it is opened', () => {
    expect(() => checkSize(64 * 1024 * 1024)).not.toThrow();
    expect(() => checkSize(64 * 1024 * 1024 + 1)).toThrow(BackupError);
  });

  it('2,000 spoilt backups of all kinds of event: read or refused, never anything else', () => {
    const text = textOf(samples);
    const numbers = seededNumbers(20_261_125);
    const outcomes = Array.from({ length: 2000 }, () => {
      const file = spoil(text, numbers);
      try {
        return read(file).entries.every(({ id }) => isEventId(id)) ? 'read' : `wrong: ${file}`;
      } catch (error) {
        return error instanceof BackupError ? 'refused' : `${String(error)}: ${file}`;
      }
    });
    expect(new Set(outcomes)).toEqual(new Set(['read', 'refused']));
    expect({}).not.toHaveProperty('polluted');
  });
});

/** What is taken of a file that holds these after another event. */
const chosen = (copies: readonly KeptEvent[]) =>
  read(textOf([samples[0]!, ...copies])).entries.map(({ event }) => event);

describe('several copies of an event', () => {
  it('the one of which most can be read is taken, wherever it stands', () => {
    const whole = samples[1]!;
    const newer = { ...whole, event: { ...(whole.event as LogEvent), version: 2 } };
    const damaged = { ...whole, event: 'rubbish' };
    for (const copies of [
      [damaged, newer, whole],
      [whole, damaged, newer],
      [newer, whole, damaged],
    ]) {
      expect(chosen(copies)).toEqual([samples[0]!.event, whole.event]);
    }
    expect(chosen([damaged, newer, damaged])).toEqual([samples[0]!.event, newer.event]);
    expect(chosen([damaged, { ...damaged, event: 'other' }])).toEqual([
      samples[0]!.event,
      'rubbish',
    ]);
  });

  it('what is damaged here is told apart from what is missing', () => {
    const events = new Map(samples.map(({ id }, i) => [id, i < 3 ? 'damaged' : 'ok'] as const));
    const fresh = manyEvents(4).map(keptOf);
    const preview = previewOf(read(textOf([...samples, ...fresh])), { ...NOTHING_HERE, events });
    expect(preview.students).toMatchObject([{ fresh: 4, mended: 3 }]);
    expect(preview.fresh).toHaveLength(7);
  });
});

describe('the preview', () => {
  it('says what a restore would do', () => {
    const events = [...samples, ...manyEvents(100).map(keptOf)];
    const newer = keptOf({ ...SAMPLES.run, id: SAMPLES.run.id.replace('-8000-', '-9000-') });
    const strange = [
      { ...newer, event: { ...SAMPLES.run, id: newer.id, version: 2 } },
      { ...newer, id: newer.id.replace('-9000-', '-a000-'), event: 'rubbish' },
    ];
    const backup = read(textOf([...events, ...strange]));
    const hereAlready = new Map(samples.map(({ id }) => [id, 'ok'] as const));
    const { fresh, ...told } = previewOf(backup, { events: hereAlready, names: new Map() });
    expect(fresh).toHaveLength(102);
    expect(told).toEqual({
      made: '2026-11-25T16:00:00.000Z',
      hasGap: false,
      students: [
        {
          student: SAMPLES.run.student,
          name: 'Ada',
          isKnown: false,
          events: 102 + samples.length,
          // Of 99 runs one is voided.
          runs: 98,
          firstDay: '2026-11-25',
          lastDay: '2026-11-25',
          fresh: 102,
          mended: 0,
          newer: 1,
          damaged: 1,
        },
      ],
    });
  });

  it('of nothing', () => {
    expect(previewOf(read(headerLine(MADE, 0)), NOTHING_HERE)).toMatchObject({
      students: [],
      fresh: [],
    });
  });

  it('tells the students of a file apart, and whom the device knows', () => {
    const other = '33333333-3333-4333-8333-333333333333';
    const theirs = manyEvents(3).map((event) => keptOf({ ...event, student: other }));
    const names = new Map([[other, 'Ben']]);
    const preview = previewOf(read(textOf([...samples, ...theirs])), { ...NOTHING_HERE, names });
    expect(
      preview.students.map(({ name, isKnown, events, runs }) => [name, isKnown, events, runs]),
    ).toEqual([
      ['Ada', false, samples.length, 0],
      ['Ben', true, 3, 3],
    ]);
  });

  it('says when the file that this one follows is not here', () => {
    const after = SAMPLES.run.id;
    const backup = read(headerLine(MADE, 1, after) + eventLines([samples[3]!]));
    expect(backup.after).toBe(after);
    expect(previewOf(backup, NOTHING_HERE).hasGap).toBe(true);
    expect(previewOf(backup, { ...NOTHING_HERE, events: new Map([[after, 'ok']]) }).hasGap).toBe(
      false,
    );
  });
});
