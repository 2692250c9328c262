/** Where the player is while a run goes on, and what has been played right, for lights and for turning the page. */
import { batch, signal, type ReadonlySignal } from '@preact/signals';
import { expectedOf } from '../../../shared/listening/expected';
import type { Lit } from '../../../shared/listening/follower';
import type { LiveHeard, Spoilt } from '../../../shared/listening/sound/live-ear';
import { scoreOf } from '../../../shared/music/score-of';
import type { Tempo } from '../../../shared/music/tempo';
import type { Course, CourseOptions } from './course';
import { listeningToKeys, type LiveListener } from './live-keys';
import { listeningToSound, type SoundSource } from './live-sound';

export interface LiveOptions {
  readonly course: Course;
  readonly options: CourseOptions;
  /** Index of the arpeggio with which the run begins. */
  readonly from: number;
  readonly tempo: Tempo;
}

export type LiveSource =
  /** A MIDI keyboard; keys that are `left out` are no notes of the run. */
  | { readonly kind: 'midi'; readonly leftOut: ReadonlySet<number> }
  | ({ readonly kind: 'microphone' } & SoundSource);

export interface Live {
  /** The step of the course that was played last; null before the first, and while nobody listens. */
  readonly step: ReadonlySignal<number | null>;
  readonly lit: ReadonlySignal<Lit>;
  /** What makes the sound of the microphone worth no lights; null while nothing does. */
  readonly spoilt: ReadonlySignal<Spoilt | null>;
  begin(source: LiveSource, options: LiveOptions): void;
  /** The music is on: what was tried before a moment of `performance.now()` is not part of it. */
  start(since: number): void;
  /** The player turned by hand to the arpeggio that begins at a step. */
  turnTo(start: number): void;
  end(): void;
}

const NONE: Lit = { right: new Set(), left: new Set() };
const NOWHERE: LiveHeard = { step: -1, lit: NONE, spoilt: null };

export function createLive(): Live {
  const step = signal<number | null>(null);
  const lit = signal(NONE);
  const spoilt = signal<Spoilt | null>(null);
  let listener: LiveListener | null = null;

  const show = (heard: LiveHeard) =>
    batch(() => {
      step.value = heard.step < 0 ? null : heard.step;
      lit.value = heard.lit;
      spoilt.value = heard.spoilt;
    });
  const end = () => {
    listener?.end();
    listener = null;
    show(NOWHERE);
  };
  return {
    step,
    lit,
    spoilt,
    begin: (source, { course, options, from, tempo }) => {
      end();
      const items = course.parts.map((part) => part.item);
      const written = { ...options, title: '', pedal: false, fingeringOf: () => null };
      const expected = expectedOf(scoreOf(items, written));
      const start = course.parts[from]!.start;
      listener =
        source.kind === 'midi'
          ? listeningToKeys(expected, { tempo, start, leftOut: source.leftOut }, show)
          : listeningToSound(expected, { tempo, start, ...source }, show);
    },
    start: (since) => listener?.start(since),
    turnTo: (start) => listener?.turnTo(start),
    end,
  };
}
