import { type Item, itemOf } from '../../../shared/music/deck';
import type { Grouping } from '../../../shared/music/tempo';
import { reasonText } from '../../../shared/planning/reasons';
import type { Entry } from '../../../shared/planning/today';
import { Button } from '../../parts/button/button';
import { minutesText } from '../../parts/dates';
import { Figures } from '../../parts/figures/figures';
import { Mark } from '../../parts/stepper/beat-note';
import { chordText, noteText, wayText } from '../../parts/words';
import type { ListedEntry } from '../../day/day-list';
import styles from './entry-row.module.css';

interface EntryRowProps {
  readonly listed: ListedEntry;
  /** The entry above: a reason that is the same as its reason is not drawn again. */
  readonly previous: Entry | null;
  readonly grouping: Grouping;
  readonly isCurrent: boolean;
  readonly onPutBack: () => void;
}

/** One line of the list, as in a table of contents. */
export function EntryRow({ listed, previous, grouping, isCurrent, onPutBack }: EntryRowProps) {
  const { entry, state } = listed;
  const reason = reasonText(entry.reason, grouping);
  const isSame = previous !== null && reasonText(previous.reason, grouping) === reason;
  return (
    <li class={styles.row} data-state={state} aria-current={isCurrent ? 'step' : undefined}>
      <StartingNoteSign entry={entry} />
      <div>
        <h2 class={styles.title}>
          <Title entry={entry} />
        </h2>
        <p class={styles.way}>{wayText(entry.way)}</p>
      </div>
      <div class={styles.numbers}>
        {state === 'open' ? (
          <>
            <span class={styles.mark}>
              <Mark tempo={entry.tempo} grouping={grouping} />
            </span>
            <span class={styles.minutes}>{minutesText(entry.seconds)}</span>
          </>
        ) : (
          <State state={state} />
        )}
      </div>
      <div class={styles.more}>
        {state === 'open' && <p class={isSame ? 'spoken' : styles.reason}>{reason}</p>}
        {state === 'open' && listed.open.length < entry.items.length && (
          <p class={styles.reason}>
            {listed.open.length} of {entry.items.length} still to be played
          </p>
        )}
        {state === 'left out' && (
          <p class={styles.back}>
            <Button kind="quiet" onClick={onPutBack}>
              Put back
            </Button>
          </p>
        )}
      </div>
    </li>
  );
}

function StartingNoteSign({ entry }: { readonly entry: Entry }) {
  const first = itemOf(entry.items[0]!);
  const text = entry.kind === 'single' ? bottomOf(first) : noteText(entry.note);
  return (
    <span class={styles.note} data-long={text.length > 3}>
      {text}
    </span>
  );
}

const bottomOf = (item: Item): string => chordText(item.note, item.chord).bottom;

function Title({ entry }: { readonly entry: Entry }) {
  if (entry.kind === 'round') return <>Round of {entry.items.length} chords</>;
  const item = itemOf(entry.items[0]!);
  return (
    <>
      {chordText(item.note, item.chord).name} <Figures chord={item.chord} />
    </>
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
