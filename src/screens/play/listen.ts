/** Listening to a run: what was heard becomes takes of its items, and what they suggest the ratings to begin with. */
import { useEffect, useRef } from 'preact/hooks';
import type { ItemId } from '../../../shared/music/deck';
import { playableTempo, type Tempo } from '../../../shared/music/tempo';
import { type Expected, expectedOf } from '../../../shared/listening/expected';
import { judge } from '../../../shared/listening/judge';
import { suggestedFluency } from '../../../shared/listening/suggest';
import { isPedalled, type Take } from '../../../shared/listening/take';
import { scoreOf } from '../../../shared/music/score-of';
import type { Session } from '../../day/session';
import { wakeEar } from '../../parts/ear/ear';
import { say } from '../../parts/notice/notice';
import { midi, type MidiRecording } from '../../sound/midi-input';
import { type Capture, microphone } from '../../sound/microphone';
import type { Course, CourseOptions } from './course';
import { heardByMicrophone } from './microphone-run';
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

/** The notes of the arpeggios that were played; null where there are none. */
function expectedIn({ course, options, from, to }: Omit<Heard, 'take'>): Expected | null {
  const items = course.parts.slice(from, to).map((part) => part.item);
  if (items.length === 0) return null;
  return expectedOf(scoreOf(items, { ...options, title: '', pedal: false }));
}

/** The session with what was heard: takes, suggested ratings, and the pedal where it was down. */
export function withTake(session: Session, heard: Heard): Session {
  const { take, course, options, from } = heard;
  const expected = expectedIn(heard);
  if (expected === null || take.notes.length === 0) return session;
  let changed = isPedalled(take) === true ? { ...session, pedal: true } : session;
  for (const [i, measured] of judge(expected, take).entries()) {
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

/** The ear of the stand: hears from the beginning of a run to its end, where a keyboard or the microphone is on. */
export interface Ear {
  /** At a place of the entry; in a user's gesture. By what it hears. */
  begin(from: number): 'midi' | 'microphone' | null;
  /** Calls back when the player is done: the beat may be over while a slower hand still plays. At once without an ear. */
  whenQuiet(then: () => void): void;
  /**
   * Ends hearing, and hands on the session with what was heard of the arpeggios before place `to` of the entry: at once,
   * but after a while where it has to be worked out from sound; not at all if the stand has been left meanwhile.
   */
  end(session: Session, to: number, then: (heard: Session) => void): void;
}

type Recording =
  ({ readonly kind: 'midi' } & MidiRecording) | ({ readonly kind: 'microphone' } & Capture);

interface Hearing {
  readonly recording: Recording;
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
  /** Counts openings and closings: what a slow answer was for may be over. */
  const turn = useRef(0);
  const close = () => {
    turn.current += 1;
    clearTimeout(timer.current);
    open.current?.recording.stop();
    open.current = null;
  };
  useEffect(() => {
    wakeEar();
    return close;
  }, []);
  const openMicrophone = async (from: number) => {
    const mine = turn.current;
    const capture = await microphone.open();
    if (capture === null) {
      say('The microphone could not be opened, so the run is not heard.');
    } else if (turn.current === mine) {
      open.current = { recording: { kind: 'microphone', ...capture }, from, hasBegun: false };
    } else capture.stop();
  };
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
      if (midi.state.peek() === 'connected') {
        const recording = { kind: 'midi', ...midi.record() } as const;
        open.current = { recording, from, hasBegun: false };
        return 'midi';
      }
      if (microphone.state.peek() !== 'ready') return null;
      void openMicrophone(from);
      return 'microphone';
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
    end: (session, to, then) => {
      const heard = open.current;
      if (heard === null) {
        then(session);
        return;
      }
      const { recording, from } = heard;
      const run = { course, options, from, to };
      if (recording.kind === 'midi') {
        const take = recording.take();
        close();
        if (take === null) say('The keyboard was unplugged during the run, so it was not judged.');
        then(take === null ? session : withTake(session, { ...run, take }));
        return;
      }
      const sound = recording.sound();
      close();
      const mine = turn.current;
      const expected = expectedIn(run);
      if (expected === null) {
        then(session);
        return;
      }
      const { isFiltered } = recording;
      void heardByMicrophone(sound, expected, { tempo: session.tempo, isFiltered }).then((take) => {
        if (turn.current !== mine) return;
        then(take === null ? session : withTake(session, { ...run, take }));
      });
    },
  };
}
