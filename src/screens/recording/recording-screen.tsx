/** A practice that was recorded elsewhere, as a MIDI file: its runs are shown, and those that the person confirms recorded. */
import { useEffect, useState } from 'preact/hooks';
import { LARGEST_MIDI_FILE, MidiFileError } from '../../../shared/formats/smf-reader';
import type { Fluency } from '../../../shared/log/events';
import { launchedFile } from '../../launch';
import { Button } from '../../parts/button/button';
import { NoProgramme } from '../../parts/no-programme';
import { say } from '../../parts/notice/notice';
import { Page } from '../../parts/page/page';
import { useStore } from '../../store-context';
import { RecordingField } from './recording-field';
import { bodyOf, type FoundRun, runsInFile } from './found-runs';
import { RunRow } from './run-row';
import styles from './recording-screen.module.css';

const TITLE = 'Judge a recording';

/** A run with what the person says of it. */
interface Judged {
  readonly run: FoundRun;
  readonly fluency: Fluency;
  readonly isWanted: boolean;
}

type Reading =
  | { readonly state: 'none' }
  | { readonly state: 'reading' }
  | { readonly state: 'failed'; readonly problem: string }
  | { readonly state: 'read'; readonly runs: readonly Judged[] };

export function RecordingScreen() {
  const store = useStore();
  const student = store.student.value;
  const [reading, setReading] = useState<Reading>({ state: 'none' });
  const launched = launchedFile.value;
  const hasProgramme = student.programme !== null;

  const read = async (file: File) => {
    setReading({ state: 'reading' });
    try {
      // Of a file that is too large only as much is read as tells that it is.
      const beginning = file.slice(0, LARGEST_MIDI_FILE + 1);
      const bytes = new Uint8Array(await beginning.arrayBuffer());
      const runs = runsInFile(bytes, student).map((run): Judged => ({
        run,
        fluency: run.fluency,
        isWanted: true,
      }));
      setReading({ state: 'read', runs });
    } catch (error) {
      const problem =
        error instanceof MidiFileError
          ? error.message
          : 'The file could not be opened. It may have been moved or deleted: choose it again.';
      setReading({ state: 'failed', problem });
    }
  };
  useEffect(() => {
    if (launched === null || !hasProgramme) return;
    launchedFile.value = null;
    void read(launched);
    // oxlint-disable-next-line react-hooks/exhaustive-deps -- a file is read once, when it comes
  }, [launched, hasProgramme]);
  if (!hasProgramme) return <NoProgramme title={TITLE} />;

  const record = async (wanted: readonly Judged[]) => {
    try {
      const events = await store.record(wanted.map(({ run, fluency }) => bodyOf(run, fluency)));
      setReading({ state: 'none' });
      const undo = () =>
        void store
          .record([{ kind: 'void', events: events.map(({ id }) => id) }])
          .catch(() => say('This could not be undone now.'));
      say(countText(events.length, 'recorded'), { label: 'Undo', do: undo });
    } catch (error) {
      say(error instanceof Error ? error.message : 'Saving did not work.');
    }
  };

  return (
    <Page title={TITLE} note="A MIDI file from a digital piano, or from a program that recorded it">
      <p>
        The recording is cut at its rests, and each run is found among the arpeggios. You decide
        which of them count, and how they went. They are recorded as played today.
      </p>
      <RecordingField onFile={(file) => void read(file)} />
      {reading.state === 'reading' && <p role="status">Reading the recording.</p>}
      {reading.state === 'failed' && (
        <p role="alert" class={styles.failure}>
          {reading.problem}
        </p>
      )}
      {reading.state === 'read' && (
        <Runs
          runs={reading.runs}
          onChange={(runs) => setReading({ state: 'read', runs })}
          onRecord={(wanted) => void record(wanted)}
        />
      )}
    </Page>
  );
}

const countText = (count: number, what: string): string =>
  count === 1 ? `One run ${what}.` : `${count} runs ${what}.`;

interface RunsProps {
  readonly runs: readonly Judged[];
  readonly onChange: (runs: readonly Judged[]) => void;
  readonly onRecord: (wanted: readonly Judged[]) => void;
}

function Runs({ runs, onChange, onRecord }: RunsProps) {
  if (runs.length === 0) {
    return <p role="status">In this recording no arpeggio was found that is played to its end.</p>;
  }
  const wanted = runs.filter(({ isWanted }) => isWanted);
  return (
    <>
      <p role="status">{countText(runs.length, 'found')}</p>
      <ol class={styles.runs}>
        {runs.map(({ run, fluency, isWanted }, i) => (
          <RunRow
            key={run.from}
            run={run}
            fluency={fluency}
            isWanted={isWanted}
            onChange={(change) => onChange(runs.with(i, { run, fluency, isWanted, ...change }))}
          />
        ))}
      </ol>
      <div class={styles.bar}>
        <Button
          kind="main"
          size="stand"
          disabled={wanted.length === 0}
          onClick={() => onRecord(wanted)}
        >
          {wanted.length === 1 ? 'Record this run' : `Record these ${wanted.length} runs`}
        </Button>
      </div>
    </>
  );
}
