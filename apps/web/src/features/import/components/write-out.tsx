import { useSession } from '../../../app/session.js';

/** The way out: everything recorded as one file, to keep or to hand over. */
export function WriteOut() {
  const { viewer } = useSession();
  if (!viewer.may.includes('export.house')) return null;
  return (
    <section className="tw-sheet tw-stack" aria-labelledby="write-out">
      <h2 id="write-out">Write out</h2>
      <p>
        <a href="/exports/house" download>
          All aircraft records of the house as one file
        </a>{' '}
        with every entry, who recorded it and when. Taken in elsewhere, or here after a loss, it gives the same records;
        what is there already is not doubled. One aircraft is written out from its own screen.
      </p>
      <p className="tw-soft tw-small">
        JSON of a <a href="/exports/schema">published form</a>, the same as docs/aircraft-records.schema.json.
      </p>
    </section>
  );
}
