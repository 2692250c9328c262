/** Takes a file by choosing or by dropping it. */
import { useId, useState } from 'preact/hooks';
import styles from './recording-screen.module.css';

export function FileField({ onFile }: { readonly onFile: (file: File) => void }) {
  const id = useId();
  const [isOver, setOver] = useState(false);
  const take = (files: FileList | null | undefined) => {
    const file = files?.[0];
    if (file !== undefined) onFile(file);
  };
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
        take(event.dataTransfer?.files);
      }}
    >
      <label for={id}>MIDI file (.mid): choose one, or drop it here</label>
      <input
        id={id}
        type="file"
        accept=".mid,.midi,audio/midi,audio/x-midi"
        onChange={(event) => {
          take(event.currentTarget.files);
          // The same file may be chosen again after an error.
          event.currentTarget.value = '';
        }}
      />
    </div>
  );
}
