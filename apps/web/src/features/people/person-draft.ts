import type { CertificateDraft } from '../../app/certificate-fields.js';
import type { VariablesOf } from '../../graphql.js';
import type { AmendPersonMutation, Person } from './query.js';

export const roleNames = ['TECHNICIAN', 'DISPATCHER', 'AUDITOR', 'MANAGER'] as const;

/** A person while a manager writes. */
export interface PersonDraft {
  readonly email: string;
  readonly password: string;
  readonly name: string;
  readonly role: Person['role'];
  readonly operatorId: string;
  readonly certificate: CertificateDraft;
}

export function draftOf(person: Person | null): PersonDraft {
  const { kind = '', number = null, ratings = null } = person?.certificate ?? {};
  return {
    email: person?.email ?? '',
    password: '',
    name: person?.name ?? '',
    role: person?.role ?? 'TECHNICIAN',
    operatorId: person?.operator?.id ?? '',
    certificate: { kind, number: number ?? '', ratings },
  };
}

type Facts = Pick<VariablesOf<typeof AmendPersonMutation>['input'], 'name' | 'role' | 'operatorId' | 'certificate'>;

/** What is sent: an operator only for a dispatcher, a certificate only where one is chosen. */
export function factsOf(draft: PersonDraft): Facts {
  const { kind, number, ratings } = draft.certificate;
  return {
    name: draft.name.trim(),
    role: draft.role,
    operatorId: draft.role === 'DISPATCHER' && draft.operatorId !== '' ? draft.operatorId : null,
    certificate:
      kind === ''
        ? null
        : {
            kind,
            number: number.trim() === '' ? null : number.trim(),
            ratings: ratings === null ? null : [...ratings],
          },
  };
}
