/** Keys of the piano that act while nothing is being played: see piano-keys.ts. */
import { useEffect, useRef } from 'preact/hooks';
import type { Fluency } from '../../../shared/log/events';
import { keysOfHand } from '../../../shared/music/score';
import { type KeyAction, learntKeys } from '../../parts/piano-keys';
import { preferences } from '../../preferences';
import { midi } from '../../sound/midi-input';
import type { Course } from './course';

/** Milliseconds without another key before one that acts: who plays on does not mean to rate. */
const ALONE = 600;
/** Milliseconds for which the pedal is held. */
const HOLD = 1000;

export type KeyActions = Readonly<{
  rate?: (fluency: Fluency) => void;
  forward?: () => void;
  back?: () => void;
}>;

/** Learnt keys that are no notes of a course: who plays them during its run does not play. */
export function keysLeftOut(course: Course): ReadonlySet<number> {
  const played = new Set(
    course.parts.flatMap(({ score }) => [...keysOfHand(score.right), ...keysOfHand(score.left)]),
  );
  const learnt = learntKeys(preferences.peek().pianoKeys).map((key) => key.midi);
  return new Set(learnt.filter((key) => !played.has(key)));
}

/** Calls back with what a key or the held pedal asks for, until the function that is returned is called. */
export function watchKeys(onAction: (action: KeyAction) => void): () => void {
  let lastStruck = performance.now();
  let holding = 0;
  const strike = (key: number) => {
    clearTimeout(holding);
    const isAlone = midi.down.peek().length === 1 && performance.now() - lastStruck > ALONE;
    lastStruck = performance.now();
    const learnt = learntKeys(preferences.peek().pianoKeys).find((one) => one.midi === key);
    if (isAlone && learnt) onAction(learnt.action);
  };
  const tread = (isDown: boolean) => {
    clearTimeout(holding);
    if (!isDown || !preferences.peek().holdsPedal || midi.down.peek().length > 0) return;
    holding = window.setTimeout(() => onAction({ kind: 'forward' }), HOLD);
  };
  const unlisten = midi.listen((message) => {
    if (message.kind === 'struck') strike(message.midi);
    if (message.kind === 'pedal') tread(message.isDown);
  });
  return () => {
    clearTimeout(holding);
    unlisten();
  };
}

/** While the component is shown. Null: a run is being played, and every key is a note. */
export function useKeyActions(actions: KeyActions | null): void {
  const latest = useRef(actions);
  latest.current = actions;
  const isOn = actions !== null;
  useEffect(() => {
    if (!isOn) return undefined;
    return watchKeys((action) => {
      if (action.kind === 'rate') latest.current?.rate?.(action.fluency);
      else latest.current?.[action.kind]?.();
    });
  }, [isOn]);
}
