/**
 * One playing of an entry: begins with a count-in, walks with the beat, turns to the next arpeggio by itself, and is
 * over one beat after the last note. Without a beat the player turns by hand. Where the player's place is known it may
 * be followed instead of the beat.
 */
import { batch, computed, effect, signal, untracked, type ReadonlySignal } from '@preact/signals';
import { type Grouping, markOf, type Tempo } from '../../../shared/music/tempo';
import type { Metronome, MetronomeOptions } from '../../sound/metronome';
import { COUNT_IN } from '../../sound/schedule';
import { type Course, partAt } from './course';
import { endingAt } from './ending';
import {
  afterCountIn,
  type Anchor,
  countAt,
  type HeardBeat,
  onNearestBeat,
  type Pace,
  positionAt,
} from './pace';

export type Beating = 'heard' | 'seen' | 'off';

export interface RunOptions {
  readonly course: Course;
  readonly tempo: Tempo;
  readonly grouping: Grouping;
  readonly beating: Beating;
  /** The beat sounds only while it is counted in, as a microphone listens. */
  readonly isCountInOnly: boolean;
  readonly volume: number;
  readonly latencyOffsetMs: number;
  readonly startMetronome: (options: MetronomeOptions) => Promise<Metronome>;
  /** The step that the player has reached, to be followed; null: the beat is, or the hand that turns. */
  readonly follows: ReadonlySignal<number | null> | null;
  /** Called with the first step of an arpeggio to which the player turns by hand. */
  readonly onTurn: (start: number) => void;
  /** Called with the index of each arpeggio when it begins. */
  readonly onPart: (part: number) => void;
  /** Called once, when the last note has been played. */
  readonly onOver: () => void;
  /** The sound could not be had; the beat is only seen. */
  readonly onSilent: () => void;
}

export interface Run {
  /** 1 to 4 while beats are counted in, 0 just before; null once the music is on. */
  readonly count: ReadonlySignal<number | null>;
  /** The step that sounds now; it stands still without a beat, unless the player is followed. */
  readonly position: ReadonlySignal<number>;
  /** The step on which the current beat fell; where there is no beat and the player is followed, that of the player's. */
  readonly beatPosition: ReadonlySignal<number>;
  /** The step at which the beat began in which the step of `position` lies. */
  readonly calmPosition: ReadonlySignal<number>;
  /** Index of the arpeggio to be played now. */
  readonly part: ReadonlySignal<number>;
  /** 'interrupted': the browser holds the sound back. */
  readonly sound: ReadonlySignal<'on' | 'interrupted'>;
  /** On to the next arpeggio, which begins now; after the last one the run is over. */
  next(): void;
  /** Once more from the start of this arpeggio, or from the one before if this one has only begun. */
  back(): void;
  /** Asks for the sound again; in a user's gesture. */
  resume(): void;
  stop(): void;
}

/** Starts at an arpeggio. To be called in a user's gesture, without an `await` before it, as the beat may sound. */
export function startRun(options: RunOptions, from: number): Run {
  const { course, grouping, beating, follows } = options;
  const { parts } = course;
  const pace: Pace = { msPerBeat: 60_000 / markOf(options.tempo, grouping), grouping };
  const startOf = (index: number): number => parts[index]!.start;

  let anchor: Anchor = { beat: 0, position: startOf(from), isCounted: true };
  let beat: HeardBeat | null = null;
  let frame = 0;
  let isStopped = false;
  const ending = endingAt(course.length, pace, () => finish());
  const count = signal(beating === 'off' ? null : 0);
  const position = signal(startOf(from));
  const beatPosition = signal(startOf(from));
  const part = computed(() => partAt(course, position.value));
  const metronome = signal<Metronome | null>(null);
  const stopTelling = part.subscribe((begun) => untracked(() => options.onPart(begun)));

  const show = () => {
    if (beat === null) return;
    batch(() => {
      count.value = countAt(anchor, beat!.index);
      if (follows === null) position.value = positionAt(anchor, beat!, performance.now(), pace);
      beatPosition.value = inPart(positionAt(anchor, beat!, beat!.at, pace));
    });
    if (position.value >= course.length + grouping) finish();
  };
  /** Where the player is followed, the beat goes along the arpeggio again and again until the next is begun. */
  const inPart = (step: number): number => {
    if (follows === null) return step;
    const { start, intervals } = parts[part.peek()]!;
    return start + (Math.max(0, step - start) % intervals);
  };
  const followTo = (step: number) => {
    const before = part.peek();
    position.value = step;
    if (beat === null) beatPosition.value = step - ((step - startOf(part.peek())) % grouping);
    else if (part.peek() !== before) {
      moveTo(onNearestBeat(startOf(part.peek()), beat, performance.now(), pace));
    }
    ending.reached(step);
  };
  const unfollow = effect(() => {
    const step = follows?.value ?? null;
    if (step !== null) untracked(() => followTo(step));
  });
  const onFrame = () => {
    show();
    if (!isStopped) frame = requestAnimationFrame(onFrame);
  };
  const begin = (sound: boolean): Promise<Metronome> =>
    options.startMetronome({
      beatsPerMinute: markOf(options.tempo, grouping),
      countInBeats: COUNT_IN,
      volume: options.volume,
      sound,
      isCountInOnly: options.isCountInOnly,
      latencyOffsetMs: options.latencyOffsetMs,
      onBeat: (heard) => {
        beat = heard;
        show();
      },
    });
  const keep = (started: Metronome) => {
    if (isStopped) started.stop();
    else metronome.value = started;
  };
  const stop = () => {
    isStopped = true;
    stopTelling();
    unfollow();
    ending.cancel();
    cancelAnimationFrame(frame);
    metronome.value?.stop();
  };
  const finish = () => {
    if (isStopped) return;
    stop();
    options.onOver();
  };
  const turnTo = (index: number) => {
    batch(() => {
      position.value = startOf(index);
      beatPosition.value = startOf(index);
    });
    options.onTurn(startOf(index));
  };
  const moveTo = (next: Anchor) => {
    anchor = next;
    show();
  };

  if (beating !== 'off') {
    frame = requestAnimationFrame(onFrame);
    begin(beating === 'heard').then(keep, () => {
      options.onSilent();
      return begin(false).then(keep);
    });
  }

  return {
    count,
    position,
    beatPosition,
    calmPosition: computed(() => {
      if (follows === null) return beatPosition.value;
      const along = position.value - startOf(part.value);
      return position.value - (along % grouping);
    }),
    part,
    sound: computed(() => (metronome.value?.state.value === 'interrupted' ? 'interrupted' : 'on')),
    next: () => {
      if (isStopped || count.value !== null) return;
      const following = part.value + 1;
      if (following === parts.length) finish();
      else {
        turnTo(following);
        if (beat !== null) {
          moveTo(onNearestBeat(startOf(following), beat, performance.now(), pace));
        }
      }
    },
    back: () => {
      if (isStopped) return;
      const hasOnlyBegun = position.value - startOf(part.value) <= grouping;
      const earlier = hasOnlyBegun ? Math.max(0, part.value - 1) : part.value;
      if (beating !== 'off' && beat === null) return;
      turnTo(earlier);
      if (beat !== null) moveTo(afterCountIn(startOf(earlier), beat));
    },
    resume: () => void metronome.value?.resume(),
    stop,
  };
}
