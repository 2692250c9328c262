import { useRef } from 'preact/hooks';

/** Milliseconds in which nobody plays and rates another chord: two presses of one button are a hand that shook. */
const SETTLE = 300;

/** Tells of a press whether it is the second of a double one on the same button, which may have taken on a new meaning meanwhile. */
export function useDoublePress(): (event: Event) => boolean {
  const last = useRef({ timeStamp: -Infinity, button: null as EventTarget | null });
  return ({ timeStamp, currentTarget }) => {
    const before = last.current;
    last.current = { timeStamp, button: currentTarget };
    return currentTarget === before.button && timeStamp - before.timeStamp < SETTLE;
  };
}

/**
 * Where another page comes in place of the button of this press: what a hand that shook presses on it is not meant for it.
 */
export function ignoreDoubleOf({ timeStamp }: Event): void {
  const ignore = (click: Event): void => {
    if (click.timeStamp - timeStamp >= SETTLE) {
      removeEventListener('click', ignore, true);
      return;
    }
    click.preventDefault();
    click.stopPropagation();
  };
  addEventListener('click', ignore, true);
}
