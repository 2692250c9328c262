/**
 * Works out what a sound holds, so that the page stays free meanwhile: one question, one answer; or a run while it goes on,
 * of which it tells whenever more has been heard.
 */
import { hear } from '../../shared/listening/sound/hear';
import { type LiveEar, liveEar } from '../../shared/listening/sound/live-ear';
import { roomOf } from '../../shared/listening/sound/room';
import { tuningOf } from '../../shared/listening/sound/tuning';
import type { Answer, Question } from './listen';
import type { LiveAnswer, LiveMessage } from './listen-live';

function answerTo(question: Question): Answer {
  if (question.kind === 'run') {
    const { sound, expected, options } = question;
    return { kind: 'run', hearing: hear(sound, expected, options) };
  }
  const { sound } = question;
  return { kind: 'check', room: roomOf(sound), tuning: tuningOf(sound) };
}

let ear: LiveEar | null = null;
let turns = 0;
let told = '';

/** What has been heard, if that is more than was told before. */
function follow(message: LiveMessage): LiveAnswer | null {
  if (message.kind === 'begin') ear = liveEar(message.expected, message.options);
  if (message.kind === 'sound') ear?.add(message.samples);
  if (message.kind === 'turn') {
    turns += 1;
    ear?.turnTo(message.start);
  }
  const heard = ear?.heard();
  if (heard === undefined) return null;
  const { step, lit, spoilt } = heard;
  const text = [turns, step, spoilt, ...lit.right, '', ...lit.left].join(' ');
  if (text === told) return null;
  told = text;
  return { heard, turns };
}

self.addEventListener('message', ({ data }: MessageEvent<Question | LiveMessage>) => {
  const answer = data.kind === 'run' || data.kind === 'check' ? answerTo(data) : follow(data);
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker's postMessage has no origin
  if (answer !== null) self.postMessage(answer);
});
