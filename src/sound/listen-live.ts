/** Hands a sound that is coming in to a worker, which tells what it hears in it. Nothing of it is kept. */
import type { Expected } from '../../shared/listening/expected';
import type { LiveHeard, LiveOptions } from '../../shared/listening/sound/live-ear';
import { trustedScriptUrl } from '../trusted';
// oxlint-disable-next-line import/default -- the address of the built file, from Vite
import listenWorkerUrl from './listen-worker?worker&url';

export type LiveMessage =
  | { readonly kind: 'begin'; readonly expected: Expected; readonly options: LiveOptions }
  | { readonly kind: 'sound'; readonly samples: Float32Array }
  /** The player was turned to the arpeggio that begins at a step. */
  | { readonly kind: 'turn'; readonly start: number };

export interface LiveAnswer {
  readonly heard: LiveHeard;
  /** How often the player had been turned by then. */
  readonly turns: number;
}

export interface LiveListening {
  /** More of the sound; it is handed over. */
  hear(samples: Float32Array): void;
  turnTo(start: number): void;
  end(): void;
}

export function listenLive(
  expected: Expected,
  options: LiveOptions,
  onHeard: (heard: LiveHeard) => void,
): LiveListening {
  const worker = new Worker(trustedScriptUrl(listenWorkerUrl), { type: 'module', name: 'live' });
  let turns = 0;
  const tell = (message: LiveMessage, handedOver: Transferable[] = []) =>
    worker.postMessage(message, handedOver);
  worker.addEventListener('message', ({ data }: MessageEvent<LiveAnswer>) => {
    // What it heard before it knew of a turn would turn the page back.
    if (data.turns === turns) onHeard(data.heard);
  });
  // A browser in which it fails lights nothing up; of the whole run that is said.
  worker.addEventListener('error', (event) => event.preventDefault());
  tell({ kind: 'begin', expected, options });
  return {
    hear: (samples) => tell({ kind: 'sound', samples }, [samples.buffer]),
    turnTo: (start) => {
      turns += 1;
      tell({ kind: 'turn', start });
    },
    end: () => worker.terminate(),
  };
}
