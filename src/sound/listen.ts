/** Asks a worker what a sound holds. The sound is handed over to it and ends there. */
import type { Expected } from '../../shared/listening/expected';
import type { Hearing, HearOptions } from '../../shared/listening/sound/hear';
import type { Room } from '../../shared/listening/sound/room';
import type { Sound } from '../../shared/listening/sound/spectrum';
import { trustedScriptUrl } from '../trusted';
// oxlint-disable-next-line import/default -- the address of the built file, from Vite
import listenWorkerUrl from './listen-worker?worker&url';

export type Question =
  | {
      readonly kind: 'run';
      readonly sound: Sound;
      readonly expected: Expected;
      readonly options: HearOptions;
    }
  /** How well the room lets a piano be heard, and how the piano is tuned. */
  | { readonly kind: 'check'; readonly sound: Sound };

export type Answer =
  | { readonly kind: 'run'; readonly hearing: Hearing }
  | { readonly kind: 'check'; readonly room: Room; readonly tuning: number | null };

/** Rejects with an Error if the worker fails. The samples of the question are gone afterwards. */
function ask(question: Question): Promise<Answer> {
  const worker = new Worker(trustedScriptUrl(listenWorkerUrl), { type: 'module', name: 'listen' });
  return new Promise<Answer>((resolve, reject) => {
    worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => resolve(data));
    worker.addEventListener('error', ({ message }) => reject(new Error(message)));
    worker.postMessage(question, [question.sound.samples.buffer]);
  }).finally(() => worker.terminate());
}

/** What of the expected notes is in a sound. */
export async function hearRun(
  sound: Sound,
  expected: Expected,
  options: HearOptions,
): Promise<Hearing> {
  const answer = await ask({ kind: 'run', sound, expected, options });
  if (answer.kind !== 'run') throw new Error(`not an answer about a run: ${answer.kind}`);
  return answer.hearing;
}

/** What a few notes tell of the room and the piano. */
export async function checkSound(
  sound: Sound,
): Promise<{ readonly room: Room; readonly tuning: number | null }> {
  const answer = await ask({ kind: 'check', sound });
  if (answer.kind !== 'check') throw new Error(`not an answer about a room: ${answer.kind}`);
  return answer;
}
