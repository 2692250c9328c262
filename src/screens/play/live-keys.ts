/** Follows a player by what a MIDI keyboard plays, key by key. */
import type { Expected } from '../../../shared/listening/expected';
import { following } from '../../../shared/listening/follower';
import type { LiveHeard } from '../../../shared/listening/sound/live-ear';
import type { Tempo } from '../../../shared/music/tempo';
import { midi } from '../../sound/midi-input';

/** What follows one run. */
export interface LiveListener {
  /** The music is on: what was tried before a moment of `performance.now()` is not part of it. */
  start(since: number): void;
  /** The player turned by hand to the arpeggio that begins at a step. */
  turnTo(start: number): void;
  end(): void;
}

export interface Beginning {
  /** The step with which the run begins. */
  readonly start: number;
  readonly tempo: Tempo;
}

export function listeningToKeys(
  expected: Expected,
  { start, tempo, leftOut }: Beginning & { readonly leftOut: ReadonlySet<number> },
  tell: (heard: LiveHeard) => void,
): LiveListener {
  const follower = following(expected, 60 / tempo);
  if (start > 0) follower.turnTo(start);
  /** What comes before the music is on; null from then on. */
  let early: { readonly key: number; readonly at: number }[] | null = [];

  const add = (key: number, at: number) => {
    follower.add(key, at / 1000);
    tell({ step: follower.step(), lit: follower.lit(), spoilt: null });
  };
  const unlisten = midi.listen((message) => {
    if (message.kind !== 'struck' || leftOut.has(message.midi)) return;
    if (early === null) add(message.midi, message.at);
    else early.push({ key: message.midi, at: message.at });
  });
  return {
    start: (since) => {
      const waiting = early ?? [];
      early = null;
      for (const { key, at } of waiting) if (at >= since) add(key, at);
    },
    turnTo: (to) => {
      follower.turnTo(to);
      // Its first note is to come, and is the place all the same.
      tell({ step: Math.max(to, follower.step()), lit: follower.lit(), spoilt: null });
    },
    end: unlisten,
  };
}
