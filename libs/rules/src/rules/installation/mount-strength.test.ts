import { approvalOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Aircraft } from '../../dossier/aircraft.js';
import type { AsBuilt, InstalledUnit } from '../../dossier/installation.js';
import { mountStrength } from './mount-strength.js';

const at = '2026-03-02T14:00Z';
type Bears = NonNullable<AsBuilt['bears']>;
const car3 = { code: 'car-3', amendment: null } as const;
const part23 = (amendment: number | null) => ({ code: 'part-23' as const, amendment });
const part27 = (amendment: number | null) => ({ code: 'part-27' as const, amendment });
const document = { title: 'Static test', revision: null, date: null };
/** 7 lb, utility: forward 63, up 21, side 10.5, down 46.2. */
const seven = { forwardLb: 63, upLb: 21, sideLb: 10.5, downLb: 46.2 };
const aircraft = (
  bears: Partial<Bears> | null,
  basis: Aircraft['basis'] = car3,
  part: Partial<AsBuilt> = {},
  unit: Partial<InstalledUnit> = {},
  category: Aircraft['category'] = 'utility',
) =>
  dossierOf({
    configuration: {
      aircraft: { basis, category },
      units: [
        unitOf({
          id: 'u',
          functions: ['gnss'],
          massLb: 7,
          asBuilt: {
            air: null,
            airwaysClear: null,
            couldStrike: true,
            bears: bears && { ...seven, document, ...bears },
            lights: null,
            ...part,
          },
          ...unit,
        }),
      ],
    },
  });
/** The same box in a rotorcraft: forward 112, up 28, side 56, down 140; before amendment 27-25 28, 10.5, 14, 28. */
const sixteen = { forwardLb: 112, upLb: 28, sideLb: 56, downLb: 140 };
const four = { forwardLb: 28, upLb: 10.5, sideLb: 14, downLb: 28 };
const eighteen = { forwardLb: 126, upLb: 21, sideLb: 31.5 };

