/**
 * Takes a file: a backup or a student's record is shown and taken in when the person agrees; a programme is shown on its
 * own screen.
 *
 * <OpenFile onTakenIn={(said) => say(said)} />
 *
 * `file` is one that the system has handed to the app.
 */
import type { ComponentChildren } from 'preact';
import { useContext, useEffect, useState } from 'preact/hooks';
import {
  BACKUP_EXTENSION,
  type BackupPreview,
  type StudentPreview,
} from '../../../shared/formats/backup';
import { isOfferFile, LONGEST_OFFER, readOfferFile } from '../../../shared/formats/programme-offer';
import { dayOf } from '../../clock';
import { go } from '../../route';
import { StudentsContext, useStore } from '../../store-context';
import { Button } from '../button/button';
import { dateText } from '../dates';
import { Dialog, DialogActions } from '../dialog/dialog';
import { FileField } from '../file-field/file-field';
import { codeOf } from '../programme-offer/link';
import { nameText } from '../words';
import styles from './open-file.module.css';

interface OpenFileProps {
  readonly onTakenIn: (said: string) => void;
  readonly file?: File | null;
}

/** Shows the programme in a file, if it is one. Rejects with an OfferError if it is a damaged one. */
async function showProgramme(file: File): Promise<boolean> {
  // Decoded leniently: what is no text at all is told by whoever reads it as a record.
  const beginning = new TextDecoder().decode(await file.slice(0, 4 * LONGEST_OFFER).arrayBuffer());
  if (!isOfferFile(beginning)) return false;
  go('programme', await codeOf(readOfferFile(beginning)));
  return true;
}

/** What the person is told of a file that has been taken in. */
function saidOf({ students }: BackupPreview): string {
  const mended = students.reduce((sum, one) => sum + one.mended, 0);
  if (mended === 0) return 'Taken in.';
  return `Taken in. ${mended === 1 ? 'One damaged record is' : `${mended} damaged records are`} whole again.`;
}

export function OpenFile({ onTakenIn, file: given = null }: OpenFileProps) {
  const store = useStore();
  const [preview, setPreview] = useState<BackupPreview | null>(null);
  const [isReading, setReading] = useState(false);
  const [failure, setFailure] = useState<string | null>(null);

  const attempt = async (task: () => Promise<void>) => {
    setFailure(null);
    setReading(true);
    try {
      await task();
    } catch (error) {
      setPreview(null);
      setFailure(error instanceof Error ? error.message : String(error));
    }
    setReading(false);
  };
  const read = (file: File) =>
    attempt(async () => {
      if (!(await showProgramme(file))) setPreview(await store.previewBackup(file));
    });
  const takeIn = (chosen: BackupPreview) =>
    attempt(async () => {
      await store.restore(chosen);
      setPreview(null);
      onTakenIn(saidOf(chosen));
    });
  useEffect(() => {
    if (given !== null) void read(given);
    // oxlint-disable-next-line react-hooks/exhaustive-deps -- a file is read once, when it comes
  }, [given]);

  return (
    <div>
      <FileField
        label="Backup file, or a file from somebody else"
        accept={`${BACKUP_EXTENSION},application/octet-stream`}
        onFile={(file) => void read(file)}
      />
      {isReading && <p role="status">Reading…</p>}
      {failure !== null && (
        <p role="alert" class={styles.failure}>
          {failure}
        </p>
      )}
      <Dialog title="Take this in?" isOpen={preview !== null} onClose={() => setPreview(null)}>
        {preview !== null && <PreviewText preview={preview} />}
        <DialogActions>
          <Button onClick={() => setPreview(null)}>Not this one</Button>
          <Button kind="main" disabled={isReading} onClick={() => preview && void takeIn(preview)}>
            Take in
          </Button>
        </DialogActions>
      </Dialog>
    </div>
  );
}

function PreviewText({ preview }: { readonly preview: BackupPreview }) {
  const { made, students, hasGap } = preview;
  return (
    <div class={styles.preview}>
      <dl>
        <Fact name="Made on">{dateText(dayOf(Date.parse(made)))}</Fact>
        {students.length === 0 && <Fact name="Records">none</Fact>}
      </dl>
      {students.map((one) => (
        <StudentText key={one.student} one={one} />
      ))}
      {hasGap && (
        <p>
          This file follows an earlier one that has not been taken in here. What was in that one
          will be missing until it comes too, or the whole record does.
        </p>
      )}
    </div>
  );
}

function StudentText({ one }: { readonly one: StudentPreview }) {
  const students = useContext(StudentsContext);
  const { name, isKnown, events, runs, firstDay, lastDay, fresh, mended, newer, damaged } = one;
  const listed = students?.listed.value.find(({ id }) => id === one.student);
  const called = nameText(name ?? listed?.name ?? null);
  return (
    <dl>
      <Fact name="Student">{isKnown ? called : `${called}, new on this device`}</Fact>
      <Fact name="Records">
        {events}, {runs} of them runs
      </Fact>
      {firstDay !== null && lastDay !== null && (
        <Fact name="From">
          {dateText(firstDay)}
          {lastDay !== firstDay && ` to ${dateText(lastDay)}`}
        </Fact>
      )}
      <Fact name="Not yet here">{fresh === 0 ? 'nothing: all of it is here already' : fresh}</Fact>
      {mended > 0 && <Fact name="Damaged here">{mended}, whole in this file</Fact>}
      {newer > 0 && <Fact name="From a newer version">{newer}, kept but not read yet</Fact>}
      {damaged > 0 && <Fact name="Damaged">{damaged}, kept but set aside</Fact>}
    </dl>
  );
}

interface FactProps {
  readonly name: string;
  readonly children: ComponentChildren;
}

function Fact({ name, children }: FactProps) {
  return (
    <div class={styles.fact}>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}
