/** A page of the benchmark: fills the app's database with a long log, the way a restored backup does. */
import { eventLines, headerLine } from '../../shared/formats/backup';
import { addDays, daysBetween } from '../../shared/log/day';
import type { LogEvent } from '../../shared/log/events';
import { dayOf, now } from '../../src/clock';
import { openStore } from '../../src/store/store';
import { longLog } from './long-log';

/** A backup file has an upper size, so a long log comes in several. */
const EVENTS_A_FILE = 20_000;

function fileOf(events: readonly LogEvent[]): File {
  const kept = events.map((event) => ({ id: event.id, student: event.student, event }));
  return new File([headerLine(now(), kept.length), eventLines(kept)], 'log');
}

/** The log of so many runs that ends yesterday. */
function recentLog(runs: number): readonly LogEvent[] {
  const events = longLog(runs);
  const shift = daysBetween(events.at(-1)!.day, dayOf(now())) - 1;
  return events.map((event) => ({ ...event, day: addDays(event.day, shift) }));
}

async function seed(runs: number): Promise<void> {
  const store = openStore({ name: 'arpeggiary', now, dayOf });
  const events = recentLog(runs);
  for (let i = 0; i < events.length; i += EVENTS_A_FILE) {
    const file = fileOf(events.slice(i, i + EVENTS_A_FILE));
    await store.restore(await store.previewBackup(file));
  }
  store.close();
}

declare global {
  interface Window {
    seed: typeof seed;
  }
}
window.seed = seed;
