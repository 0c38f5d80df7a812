import { describe, expect, it } from 'vitest';
import { assess } from '../../libs/rules/src/index.js';
import type { Dossier, FlightConditions } from '../../libs/rules/src/index.js';
import type { EquipmentItem, EquipmentState } from '../../libs/rules/src/dossier/aircraft.js';
import type { Defect, Deferral } from '../../libs/rules/src/dossier/status.js';
import { deferralOf, mechanic, recordOf } from '../../libs/rules/testing/builders.js';
import type { Part } from '../../libs/rules/testing/dossiers.js';
import { entries, goodDay, trainer, trainerCatalogue } from '../../libs/rules/testing/trainer.js';

/** What the rules on authority, equipment, directives and defects do to whole flights of an aircraft that is otherwise in order. */
const day: FlightConditions = {
  rules: 'vfr',
  light: 'day',
  purpose: 'private',
  airspace: [],
  topFt: 6_000,
  localTrainingNm: null,
  overWaterBeyondGlide: false,
  crewOnly: false,
  errand: null,
  region: null,
  approaches: [],
};
const flights = {
  day,
  lesson: { ...day, purpose: 'training-provided', localTrainingNm: 25 },
  night: { ...day, light: 'night' },
  'night for hire': { ...day, light: 'night', purpose: 'carriage-for-hire' },
  'class C': { ...day, airspace: ['controlled', 'class-b-c'] },
  ifr: { ...day, rules: 'ifr', airspace: ['controlled'] },
  'ifr at 24,000 ft': { ...day, rules: 'ifr', topFt: 24_000 },
  lpv: { ...day, rules: 'ifr', airspace: ['controlled'], approaches: ['lpv'] },
  ils: { ...day, rules: 'ifr', airspace: ['controlled'], approaches: ['ils'] },
} as const satisfies Record<string, FlightConditions>;
type Flight = keyof typeof flights;

const { configuration, status } = trainer();
const equipment = (item: EquipmentItem, part: Partial<EquipmentState> | null): Part<Dossier> => ({
  configuration: {
    equipment: configuration.equipment.flatMap((each) =>
      each.item !== item ? [each] : part === null ? [] : [{ ...each, ...part }],
    ),
  },
});
const authority = (part: Partial<NonNullable<Dossier['configuration']['authority']>>): Part<Dossier> => ({
  configuration: { authority: part },
});
const deactivated = (id: string): Part<Dossier> => ({
  configuration: {
    units: configuration.units.map((each) =>
      each.id === id
        ? { ...each, deactivated: { since: { date: '2026-03-01', at: null }, placarded: true, recorded: true } }
        : each,
    ),
  },
});
const deferral: Deferral = deferralOf({ on: '2026-03-10' });
const defect = (part: Partial<Defect>): Part<Dossier> => ({
  status: {
    defects: [
      {
        id: 'd1',
        kind: 'inoperative-item',
        subject: 'gps1',
        text: 'Does not work.',
        raised: { date: '2026-03-10', at: null },
        decidedBy: mechanic,
        deferral,
        ...part,
      },
    ],
  },
});
const incomplete = (list: string): Part<Dossier> => ({
  status: { completeness: status.completeness.filter((each) => each.list !== list) },
});

