import { describe, expect, it } from 'vitest';
import { approvalOf, limitationOf, linkOf, typeOf } from '../../testing/builders.js';
import { catalogueOf } from '../../testing/changes.js';
import type { Part } from '../../testing/dossiers.js';
import { entries, goodDay, trainer, trainerCatalogue, trainerParts, trainerTypes } from '../../testing/trainer.js';
import type { Dossier } from '../dossier/dossier.js';
import type { Circuit, InstalledUnit, Link } from '../dossier/installation.js';
import type { Catalogue } from '../catalogue/type.js';
import { assess } from './assess.js';

/** What rules on installation, interfaces, indication, mass, electrical system and databases cost, seen at the operations. */
const flight = {
  rules: 'ifr',
  light: 'day',
  purpose: 'private',
  airspace: ['controlled'],
  topFt: 8000,
  localTrainingNm: null,
  overWaterBeyondGlide: false,
  crewOnly: false,
  errand: null,
  region: null,
  approaches: [],
} as const;
type Operation = 'vfr-day' | 'ifr' | 'approach-vor' | 'approach-ils' | 'approach-lnav' | 'approach-lpv';

function answers(
  dossier: Dossier,
  catalogue: Catalogue = trainerCatalogue,
  instant = goodDay,
): Record<Operation, string> {
  const { operations } = assess(dossier, catalogue, { instant }, flight);
  const ready = (name: Operation) => operations[name]?.ready ?? 'missing';
  return {
    'vfr-day': ready('vfr-day'),
    ifr: ready('ifr'),
    'approach-vor': ready('approach-vor'),
    'approach-ils': ready('approach-ils'),
    'approach-lnav': ready('approach-lnav'),
    'approach-lpv': ready('approach-lpv'),
  };
}

const good = {
  'vfr-day': 'yes',
  ifr: 'yes',
  'approach-vor': 'yes',
  'approach-ils': 'yes',
  'approach-lnav': 'yes',
  'approach-lpv': 'yes',
} as const;
const withoutGnss = { ...good, 'approach-lnav': 'no', 'approach-lpv': 'no' } as const;

const base = trainer().configuration;
const units = (id: string, change: (unit: InstalledUnit) => InstalledUnit): Part<Dossier> => ({
  configuration: { units: base.units.map((each) => (each.id === id ? change(each) : each)) },
});
const links = (change: (all: readonly Link[]) => readonly Link[]): Part<Dossier> => ({
  configuration: { links: change(base.links) },
});
const supplement = (part: Partial<Dossier['configuration']['supplements'][number]>): Part<Dossier> => ({
  configuration: { supplements: base.supplements.map((each) => ({ ...each, ...part })) },
});

