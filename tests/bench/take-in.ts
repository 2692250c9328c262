/** A page of the benchmark: takes in the records of many students, as a teacher's device does. */
import { eventLines, headerLine } from '../../shared/formats/backup';
import { dayOf, now } from '../../src/clock';
import { openStore } from '../../src/store/store';
import { longLog } from './long-log';

const idOf = (place: number): string =>
  `22222222-2222-4222-8222-${String(place).padStart(12, '0')}`;

function fileOf(runs: number, place: number): File {
  const device = '11111111-1111-4111-8111-111111111111';
  // No event is of two students.
  const events = longLog(runs, { device, student: idOf(place) }).map((event) => ({
    ...event,
    id: event.id.slice(0, 24) + place.toString(16).padStart(4, '0') + event.id.slice(-8),
  }));
  const kept = events.map((event) => ({ id: event.id, student: event.student, event }));
  return new File([headerLine(now(), kept.length), eventLines(kept)], 'log');
}

const store = openStore({ name: 'arpeggiary-bench', now, dayOf });
let file: File;

function prepare(runs: number, place: number): void {
  file = fileOf(runs, place);
}

/** Milliseconds from choosing the file to its being on the device. */
async function takeIn(): Promise<number> {
  const start = performance.now();
  await store.restore(await store.previewBackup(file));
  return performance.now() - start;
}

declare global {
  interface Window {
    prepare: typeof prepare;
    takeIn: typeof takeIn;
  }
}
window.prepare = prepare;
window.takeIn = takeIn;
