import { expect, test } from 'vitest';
import { typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Identity } from '../../dossier/upkeep.js';
import { adsBIdentity } from './ads-b-identity.js';

const types = [typeOf({ id: 'ms4', functions: ['transponder', 'ads-b-out-1090'] })];
const seen = { asOf: '2026-01-10', by: 'R. Tamsin' };
const identity = (part: Partial<Identity> = {}): Identity => ({
  id: 'xpdr1',
  address: 'A1B2C3',
  flightId: 'TW01Q',
  emitterCategory: 'light',
  positionUnit: null,
  pairing: null,
  seen,
  ...part,
});
const of = (
  identities: readonly Identity[],
  aircraft: { kind?: 'airplane' | 'helicopter' | 'glider' | 'balloon'; maxWeightLb?: number | null } = {
    maxWeightLb: 2300,
  },
  deactivated = false,
) =>
  dossierOf({
    configuration: {
      aircraft,
      units: [
        unitOf({
          id: 'xpdr1',
          typeId: 'ms4',
          deactivated: deactivated
            ? { since: { date: '2026-01-01', at: null }, placarded: true, recorded: true }
            : null,
        }),
        ...identities.filter(({ id }) => id !== 'xpdr1').map(({ id }) => unitOf({ id, functions: ['ads-b-out-uat'] })),
      ],
      identities,
    },
  });
const at = '2026-03-01T12:00Z';
const second = identity({ id: 'uat1', address: 'A1B2C4' });

// 91.227(d): address, category, identification. Weights of the categories as the FAA sorted its reports of 2016 (secondary): light below 15,500 lb, small to 75,000.
const saysOnly = 'an address that can be one';
test('never says that the address is the one of the registration', () => {
  const { asks, messages } = adsBIdentity.meta;
  expect([asks, messages['agrees']].map((each) => each?.includes(saysOnly))).toEqual([true, true]);
  expect([asks, ...Object.values(messages)].join(' ')).not.toContain('address of this aircraft');
});

testRule(adsBIdentity, [
  { name: 'all right', dossier: of([identity()]), types, at, expect: 'met', message: 'agrees' },
  { name: 'just below 15,500 lb', dossier: of([identity()], { maxWeightLb: 15_499 }), types, at, expect: 'met' },
  {
    name: '15,500 lb is small',
    dossier: of([identity()], { maxWeightLb: 15_500 }),
    types,
    at,
    expect: 'not-met',
    message: 'wrong',
    data: { address: 'A1B2C3', category: 'light' },
  },
  {
    name: '75,000 lb is small',
    dossier: of([identity({ emitterCategory: 'small' })], { maxWeightLb: 75_000 }),
    types,
    at,
    expect: 'met',
  },
  {
    name: 'above it is large',
    dossier: of([identity({ emitterCategory: 'small' })], { maxWeightLb: 75_001 }),
    types,
    at,
    expect: 'not-met',
  },
  {
    name: 'a light airplane that says small',
    dossier: of([identity({ emitterCategory: 'small' })]),
    types,
    at,
    expect: 'not-met',
  },
  {
    name: 'a helicopter',
    dossier: of([identity({ emitterCategory: 'rotorcraft' })], { kind: 'helicopter' }),
    types,
    at,
    expect: 'met',
  },
  {
    name: 'a glider',
    dossier: of([identity({ emitterCategory: 'glider' })], { kind: 'glider' }),
    types,
    at,
    expect: 'met',
  },
  { name: 'a balloon that says light', dossier: of([identity()], { kind: 'balloon' }), types, at, expect: 'not-met' },
  {
    name: 'a balloon',
    dossier: of([identity({ emitterCategory: 'other' })], { kind: 'balloon' }),
    types,
    at,
    expect: 'met',
  },
  {
    name: 'above 75,000 lb',
    dossier: of([identity({ emitterCategory: 'large' })], { maxWeightLb: 75_001 }),
    types,
    at,
    expect: 'met',
  },
  {
    name: 'a second transmitter on 978 MHz sends its own identity',
    dossier: of([identity({ flightId: null }), identity({ id: 'uat1' })]),
    types,
    at,
    subject: 'uat1',
    expect: 'met',
  },
  { name: 'all zeros', dossier: of([identity({ address: '000000' })]), types, at, expect: 'not-met' },
  { name: 'all ones', dossier: of([identity({ address: 'FFFFFF' })]), types, at, expect: 'not-met' },
  { name: 'two transmitters, two addresses', dossier: of([identity(), second]), types, at, expect: 'not-met' },
  {
    name: 'another transmitter of which nothing is recorded',
    dossier: dossierOf(of([identity()]), {
      configuration: {
        units: [unitOf({ id: 'xpdr1', typeId: 'ms4' }), unitOf({ id: 'uat1', functions: ['ads-b-out-uat'] })],
      },
    }),
    types,
    at,
    subject: 'xpdr1',
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'another address of a transmitter that is out of use for good',
    dossier: dossierOf(of([identity(), second]), {
      configuration: {
        units: [
          unitOf({ id: 'xpdr1', typeId: 'ms4' }),
          unitOf({
            id: 'uat1',
            functions: ['ads-b-out-uat'],
            deactivated: { since: { date: '2026-01-01', at: null }, placarded: true, recorded: true },
          }),
        ],
      },
    }),
    types,
    at,
    expect: 'met',
  },
  {
    name: 'another address of a transmitter that is no longer aboard',
    dossier: dossierOf(of([identity(), second]), {
      configuration: { units: [unitOf({ id: 'xpdr1', typeId: 'ms4' })] },
    }),
    types,
    at,
    expect: 'met',
  },
  {
    name: 'the address of another transmitter not recorded',
    dossier: of([identity(), { ...second, address: null }]),
    types,
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'address not recorded',
    dossier: of([identity({ address: null })]),
    types,
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'flight identification not recorded',
    dossier: of([identity({ flightId: null })]),
    types,
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'category not recorded',
    dossier: of([identity({ emitterCategory: null })]),
    types,
    at,
    expect: 'cannot-tell',
  },
  { name: 'weight not recorded', dossier: of([identity()], { maxWeightLb: null }), types, at, expect: 'cannot-tell' },
  { name: 'seen by nobody', dossier: of([identity({ seen: null })]), types, at, expect: 'cannot-tell' },
  { name: 'nothing recorded', dossier: of([]), types, at, expect: 'cannot-tell' },
  { name: 'deactivated', dossier: of([identity()], { maxWeightLb: 2300 }, true), types, at, expect: 'none' },
  {
    name: 'address not recorded, that of another transmitter is',
    dossier: of([second, identity({ address: null })]),
    types,
    at,
    expect: 'cannot-tell',
    data: { address: 'no recorded address' },
  },
]);