describe('what the installation costs', () => {
  it('costs nothing where everything is in order', () => {
    expect(answers(trainer())).toEqual(good);
  });

  it('keeps VOR and ILS when the supplement of the navigator is not aboard', () => {
    expect(answers(trainer(supplement({ aboard: false })))).toEqual(withoutGnss);
  });

  it('takes vertical guidance alone where the supplement stops at LNAV', () => {
    expect(answers(trainer(supplement({ grants: ['nav-gnss', 'approach-lnav'] })))).toEqual({
      ...good,
      'approach-lpv': 'no',
    });
  });

  it('takes every IFR use of a navigator installed for VFR, and nothing else', () => {
    const vfr = units('gps1', (unit) => ({
      ...unit,
      approval: approvalOf({ basis: 'minor-alteration', grants: ['vfr-only'] }),
    }));
    expect(answers(trainer(vfr))).toEqual(withoutGnss);
  });

  it('cannot tell while a VFR placard contradicts an IFR approval', () => {
    const placards = [{ id: 'p1', kind: 'gnss-vfr-only' as const, unitId: 'gps1', inView: true, text: 'VFR only' }];
    expect(answers(trainer({ configuration: { placards } }))).toEqual({
      ...good,
      'approach-lnav': 'cannot-tell',
      'approach-lpv': 'cannot-tell',
    });
  });

  it('takes vertical guidance where the wire to the indicator is missing', () => {
    const unwired = links((all) => all.filter((each) => each.fromPort !== 'P1-VERT'));
    expect(answers(trainer(unwired))).toEqual({ ...good, 'approach-lpv': 'no' });
  });

  it('takes both sources off a shared indicator that does not say which it shows', () => {
    const shared = links((all) => [
      ...all.filter((each) => each.toUnit !== 'cdi1'),
      linkOf('gps1', 'P1-LAT', 'cdi2', 'LAT'),
      linkOf('gps1', 'P1-VERT', 'cdi2', 'VERT'),
    ]);
    const catalogue = catalogueOf(
      ...Object.values({
        ...trainerTypes,
        navigator: typeOf({
          ...trainerTypes.navigator,
          pairs: trainerTypes.navigator.pairs.map((each) =>
            each.family === 'di2' ? { ...each, family: 'di1' } : each,
          ),
        }),
      }),
    );
    expect(answers(trainer(shared), catalogue)).toEqual({
      'vfr-day': 'yes',
      ifr: 'no',
      'approach-vor': 'no',
      'approach-ils': 'no',
      'approach-lnav': 'no',
      'approach-lpv': 'no',
    });
  });

  it('takes the navigator on a plain antenna, and keeps the VHF receivers', () => {
    const antennas = base.antennas.map((each) => (each.id === 'a-gps' ? { ...each, kind: 'gnss' as const } : each));
    expect(answers(trainer({ configuration: { antennas } }))).toEqual(withoutGnss);
  });

  it('cannot tell of one joint that nothing approves, and costs nothing beside it', () => {
    const silent = catalogueOf(
      ...Object.values({ ...trainerTypes, navCom: typeOf({ ...trainerTypes.navCom, pairs: [] }) }),
    );
    expect(answers(trainer(), silent)).toEqual({
      ...good,
      'approach-vor': 'cannot-tell',
      'approach-ils': 'cannot-tell',
    });
    const found = { by: 'as-found', document: null, acceptedBy: { asOf: '2024-05-01', by: 'J. Orrell' } } as const;
    const adopted = links((all) => all.map((each) => (each.fromUnit === 'nav1' ? { ...each, cover: found } : each)));
    expect(answers(trainer(adopted), silent)).toEqual(good);
  });

  it('cannot tell of a unit whose approval nobody recorded', () => {
    const unknown = units('gps1', (unit) => ({ ...unit, approval: null }));
    expect(answers(trainer(unknown))).toEqual({
      ...good,
      'approach-lnav': 'cannot-tell',
      'approach-lpv': 'cannot-tell',
    });
  });

  it('never grounds an old aircraft for sizes, view, weight records or breakers that nobody measured', () => {
    const unmeasured: Part<Dossier> = {
      configuration: {
        mass: null,
        electrical: {
          busV: 14,
          alternatorA: null,
          batteryAh: null,
          circuits: (base.electrical?.circuits ?? []).map((each) => ({ ...each, ratingA: 50 })),
        },
        openings: [
          {
            id: 'stack',
            place: 'centre-stack',
            widthIn: null,
            heightIn: null,
            depthIn: null,
            rightOfEyeIn: null,
            belowEyeIn: null,
            eyeDistanceIn: null,
          },
        ],
      },
    };
    const inStack = units('nav1', (unit) => ({ ...unit, openingId: 'stack' }));
    expect(answers(trainer(unmeasured, inStack))).toEqual(good);
  });

  it('falls back on VOR alone when a C129 navigator has none beside it', () => {
    const old = catalogueOf(
      ...Object.values({
        ...trainerTypes,
        navigator: typeOf({ ...trainerTypes.navigator, authorisations: [{ tso: 'C129a', class: 'A1' }] }),
      }),
    );
    expect(answers(trainer(), old)).toEqual({ ...good, 'approach-lpv': 'no' });
    expect(answers(trainer(entries({ without: ['vor'] })), old).ifr).not.toBe('yes');
    expect(answers(trainer(entries({ without: ['vor'] }))).ifr).toBe('yes');
  });

  it('loses GNSS at the end of the cycle and has it back when the next one takes effect', () => {
    const [load] = trainerParts.status?.loads ?? [];
    if (!load) throw new Error('the trainer carries no navigation data');
    const next = {
      ...load,
      slot: 'next' as const,
      cycle: '2603',
      effective: '2026-03-19T12:00Z',
      expires: '2026-04-16T09:01Z',
    };
    const loaded = trainer({ status: { loads: [next, load] } });
    expect(answers(loaded, trainerCatalogue, '2026-03-19T09:00Z')).toEqual(good);
    expect(answers(loaded, trainerCatalogue, '2026-03-19T09:01Z')).toEqual(withoutGnss);
    expect(answers(loaded, trainerCatalogue, '2026-03-19T12:00Z')).toEqual(good);
  });
});

