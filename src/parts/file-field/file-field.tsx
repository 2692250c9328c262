import { useId } from 'preact/hooks';
import styles from './file-field.module.css';

interface FileFieldProps {
  readonly label: string;
  /** As the attribute of the same name. */
  readonly accept: string;
  readonly onFile: (file: File) => void;
}

/** Chooses a file. */
export function FileField({ label, accept, onFile }: FileFieldProps) {
  const id = useId();
  return (
    <div>
      <label for={id} class={styles.label}>
        {label}
      </label>
      <input
        id={id}
        type="file"
        class={styles.file}
        accept={accept}
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          // The same file may be chosen again after an error.
          event.currentTarget.value = '';
          if (file !== undefined) onFile(file);
        }}
      />
    </div>
  );
}
