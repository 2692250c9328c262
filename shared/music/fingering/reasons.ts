/** Why a fingering is as it is, in short sentences made from what was computed. */
import { isBlackKey } from '../sequence';
import type { Fingering } from './result';
import type { Finger, Question } from './types';
import { intervalText, listOf, type NameOf, stretchText } from './words';

function thumbReason({ keys, hand }: Question, { plan, cost }: Fingering, nameOf: NameOf): string {
  const thumbs = keys.filter((_, tone) => plan.pattern[tone] === 1);
  const names = listOf(thumbs.map(nameOf));
  if (thumbs.length === 0) return 'The thumb has no place inside the run.';
  if (keys.every((key) => isBlackKey(key)))
    return `Only black keys, so they are fingered like white ones: thumb on ${names}.`;
  if (thumbs.some((key) => isBlackKey(key)))
    return `Thumb on ${names}, although there are white keys for it.`;
  if (cost.causes.extraThumb) return `Thumb on ${names}: small positions, but more changes.`;
  if (cost.causes.lateThumb) return `Thumb on ${names}, later than it could come.`;
  if (thumbs.length > 1) return `Thumb on ${names}: the notes need more than one position.`;
  if (plan.pattern[0] === 1) return `Thumb on ${names} in every octave.`;
  return `Thumb on ${names}, the first white key on the way ${hand === 'right' ? 'up' : 'down'}.`;
}

/** Four notes: 2 3 4 in order. Triads: 3 or 4 on the note before the next thumb. */
function longFingerReason(
  { keys, hand }: Question,
  { plan: { pattern } }: Fingering,
  nameOf: NameOf,
): string | null {
  const size = pattern.length;
  if (pattern.filter((finger) => finger === 1).length !== 1 || size < 3 || size > 4) return null;
  if (size === 4) return 'Away from the thumb, 2 3 4 follow in order.';
  const far = pattern.indexOf(Math.max(...pattern) as Finger);
  const step = hand === 'right' ? 1 : -1;
  const thumb = (far + step + size) % size;
  const semitones = ((keys[thumb]! - keys[far]!) * step + 12) % 12;
  const where = `${pattern[far]} on ${nameOf(keys[far]!)}`;
  const gap = `the next thumb is ${intervalText(semitones)} away`;
  if (pattern[far]! >= 3 && semitones >= 5 === (pattern[far] === 3)) return `${where}: ${gap}.`;
  if (pattern[far] === 3 && isBlackKey(keys[far]!))
    return `${where}: a black key suits the longest finger, though ${gap}.`;
  return `${where}, though ${gap}.`;
}

/** What the ends do otherwise than the inside of the run. */
function endReasons(
  { keys, hand, start = 'low' }: Question,
  { plan }: Fingering,
  nameOf: NameOf,
): readonly string[] {
  const reasonAt = (end: 'low' | 'high'): readonly string[] => {
    const fingers = plan[end];
    const tones = fingers.map((_, k) => (end === 'low' ? k : (keys.length - k) % keys.length));
    const inside = tones.map((tone) => plan.pattern[tone]!);
    if (fingers.every((finger, k) => finger === inside[k])) return [];
    const names = tones.map((tone) => nameOf(keys[tone]!)).join(' ');
    const what = `${start === end ? 'Begin' : 'Turn'} with ${fingers.join(' ')} on ${names}`;
    const isOuter = (end === 'high') === (hand === 'right');
    return isOuter && inside[0] === 1
      ? [`${what}: it saves passing the thumb for one note.`]
      : [`${what} (inside the run ${inside.join(' ')}).`];
  };
  return [...reasonAt('low'), ...reasonAt('high')];
}

/** Some short sentences, the most important first. */
export function reasonsOf(
  question: Question,
  fingering: Fingering,
  nameOf: NameOf,
): readonly string[] {
  const longFinger = longFingerReason(question, fingering, nameOf);
  const stretches = fingering.positions.flatMap((position) => position.stretches);
  return [
    ...new Set([
      thumbReason(question, fingering, nameOf),
      ...(longFinger ? [longFinger] : []),
      ...endReasons(question, fingering, nameOf),
      ...stretches.map((stretch) => stretchText(stretch, nameOf)),
    ]),
  ];
}
