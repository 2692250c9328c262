/** How keys of the piano are learnt: what is asked for, and which keys will do. */
import { blockFrom, learntKeys, type PianoKeys } from '../../parts/piano-keys';
import type { Preferences } from '../../preferences';

/** A key for each level, five neighbours at once, or a single key. */
export type Lesson = 'block' | 'levels' | 'forward' | 'back';

export const LESSONS: readonly { readonly lesson: Lesson; readonly label: string }[] = [
  { lesson: 'block', label: 'Learn five neighbouring keys' },
  { lesson: 'levels', label: 'Learn a key for each level' },
  { lesson: 'forward', label: 'Learn a piano key for “on”' },
  { lesson: 'back', label: 'Learn a piano key for “back”' },
];

export const nothingLearnt: PianoKeys = {
  levels: [null, null, null, null, null],
  forward: null,
  back: null,
};

export type Answer =
  | { readonly kind: 'learnt'; readonly pianoKeys: PianoKeys }
  | { readonly kind: 'more' }
  | { readonly kind: 'refused'; readonly why: string };

const refused = (why: string): Answer => ({ kind: 'refused', why });

/** What comes of the keys that were pressed for a lesson, the last of which is new. */
export function learn(
  lesson: Lesson,
  pressed: readonly number[],
  { pianoKeys }: Pick<Preferences, 'pianoKeys'>,
): Answer {
  const key = pressed.at(-1)!;
  const others = withoutLesson(lesson, pianoKeys);
  const isTaken = (one: number) => learntKeys(others).some(({ midi }) => midi === one);
  if (isTaken(key) || pressed.indexOf(key) < pressed.length - 1) {
    return refused('it has been learnt before');
  }
  if (lesson === 'block') {
    const levels = blockFrom(key);
    if (levels === null) return refused('take a white key with four more above it');
    if (levels.some((one) => one !== null && isTaken(one))) {
      return refused('one of the five has been learnt before');
    }
    return { kind: 'learnt', pianoKeys: { ...others, levels } };
  }
  if (lesson !== 'levels') return { kind: 'learnt', pianoKeys: { ...others, [lesson]: key } };
  const [first, second, third, fourth, fifth] = pressed;
  if (fifth === undefined) return { kind: 'more' };
  return {
    kind: 'learnt',
    pianoKeys: { ...others, levels: [first!, second!, third!, fourth!, fifth] },
  };
}

/** What a lesson teaches may be taught anew. */
const withoutLesson = (lesson: Lesson, keys: PianoKeys): PianoKeys => ({
  ...keys,
  [lesson === 'block' ? 'levels' : lesson]:
    lesson === 'block' || lesson === 'levels' ? nothingLearnt.levels : null,
});
