import type { RecordHead } from '../dossier/status.js';
import type { SourceRef } from '../facts/source.js';
import { fact, unknown } from '../verdict/build.js';
import type { Leaf } from '../verdict/clause.js';

/** The signer stands in the entry with a certificate number. Whether the person may sign is `authorised-person`. */
export function signerNamed({ id, agency }: RecordHead, source: SourceRef): Leaf {
  const path = `status.records.${id}.agency`;
  const extra = { source, evidence: [id] };
  return agency === null
    ? unknown('signer', [path], extra)
    : fact(agency.certificate === null ? null : true, 'certificate-number', `${path}.certificate`, extra);
}
