/** Takes a recording by choosing its file or by dropping it. */
import { useState } from 'preact/hooks';
import { FileField } from '../../parts/file-field/file-field';
import styles from './recording-screen.module.css';

export function RecordingField({ onFile }: { readonly onFile: (file: File) => void }) {
  const [isOver, setOver] = useState(false);
  return (
    <div
      class={styles.field}
      data-over={isOver}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault();
        setOver(false);
        const file = event.dataTransfer?.files[0];
        if (file !== undefined) onFile(file);
      }}
    >
      <FileField
        label="MIDI file (.mid): choose one, or drop it here"
        accept=".mid,.midi,audio/midi,audio/x-midi"
        onFile={onFile}
      />
    </div>
  );
}
