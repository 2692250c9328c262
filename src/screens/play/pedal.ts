/** Keys of the music stand: those of a computer and those that a page-turner pedal sends. */
import { useEffect, useRef } from 'preact/hooks';
import { preferences } from '../../preferences';

export type StandAction = 'forward' | 'back' | 'stop';

const FORWARD = new Set(['PageDown', 'ArrowRight', 'ArrowDown', ' ', 'Enter']);
const BACK = new Set(['PageUp', 'ArrowLeft', 'ArrowUp']);

/** Controls that need every key, by their selector. */
const TAKES_ALL = 'input:not([type=radio], [type=checkbox]), select, textarea, [contenteditable]';
const TAKES_ARROWS = 'input[type=radio]';
const TAKES_PRESS = 'button, a[href], summary, input[type=checkbox], input[type=radio]';

/** Whether the control that has the focus would do something of its own with a key. */
function isTaken(target: EventTarget | null, key: string): boolean {
  if (!(target instanceof Element)) return false;
  if (target.matches(TAKES_ALL)) return true;
  if (key.startsWith('Arrow')) return target.matches(TAKES_ARROWS);
  return (key === ' ' || key === 'Enter') && target.matches(TAKES_PRESS);
}

/** What a key press asks for; null if it is not one of ours, belongs to a control, or is a key held down. */
export function standAction(event: KeyboardEvent): StandAction | null {
  const { key, target } = event;
  if (event.repeat || event.defaultPrevented) return null;
  if (event.ctrlKey || event.altKey || event.metaKey) return null;
  if (document.querySelector('dialog[open]') !== null) return null;
  if (key === 'Escape') return 'stop';
  if (isTaken(target, key)) return null;
  const { forwardKeys, backKeys } = preferences.value;
  if (FORWARD.has(key) || forwardKeys.includes(key)) return 'forward';
  if (BACK.has(key) || backKeys.includes(key)) return 'back';
  return null;
}

/** While the component is shown, its keys act and do not scroll the page. An action left out is not taken. */
export function useStandKeys(actions: Readonly<Partial<Record<StandAction, () => void>>>): void {
  const latest = useRef(actions);
  latest.current = actions;
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const action = standAction(event);
      const act = action === null ? undefined : latest.current[action];
      if (act === undefined) return;
      event.preventDefault();
      act();
    };
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  }, []);
}
