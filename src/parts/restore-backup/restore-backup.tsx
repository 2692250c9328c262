/**
 * Chooses a backup file, shows what it holds, and restores it when the person agrees.
 *
 * <RestoreBackup onRestored={() => go('today')} />
 */
import type { ComponentChildren } from 'preact';
import { useId, useState } from 'preact/hooks';
import { BACKUP_EXTENSION, type BackupPreview } from '../../../shared/formats/backup';
import { useStore } from '../../store-context';
import { Button } from '../button/button';
import { dateText } from '../dates';
import { Dialog, DialogActions } from '../dialog/dialog';
import styles from './restore-backup.module.css';

export function RestoreBackup({ onRestored }: { readonly onRestored: () => void }) {
  const store = useStore();
  const id = useId();
  const [preview, setPreview] = useState<BackupPreview | null>(null);
  const [failure, setFailure] = useState<string | null>(null);

  const attempt = async (task: () => Promise<void>) => {
    setFailure(null);
    try {
      await task();
    } catch (error) {
      setPreview(null);
      setFailure(error instanceof Error ? error.message : String(error));
    }
  };
  const read = (file: File) => attempt(async () => setPreview(await store.previewBackup(file)));
  const restore = (chosen: BackupPreview) =>
    attempt(async () => {
      await store.restore(chosen);
      setPreview(null);
      onRestored();
    });

  return (
    <div>
      <label for={id} class={styles.label}>
        Backup file
      </label>
      <input
        id={id}
        type="file"
        class={styles.file}
        accept={`${BACKUP_EXTENSION},application/octet-stream`}
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          // The same file may be chosen again after an error.
          event.currentTarget.value = '';
          if (file !== undefined) void read(file);
        }}
      />
      {failure !== null && (
        <p role="alert" class={styles.failure}>
          {failure}
        </p>
      )}
      <Dialog
        title="Restore this backup?"
        isOpen={preview !== null}
        onClose={() => setPreview(null)}
      >
        {preview !== null && <PreviewText preview={preview} />}
        <DialogActions>
          <Button onClick={() => setPreview(null)}>Not this one</Button>
          <Button kind="main" onClick={() => preview && void restore(preview)}>
            Restore
          </Button>
        </DialogActions>
      </Dialog>
    </div>
  );
}

function PreviewText({ preview }: { readonly preview: BackupPreview }) {
  const { names, runs, firstDay, lastDay, alreadyHere, fresh, newer, damaged } = preview;
  return (
    <dl class={styles.preview}>
      {names.length > 0 && <Fact name="Student">{names.join(', ')}</Fact>}
      <Fact name="Made on">{dateText(preview.made.slice(0, 10))}</Fact>
      <Fact name="Runs">
        {runs}
        {firstDay !== null && lastDay !== null && `, ${dateText(firstDay)} to ${dateText(lastDay)}`}
      </Fact>
      <Fact name="Not yet on this device">
        {fresh.length === 0
          ? 'nothing: all of it is here already'
          : `${fresh.length} of ${fresh.length + alreadyHere} records`}
      </Fact>
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
