/** Asks before something that was recorded is taken back: the log keeps the day of a thing, so it can't be put in again. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { EventId } from '../../shared/log/events';
import { Button } from './button/button';
import { Dialog, DialogActions } from './dialog/dialog';
import { say } from './notice/notice';
import { useStore } from '../store-context';

export interface Regretted {
  readonly id: EventId;
  /** "this run". */
  readonly what: string;
  /** "even at 52 on 3 November". */
  readonly which: string;
}

interface TakeBackProps {
  readonly regretted: Regretted | null;
  readonly onClose: () => void;
}

export function TakeBack({ regretted, onClose }: TakeBackProps) {
  const store = useStore();
  const [failure, setFailure] = useState<string | null>(null);
  const place = useRef<HTMLSpanElement>(null);
  const isTaken = useRef(false);
  // What was taken back is gone with its button: the focus stays where it was.
  useEffect(() => {
    if (regretted !== null || !isTaken.current) return;
    isTaken.current = false;
    place.current!.focus({ preventScroll: true });
  }, [regretted]);
  const takeBack = async (id: EventId) => {
    try {
      await store.record([{ kind: 'void', events: [id] }]);
      isTaken.current = true;
      onClose();
      say('Taken back.');
    } catch (error) {
      setFailure(error instanceof Error ? error.message : 'This could not be recorded.');
    }
  };
  return (
    <>
      <span ref={place} tabIndex={-1} />
      <Dialog
        title={`Take ${regretted?.what ?? ''} back?`}
        isOpen={regretted !== null}
        onClose={onClose}
      >
        <p>{regretted?.which}</p>
        <p>It will not count any more. This cannot be undone.</p>
        {failure !== null && <p role="alert">{failure}</p>}
        <DialogActions>
          <Button onClick={onClose}>Keep it</Button>
          <Button kind="main" onClick={() => regretted && void takeBack(regretted.id)}>
            Take back
          </Button>
        </DialogActions>
      </Dialog>
    </>
  );
}
