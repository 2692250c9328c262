/** What was heard of a run becomes takes of its items, and what they suggest the ratings to begin with. */
import type { ItemId } from '../../../shared/music/deck';
import { playableTempo, type Tempo } from '../../../shared/music/tempo';
import { type Expected, expectedOf } from '../../../shared/listening/expected';
import { judge } from '../../../shared/listening/judge';
import { suggestedFluency } from '../../../shared/listening/suggest';
import { isPedalled, type Take } from '../../../shared/listening/take';
import { scoreOf } from '../../../shared/music/score-of';
import type { Session } from '../../day/session';
import type { Course, CourseOptions } from './course';
import { rated } from './record-runs';

/** Share by which the tempo of a take may differ from the one that was set without being told. */
const SAME_TEMPO = 0.03;

export interface Heard {
  readonly take: Take;
  readonly course: Course;
  readonly options: CourseOptions;
  /** Places in the entry of the first arpeggio that was played, and of the first that was not reached. */
  readonly from: number;
  readonly to: number;
  /** Place of the first arpeggio that was not heard to its end, where the ear was cut off. */
  readonly whole?: number;
}

/** The notes of the arpeggios that were played; null where there are none. */
export function expectedIn({ course, options, from, to }: Omit<Heard, 'take'>): Expected | null {
  const items = course.parts.slice(from, to).map((part) => part.item);
  if (items.length === 0) return null;
  return expectedOf(scoreOf(items, { ...options, title: '', pedal: false }));
}

/** The session with what was heard: takes, suggested ratings, and the pedal where it was down. */
export function withTake(session: Session, heard: Heard): Session {
  const { take, course, options, from, whole = Infinity } = heard;
  const expected = expectedIn(heard);
  if (expected === null || take.notes.length === 0) return session;
  let changed = isPedalled(take) === true ? { ...session, pedal: true } : session;
  for (const [i, measured] of judge(expected, take).entries()) {
    if (measured === null || from + i >= whole) continue;
    const { item, score: own } = course.parts[from + i]!;
    const heardSession = { ...changed, takes: { ...changed.takes, [item.id]: measured } };
    changed = rated(heardSession, item.id, { fluency: suggestedFluency(measured, own) });
    if (measured.tempo !== null) {
      changed = atTempo(changed, item.id, playableTempo(measured.tempo, options.grouping));
    }
  }
  return changed;
}

/** A single run has the tempo of the whole; in a round only what differs is said. */
function atTempo(session: Session, item: ItemId, tempo: Tempo): Session {
  if (Math.abs(tempo / session.tempo - 1) <= SAME_TEMPO) return session;
  return session.entry.items.length === 1 ? { ...session, tempo } : rated(session, item, { tempo });
}
