import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Paper } from '../../dossier/upkeep.js';
import { documentsInForce } from './documents-in-force.js';

const seen = { asOf: '2026-01-10', by: 'R. Tamsin' };
const paper = (part: Partial<Paper> = {}): Paper => ({
  id: 'reg',
  kind: 'registration',
  number: 'R-1',
  aboard: true,
  expires: '2026-05-31',
  seen,
  ...part,
});
const of = (...papers: readonly Paper[]) => dossierOf({ configuration: { papers } });
const at = '2026-05-01T12:00Z';
const card = { id: 'awc', kind: 'airworthiness-certificate', expires: null } as const;

// The last day in Chicago ends on 1 June at 0500 UTC. 14 CFR 91.203(a), 91.9(b). Without an end by date: 21.181(a)(1), (3).
testRule(documentsInForce, [
  {
    name: 'the last minute of the registration',
    dossier: of(paper()),
    at: '2026-06-01T04:59Z',
    expect: 'met',
    message: 'in-force',
  },
  { name: 'the minute after', dossier: of(paper()), at: '2026-06-01T05:00Z', expect: 'not-met', message: 'missing' },
  { name: 'in force, not aboard', dossier: of(paper({ aboard: false })), at, expect: 'not-met' },
  {
    name: 'aboard or not: not recorded',
    dossier: of(paper({ aboard: null })),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  { name: 'end of the registration not recorded', dossier: of(paper({ expires: null })), at, expect: 'cannot-tell' },
  {
    name: 'a standard airworthiness certificate has no end by date',
    dossier: dossierOf({ configuration: { aircraft: { certificate: 'standard' }, papers: [paper(card)] } }),
    at,
    expect: 'met',
  },
  ...(['primary', 'restricted', 'limited', 'light-sport'] as const).map((certificate) => ({
    name: `nor has that of a ${certificate} aircraft`,
    dossier: dossierOf({ configuration: { aircraft: { certificate }, papers: [paper(card)] } }),
    at,
    expect: 'met' as const,
  })),
  {
    name: 'an experimental certificate may have one',
    dossier: dossierOf({ configuration: { aircraft: { certificate: 'experimental' }, papers: [paper(card)] } }),
    at,
    expect: 'cannot-tell',
  },
  { name: 'the kind of certificate and its end not recorded', dossier: of(paper(card)), at, expect: 'cannot-tell' },
  {
    name: 'two of three not recorded',
    dossier: of(paper()),
    at,
    subject: 'papers',
    expect: 'cannot-tell',
    message: 'unclear',
    data: { paper: 'airworthiness certificate, flight manual' },
  },
  {
    name: 'radio licence out of force',
    dossier: of(paper({ id: 'rl', kind: 'radio-licence', expires: '2026-04-30' })),
    at,
    subject: 'rl',
    expect: 'not-met',
  },
  ...(['flight-manual', 'operating-limitations'] as const).map((kind) => ({
    name: `${kind.replace('-', ' ')} without an end by date`,
    dossier: of(paper({ id: 'book', kind, expires: null })),
    at,
    subject: 'book',
    expect: 'met' as const,
  })),
  {
    name: 'an experimental aircraft has operating limitations in place of a manual',
    dossier: dossierOf({ configuration: { aircraft: { certificate: 'experimental' } } }),
    at,
    subject: 'papers',
    expect: 'cannot-tell',
    data: { paper: 'registration, airworthiness certificate, operating limitations' },
  },
  {
    name: 'all recorded',
    dossier: dossierOf({
      configuration: {
        aircraft: { certificate: 'standard' },
        papers: [paper(card), paper({ id: 'fm', kind: 'flight-manual', expires: null }), paper()],
      },
    }),
    at,
    subject: 'papers',
    expect: 'none',
  },
]);
