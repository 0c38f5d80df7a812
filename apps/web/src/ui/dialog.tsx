import { useEffect, useId, useRef, type ReactNode } from 'react';
import './dialog.css';

export interface DialogProps {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
  /** Buttons; the safe one first. */
  readonly actions: ReactNode;
}

/** The platform's modal dialog: focus is kept inside, Escape closes it, focus returns to where it was. */
export function Dialog({ title, onClose, children, actions }: DialogProps) {
  const ref = useRef<HTMLDialogElement>(null);
  const id = useId();
  useEffect(() => {
    const dialog = ref.current;
    dialog?.showModal();
    return () => dialog?.close();
  }, []);
  return (
    <dialog
      ref={ref}
      className="tw-dialog"
      aria-labelledby={id}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
    >
      <h2 id={id}>{title}</h2>
      <div className="tw-stack">{children}</div>
      <div className="tw-row tw-dialog-actions">{actions}</div>
    </dialog>
  );
}