// AC 43.13-2B, 7 lb box in utility: 63, 21, 10.5, 46.2 lb (from memory). On the basis of 23.561(b)(3): forward 126, side 31.5.
testRule(mountStrength, [
  { name: 'bears all four', dossier: aircraft({}), at, expect: 'met', message: 'strong' },
  {
    name: 'a tenth of a pound short forward',
    dossier: aircraft({ forwardLb: 62.9 }),
    at,
    expect: 'not-met',
    message: 'weak',
    data: { direction: 'forward', bearsLb: 62.9, neededLb: 63 },
  },
  { name: 'a tenth of a pound short upward', dossier: aircraft({ upLb: 20.9 }), at, expect: 'not-met' },
  {
    name: 'a tenth of a pound short sideward',
    dossier: aircraft({ sideLb: 10.4 }),
    at,
    expect: 'not-met',
    data: { direction: 'sideward' },
  },
  { name: 'a tenth of a pound short downward', dossier: aircraft({ downLb: 46.1 }), at, expect: 'not-met' },
  { name: 'more than it must', dossier: aircraft({ forwardLb: 63.1 }), at, expect: 'met' },
  {
    name: 'could strike nobody: 2 g forward',
    dossier: aircraft({ forwardLb: 14 }, car3, { couldStrike: false }),
    at,
    expect: 'met',
  },
  {
    name: 'could strike nobody, less than 2 g',
    dossier: aircraft({ forwardLb: 13.9 }, car3, { couldStrike: false }),
    at,
    expect: 'not-met',
  },
  {
    name: 'whom it could strike not recorded, 9 g',
    dossier: aircraft({}, car3, { couldStrike: null }),
    at,
    expect: 'met',
  },
  {
    name: 'whom it could strike not recorded, 2 g',
    dossier: aircraft({ forwardLb: 14 }, car3, { couldStrike: null }),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'whom it could strike not recorded, less than 2 g',
    dossier: aircraft({ forwardLb: 13.9 }, car3, { couldStrike: null }),
    at,
    expect: 'not-met',
  },
  { name: 'amendment 35: 9 g', dossier: aircraft({}, part23(35)), at, expect: 'met' },
  { name: 'amendment 36: 18 g', dossier: aircraft(eighteen, part23(36)), at, expect: 'met' },
  {
    name: 'amendment 36 with 9 g',
    dossier: aircraft({ ...eighteen, forwardLb: 125.9 }, part23(36)),
    at,
    expect: 'not-met',
  },
  { name: 'amendment 36, side', dossier: aircraft({ ...eighteen, sideLb: 31.4 }, part23(36)), at, expect: 'not-met' },
  { name: 'amendment 63', dossier: aircraft(eighteen, part23(63)), at, expect: 'met' },
  { name: 'amendment 64: other words', dossier: aircraft(eighteen, part23(64)), at, expect: 'cannot-tell' },
  { name: 'amendment not recorded', dossier: aircraft(eighteen, part23(null)), at, expect: 'cannot-tell' },
  { name: 'basis not recorded', dossier: aircraft({ ...eighteen, downLb: 200 }, null), at, expect: 'cannot-tell' },
  {
    name: 'acrobatic: 4.5 up and 9 down',
    dossier: aircraft({ upLb: 31.5, downLb: 63 }, car3, {}, {}, 'acrobatic'),
    at,
    expect: 'met',
  },
  {
    name: 'acrobatic, a tenth short downward',
    dossier: aircraft({ upLb: 31.5, downLb: 62.9 }, car3, {}, {}, 'acrobatic'),
    at,
    expect: 'not-met',
  },
  // Transport: 1.5 sideward and 9 forward; 2.0 upward at least, and there as downward only the maker can tell.
  {
    name: 'transport: strong in every direction, which upward and downward is for the maker to say',
    dossier: aircraft({ upLb: 1000, downLb: 1000 }, car3, {}, {}, 'transport'),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'transport, a tenth short of 2 upward',
    dossier: aircraft({ upLb: 13.9 }, car3, {}, {}, 'transport'),
    at,
    expect: 'not-met',
    data: { direction: 'upward', neededLb: 14 },
  },
  {
    name: 'transport, 2 upward',
    dossier: aircraft({ upLb: 14 }, car3, {}, {}, 'transport'),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'transport, a tenth short sideward',
    dossier: aircraft({ sideLb: 10.4 }, car3, {}, {}, 'transport'),
    at,
    expect: 'not-met',
  },
  {
    name: 'transport, a tenth short forward',
    dossier: aircraft({ forwardLb: 62.9 }, car3, {}, {}, 'transport'),
    at,
    expect: 'not-met',
  },
  {
    name: 'transport, whom it could strike not recorded, less than 2 g forward',
    dossier: aircraft({ forwardLb: 13.9 }, car3, { couldStrike: null }, {}, 'transport'),
    at,
    expect: 'not-met',
  },
  {
    name: 'category not recorded, strong in every direction: it may be transport',
    dossier: aircraft({ upLb: 1000, downLb: 1000 }, car3, {}, {}, null),
    at,
    expect: 'cannot-tell',
  },
  { name: 'category not recorded', dossier: aircraft({}, car3, {}, {}, null), at, expect: 'cannot-tell' },
  { name: 'strength not recorded', dossier: aircraft(null), at, expect: 'cannot-tell' },
  { name: 'one direction not recorded', dossier: aircraft({ sideLb: null }), at, expect: 'cannot-tell' },
  { name: 'mass not recorded', dossier: aircraft({}, car3, {}, { massLb: null }), at, expect: 'cannot-tell' },
  {
    name: 'a mass that no unit has',
    dossier: aircraft({ forwardLb: 1e6, upLb: 1e6, sideLb: 1e6, downLb: 1e6 }, car3, {}, { massLb: 10_001 }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'mass by its manual',
    dossier: aircraft({}, car3, {}, { massLb: null, typeId: 'gx', functions: [] }),
    types: [typeOf({ id: 'gx', functions: ['gnss'], massLb: 7.01 })],
    at,
    expect: 'not-met',
  },
  {
    name: 'accepted as found',
    dossier: aircraft(
      null,
      car3,
      {},
      {
        approval: approvalOf({ basis: 'as-found', acceptedBy: { asOf: '2025-09-01', by: 'R. Tamsin' } }),
      },
    ),
    at,
    expect: 'met',
  },
  {
    name: 'of the type design',
    dossier: aircraft(null, car3, {}, { approval: approvalOf({ basis: 'type-certificate' }) }),
    at,
    expect: 'none',
  },
  { name: 'portable', dossier: aircraft(null, car3, {}, { functions: ['portable-display'] }), at, expect: 'none' },
  { name: 'rotorcraft, amendment 27-25', dossier: aircraft(sixteen, part27(25)), at, expect: 'met' },
  ...(['forwardLb', 'upLb', 'sideLb', 'downLb'] as const).map((direction) => ({
    name: `rotorcraft, amendment 27-25, a tenth short: ${direction}`,
    dossier: aircraft({ ...sixteen, [direction]: sixteen[direction] - 0.1 }, part27(25)),
    at,
    expect: 'not-met' as const,
  })),
  { name: 'rotorcraft, amendment 27-24', dossier: aircraft(four, part27(24)), at, expect: 'met' },
  ...(['forwardLb', 'upLb', 'sideLb', 'downLb'] as const).map((direction) => ({
    name: `rotorcraft, amendment 27-24, a tenth short: ${direction}`,
    dossier: aircraft({ ...four, [direction]: four[direction] - 0.1 }, part27(24)),
    at,
    expect: 'not-met' as const,
  })),
  {
    name: 'rotorcraft, amendment not recorded, the greater factors',
    dossier: aircraft(sixteen, part27(null)),
    at,
    expect: 'met',
  },
  {
    name: 'rotorcraft, amendment not recorded, the lesser factors',
    dossier: aircraft(four, part27(null)),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'rotorcraft, amendment not recorded, less than either',
    dossier: aircraft({ ...four, upLb: 10.4 }, part27(null)),
    at,
    expect: 'not-met',
  },
  {
    name: 'rotorcraft, could injure nobody and bears the factors',
    dossier: aircraft(sixteen, part27(25), { couldStrike: false }),
    at,
    expect: 'met',
  },
  {
    name: 'rotorcraft, could injure nobody: what it must bear was not read',
    dossier: aircraft({ ...sixteen, downLb: 139.9 }, part27(25), { couldStrike: false }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'rotorcraft, whom it could injure not recorded',
    dossier: aircraft({ ...sixteen, downLb: 139.9 }, part27(25), { couldStrike: null }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'rotorcraft: the category makes no difference',
    dossier: aircraft(sixteen, part27(25), {}, {}, null),
    at,
    expect: 'met',
  },
  { name: 'another basis', dossier: aircraft(null, { code: 'none', amendment: null }), at, expect: 'none' },
]);