describe('what building it in costs: the plan and the release, no flight', () => {
  const asBuilt = (part: Partial<NonNullable<InstalledUnit['asBuilt']>> | null) =>
    units('gps1', (unit) => ({ ...unit, asBuilt: part && unit.asBuilt && { ...unit.asBuilt, ...part } }));
  const electrical = (part: Partial<NonNullable<Dossier['configuration']['electrical']>>): Part<Dossier> => ({
    configuration: { electrical: part },
  });
  const circuits = (part: Partial<Circuit>) =>
    electrical({ circuits: (base.electrical?.circuits ?? []).map((each) => ({ ...each, ...part })) });
  const envelope = (mass: Partial<NonNullable<Dossier['configuration']['mass']>>): Part<Dossier> => ({
    configuration: { mass },
  });
  const amended: Part<Dossier> = { configuration: { aircraft: { basis: { code: 'part-23', amendment: 62 } } } };

  it.each<readonly [name: string, ruleId: string, part: Part<Dossier>]>([
    ['nothing recorded of how it is built in', 'mount-strength', asBuilt(null)],
    ['a weak mount', 'mount-strength', asBuilt({ couldStrike: true, bears: null })],
    ['covered intakes', 'cooling-path', asBuilt({ airwaysClear: false })],
    ['a light in the wrong colour', 'annunciator-colours', asBuilt({ lights: [{ use: 'warning', colour: 'blue' }] })],
    ['a wire that carries too much', 'wire-current', circuits({ loadA: 30 })],
    ['too great a voltage drop', 'voltage-drop', circuits({ wireLengthFt: 90 })],
    ['a shared breaker of an essential circuit', 'one-circuit-per-essential-breaker', circuits({ circuitsGuarded: 2 })],
    ['too small a battery', 'battery-endurance', electrical({ batteryAh: 1 })],
    ['too small an alternator', 'load-by-condition', electrical({ alternatorA: 2 })],
    ['limits that adverse loading passes', 'loaded-extremes', envelope({ emptyArmIn: 60 })],
    ['limits not recorded', 'loaded-extremes', envelope({ envelope: null })],
    [
      'an antenna close to another',
      'antenna-separation',
      { configuration: { antennas: base.antennas.map((each) => ({ ...each, xIn: 50, yIn: 0 })) } },
    ],
    [
      'a transponder out of reach',
      'reach-and-view',
      units('xpdr1', (unit) => ({ ...unit, place: 'copilot-panel' as const })),
    ],
  ])('%s', (_name, ruleId, part) => {
    const dossier = trainer(amended, part);
    expect(answers(dossier)).toEqual(good);
    const { results } = assess(dossier, trainerCatalogue, { instant: goodDay }, flight);
    const found = results.filter((each) => each.ruleId === ruleId && each.outcome !== 'met');
    expect(found.length).toBeGreaterThan(0);
    expect(found.flatMap(({ effects }) => effects).filter(({ stops }) => stops === 'capability')).toEqual([]);
  });

  it('costs what hangs on it where a manual requires a unit that is not there', () => {
    const asking = typeOf({
      ...trainerTypes.navigator,
      limitations: [limitationOf({ kind: 'requires', functions: ['gnss'], beyond: ['dme'] })],
    });
    const types = catalogueOf(...Object.values({ ...trainerTypes, navigator: asking }));
    expect(answers(trainer(), types)).toEqual(withoutGnss);
  });

  it('costs what only a portable device shows', () => {
    const portable = typeOf({
      ...trainerTypes.indicator,
      functions: [...trainerTypes.indicator.functions, 'portable-display'],
    });
    const types = catalogueOf(...Object.values({ ...trainerTypes, indicator: portable }));
    expect(answers(trainer(), types)).toEqual(withoutGnss);
  });
});
