/** Gives a programme to a student: as a QR code that another device reads from this screen, as a link, or as a file. */
import { useEffect, useState } from 'preact/hooks';
import { OFFER_MIME, offerFile, offerFileName } from '../../../shared/formats/programme-offer';
import type { Day } from '../../../shared/log/events';
import type { Programme } from '../../../shared/log/programme';
import { Button } from '../button/button';
import { Dialog, DialogActions } from '../dialog/dialog';
import { giveFile } from '../give-file';
import { say } from '../notice/notice';
import styles from './give-programme.module.css';
import { codeOf, linkOf } from './link';

interface GiveProgrammeProps {
  readonly programme: Programme;
  /** What the student is called, if that is to go with it. */
  readonly name: string | null;
  readonly today: Day;
  readonly isOpen: boolean;
  readonly onClose: () => void;
}

interface Prepared {
  readonly link: string;
  /** The squares of the QR code and the length of its side; null where the link is too long for one. */
  readonly picture: { readonly path: string; readonly side: number } | null;
}

async function prepare(programme: Programme, name: string | null): Promise<Prepared> {
  const [code, { dotsOf, pathOf }] = await Promise.all([
    codeOf({ programme, name }),
    import('./qr'),
  ]);
  const link = linkOf(location.href, code);
  const dots = dotsOf(link);
  return { link, picture: dots && { path: pathOf(dots), side: dots.length } };
}

export function GiveProgramme(props: GiveProgrammeProps) {
  return (
    <Dialog title="Give this programme" isOpen={props.isOpen} onClose={props.onClose}>
      <Ways {...props} />
    </Dialog>
  );
}

function Ways({ programme, name, today, onClose }: GiveProgrammeProps) {
  const [prepared, setPrepared] = useState<Prepared | null>(null);
  const [failure, setFailure] = useState<string | null>(null);
  useEffect(() => {
    prepare(programme, name).then(setPrepared, () =>
      setFailure('The link could not be made here. Give the programme as a file.'),
    );
  }, [programme, name]);
  const copy = async (link: string) => {
    try {
      await navigator.clipboard.writeText(link);
      say('The link is copied.');
    } catch {
      setFailure('The browser does not let the link be copied.');
    }
  };
  const give = async () => {
    const file = new Blob([offerFile({ programme, name })], { type: OFFER_MIME });
    await giveFile(file, offerFileName(name, today));
  };
  return (
    <div class={styles.ways}>
      {prepared?.picture && <Picture {...prepared.picture} />}
      {prepared !== null && prepared.picture === null && (
        <p>The requirements are too long for a QR code: give a link or a file.</p>
      )}
      {prepared?.picture && (
        <p>
          Read it with the student’s camera, or in the app there: Settings, Programme, Open a
          programme.
        </p>
      )}
      <div class={styles.row}>
        <Button disabled={prepared === null} onClick={() => prepared && void copy(prepared.link)}>
          Copy the link
        </Button>
        <Button onClick={() => void give()}>As a file</Button>
      </div>
      {failure !== null && <p role="alert">{failure}</p>}
      <p class="soft">
        The programme{name !== null && ' and the name'} are in it, nothing of the record. The
        student sees what it changes and accepts it.
      </p>
      <DialogActions>
        <Button onClick={onClose}>Done</Button>
      </DialogActions>
    </div>
  );
}

function Picture({ path, side }: NonNullable<Prepared['picture']>) {
  return (
    <svg
      class={styles.picture}
      viewBox={`0 0 ${side} ${side}`}
      role="img"
      aria-label="QR code of the programme"
    >
      <path d={path} />
    </svg>
  );
}
