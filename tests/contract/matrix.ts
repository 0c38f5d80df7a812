import type { Dossier } from '../../libs/rules/src/dossier/dossier.js';
import type { InstalledUnit } from '../../libs/rules/src/dossier/installation.js';
import type { FlightConditions } from '../../libs/rules/src/verdict/conditions.js';
import { approvalOf, linkOf, recordOf, unitOf } from '../../libs/rules/testing/builders.js';
import { dossierOf } from '../../libs/rules/testing/dossiers.js';
import { entries, trainer, trainerRecords } from '../../libs/rules/testing/trainer.js';

/** Fourteen aircraft, each the well-kept trainer but for what its name says, and ten flights. All on one good day. */

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
const ifr: FlightConditions = { ...day, rules: 'ifr', airspace: ['controlled'], topFt: 9_000 };

export const flights: Readonly<Record<string, FlightConditions>> = {
  'VFR day, private': day,
  'VFR night, rental': { ...day, light: 'night', purpose: 'rental' },
  'VFR lesson within 25 NM': { ...day, purpose: 'training-provided', localTrainingNm: 25 },
  'VFR in class C': { ...day, airspace: ['controlled', 'class-b-c'] },
  'IFR en route': ifr,
  'IFR to VOR': { ...ifr, approaches: ['vor'] },
  'IFR to ILS': { ...ifr, approaches: ['ils'] },
  'IFR to LNAV': { ...ifr, approaches: ['lnav'] },
  'IFR to LPV': { ...ifr, approaches: ['lpv'] },
  'IFR night for hire to LPV or ILS, class C': {
    ...ifr,
    light: 'night',
    purpose: 'carriage-for-hire',
    airspace: ['controlled', 'class-b-c'],
    approaches: ['lpv', 'ils'],
  },
};

const base = trainer();
const { units, links, supplements, placards, loads } = { ...base.configuration, ...base.status };
const withUnit = (id: string, part: Partial<InstalledUnit>) =>
  units.map((unit) => (unit.id === id ? { ...unit, ...part } : unit));
const without = (...ids: readonly string[]) => ({
  units: units.filter((unit) => !ids.includes(unit.id)),
  links: links.filter((link) => !ids.includes(link.fromUnit) && !ids.includes(link.toUnit)),
});
const gnssApproval = (
  grants: readonly (
    'vfr-only' | 'nav-gnss' | 'approach-lnav' | 'approach-lp' | 'approach-lnav-vnav' | 'approach-lpv'
  )[],
) => approvalOf({ basis: 'stc-model-list', permission: true, modelListed: true, grants: [...grants] });
/** The position source must stay where ADS-B Out is to be kept apart from the case. */
const lapsedTransponder = {
  ...trainerRecords.transponder,
  id: 'transponder-old',
  done: { date: '2024-02-28', at: null },
};

