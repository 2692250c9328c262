/** The ways in which a programme comes: a QR code before the camera or in a picture, a link, a file. */
import { useId, useState } from 'preact/hooks';
import { Button } from '../../parts/button/button';
import { FileField } from '../../parts/file-field/file-field';
import { say } from '../../parts/notice/notice';
import { OpenFile } from '../../parts/open-file/open-file';
import { CameraScan } from '../../parts/programme-offer/camera-scan';
import { codeIn } from '../../parts/programme-offer/link';
import { textInPicture } from '../../parts/programme-offer/scan';
import { go } from '../../route';
import styles from './programme-screen.module.css';

export function OpenProgramme({ failure: ofLink }: { readonly failure: string | null }) {
  const [failure, setFailure] = useState<string | null>(null);
  const [typed, setTyped] = useState('');
  const linkId = useId();
  const told = failure ?? ofLink;

  const open = (text: string) => {
    try {
      const code = codeIn(text);
      setFailure(null);
      go('programme', code);
    } catch (error) {
      setFailure((error as Error).message);
    }
  };
  const scan = async (picture: File) => {
    const text = await textInPicture(picture);
    if (text === null) {
      setFailure(
        'There is no QR code in this picture that can be read. Hold the camera straight and near, so that the code fills the picture.',
      );
    } else open(text);
  };

  return (
    <div class={styles.ways}>
      {told !== null && <p role="alert">{told}</p>}
      <section class={styles.way}>
        <h2>From a QR code</h2>
        <CameraScan onText={open} />
        <FileField
          label="Take a picture of it, or choose one"
          accept="image/*"
          onFile={(picture) => void scan(picture)}
        />
      </section>
      <section class={styles.way}>
        <h2>From a link</h2>
        <form
          class={styles.link}
          onSubmit={(event) => {
            event.preventDefault();
            open(typed);
          }}
        >
          <label for={linkId}>The link that was sent to you</label>
          <input
            id={linkId}
            type="text"
            inputMode="url"
            autocomplete="off"
            value={typed}
            onInput={(event) => setTyped(event.currentTarget.value)}
          />
          <Button type="submit" disabled={typed.trim() === ''}>
            Open
          </Button>
        </form>
      </section>
      <section class={styles.way}>
        <h2>From a file</h2>
        <OpenFile
          onTakenIn={(said) => {
            say(said);
            go('today');
          }}
        />
      </section>
    </div>
  );
}
