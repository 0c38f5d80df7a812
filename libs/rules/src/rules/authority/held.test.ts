import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import { held } from './held.js';

const hold = (until: string | null) =>
  ({
    status: { holds: [{ id: 'h1', reason: 'Panel open', by: 'J. Orrell', from: '2026-03-02T14:00Z', until }] },
  }) as const;

testRule(held, [
  { name: 'none placed', dossier: dossierOf(), at: '2026-03-02T14:00Z', expect: 'met', message: 'free' },
  { name: 'the minute before it begins', dossier: dossierOf(hold(null)), at: '2026-03-02T13:59Z', expect: 'met' },
  {
    name: 'from its first minute',
    dossier: dossierOf(hold(null)),
    at: '2026-03-02T14:00Z',
    expect: 'not-met',
    message: 'held',
  },
  {
    name: 'until its last minute',
    dossier: dossierOf(hold('2026-03-05T10:00Z')),
    at: '2026-03-05T09:59Z',
    expect: 'not-met',
  },
  { name: 'lifted', dossier: dossierOf(hold('2026-03-05T10:00Z')), at: '2026-03-05T10:00Z', expect: 'met' },
]);