export const aircraft: Readonly<Record<string, Dossier>> = {
  'everything in order': base,
  'experimental, VFR by day only': trainer(
    {
      configuration: {
        aircraft: { certificate: 'experimental' },
        authority: {
          ...base.configuration.authority,
          nightVfr: false,
          ifr: false,
          hire: false,
          conditionInspectionMonths: 12,
          document: { title: 'Operating limitations', revision: null, date: '2015-05-05' },
        },
      },
    },
    entries({
      without: ['annual', 'hundred'],
      and: [
        recordOf({
          kind: 'condition-inspection',
          on: '2025-09-10',
          outcome: 'approved',
          agency: trainerRecords.annual.agency,
        }),
      ],
    }),
  ),
  'light-sport, VFR only': trainer(
    {
      configuration: {
        aircraft: { certificate: 'light-sport' },
        authority: { ...base.configuration.authority, nightVfr: false, ifr: false },
      },
    },
    entries({
      without: ['annual'],
      and: [
        recordOf({
          kind: 'condition-inspection',
          on: '2025-09-10',
          outcome: 'approved',
          agency: trainerRecords.annual.agency,
        }),
      ],
    }),
  ),
  'VOR and ILS only': trainer({
    configuration: {
      ...without('gps1'),
      supplements: [],
      antennas: base.configuration.antennas.filter((each) => each.id !== 'a-gps'),
    },
    status: { loads: [] },
  }),
  'VFR-only navigator beside ILS': trainer({
    configuration: {
      units: withUnit('gps1', { approval: gnssApproval(['vfr-only']) }),
      supplements: [],
      placards: [
        ...placards,
        { id: 'p1', kind: 'gnss-vfr-only', unitId: 'gps1', inView: true, text: 'Satellite navigation limited to VFR' },
      ],
    },
  }),
  'two navigators, one with lapsed data': trainer({
    configuration: {
      units: [
        ...units,
        { ...(units.find((unit) => unit.id === 'gps1') ?? unitOf({ id: 'gps1' })), id: 'gps2', serial: 'G2' },
      ].sort((a, b) => (a.id < b.id ? -1 : 1)),
      links: [
        ...links.filter((link) => link.toUnit !== 'cdi2'),
        linkOf('gps2', 'P1-LAT', 'cdi3', 'LAT'),
        linkOf('gps2', 'P1-VERT', 'cdi3', 'VERT'),
        ...links.filter((link) => link.toUnit === 'cdi2'),
      ],
      antennas: base.configuration.antennas.map((each) =>
        each.id === 'a-gps' ? { ...each, units: ['gps1', 'gps2'] } : each,
      ),
      supplements: supplements.map((each) => ({ ...each, units: ['gps1', 'gps2'] })),
    },
    status: {
      loads: loads.flatMap((load) => [
        load,
        { ...load, unitId: 'gps2', cycle: '2601', effective: '2026-01-22T09:01Z', expires: '2026-02-19T09:01Z' },
      ]),
    },
  }),
  'approved for en route only': trainer({
    configuration: {
      units: withUnit('gps1', { approval: gnssApproval(['nav-gnss']) }),
      supplements: supplements.map((each) => ({ ...each, grants: ['nav-gnss'] })),
    },
  }),
  'one indicator for two sources, no annunciation': trainer({
    configuration: {
      ...without('cdi1'),
      links: [
        ...links.filter((link) => link.toUnit !== 'cdi1'),
        linkOf('gps1', 'P1-LAT', 'cdi2', 'LAT', {
          cover: {
            by: 'installation-approval',
            document: { title: 'Approved data', revision: 'A', date: null },
            acceptedBy: null,
          },
        }),
        linkOf('gps1', 'P1-VERT', 'cdi2', 'VERT', {
          cover: {
            by: 'installation-approval',
            document: { title: 'Approved data', revision: 'A', date: null },
            acceptedBy: null,
          },
        }),
      ],
    },
  }),
  'transponder test lapsed, ADS-B in the same box': trainer(
    entries({ without: ['transponder'], and: [lapsedTransponder] }),
  ),
  'transponder test lapsed, no ADS-B': trainer(
    {
      configuration: {
        units: withUnit('xpdr1', { typeId: null, functions: ['transponder'] }),
        links: [
          ...links.filter((link) => link.toUnit !== 'xpdr1'),
          linkOf('enc1', 'OUT', 'xpdr1', 'altitude-serial', {
            cover: { by: 'as-found', document: null, acceptedBy: { asOf: '2025-09-10', by: 'R. Tamsin' } },
          }),
        ],
      },
    },
    entries({ without: ['transponder'], and: [lapsedTransponder] }),
  ),
  'ELT removed 30 days ago, entry and placard': trainer(
    {
      configuration: {
        ...without('elt1'),
        placards: [
          ...placards,
          { id: 'p2', kind: 'elt-removed', unitId: null, inView: true, text: 'ELT not installed' },
        ],
      },
    },
    entries({
      without: ['locator', 'battery'],
      and: [
        recordOf({
          kind: 'elt-removal',
          on: '2026-02-14',
          outcome: null,
          agency: trainerRecords.locator.agency,
          note: 'Removed for repair: make, model, serial and reason in the entry',
        }),
      ],
    }),
  ),
  'turbine with an inoperative landing light': trainer({
    configuration: { aircraft: { engine: 'turboprop' } },
    status: {
      defects: [
        {
          id: 'd1',
          kind: 'inoperative-item',
          subject: 'landing-light',
          text: 'Landing light out',
          raised: { date: '2026-03-10', at: null },
          decidedBy: trainerRecords.annual.agency,
          deferral: {
            route: '91.213(d)',
            letter: null,
            notRequired: true,
            secured: true,
            placarded: true,
            recorded: true,
            noHazardBy: trainerRecords.annual.agency,
            on: '2026-03-11',
            reinspectedOn: null,
          },
        },
      ],
    },
  } as never),
  'nothing recorded': dossierOf({}),
  'freshly adopted as found': trainer({
    configuration: {
      units: units.map((unit) =>
        unit.approval === null
          ? unit
          : {
              ...unit,
              approval: { ...unit.approval, basis: 'as-found', acceptedBy: { asOf: '2026-03-01', by: 'R. Tamsin' } },
            },
      ),
      links: links.map((link) => ({
        ...link,
        cover: { by: 'as-found', document: null, acceptedBy: { asOf: '2026-03-01', by: 'R. Tamsin' } },
      })),
    },
  }),
};
