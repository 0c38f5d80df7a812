import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import { holdOfJob } from '../../dossier/hold.js';
import { held } from './held.js';

const placed = (until: string | null) =>
  ({ id: 'h1', reason: 'Fuel smell', by: 'J. Orrell', from: '2026-03-02T14:00Z', until }) as const;
const hold = (until: string | null) => ({ status: { holds: [placed(until)] } }) as const;
const job = (id: string, until: string | null) =>
  ({ id, reason: 'Second transceiver', by: 'M. Tace', from: '2026-03-03T08:00Z', until }) as const;
const first = holdOfJob('a1');
const second = holdOfJob('b2');
const twoJobs = {
  status: { holds: [job(first, '2026-03-04T16:00Z'), job(second, null)] },
} as const;

testRule(held, [
  { name: 'none placed', dossier: dossierOf(), at: '2026-03-02T14:00Z', expect: 'met', message: 'free' },
  {
    name: 'the minute before it begins',
    dossier: dossierOf(hold(null)),
    at: '2026-03-02T13:59Z',
    expect: 'met',
    message: 'ended',
  },
  {
    name: 'from its first minute',
    dossier: dossierOf(hold(null)),
    at: '2026-03-02T14:00Z',
    expect: 'not-met',
    message: 'held',
    data: { reason: 'Fuel smell', by: 'J. Orrell', since: '2026-03-02T14:00Z' },
  },
  {
    name: 'until its last minute',
    dossier: dossierOf(hold('2026-03-05T10:00Z')),
    at: '2026-03-05T09:59Z',
    expect: 'not-met',
  },
  { name: 'lifted', dossier: dossierOf(hold('2026-03-05T10:00Z')), at: '2026-03-05T10:00Z', expect: 'met' },
  {
    name: 'in work, by the job that placed it',
    dossier: dossierOf(twoJobs),
    subject: first,
    at: '2026-03-04T15:59Z',
    expect: 'not-met',
    message: 'in-work',
    data: { reason: 'Second transceiver', by: 'M. Tace' },
  },
  {
    name: 'released, while the other job goes on',
    dossier: dossierOf(twoJobs),
    subject: first,
    at: '2026-03-04T16:00Z',
    expect: 'met',
  },
  {
    name: 'the other job still holds it',
    dossier: dossierOf(twoJobs),
    subject: second,
    at: '2026-03-04T16:00Z',
    expect: 'not-met',
    message: 'in-work',
  },
  {
    name: 'a job taken up again holds it again',
    dossier: dossierOf({ status: { holds: [job(holdOfJob('a1', 2), null)] } }),
    at: '2026-03-04T16:00Z',
    expect: 'not-met',
    message: 'in-work',
  },
]);
