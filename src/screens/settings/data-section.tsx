/** Where the record is, how safe it is there, and how to have it elsewhere. */
import { useContext, useEffect, useState } from 'preact/hooks';
import { backupFileName } from '../../../shared/formats/backup';
import { daysBetween } from '../../../shared/log/day';
import type { Day } from '../../../shared/log/events';
import { Button } from '../../parts/button/button';
import { dateText } from '../../parts/dates';
import { say } from '../../parts/notice/notice';
import { OpenFile } from '../../parts/open-file/open-file';
import { askToPersist, storageState, type StorageState } from '../../store/durability';
import type { Store } from '../../store/store';
import { StudentsContext, useStore } from '../../store-context';
import { download } from '../../parts/download';
import { HandOverSection } from './hand-over-section';
import { Section } from './section';
import styles from './settings-screen.module.css';

/** Hands the whole log to the person as a file. Never rejects. */
export async function saveBackup(store: Store): Promise<void> {
  try {
    download(await store.backup(), backupFileName(store.today.peek()));
    say('The backup is in your downloads.');
  } catch (error) {
    say(error instanceof Error ? error.message : 'The backup could not be made.');
  }
}

export function DataSection() {
  const store = useStore();
  const [state, setState] = useState<StorageState | null>(null);
  const read = () => {
    storageState(store).then(setState, () => setState(null));
  };
  useEffect(read, [store]);
  const hasSeveral = (useContext(StudentsContext)?.listed.value.length ?? 0) > 1;
  const runs = [...store.student.value.work.values()].reduce((sum, work) => sum + work.runs, 0);

  return (
    <>
      <Section title="Backup">
        <p>
          {recordText(runs)} {state !== null && backupText(state.lastBackup, store.today.value)}
        </p>
        {hasSeveral && <p>A backup holds all students of this device.</p>}
        <Button onClick={() => void saveBackup(store).then(read)}>Save a backup file</Button>
        <div class={styles.restore}>
          <p>
            Taking a file in adds what is missing here and changes nothing else; doing it twice does
            no harm. So it also brings the runs of two devices together.
          </p>
          <OpenFile onTakenIn={(said) => say(said)} />
        </div>
      </Section>
      <HandOverSection />
      <Section title="How the record is kept">
        {state === null ? (
          <p>The browser does not say how it keeps the record.</p>
        ) : (
          <StorageText state={state} onAsked={read} />
        )}
      </Section>
    </>
  );
}

function recordText(runs: number): string {
  if (runs === 0) return 'No run is on the record yet.';
  const are = runs === 1 ? 'One run is' : `${runs} runs are`;
  return `${are} on the record, on this device and nowhere else.`;
}

function backupText(last: Day | null, today: Day): string {
  if (last === null) return 'No backup has been saved from here yet.';
  const days = daysBetween(last, today);
  const ago = days === 0 ? 'today' : days === 1 ? 'yesterday' : `${days} days ago`;
  return `The last backup from here was saved on ${dateText(last)}, ${ago}.`;
}

interface StorageTextProps {
  readonly state: StorageState;
  readonly onAsked: () => void;
}

function StorageText({ state, onAsked }: StorageTextProps) {
  const ask = async () => {
    const isKept = await askToPersist().catch(() => false);
    say(isKept ? 'The browser has promised to keep it.' : 'The browser has not promised it now.');
    onAsked();
  };
  return (
    <>
      {state.isShortLived && (
        <p class={styles.warning}>
          This browser erases what a page has kept when it has not been visited for some days.
          Install the app, or save a backup after each week’s work.
        </p>
      )}
      <p>
        {state.isPersisted
          ? 'The browser has promised not to erase the record by itself, even when the device is short of room.'
          : 'The browser may erase the record when the device runs short of room; it has not promised to keep it. Installing the app or using it often can change that.'}
        {state.bytes !== null && ` The app and the record take ${sizeText(state.bytes)}.`}
      </p>
      {!state.isPersisted && <Button onClick={() => void ask()}>Ask the browser to keep it</Button>}
    </>
  );
}

/** "850 kB", "3.2 MB". */
const sizeText = (bytes: number): string =>
  bytes < 1_000_000 ? `${Math.ceil(bytes / 1000)} kB` : `${(bytes / 1_000_000).toFixed(1)} MB`;
