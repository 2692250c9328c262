/** Records of the invented students of a studio: some weeks of practice each, until yesterday or a while ago. */
import { eventLines, headerLine } from '../../shared/formats/backup';
import { addDays, dayNumber } from '../../shared/log/day';
import type { Day, EventBody, LogEvent } from '../../shared/log/events';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';
import { itemAt, STAGES } from '../../shared/music/deck';

const FIRST_NAMES = ['Ada', 'Ben', 'Cleo', 'Dora', 'Emil', 'Fay', 'Gil', 'Hana', 'Ivo', 'Jora'];
const DAY_MS = 86_400_000;
const RUNS_A_DAY = 20;

/** "Ada", … "Jora", "Ada B.", … */
const nameOf = (place: number): string => {
  const row = Math.floor(place / FIRST_NAMES.length);
  const initial = row === 0 ? '' : ` ${String.fromCharCode(65 + row)}.`;
  return FIRST_NAMES[place % FIRST_NAMES.length]! + initial;
};

export const studentId = (place: number): string =>
  `22222222-2222-4222-8222-${String(place).padStart(12, '0')}`;

/** Event bodies with the days before today on which they were recorded, oldest first. */
function life(place: number, runs: number, today: Day): readonly (readonly [EventBody, number])[] {
  const days = Math.ceil(runs / RUNS_A_DAY);
  // Every fifth student has not practised for a while.
  const until = place % 5 === 4 ? 9 + place : 1 + (place % 3);
  const date = place % 4 === 3 ? null : addDays(today, 5 + 17 * (place % 9));
  const programme = { ...DEFAULT_PROGRAMME, date };
  const practice = Array.from({ length: runs }, (_, i): readonly [EventBody, number] => {
    const day = Math.floor(i / RUNS_A_DAY);
    const item = itemAt((i * 31 + day) % 77, STAGES[(i * 7 + day) % 3]!);
    const fluency = ([3, 2, 3, 4, 3, 1, 3, 2, 4, 3] as const)[(i * 7 + place) % 10]!;
    const tempo = 100 + ((i * 13) % 60) + 6 * (place % 11) + Math.min(60, i / 30);
    const run: EventBody = {
      kind: 'run',
      item: item.id,
      tempo,
      fluency,
      pedal: false,
      judge: 'player',
      entry: null,
    };
    // A day off in some weeks.
    return [run, until + Math.round((days - 1 - day) * (1 + (place % 4) / 5))];
  });
  const begin = practice[0]?.[1] ?? until;
  const remark: EventBody = { kind: 'remark', about: null, text: 'The thumb comes late on F.' };
  return [
    [{ kind: 'name', name: nameOf(place) }, begin],
    [{ kind: 'programme', programme }, begin],
    ...practice,
    ...(place % 6 === 2 ? [[remark, until] as const] : []),
  ];
}

function logOf(place: number, runs: number, today: Day): readonly LogEvent[] {
  return life(place, runs, today).map(([body, ago], i): LogEvent => {
    const at = (dayNumber(today) - ago) * DAY_MS + 16 * 3_600_000 + i * 15;
    const time = at.toString(16).padStart(12, '0');
    const count = (place * 100_000 + i).toString(16).padStart(12, '0');
    return {
      ...body,
      id: `${time.slice(0, 8)}-${time.slice(8)}-7000-8000-${count}`,
      version: 1,
      at,
      day: addDays(today, -ago),
      device: `11111111-1111-4111-8111-${String(place).padStart(12, '0')}`,
      student: studentId(place),
    };
  });
}

/** A file with the records of some of them, with so many runs each. */
export function studioFile(places: readonly number[], runs: number, today: Day): string {
  const kept = places
    .flatMap((place) => logOf(place, runs, today))
    .map((event) => ({ id: event.id, student: event.student, event }));
  // That of every seventh has come from another device, three weeks ago.
  const isOld = places.length === 1 && places[0]! % 7 === 6;
  const made = (dayNumber(today) - (isOld ? 21 : 1)) * DAY_MS;
  return headerLine(made, kept.length) + eventLines(kept);
}
