import { approvalOf, circuitOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { trainer, trainerCatalogue } from '../../../testing/trainer.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { EquipmentType } from '../../catalogue/type.js';
import type { Dossier } from '../../dossier/dossier.js';
import type { InstalledUnit } from '../../dossier/installation.js';
import { powerSupplied } from './power-supplied.js';

const at = '2026-03-02T14:00Z';
const radio = (part: Partial<EquipmentType> = {}) => [
  typeOf({
    id: 'r1',
    functions: ['com'],
    drawA: { at14V: 3, at28V: null },
    supplyV: { least: 11, most: 15.5 },
    ...part,
  }),
];
const fitted = (
  { busV = 14, circuit = true }: { readonly busV?: number | null; readonly circuit?: boolean },
  part: Partial<InstalledUnit> = {},
): Dossier =>
  dossierOf({
    configuration: {
      units: [unitOf({ id: 'com1', typeId: 'r1', ...part })],
      electrical: {
        busV,
        alternatorA: 60,
        batteryAh: 25,
        batteryShare: null,
        loadWatch: null,
        circuits: circuit ? [circuitOf({ id: 'c1', units: ['com1'] })] : [],
      },
    },
  });
/** The trainer with every unit asking for the bus of its case. */
const whole = (subject: string) => ({
  at,
  subject,
  types: Object.values(trainerCatalogue.types).map((each) => ({ ...each, supplyV: { least: 11, most: 15.5 } })),
  dossier: trainer({ configuration: { electrical: { busV: 28 } } }),
  expect: 'not-met' as const,
  message: 'wrong',
});
const base = { at, types: radio(), subject: 'com1' };

// Invented limits of an invented manual: the rule reads them from the catalogue.
testRule(powerSupplied, [
  {
    ...base,
    name: 'on a circuit of a fitting bus',
    dossier: fitted({}),
    expect: 'met',
    message: 'fed',
    data: { bus: 14 },
  },
  { ...base, name: 'at the least voltage', dossier: fitted({ busV: 11 }), expect: 'met' },
  {
    ...base,
    name: 'a tenth of a volt below it',
    dossier: fitted({ busV: 10.9 }),
    expect: 'not-met',
    message: 'wrong',
    data: { bus: 10.9, least: 11, most: 15.5 },
  },
  { ...base, name: 'at the most voltage', dossier: fitted({ busV: 15.5 }), expect: 'met' },
  { ...base, name: 'a tenth of a volt above it', dossier: fitted({ busV: 15.6 }), expect: 'not-met', message: 'wrong' },
  {
    ...base,
    name: 'the bus of another aircraft: 28 V, whatever somebody approved',
    dossier: fitted({ busV: 28 }, { approval: approvalOf() }),
    expect: 'not-met',
    message: 'wrong',
  },
  {
    ...base,
    name: 'bus voltage not recorded',
    dossier: fitted({ busV: null }),
    expect: 'cannot-tell',
    message: 'unclear',
    data: { unrecorded: 'bus voltage (V)' },
  },
  {
    ...base,
    name: 'electrical system not recorded',
    dossier: dossierOf({ configuration: { units: [unitOf({ id: 'com1', typeId: 'r1' })] } }),
    expect: 'cannot-tell',
    data: { bus: null },
  },
  {
    ...base,
    name: 'on no circuit that is recorded',
    dossier: fitted({ circuit: false }),
    expect: 'cannot-tell',
    message: 'unclear',
    data: { unrecorded: 'circuits' },
  },
  {
    ...base,
    name: 'on no circuit that is recorded, installation approved',
    dossier: fitted({ circuit: false }, { approval: approvalOf() }),
    expect: 'met',
  },
  {
    ...base,
    name: 'on no circuit that is recorded, accepted as found by a named person',
    dossier: fitted(
      { circuit: false },
      { approval: approvalOf({ basis: 'as-found', acceptedBy: { asOf: '2026-01-10', by: 'R. Tamsin' } }) },
    ),
    expect: 'met',
  },
  {
    ...base,
    name: 'on no circuit that is recorded, accepted as found by nobody',
    dossier: fitted({ circuit: false }, { approval: approvalOf({ basis: 'as-found', acceptedBy: null }) }),
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    ...base,
    name: 'its manual was not read up',
    types: radio({ supplyV: null }),
    dossier: fitted({}),
    expect: 'cannot-tell',
    data: { unrecorded: 'supply voltage (V)' },
  },
  {
    ...base,
    name: 'its manual was not read up, installation approved',
    types: radio({ supplyV: null }),
    dossier: fitted({}, { approval: approvalOf() }),
    expect: 'met',
  },
  {
    ...base,
    name: 'what draws nothing by its manual hangs on no circuit',
    types: radio({ supplyV: null, drawA: { at14V: 0, at28V: null } }),
    dossier: fitted({ circuit: false }),
    expect: 'none',
  },
  {
    ...base,
    name: 'draws nothing at one voltage, something at the other',
    types: radio({ supplyV: null, drawA: { at14V: 0, at28V: 0.1 } }),
    dossier: fitted({ circuit: false }),
    expect: 'cannot-tell',
  },
  {
    ...base,
    name: 'draws nothing, yet its manual says what it is fed with',
    types: radio({ drawA: { at14V: 0, at28V: 0 } }),
    dossier: fitted({ busV: 28 }),
    expect: 'not-met',
  },
  {
    ...base,
    name: 'a manual that states neither current nor voltage does not say that it draws nothing',
    types: radio({ supplyV: null, drawA: null }),
    dossier: fitted({ circuit: false }),
    expect: 'cannot-tell',
    message: 'unclear',
    data: { unrecorded: 'supply voltage (V), circuits' },
  },
  {
    ...base,
    name: 'a portable device is on no circuit of the aircraft',
    types: radio({ functions: ['portable-display'] }),
    dossier: fitted({ circuit: false }),
    expect: 'none',
  },
  { ...whole('gps1'), name: 'costs what a satellite navigator gives' },
  { ...whole('nav1'), name: 'costs what a radio with its receivers gives' },
  { ...whole('xpdr1'), name: 'costs what a transponder gives' },
  { ...whole('enc1'), name: 'costs what an encoder feeds' },
  {
    ...base,
    name: 'taken out of use',
    dossier: fitted(
      { busV: 28 },
      { deactivated: { since: { date: '2026-02-01', at: null }, placarded: true, recorded: true } },
    ),
    expect: 'none',
  },
  {
    ...base,
    name: 'what is in no catalogue has no manual to ask',
    dossier: fitted({}, { typeId: null, functions: ['com'] }),
    expect: 'none',
  },
]);
