import { unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Antenna, InstalledUnit } from '../../dossier/installation.js';
import { radioAndNavigation } from './radio-and-navigation.js';

const at = '2026-03-02T14:00Z';
const antenna = (part: Partial<Antenna> = {}): Antenna => ({
  id: 'a1',
  kind: 'com',
  units: ['com1'],
  approved: true,
  xIn: null,
  yIn: null,
  ...part,
});
const aircraft = (antennas: readonly Antenna[], complete = true, unit: Partial<InstalledUnit> | null = {}) =>
  dossierOf({
    configuration: {
      units: unit === null ? [] : [unitOf({ id: 'com1', functions: ['com'], ...unit })],
      antennas,
    },
    status: {
      completeness: complete ? [{ list: 'equipment', stated: { asOf: '2025-09-10', by: 'R. Tamsin' } }] : [],
    },
  });

testRule(radioAndNavigation, [
  { name: 'approved antenna', dossier: aircraft([antenna()]), at, subject: 'com1', expect: 'met', message: 'ready' },
  { name: 'combined antenna', dossier: aircraft([antenna({ kind: 'combined' })]), at, subject: 'com1', expect: 'met' },
  {
    name: 'antenna known not to be approved',
    dossier: aircraft([antenna({ approved: false })]),
    at,
    subject: 'com1',
    expect: 'not-met',
    message: 'unapproved',
  },
  {
    name: 'approval of the antenna not recorded',
    dossier: aircraft([antenna({ approved: null })]),
    at,
    subject: 'com1',
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'one of two antennas approved',
    dossier: aircraft([antenna({ approved: false }), antenna({ id: 'a2' })]),
    at,
    subject: 'com1',
    expect: 'met',
  },
  {
    name: 'the antenna of something else is not asked',
    dossier: aircraft([antenna({ kind: 'vor-loc', approved: false })]),
    at,
    subject: 'com1',
    expect: 'met',
  },
  {
    name: 'deactivated',
    dossier: aircraft([antenna()], true, {
      deactivated: { since: { date: '2026-02-01', at: null }, placarded: true, recorded: true },
    }),
    at,
    subject: 'com1',
    expect: 'not-applicable',
    message: 'deactivated',
  },
  {
    name: 'no radio, list complete',
    dossier: aircraft([], true, null),
    at,
    subject: 'aircraft',
    expect: 'not-met',
    message: 'none',
  },
  {
    name: 'a portable radio beside the fitted one is not spoken of',
    dossier: dossierOf(aircraft([antenna()]), {
      configuration: {
        units: [
          unitOf({ id: 'com1', functions: ['com'] }),
          unitOf({ id: 'hand', functions: ['com', 'portable-display'] }),
        ],
      },
    }),
    at,
    subject: 'hand',
    expect: 'none',
  },
  {
    name: 'a portable radio alone, list complete',
    dossier: aircraft([], true, { functions: ['com', 'portable-display'] }),
    at,
    subject: 'aircraft',
    expect: 'not-met',
    message: 'none',
  },
  {
    name: 'no radio recorded, list not complete',
    dossier: aircraft([], false, null),
    at,
    subject: 'aircraft',
    expect: 'cannot-tell',
    message: 'unrecorded',
  },
]);
