/** A log of any length for the benchmarks: every item in turn at a plausible tempo, about 60 runs a day. */
import { addDays } from '../../shared/log/day';
import type { LogEvent } from '../../shared/log/events';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';
import { DECK, itemAt, STAGES, STARTING_NOTES } from '../../shared/music/deck';

const FIRST_DAY = '2021-01-04';
const FIRST_TIME = Date.UTC(2021, 0, 4, 16);
const RUNS_A_DAY = 60;
const DAY_MS = 86_400_000;

/** Ids as UUIDv7 (RFC 9562): 48 bits of time, then a counter in place of chance. */
function idAt(time: number, count: number): string {
  const hex = time.toString(16).padStart(12, '0');
  return `${hex.slice(0, 8)}-${hex.slice(8)}-7000-8000-${count.toString(16).padStart(12, '0')}`;
}

export interface Origin {
  readonly device: string;
  readonly student: string;
}

const NOBODY: Origin = {
  device: '11111111-1111-4111-8111-111111111111',
  student: '22222222-2222-4222-8222-222222222222',
};

/** A programme over all twelve notes and five stages, then this many runs, oldest first. */
export function longLog(runs: number, { device, student }: Origin = NOBODY): readonly LogEvent[] {
  const programme: LogEvent = {
    kind: 'programme',
    programme: { ...DEFAULT_PROGRAMME, notes: STARTING_NOTES, reached: 'together.4' },
    id: idAt(FIRST_TIME, 0),
    version: 1,
    at: FIRST_TIME,
    day: FIRST_DAY,
    device,
    student,
  };
  const events: LogEvent[] = [programme];
  for (let i = 0; i < runs; i++) {
    const day = Math.floor(i / RUNS_A_DAY);
    const at = FIRST_TIME + day * DAY_MS + (i % RUNS_A_DAY) * 15_000 + 1;
    const stage = STAGES[(i * 7 + day) % 4]!;
    const item = itemAt((i * 31 + day) % (DECK.length / 7), stage);
    events.push({
      kind: 'run',
      item: item.id,
      tempo: 120 + 4 * ((i * 13) % 40),
      fluency: ([3, 2, 3, 4, 3, 1, 3, 2, 4, 3] as const)[(i * 7 + day) % 10]!,
      pedal: false,
      judge: 'player',
      entry: `${item.note}.${stage}.${1 + Math.floor((i % RUNS_A_DAY) / 11)}`,
      id: idAt(at, i + 1),
      version: 1,
      at,
      day: addDays(FIRST_DAY, day),
      device,
      student,
    });
  }
  return events;
}
