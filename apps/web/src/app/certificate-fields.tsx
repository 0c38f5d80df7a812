import { kindOptions, ratingOptions, type KindName, type RatingName } from '../trade/certificates.js';
import { Checks } from '../ui/checks.js';
import { Field } from '../ui/field.js';

/** A certificate while it is being written; kind '' is "none recorded". */
export interface CertificateDraft {
  readonly kind: KindName | '';
  readonly number: string;
  readonly ratings: readonly RatingName[] | null;
}

export interface CertificateFieldsProps {
  readonly draft: CertificateDraft;
  readonly onChange: (draft: CertificateDraft) => void;
  /** First choice of the list where a certificate may be missing; left out where one must be chosen. */
  readonly none?: string;
  readonly at: (field: string) => string | null;
  /** Where the API names the parts: `certificate.` or nothing. */
  readonly prefix?: string;
}

/** Kind, number and ratings of whoever signs. */
export function CertificateFields({ draft, onChange, none, at, prefix = '' }: CertificateFieldsProps) {
  return (
    <>
      <div className="tw-fields">
        <Field label="Certificate" error={at(`${prefix}kind`)}>
          <select
            value={draft.kind}
            onChange={(event) => onChange({ ...draft, kind: event.target.value as CertificateDraft['kind'] })}
          >
            {none !== undefined && <option value="">{none}</option>}
            {kindOptions.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </Field>
        {draft.kind !== '' && (
          <Field label="Certificate number" optional error={at(`${prefix}number`)}>
            <input
              value={draft.number}
              maxLength={200}
              onChange={(event) => onChange({ ...draft, number: event.target.value })}
            />
          </Field>
        )}
      </div>
      {draft.kind !== '' && (
        <Checks
          legend="Ratings"
          unknown="Not recorded"
          options={ratingOptions(draft.kind, draft.ratings ?? [])}
          ticked={draft.ratings}
          onTick={(ratings) => onChange({ ...draft, ratings: ratings as readonly RatingName[] | null })}
          error={at(`${prefix}ratings`)}
        />
      )}
    </>
  );
}
