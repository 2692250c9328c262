/** Works out what a sound holds, so that the page stays free meanwhile. One question, one answer. */
import { hear } from '../../shared/listening/sound/hear';
import { roomOf } from '../../shared/listening/sound/room';
import { tuningOf } from '../../shared/listening/sound/tuning';
import type { Answer, Question } from './listen';

function answerTo(question: Question): Answer {
  if (question.kind === 'run') {
    const { sound, expected, options } = question;
    return { kind: 'run', hearing: hear(sound, expected, options) };
  }
  const { sound } = question;
  return { kind: 'check', room: roomOf(sound), tuning: tuningOf(sound) };
}

self.addEventListener('message', ({ data }: MessageEvent<Question>) => {
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker's postMessage has no origin
  self.postMessage(answerTo(data));
});
