/** Listening to a run, by a MIDI keyboard or the microphone. */
import { untracked } from '@preact/signals';
import { useCallback, useEffect, useMemo, useRef } from 'preact/hooks';
import type { Tempo } from '../../../shared/music/tempo';
import type { Session } from '../../day/session';
import { wakeEar } from '../../parts/ear/ear';
import { say } from '../../parts/notice/notice';
import { midi, type MidiRecording } from '../../sound/midi-input';
import { type Capture, microphone } from '../../sound/microphone';
import { type Course, type CourseOptions, partAt } from './course';
import { type HearsBy, hearsBy } from './hears-by';
import { keysLeftOut } from './key-actions';
import { createLive, type Live } from './live';
import { heardByMicrophone } from './microphone-run';
import { expectedIn, withTake } from './with-take';

/** The ear of the stand: hears from the beginning of a run to its end, where a keyboard or the microphone is on. */
export interface Ear {
  /** At a place of the entry and a tempo; in a user's gesture. By what it hears. */
  begin(from: number, tempo: Tempo): HearsBy | null;
  /** What is heard of the run while it goes on. */
  readonly live: Pick<Live, 'step' | 'lit' | 'turnTo'>;
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
  /** Where the ear was cut off in mid-run, the place of the arpeggio that was being played then; null while it is not. */
  brokenAt: number | null;
}

/** Milliseconds before the first beat in which the first note may come early. */
const EARLY = 400;
/** Milliseconds without a note after which a player is done, and for which at most one is waited for. */
const QUIET = 900;
const LONGEST_WAIT = 30_000;

/** Said when it happens; the run goes on. */
const BROKEN = {
  midi: 'The keyboard was unplugged. The run goes on, but what follows is not heard.',
  microphone: 'The microphone was cut off. The run goes on, but is not judged.',
} as const;

const SPOILT = {
  noise: 'There is much noise, so no notes light up in this run.',
  loud: 'It is too loud for the microphone, so no notes light up in this run.',
} as const;

function cutOffText(chords: number): string {
  if (chords <= 0) return 'The keyboard was unplugged during the run, so it was not judged.';
  const what = chords === 1 ? 'the first chord was' : `the first ${chords} chords were`;
  return `The keyboard was unplugged during the run: only ${what} judged.`;
}

/** `isMusicOn` turns true when the count-in is over: what was tried during it is not part of the run. */
export function useEar(course: Course, options: CourseOptions, isMusicOn: boolean): Ear {
  const open = useRef<Hearing | null>(null);
  const live = useMemo(createLive, []);
  const timer = useRef(0);
  /** As of now, for what is opened later. */
  const isOn = useRef(isMusicOn);
  isOn.current = isMusicOn;
  /** Counts openings and closings: what a slow answer was for may be over. */
  const turn = useRef(0);
  const close = useCallback(() => {
    turn.current += 1;
    clearTimeout(timer.current);
    live.end();
    open.current?.recording.stop();
    open.current = null;
  }, [live]);
  useEffect(() => {
    wakeEar();
    return close;
  }, [close]);
  const openMicrophone = async (from: number, tempo: Tempo) => {
    const mine = turn.current;
    const capture = await microphone.open();
    if (capture === null) {
      say('The microphone could not be opened, so the run is not heard.');
    } else if (turn.current === mine) {
      open.current = hearing({ kind: 'microphone', ...capture }, from);
      live.begin({ kind: 'microphone', capture }, { course, options, from, tempo });
      if (isOn.current) live.start(-Infinity);
    } else capture.stop();
  };
  const hearing = (recording: Recording, from: number): Hearing => {
    const one: Hearing = { recording, from, hasBegun: false, brokenAt: null };
    recording.isBroken.subscribe((isBroken) => {
      if (!isBroken) return;
      one.brokenAt = partAt(course, live.step.peek() ?? course.parts[from]!.start);
      say(BROKEN[recording.kind]);
    });
    return one;
  };
  useEffect(
    () =>
      live.spoilt.subscribe((spoilt) => {
        if (spoilt !== null) say(SPOILT[spoilt]);
      }),
    [live],
  );
  useEffect(() => {
    const heard = open.current;
    // A later count-in is one of the player's own restarts.
    if (!isMusicOn || heard === null || heard.hasBegun) return;
    heard.hasBegun = true;
    heard.recording.forgetBefore(performance.now() - EARLY);
    live.start(performance.now() - EARLY);
  }, [isMusicOn, live]);
  return {
    live,
    begin: (from, tempo) => {
      close();
      const by = untracked(hearsBy);
      if (by === 'midi') {
        const leftOut = keysLeftOut(course);
        open.current = hearing({ kind: 'midi', ...midi.record(leftOut) }, from);
        live.begin({ kind: 'midi', leftOut }, { course, options, from, tempo });
      }
      if (by === 'microphone') void openMicrophone(from, tempo);
      return by;
    },
    whenQuiet: (then) => {
      const latest = performance.now() + LONGEST_WAIT;
      const look = () => {
        const heard = open.current;
        // What comes after the ear was cut off is not waited for.
        const isHearing = heard !== null && heard.brokenAt === null;
        const left = isHearing ? QUIET - heard.recording.quietFor() : 0;
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
      const { recording, from, brokenAt } = heard;
      if (recording.kind === 'midi') {
        const take = recording.take();
        close();
        // Of a run that was cut off, what was finished before that is whole.
        const whole = Math.min(to, brokenAt ?? to);
        if (brokenAt !== null) say(cutOffText(whole - from));
        then(withTake(session, { take, course, options, from, to, whole }));
        return;
      }
      const run = { course, options, from, to };
      const sound = recording.sound();
      close();
      if (brokenAt !== null) {
        say('The microphone was cut off during the run, so it was not judged.');
        then(session);
        return;
      }
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
