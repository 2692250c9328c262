/**
 * A made-up history: the real planner asks, day by day, and an invented player answers. The same last day gives the
 * same events.
 */
import { v7 } from 'uuid';
import { addDays } from '../../shared/log/day';
import {
  type Day,
  EVENT_VERSION,
  type EventBody,
  type LogEvent,
  type RunBody,
  type StudentId,
} from '../../shared/log/events';
import { itemOf } from '../../shared/music/deck';
import { intervalCount } from '../../shared/music/sequence';
import { secondsOf } from '../../shared/music/tempo';
import { applyEvents, newStudent, type Student } from '../../shared/planning/student';
import { type Entry, planDay } from '../../shared/planning/today';
import { newPlayer, type Player } from './player';
import { type Random, seededRandom } from './random';
import { DAYS, happenings, isAway, isLesson, SEED, SETUP } from './scenario';

export interface HistoryOptions {
  /** The day on which one looks; the history ends the day before. */
  readonly today: Day;
  /** Milliseconds since 1970 UTC at which practice begins on a day, where the person is. */
  readonly startOf: (day: Day) => number;
  readonly student: StudentId;
  readonly device: StudentId;
}

interface Invention {
  readonly random: Random;
  readonly player: Player;
  readonly options: HistoryOptions;
  /** What the app would know by now. */
  readonly known: Student;
}

/** Share of ordinary days without practice, and of lists that stop half way. */
const SKIPPED = 0.2;
const CUT_SHORT = 0.2;
const HOUR = 3_600_000;
/** Seconds between two runs. */
const RATING = 3;

const NONE_VOIDED: ReadonlySet<string> = new Set();

/** The events of the set-up and then of each day in turn, so that the caller may rest between them. */
export function* inventHistory(options: HistoryOptions): Generator<readonly LogEvent[]> {
  const random = seededRandom(SEED);
  const invention = { random, player: newPlayer(random), options, known: newStudent() };
  const first = addDays(options.today, -DAYS);
  yield record(invention, first, options.startOf(first) - HOUR, SETUP(options.today));
  for (let number = 0; number < DAYS; number++) {
    const day = addDays(first, number);
    const begin = options.startOf(day) + HOUR * random.share();
    const bodies = [...happenings(number), ...runsOf(invention, day, number)];
    yield record(invention, day, begin, bodies);
  }
}

function runsOf(invention: Invention, day: Day, number: number): readonly RunBody[] {
  const { random, known, player } = invention;
  // The last day is always there: the demonstration goes on from yesterday.
  const isSkipped = random.share() < SKIPPED && number < DAYS - 1;
  const share = random.share() < CUT_SHORT ? 0.3 + 0.5 * random.share() : 1;
  if (isAway(number) || isSkipped) return [];
  const { entries } = planDay(known, day, known.programme!.minutes);
  const played = entries.slice(0, Math.ceil(share * entries.length));
  return played.flatMap((entry, place) =>
    playEntry(entry, day, player, isLesson(number) && place === 0 ? 'teacher' : 'player'),
  );
}

const playEntry = (
  { key, items, tempo }: Entry,
  day: Day,
  player: Player,
  judge: RunBody['judge'],
): readonly RunBody[] =>
  items.map((item) => ({
    kind: 'run',
    item,
    tempo,
    fluency: player.play(itemOf(item), tempo, day),
    pedal: false,
    judge,
    entry: key,
  }));

/** Gives the bodies of a day their stamps, one after another from a moment on, as if they had been recorded then. */
function record(
  { known, random, options }: Invention,
  day: Day,
  begin: number,
  bodies: readonly EventBody[],
): readonly LogEvent[] {
  const { device, student } = options;
  let at = Math.floor(begin);
  const events = bodies.map((body): LogEvent => {
    at += 1000 * secondsToRecord(body);
    const id = v7({ msecs: at, seq: 0, random: random.bytes(16) });
    return { ...body, id, version: EVENT_VERSION, at, day, device, student };
  });
  applyEvents(known, events, NONE_VOIDED);
  return events;
}

function secondsToRecord(body: EventBody): number {
  if (body.kind !== 'run') return 20;
  const { chord, way } = itemOf(body.item);
  return RATING + Math.round(secondsOf(intervalCount(chord, way), body.tempo));
}
