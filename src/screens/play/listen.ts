/** Listening to a run: what was heard becomes takes of its items, and what they suggest the ratings to begin with. */
import { useEffect, useRef } from 'preact/hooks';
import type { ItemId } from '../../../shared/music/deck';
import { playableTempo, type Tempo } from '../../../shared/music/tempo';
import { expectedOf } from '../../../shared/listening/expected';
import { judge } from '../../../shared/listening/judge';
import { suggestedFluency } from '../../../shared/listening/suggest';
import { isPedalled, type Take } from '../../../shared/listening/take';
import { scoreOf } from '../../../shared/music/score-of';
import type { Session } from '../../day/session';
import { say } from '../../parts/notice/notice';
import { preferences } from '../../preferences';
import { midi, type MidiRecording } from '../../sound/midi-input';
import type { Course, CourseOptions } from './course';
import { rated } from './record-runs';

/** Share by which the tempo of a take may differ from the one that was set without being told. */
const SAME_TEMPO = 0.03;

interface Heard {
  readonly take: Take;
  readonly course: Course;
  readonly options: CourseOptions;
  /** Places in the entry of the first arpeggio that was played, and of the first that was not reached. */
  readonly from: number;
  readonly to: number;
}

/** The session with what was heard: takes, suggested ratings, and the pedal where it was down. */
export function withTake(session: Session, heard: Heard): Session {
  const { take, course, options, from, to } = heard;
  const items = course.parts.slice(from, to).map((part) => part.item);
  if (items.length === 0 || take.notes.length === 0) return session;
  const score = scoreOf(items, { ...options, title: '', pedal: false });
  let changed = isPedalled(take) === true ? { ...session, pedal: true } : session;
  for (const [i, measured] of judge(expectedOf(score), take).entries()) {
    if (measured === null) continue;
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

/** The ear of the stand: hears from the beginning of a run to its end, where a keyboard is connected. */
export interface Ear {
  begin(from: number): void;
  /** Calls back when the player is done: the beat may be over while a slower hand still plays. At once without an ear. */
  whenQuiet(then: () => void): void;
  /** Ends hearing; the session with what was heard of the arpeggios before place `to` of the entry. */
  end(session: Session, to: number): Session;
}

interface Hearing {
  readonly recording: MidiRecording;
  readonly from: number;
  hasBegun: boolean;
}

/** Milliseconds before the first beat in which the first note may come early. */
const EARLY = 400;
/** Milliseconds without a note after which a player is done, and for which at most one is waited for. */
const QUIET = 900;
const LONGEST_WAIT = 30_000;

/** `isMusicOn` turns true when the count-in is over: what was tried during it is not part of the run. */
export function useEar(course: Course, options: CourseOptions, isMusicOn: boolean): Ear {
  const open = useRef<Hearing | null>(null);
  const timer = useRef(0);
  const close = () => {
    clearTimeout(timer.current);
    open.current?.recording.stop();
    open.current = null;
  };
  useEffect(() => {
    if (preferences.peek().ear === 'midi') void midi.reconnect();
    return close;
  }, []);
  useEffect(() => {
    const hearing = open.current;
    // A later count-in is one of the player's own restarts.
    if (!isMusicOn || hearing === null || hearing.hasBegun) return;
    hearing.hasBegun = true;
    hearing.recording.forgetBefore(performance.now() - EARLY);
  }, [isMusicOn]);
  return {
    begin: (from) => {
      close();
      if (midi.state.peek() !== 'connected') return;
      open.current = { recording: midi.record(), from, hasBegun: false };
    },
    whenQuiet: (then) => {
      const latest = performance.now() + LONGEST_WAIT;
      const look = () => {
        const left = QUIET - (open.current?.recording.quietFor() ?? Infinity);
        if (left <= 0 || performance.now() > latest) then();
        else timer.current = window.setTimeout(look, left);
      };
      look();
    },
    end: (session, to) => {
      const heard = open.current;
      if (heard === null) return session;
      const take = heard.recording.take();
      close();
      if (take === null) {
        say('The keyboard was unplugged during the run, so it was not judged.');
        return session;
      }
      return withTake(session, { take, course, options, from: heard.from, to });
    },
  };
}
