/** Where the player is while a run goes on, and what has been played right: told key by key, for lights and for turning. */
import { batch, signal, type ReadonlySignal } from '@preact/signals';
import { expectedOf } from '../../../shared/listening/expected';
import { type Follower, following, type Lit } from '../../../shared/listening/follower';
import { scoreOf } from '../../../shared/music/score-of';
import type { Tempo } from '../../../shared/music/tempo';
import { midi } from '../../sound/midi-input';
import type { Course, CourseOptions } from './course';

export interface LiveOptions {
  readonly course: Course;
  readonly options: CourseOptions;
  /** Index of the arpeggio with which the run begins. */
  readonly from: number;
  readonly tempo: Tempo;
  /** Keys that are no notes of the run. */
  readonly leftOut: ReadonlySet<number>;
}

export interface Live {
  /** The step of the course that was played last; null before the first, and while nobody listens. */
  readonly step: ReadonlySignal<number | null>;
  readonly lit: ReadonlySignal<Lit>;
  begin(options: LiveOptions): void;
  /** The music is on: what was tried before a moment of `performance.now()` is not part of it. */
  start(since: number): void;
  /** The player turned by hand to the arpeggio that begins at a step. */
  turnTo(start: number): void;
  end(): void;
}

const NONE: Lit = { right: new Set(), left: new Set() };

export function createLive(): Live {
  const step = signal<number | null>(null);
  const lit = signal(NONE);
  let follower: Follower | null = null;
  /** What comes before the music is on; null from then on. */
  let early: { readonly key: number; readonly at: number }[] | null = null;
  let unlisten: (() => void) | null = null;

  const add = (key: number, at: number) => {
    follower?.add(key, at / 1000);
    show();
  };
  const show = () =>
    batch(() => {
      const place = follower?.step() ?? -1;
      step.value = place < 0 ? null : place;
      lit.value = follower?.lit() ?? NONE;
    });
  const end = () => {
    unlisten?.();
    follower = null;
    show();
  };

  return {
    step,
    lit,
    begin: ({ course, options, from, tempo, leftOut }) => {
      end();
      const items = course.parts.map((part) => part.item);
      const written = { ...options, title: '', pedal: false, fingeringOf: () => null };
      follower = following(expectedOf(scoreOf(items, written)), 60 / tempo);
      if (from > 0) follower.turnTo(course.parts[from]!.start);
      early = [];
      unlisten = midi.listen((message) => {
        if (message.kind !== 'struck' || leftOut.has(message.midi)) return;
        if (early === null) add(message.midi, message.at);
        else early.push({ key: message.midi, at: message.at });
      });
    },
    start: (since) => {
      const waiting = early ?? [];
      early = null;
      for (const { key, at } of waiting) if (at >= since) add(key, at);
    },
    turnTo: (start) => {
      if (follower === null) return;
      follower.turnTo(start);
      // Its first note is to come, and is the place all the same.
      batch(() => {
        lit.value = follower!.lit();
        step.value = Math.max(start, follower!.step());
      });
    },
    end,
  };
}
