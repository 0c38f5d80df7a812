import { mechanic, pilot, recordOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { RecordHead, RecordKind } from '../../dossier/status.js';
import { controlsFreeAndSecured } from './controls-free-and-secured.js';

const afternoon = '2026-03-02T15:00Z';
const of = (part: Partial<RecordHead> | null, what: RecordKind = 'controls-check', workAt: string | null = afternoon) =>
  dossierOf({
    status: {
      obligations: [
        {
          id: `${what}:aircraft`,
          what,
          subject: 'aircraft',
          since: { date: '2026-03-02', at: workAt },
          becauseOf: 'unit.install',
          touched: 'behind-panel',
          closedBy: null,
        },
      ],
      records:
        part === null
          ? []
          : [
              recordOf({
                kind: 'controls-check',
                on: '2026-03-03',
                agency: mechanic,
                secondPerson: 'R. Tamsin',
                ...part,
              }),
            ],
    },
  });
const at = '2026-03-20T12:00Z';

testRule(controlsFreeAndSecured, [
  { name: 'signed by two', dossier: of({}), at, expect: 'met', message: 'done', data: { since: '2026-03-02' } },
  {
    name: 'on the day of the work, an hour later',
    dossier: of({ done: { date: '2026-03-02', at: '2026-03-02T16:00Z' } }),
    at,
    expect: 'met',
  },
  {
    name: 'on the day of the work, before the panel was closed',
    dossier: of({ done: { date: '2026-03-02', at: '2026-03-02T14:00Z' } }),
    at,
    expect: 'not-met',
    message: 'owed',
  },
  {
    name: 'on the day of the work, time not recorded',
    dossier: of({ done: { date: '2026-03-02', at: null } }),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'on the day of the work, time of the work not recorded',
    dossier: of({ done: { date: '2026-03-02', at: '2026-03-02T16:00Z' } }, 'controls-check', null),
    at,
    expect: 'cannot-tell',
  },
  { name: 'nobody looked', dossier: of(null), at, expect: 'not-met' },
  { name: 'second signature missing', dossier: of({ secondPerson: null }), at, expect: 'cannot-tell' },
  { name: 'first signer missing', dossier: of({ agency: null }), at, expect: 'cannot-tell' },
  { name: 'both signatures of one person', dossier: of({ secondPerson: 'j.  orrell' }), at, expect: 'not-met' },
  { name: 'one person, written without a blank', dossier: of({ secondPerson: 'J.Orrell' }), at, expect: 'not-met' },
  { name: 'two of one family', dossier: of({ secondPerson: 'K. Orrell' }), at, expect: 'met' },
  { name: 'found fouled', dossier: of({ outcome: 'failed' }), at, expect: 'not-met' },
  { name: 'signed by a pilot', dossier: of({ agency: pilot }), at, expect: 'not-met' },
  { name: 'told, entry not seen', dossier: of({ evidence: 'reported' }), at, expect: 'not-met' },
  { name: 'nothing done behind the panel', dossier: dossierOf(), at, expect: 'none' },
  { name: 'another check is owed', dossier: of({}, 'compass-swing'), at, expect: 'none' },
]);
