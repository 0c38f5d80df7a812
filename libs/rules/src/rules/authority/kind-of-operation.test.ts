import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Authority } from '../../dossier/aircraft.js';
import type { Aircraft } from '../../dossier/aircraft.js';
import { kindOfOperation } from './kind-of-operation.js';

const at = '2026-03-02T14:00Z';
const aircraft = (certificate: Aircraft['certificate'], part: Partial<Authority> | null) =>
  dossierOf({
    configuration: {
      aircraft: { certificate },
      authority:
        part === null
          ? null
          : {
              dayVfr: true,
              nightVfr: true,
              ifr: true,
              hire: null,
              document: { title: 'Kinds-of-operation list', revision: '2', date: null },
              conditionInspectionMonths: null,
              ...part,
            },
    },
  });

testRule(kindOfOperation, [
  {
    name: 'day allowed',
    dossier: aircraft('standard', {}),
    at,
    subject: 'vfr-day',
    expect: 'met',
    message: 'allowed',
    data: { document: 'Kinds-of-operation list' },
  },
  { name: 'instrument flight allowed', dossier: aircraft('standard', {}), at, subject: 'ifr', expect: 'met' },
  {
    name: 'no authority for instrument flight: not for it',
    dossier: aircraft('standard', { ifr: false }),
    at,
    subject: 'ifr',
    expect: 'not-met',
    message: 'forbidden',
  },
  {
    name: 'no authority for instrument flight: day stays',
    dossier: aircraft('standard', { ifr: false }),
    at,
    subject: 'vfr-day',
    expect: 'met',
  },
  {
    name: 'no authority for instrument flight: night stays',
    dossier: aircraft('standard', { ifr: false }),
    at,
    subject: 'vfr-night',
    expect: 'met',
  },
  {
    name: 'no document recorded',
    dossier: aircraft('standard', null),
    at,
    subject: 'vfr-day',
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'the document was read for day only',
    dossier: aircraft('standard', { nightVfr: null }),
    at,
    subject: 'vfr-night',
    expect: 'cannot-tell',
  },
  // 91.319(d)(2): visual rules by day only, unless specifically authorised.
  {
    name: 'experimental, limitations silent on night',
    dossier: aircraft('experimental', { nightVfr: null, ifr: null }),
    at,
    subject: 'vfr-night',
    expect: 'not-met',
  },
  {
    name: 'experimental, limitations silent on instrument flight',
    dossier: aircraft('experimental', { nightVfr: null, ifr: null }),
    at,
    subject: 'ifr',
    expect: 'not-met',
  },
  {
    name: 'experimental, limitations silent on night: day stays',
    dossier: aircraft('experimental', { nightVfr: null, ifr: null }),
    at,
    subject: 'vfr-day',
    expect: 'met',
  },
  { name: 'experimental, authorised', dossier: aircraft('experimental', {}), at, subject: 'ifr', expect: 'met' },
  {
    name: 'experimental, limitations not recorded',
    dossier: aircraft('experimental', null),
    at,
    subject: 'ifr',
    expect: 'cannot-tell',
  },
  {
    name: 'experimental, day not recorded',
    dossier: aircraft('experimental', { dayVfr: null }),
    at,
    subject: 'vfr-day',
    expect: 'cannot-tell',
  },
  // 91.327(d)
  {
    name: 'light-sport, operating instructions exclude night',
    dossier: aircraft('light-sport', { nightVfr: false }),
    at,
    subject: 'vfr-night',
    expect: 'not-met',
  },
  {
    name: 'certificate not recorded, document silent',
    dossier: aircraft(null, { ifr: null }),
    at,
    subject: 'ifr',
    expect: 'cannot-tell',
  },
]);
