import { type Item, itemOf } from '../../../shared/music/deck';
import type { Grouping } from '../../../shared/music/tempo';
import { reasonText } from '../../../shared/planning/reasons';
import type { Entry } from '../../../shared/planning/today';
import { minutesText } from '../../parts/dates';
import { Figures } from '../../parts/figures/figures';
import { Mark } from '../../parts/stepper/beat-note';
import { chordText, noteText, wayText } from '../../parts/words';
import type { ListedEntry } from '../../day/day-list';
import { Minutes, Reason, Row } from './row';
import styles from './row.module.css';

interface EntryRowProps {
  readonly listed: ListedEntry;
  /** The entry above: a reason that is the same as its reason is not drawn again. */
  readonly previous: Entry | null;
  readonly grouping: Grouping;
  readonly isCurrent: boolean;
  readonly onPutBack: () => void;
}

export function EntryRow({ listed, previous, grouping, isCurrent, onPutBack }: EntryRowProps) {
  const { entry, state, open } = listed;
  const reason = reasonText(entry.reason, grouping);
  const isSame = previous !== null && reasonText(previous.reason, grouping) === reason;
  return (
    <Row
      note={signOf(entry)}
      title={<Title entry={entry} />}
      way={wayText(entry.way)}
      state={state}
      isCurrent={isCurrent}
      numbers={
        <>
          <span class={styles.mark}>
            <Mark tempo={entry.tempo} grouping={grouping} />
          </span>
          <Minutes>{minutesText(entry.seconds)}</Minutes>
        </>
      }
      onPutBack={onPutBack}
    >
      {isSame ? <p class="spoken">{reason}</p> : <Reason>{reason}</Reason>}
      {open.length < entry.items.length && (
        <Reason>
          {open.length} of {entry.items.length} still to be played
        </Reason>
      )}
    </Row>
  );
}

const signOf = (entry: Entry): string =>
  entry.kind === 'single' ? bottomOf(itemOf(entry.items[0]!)) : noteText(entry.note);

const bottomOf = (item: Item): string => chordText(item.note, item.chord).bottom;

function Title({ entry }: { readonly entry: Entry }) {
  const what = entry.kind === 'round' ? `Round of ${entry.items.length} chords` : null;
  if (what !== null) return <>{entry.isMental ? `${what}, in the mind` : what}</>;
  const item = itemOf(entry.items[0]!);
  return (
    <>
      {chordText(item.note, item.chord).name} <Figures chord={item.chord} />
      {entry.isMental && ', in the mind'}
    </>
  );
}
