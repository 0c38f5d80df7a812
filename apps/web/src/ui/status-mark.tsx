import type { ReactElement } from 'react';
import { statusWords, type Status } from './status-words.js';
import './status-mark.css';

/* 20 x 20. Each outline differs in silhouette, so that it survives grey print and colour blindness. */
const shapes: Readonly<Record<Status, ReactElement>> = {
  yes: (
    <>
      <rect x="1" y="1" width="18" height="18" rx="3" className="tw-mark-fill" />
      <path d="M5 10.5 8.6 14 15 6.5" className="tw-mark-cut" />
    </>
  ),
  no: (
    <>
      <path d="M6.3 1h7.4L19 6.3v7.4L13.7 19H6.3L1 13.7V6.3Z" className="tw-mark-line" />
      <path d="m6.2 6.2 7.6 7.6m0-7.6-7.6 7.6" className="tw-mark-line" />
    </>
  ),
  'cannot-tell': (
    <>
      <path d="M10 .8 19.2 10 10 19.2.8 10Z" className="tw-mark-line" />
      <path d="M7.7 8.1c.2-3 4.8-2.9 4.6 0-.1 1.7-2.3 1.8-2.3 3.4" className="tw-mark-line" />
      <circle cx="10" cy="14" r="1.1" className="tw-mark-dot" />
    </>
  ),
  'judged-again': (
    <>
      <path d="M3 10a7 7 0 0 1 12.2-4.7M17 10a7 7 0 0 1-12.2 4.7" className="tw-mark-line" />
      <path d="M15.8 1.6v4.2h-4.2M4.2 18.4v-4.2h4.2" className="tw-mark-line" />
    </>
  ),
  'not-fitted': <rect x="2" y="2" width="16" height="16" className="tw-mark-line" strokeDasharray="3.2 2.4" />,
  'not-wanted': <path d="M3 10h14" className="tw-mark-line" />,
  'not-judged': (
    <>
      <circle cx="4" cy="10" r="1.6" className="tw-mark-dot" />
      <circle cx="10" cy="10" r="1.6" className="tw-mark-dot" />
      <circle cx="16" cy="10" r="1.6" className="tw-mark-dot" />
    </>
  ),
  held: (
    <>
      <path d="M10 1 19 18H1Z" className="tw-mark-fill" />
      <path d="M8 9v6m4-6v6" className="tw-mark-cut" />
    </>
  ),
  'in-work': (
    <>
      <path d="M5.5 2h9L19 10l-4.5 8h-9L1 10Z" className="tw-mark-fill" />
      <circle cx="10" cy="10" r="3.4" className="tw-mark-cut" />
    </>
  ),
  'say-so': (
    <>
      <path d="M1.5 2.5h17v11h-8l-4.5 5v-5H1.5Z" className="tw-mark-line" />
      <path d="M6 8h8" className="tw-mark-line" />
    </>
  ),
};

/** The shape alone. Decorative: whoever uses it puts the word beside it. */
export function StatusShape({ status }: { status: Status }) {
  return (
    <svg viewBox="0 0 20 20" className="tw-mark-shape" data-status={status} aria-hidden="true" focusable="false">
      {shapes[status]}
    </svg>
  );
}

/** Shape, word and colour of a verdict. `word` replaces the usual word where a screen needs a closer one. */
export function StatusMark({ status, word }: { status: Status; word?: string | undefined }) {
  return (
    <span className="tw-mark" data-status={status}>
      <StatusShape status={status} />
      <span className="tw-mark-word">{word ?? statusWords[status]}</span>
    </span>
  );
}
