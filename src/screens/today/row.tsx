/** One line of the list, as in a table of contents: note, what, how, and the numbers at the end. */
import type { ComponentChildren } from 'preact';
import { Button } from '../../parts/button/button';
import styles from './row.module.css';

interface RowProps {
  readonly note: string;
  readonly title: ComponentChildren;
  readonly way: string;
  readonly state: 'open' | 'done' | 'left out';
  readonly isCurrent: boolean;
  /** At the end of the line, while it is open. */
  readonly numbers: ComponentChildren;
  readonly onPutBack: () => void;
  /** Below, while it is open. */
  readonly children: ComponentChildren;
}

export function Row(props: RowProps) {
  const { note, state } = props;
  return (
    <li class={styles.row} data-state={state} aria-current={props.isCurrent ? 'step' : undefined}>
      <span class={styles.note} data-long={note.length > 3}>
        {note}
      </span>
      <div>
        <h2 class={styles.title}>{props.title}</h2>
        <p class={styles.way}>{props.way}</p>
      </div>
      <div class={styles.numbers}>{state === 'open' ? props.numbers : <State state={state} />}</div>
      <div class={styles.more}>
        {state === 'open' && props.children}
        {state === 'left out' && (
          <p>
            <Button kind="quiet" onClick={props.onPutBack}>
              Put back
            </Button>
          </p>
        )}
      </div>
    </li>
  );
}

function State({ state }: { readonly state: 'done' | 'left out' }) {
  if (state === 'left out') return <span class={styles.minutes}>left out today</span>;
  return (
    <span class={styles.done}>
      <svg class={styles.tick} viewBox="0 0 20 20" aria-hidden="true">
        <path d="M3 11l5 5L17 4" />
      </svg>
      done
    </span>
  );
}

export const Minutes = ({ children }: { readonly children: ComponentChildren }) => (
  <span class={styles.minutes}>{children}</span>
);

export const Reason = ({ children }: { readonly children: ComponentChildren }) => (
  <p class={styles.reason}>{children}</p>
);
