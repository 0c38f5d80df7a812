import { approvalOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Grant } from '../../dossier/installation.js';
import { flightManualSupplement } from './flight-manual-supplement.js';

const at = '2026-03-02T14:00Z';
const supplement = (aboard: boolean | null, id = 's1', units = ['gps1']) => ({
  id,
  units,
  document: { title: 'Supplement 12', revision: 'A', date: null },
  aboard,
  currentDataRequired: null,
  grants: null,
});
const unit = (grants: readonly Grant[] | null, ...supplements: ReturnType<typeof supplement>[]) =>
  dossierOf({
    configuration: {
      units: [unitOf({ id: 'gps1', functions: ['gnss'], approval: approvalOf({ grants }) })],
      supplements,
    },
  });
const ifr: readonly Grant[] = ['nav-gnss'];

testRule(flightManualSupplement, [
  {
    name: 'aboard',
    dossier: unit(ifr, supplement(true)),
    at,
    expect: 'met',
    message: 'aboard',
    data: { document: 'Supplement 12' },
  },
  { name: 'in the office', dossier: unit(ifr, supplement(false)), at, expect: 'not-met', message: 'missing' },
  { name: 'place not recorded', dossier: unit(ifr, supplement(null)), at, expect: 'cannot-tell', message: 'unclear' },
  { name: 'none recorded', dossier: unit(ifr), at, expect: 'cannot-tell', message: 'unrecorded' },
  {
    name: 'that of another unit',
    dossier: unit(ifr, supplement(true, 's1', ['gps2'])),
    at,
    expect: 'cannot-tell',
    message: 'unrecorded',
  },
  {
    name: 'one of two left behind',
    dossier: unit(ifr, supplement(true), supplement(false, 's2')),
    at,
    expect: 'not-met',
  },
  {
    name: 'a radio needs none',
    dossier: dossierOf({ configuration: { units: [unitOf({ id: 'com1', functions: ['com'] })] } }),
    at,
    expect: 'none',
  },
  {
    name: 'nor does what is held in the hand',
    dossier: dossierOf({ configuration: { units: [unitOf({ id: 'p', functions: ['gnss', 'portable-display'] })] } }),
    at,
    expect: 'none',
  },
  { name: 'limited to VFR', dossier: unit(['vfr-only']), at, expect: 'not-applicable', message: 'not-for-ifr' },
  {
    name: 'limited to VFR beside another use: the narrower',
    dossier: unit(['vfr-only', 'nav-gnss']),
    at,
    expect: 'not-applicable',
  },
  { name: 'position source for surveillance alone', dossier: unit(['ads-b-out']), at, expect: 'not-applicable' },
  { name: 'use not recorded, aboard', dossier: unit(null, supplement(true)), at, expect: 'met' },
  { name: 'use not recorded, left behind', dossier: unit(null, supplement(false)), at, expect: 'cannot-tell' },
]);
