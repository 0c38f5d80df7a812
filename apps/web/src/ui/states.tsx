import type { ReactNode } from 'react';
import './states.css';

/** Shown in place of a screen or a part of it while it is on its way. Says so after a moment, so that fast answers do not flash. */
export function Loading({ what }: { what: string }) {
  return (
    <div className="tw-state tw-state-loading" role="status">
      Loading {what}…
    </div>
  );
}

/** Nothing to show, and why, and what one may do about it. */
export function Empty({ title, children }: { title: string; children?: ReactNode }) {
  return (
    <div className="tw-state">
      <p className="tw-state-title">{title}</p>
      {children}
    </div>
  );
}

/** Something failed: what, and the way out. */
export function Trouble(props: {
  title: string;
  wayOut?: string | undefined;
  onRetry?: () => void;
  children?: ReactNode;
}) {
  return (
    <div className="tw-state" data-kind="trouble" role="alert">
      <p className="tw-state-title">{props.title}</p>
      {props.wayOut && <p>{props.wayOut}</p>}
      {props.children}
      {props.onRetry && (
        <button type="button" className="tw-button" onClick={props.onRetry}>
          Try again
        </button>
      )}
    </div>
  );
}
