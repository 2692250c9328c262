/** Makes events for the tests; ids count up, so that their order is the order of making. */
import type { EventBody, LogEvent, RunBody } from '../../shared/log/events';
import { DEFAULT_PROGRAMME, type Programme } from '../../shared/log/programme';
import { addDays } from '../../shared/log/day';

export const START = '2026-01-05';

let count = 0;

export const event = <B extends EventBody>(body: B, dayNumber = 0): LogEvent => ({
  ...body,
  id: `019b8a00-0000-7000-8000-${String(count++).padStart(12, '0')}`,
  version: 1,
  at: 1_767_600_000_000 + dayNumber * 86_400_000 + count,
  day: addDays(START, dayNumber),
  device: '11111111-1111-4111-8111-111111111111',
  student: '22222222-2222-4222-8222-222222222222',
});

export const run = (
  item: RunBody['item'],
  fluency: RunBody['fluency'],
  tempo: number,
  dayNumber = 0,
  entry: string | null = null,
): LogEvent =>
  event({ kind: 'run', item, tempo, fluency, pedal: false, judge: 'player', entry }, dayNumber);

export const programme = (change: Partial<Programme> = {}): LogEvent =>
  event({ kind: 'programme', programme: { ...DEFAULT_PROGRAMME, ...change } });
