import { changedValues, type Changed } from '../entry-words.js';

/** What an entry changed, one line a value. */
export function Values({ entry }: { readonly entry: Changed }) {
  return (
    <ul>
      {changedValues(entry).map(({ label, was, is }) => (
        <li key={label}>
          <span className="tw-soft">{label}:</span> {was === null ? is : `${was}, now ${is}`}
        </li>
      ))}
    </ul>
  );
}