const all = Object.keys(flights) as Flight[];
/** Class A by its altitude, and tested to 20,000 ft only: no, whatever else. */
const high = 'ifr at 24,000 ft';
const low = all.filter((each) => each !== high);
const yes = { yes: low, no: [high] } as const;
const cases: readonly {
  readonly name: string;
  readonly part: Part<Dossier>;
  readonly no?: readonly Flight[];
  readonly cannotTell?: readonly Flight[];
  readonly yes?: readonly Flight[];
}[] = [
  { name: 'in order', part: {}, ...yes },
  {
    name: 'no authority for instrument flight',
    part: authority({ ifr: false }),
    no: ['ifr', 'lpv', 'ils'],
    yes: ['day', 'night', 'class C'],
  },
  { name: 'no authority for night', part: authority({ nightVfr: false }), no: ['night'], yes: ['day', 'ifr'] },
  { name: 'no authority recorded', part: { configuration: { authority: null } }, cannotTell: low, no: [high] },
  {
    name: 'experimental, limitations silent on night and instrument flight',
    part: { configuration: { aircraft: { certificate: 'experimental' }, authority: { nightVfr: null, ifr: null } } },
    no: ['night', 'ifr', 'lpv', 'ils'],
  },
  { name: 'no tachometer', part: equipment('tachometer', { state: 'absent' }), no: all },
  { name: 'tachometer not recorded', part: equipment('tachometer', null), cannotTell: low, no: [high] },
  {
    name: 'no landing light',
    part: equipment('landing-light', { state: 'absent' }),
    no: ['night for hire'],
    yes: ['day', 'night', 'ifr'],
  },
  {
    name: 'no clock',
    part: equipment('clock', { state: 'absent' }),
    no: ['ifr', 'lpv', 'ils'],
    yes: ['day', 'night', 'class C'],
  },
  {
    name: 'emergency transmitter never inspected',
    part: entries({ without: ['locator'], and: [] }),
    cannotTell: low.filter((each) => each !== 'lesson'),
    no: [high],
    yes: ['lesson'],
  },
  {
    name: 'emergency transmitter lapsed',
    part: entries({
      without: ['locator'],
      and: [recordOf({ kind: 'elt-inspection', on: '2025-02-28', subjects: ['elt1'], agency: mechanic })],
    }),
    no: all.filter((each) => each !== 'lesson'),
    yes: ['lesson'],
  },
  {
    name: 'antenna of the only radio not approved',
    part: {
      configuration: {
        antennas: configuration.antennas.map((each) => (each.id === 'a-com' ? { ...each, approved: false } : each)),
      },
    },
    no: ['class C', 'ifr', 'lpv', 'ils'],
    yes: ['day', 'night'],
  },
  {
    name: 'transponder with ADS-B Out deactivated',
    part: deactivated('xpdr1'),
    no: ['class C'],
    yes: ['day', 'night', 'lesson'],
  },
  {
    name: 'a directive open',
    part: {
      status: {
        directives: [
          {
            id: 'dir1',
            number: '2026-05-01',
            subject: 'aircraft',
            state: 'open',
            reason: null,
            method: null,
            partNumber: null,
            serial: null,
            recurs: false,
            interval: null,
            nextDue: null,
            recordId: null,
          },
        ],
      },
    },
    no: all,
  },
  { name: 'list of directives not stated complete', part: incomplete('directives'), cannotTell: low, no: [high] },
  { name: 'list of defects not stated complete', part: incomplete('defects'), cannotTell: low, no: [high] },
  { name: 'navigator inoperative, not deferred', part: defect({ deferral: null }), no: all },
  { name: 'navigator deferred', part: defect({}), no: ['lpv'], yes: ['day', 'night', 'lesson', 'ifr', 'ils'] },
  {
    name: 'navigator, nobody decided',
    part: defect({ decidedBy: null }),
    cannotTell: low.filter((each) => each !== 'lpv'),
    no: [high],
  },
  { name: 'clock deferred', part: defect({ subject: 'clock' }), no: ['ifr', 'lpv', 'ils'], yes: ['day', 'night'] },
  {
    name: 'landing light deferred',
    part: defect({ subject: 'landing-light' }),
    no: ['night for hire'],
    yes: ['day', 'night', 'ifr'],
  },
  { name: 'wear', part: defect({ kind: 'wear', deferral: null }), ...yes },
  { name: 'discrepancy', part: defect({ kind: 'discrepancy', deferral: null }), no: all },
  {
    name: 'deferred item not looked at at the inspection after it',
    part: defect({ subject: 'clock', deferral: { ...deferral, on: '2026-02-19' } }),
    no: ['day'],
  },
];

describe.each(cases)('$name', ({ part, no = [], cannotTell = [], yes: good = [] }) => {
  const asked = [
    ...no.map((each) => [each, 'no'] as const),
    ...cannotTell.map((each) => [each, 'cannot-tell'] as const),
    ...good.map((each) => [each, 'yes'] as const),
  ];
  it.each(asked)('%s: %s', (flight, ready) => {
    const found = assess(trainer(part), trainerCatalogue, { instant: goodDay }, flights[flight]);
    expect(found.operations['flight']?.ready, found.operations['flight']?.because.join(', ')).toBe(ready);
  });
});
