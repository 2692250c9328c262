/**
 * A question that must be answered first, in a native dialog (focus stays inside, Escape closes).
 *
 * <Dialog title="Erase everything?" isOpen={isAsking} onClose={() => setAsking(false)}>
 *   <p>…</p>
 *   <DialogActions><Button onClick={…}>Keep</Button><Button kind="main" onClick={…}>Erase</Button></DialogActions>
 * </Dialog>
 */
import type { ComponentChildren } from 'preact';
import { useEffect, useId, useRef } from 'preact/hooks';
import styles from './dialog.module.css';

interface DialogProps {
  readonly title: string;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly children: ComponentChildren;
}

export function Dialog({ title, isOpen, onClose, children }: DialogProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  useEffect(() => {
    if (isOpen) dialog.current?.showModal();
    else dialog.current?.close();
  }, [isOpen]);
  return (
    <dialog ref={dialog} class={styles.dialog} aria-labelledby={titleId} onClose={onClose}>
      {isOpen && (
        <>
          <h2 id={titleId} class={styles.title}>
            {title}
          </h2>
          {children}
        </>
      )}
    </dialog>
  );
}

export function DialogActions({ children }: { readonly children: ComponentChildren }) {
  return <div class={styles.actions}>{children}</div>;
}
