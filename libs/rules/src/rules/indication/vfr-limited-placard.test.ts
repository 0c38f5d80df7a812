import { approvalOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Grant, Placard } from '../../dossier/installation.js';
import { vfrLimitedPlacard } from './vfr-limited-placard.js';

const at = '2026-03-02T14:00Z';
const placard = (part: Partial<Placard> = {}): Placard => ({
  id: 'p1',
  kind: 'gnss-vfr-only',
  unitId: 'gps1',
  inView: true,
  text: 'Satellite navigation for VFR only',
  ...part,
});
const unit = (grants: readonly Grant[] | null, placards: readonly Placard[], complete = false) =>
  dossierOf(
    {
      configuration: {
        units: [unitOf({ id: 'gps1', functions: ['gnss'], approval: approvalOf({ grants }) })],
        placards,
      },
    },
    complete
      ? { status: { completeness: [{ list: 'placards', stated: { asOf: '2025-01-01', by: 'J. Orrell' } }] } }
      : {},
  );
const vfr: readonly Grant[] = ['vfr-only'];
const ifr: readonly Grant[] = ['nav-gnss', 'approach-lnav'];

testRule(vfrLimitedPlacard, [
  { name: 'limited and placarded', dossier: unit(vfr, [placard()]), at, expect: 'met', message: 'placarded' },
  {
    name: 'placard out of view',
    dossier: unit(vfr, [placard({ inView: false })]),
    at,
    expect: 'not-met',
    message: 'missing',
  },
  {
    name: 'whether in view not recorded',
    dossier: unit(vfr, [placard({ inView: null })]),
    at,
    expect: 'cannot-tell',
    message: 'disagree',
  },
  {
    name: 'placard of nobody knows which unit',
    dossier: unit(vfr, [placard({ unitId: null })]),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'placard of another unit',
    dossier: unit(vfr, [placard({ unitId: 'gps2' })], true),
    at,
    expect: 'not-met',
  },
  {
    name: 'one of nobody knows which unit, and its own',
    dossier: unit(vfr, [placard({ id: 'p0', unitId: null }), placard()]),
    at,
    expect: 'met',
  },
  {
    name: 'its first out of view, its second in view',
    dossier: unit(vfr, [placard({ inView: false }), placard({ id: 'p2' })]),
    at,
    expect: 'met',
  },
  {
    name: 'both out of view',
    dossier: unit(vfr, [placard({ inView: false }), placard({ id: 'p2', inView: false })]),
    at,
    expect: 'not-met',
  },
  {
    name: 'its own out of view, one in view of nobody knows which unit',
    dossier: unit(vfr, [placard({ inView: false }), placard({ id: 'p2', unitId: null })]),
    at,
    expect: 'cannot-tell',
  },
  { name: 'limited, no placard recorded', dossier: unit(vfr, []), at, expect: 'cannot-tell' },
  { name: 'limited, no placard on a complete list', dossier: unit(vfr, [], true), at, expect: 'not-met' },
  { name: 'another placard', dossier: unit(vfr, [placard({ kind: 'inoperative' })], true), at, expect: 'not-met' },
  { name: 'approved for IFR', dossier: unit(ifr, []), at, expect: 'not-applicable', message: 'not-limited' },
  {
    name: 'approved for IFR, stale placard',
    dossier: unit(ifr, [placard()]),
    at,
    expect: 'cannot-tell',
    message: 'disagree',
  },
  {
    name: 'approved for IFR, stale placard of nobody knows which unit',
    dossier: unit(ifr, [placard({ unitId: null })]),
    at,
    expect: 'cannot-tell',
  },
  { name: 'papers do not say, placard there', dossier: unit(null, [placard()]), at, expect: 'cannot-tell' },
  { name: 'papers do not say, no placard', dossier: unit(null, [], true), at, expect: 'cannot-tell' },
  {
    name: 'hand-held',
    dossier: dossierOf({ configuration: { units: [unitOf({ id: 'p', functions: ['gnss', 'portable-display'] })] } }),
    at,
    expect: 'none',
  },
]);
