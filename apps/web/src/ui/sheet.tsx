import { useEffect, useRef, type ReactNode } from 'react';
import { Button } from './button.js';

/** A part of a screen that was opened: its heading takes the focus, and closing it is always at hand. */
export function Sheet({ title, onClose, children }: { title: string; onClose: () => void; children: ReactNode }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    heading.current?.focus();
    heading.current?.scrollIntoView({ block: 'nearest' });
  }, [title]);
  return (
    <section className="tw-sheet tw-stack tw-no-print" aria-label={title}>
      <div className="tw-row">
        <h2 ref={heading} tabIndex={-1}>
          {title}
        </h2>
        <Button look="quiet" onClick={onClose}>
          Close
        </Button>
      </div>
      {children}
    </section>
  );
}
