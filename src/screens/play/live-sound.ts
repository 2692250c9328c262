/** Follows a player by what the microphone brings in: a worker hears it, a moment after it was played. */
import type { Expected } from '../../../shared/listening/expected';
import type { LiveHeard } from '../../../shared/listening/sound/live-ear';
import { preferences } from '../../preferences';
import { listenLive } from '../../sound/listen-live';
import type { Capture } from '../../sound/microphone';
import type { Beginning, LiveListener } from './live-keys';

export interface SoundSource {
  readonly capture: Pick<Capture, 'listen' | 'context'>;
}

/** Milliseconds of sound that are held until the music is on: more than a note may come early. */
const HELD = 1000;

export function listeningToSound(
  expected: Expected,
  { start, tempo, capture }: Beginning & SoundSource,
  tell: (heard: LiveHeard) => void,
): LiveListener {
  const rate = capture.context.sampleRate;
  const tuning = preferences.peek().pianoCents;
  const { hear, turnTo, end } = listenLive(expected, { rate, tempo, tuning }, tell);
  if (start > 0) turnTo(start);
  /** What comes before the music is on; null from then on. */
  let early: { readonly samples: Float32Array; readonly at: number }[] | null = [];
  capture.listen((samples) => {
    if (early === null) {
      hear(samples);
      return;
    }
    const at = performance.now();
    early = early.filter((one) => at - one.at < HELD);
    early.push({ samples, at });
  });
  return {
    start: (since) => {
      const waiting = early ?? [];
      early = null;
      for (const { samples, at } of waiting) if (at >= since) hear(samples);
    },
    turnTo,
    end,
  };
}
