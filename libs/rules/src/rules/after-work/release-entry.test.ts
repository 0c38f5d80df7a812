import { mechanic, recordOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { RecordHead } from '../../dossier/status.js';
import { releaseEntry } from './release-entry.js';

const data = { title: 'Installation drawing 7', revision: 'B', date: null };
const entry = (part: Partial<RecordHead> = {}) =>
  recordOf({ kind: 'release-entry', on: '2026-02-10', agency: mechanic, note: 'Fitted and checked', ...part });
const of = (...records: readonly RecordHead[]) => dossierOf({ status: { records } });
const at = '2026-03-01T12:00Z';

// 43.9(a): description or reference to data, date, name and certificate of the approver.
testRule(releaseEntry, [
  { name: 'described and signed', dossier: of(entry()), at, expect: 'met', message: 'whole' },
  {
    name: 'data named instead of a description',
    dossier: of(entry({ note: null, document: data })),
    at,
    expect: 'met',
  },
  {
    name: 'described, and its data named',
    dossier: of(entry({ document: data })),
    at,
    expect: 'met',
    data: { unrecorded: 'nothing' },
  },
  {
    name: 'neither description nor data',
    dossier: of(entry({ note: null })),
    at,
    expect: 'cannot-tell',
    message: 'lacking',
    data: { unrecorded: 'note, document' },
  },
  { name: 'approver not recorded', dossier: of(entry({ agency: null })), at, expect: 'cannot-tell' },
  {
    name: 'certificate number not recorded',
    dossier: of(entry({ agency: { ...mechanic, certificate: null } })),
    at,
    expect: 'cannot-tell',
  },
  { name: 'not seen', dossier: of(entry({ evidence: 'reported' })), at, expect: 'none' },
  { name: 'an inspection', dossier: of(entry({ kind: 'annual-inspection' })), at, expect: 'none' },
  {
    name: 'one that closes what a change left owing stops the release while it lacks something',
    dossier: dossierOf(of(entry({ id: 'r1', note: null }), entry({ id: 'r2', note: null })), {
      status: {
        obligations: [
          {
            id: 'owed',
            what: 'release-entry',
            subject: 'aircraft',
            since: { date: '2026-02-09', at: null },
            becauseOf: 'unit.install',
            touched: null,
            closedBy: 'r1',
          },
        ],
      },
    }),
    at,
    subject: 'r1',
    expect: 'cannot-tell',
  },
]);
