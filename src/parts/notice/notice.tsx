/**
 * Messages that come by themselves: saved, undone, works offline. One polite live region for the whole app, in the shell.
 *
 * say('Saved');
 * say('Saved', { label: 'Undo', do: undo });   the action stays until it is used or the next message
 * unsay();                                     takes the message away
 */
import { signal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { Button } from '../button/button';
import styles from './notice.module.css';

interface Action {
  readonly label: string;
  readonly do: () => void;
}

interface Message {
  readonly text: string;
  readonly action: Action | null;
}

const message = signal<Message | null>(null);

/** Milliseconds that a message without an action stays: time to look up from the keys. */
const STAY = 6000;

export function say(text: string, action: Action | null = null): void {
  message.value = { text, action };
}

export function unsay(): void {
  message.value = null;
}

/** Stands once in the shell. The region is always there: one that appears with its text is not read aloud. */
export function Notice() {
  const shown = message.value;
  const text = useRef<HTMLParagraphElement>(null);
  useEffect(() => {
    if (shown === null || shown.action !== null) return undefined;
    const timer = setTimeout(unsay, STAY);
    return () => clearTimeout(timer);
  }, [shown]);
  return (
    <div class={styles.notice} data-screen-only data-empty={shown === null}>
      <p ref={text} role="status" tabIndex={-1} class={styles.text}>
        {shown?.text}
      </p>
      {shown?.action && (
        <Button
          kind="quiet"
          onClick={() => {
            // The button goes: without it the focus would be at the top of the page.
            text.current?.focus({ preventScroll: true });
            unsay();
            shown.action?.do();
          }}
        >
          {shown.action.label}
        </Button>
      )}
    </div>
  );
}
