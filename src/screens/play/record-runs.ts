/** From ratings to runs in the log, and back again when they are undone. */
import { EVEN, type RunBody } from '../../../shared/log/events';
import { say } from '../../parts/notice/notice';
import { askToPersistOnce } from '../../store/durability';
import type { Store } from '../../store/store';
import { logKeyOf, type Rating, type Session } from '../../day/session';

const AS_EXPECTED: Rating = { fluency: EVEN, tempo: null };

export const ratingOf = (session: Session, item: string): Rating =>
  session.ratings[item] ?? AS_EXPECTED;

/** The session with one rating changed; a rating that says nothing of its own is dropped. */
export function rated(session: Session, item: string, change: Partial<Rating>): Session {
  const rating = { ...ratingOf(session, item), ...change };
  const { [item]: _, ...others } = session.ratings;
  const isException = rating.fluency !== EVEN || rating.tempo !== null;
  return { ...session, ratings: isException ? { ...others, [item]: rating } : others };
}

/** From the beginning again; what was heard, and what it suggested, was of the playing before. */
export function toPlayAgain(session: Session): Session {
  const { takes, ...unheard } = session;
  return { ...unheard, phase: 'playing', at: 0, ...(takes && { ratings: {} }) };
}

/** What the log is to take for a session: one run for each item. */
export const runsOf = (session: Session): readonly RunBody[] =>
  session.entry.items.map((item): RunBody => {
    const { fluency, tempo } = ratingOf(session, item);
    const take = session.takes?.[item];
    return {
      kind: 'run',
      item,
      tempo: tempo ?? session.tempo,
      fluency,
      pedal: session.pedal,
      judge: 'player',
      entry: logKeyOf(session.entry),
      ...(take && { take }),
    };
  });

/**
 * Records the session and offers to undo it, which brings the session back with its ratings. Rejects with a StoreError
 * if it could not be saved; then nothing has changed.
 */
export async function recordSession(
  store: Store,
  session: Session,
  setSession: (session: Session | null) => void,
): Promise<void> {
  const events = await store.record(runsOf(session));
  setSession(null);
  const ids = events.map((event) => event.id);
  const undo = async () => {
    try {
      await store.record([{ kind: 'void', events: ids }]);
      setSession(session);
      say('Undone: the ratings are open again.');
    } catch {
      say('This could not be undone now.', { label: 'Try again', do: () => void undo() });
    }
  };
  const what = ids.length === 1 ? 'Saved.' : `Saved: ${ids.length} chords.`;
  say(what, { label: 'Undo', do: () => void undo() });
  // A refusal changes nothing for the person: the storage state is told in the settings.
  askToPersistOnce(store).catch(() => undefined);
}
