import { describe, expect, test } from 'vitest';
import { vhfChannel } from '../../libs/rules/src/calculations/vhf.js';
import type { EquipmentType, FunctionCode } from '../../libs/rules/src/catalogue/type.js';
import type { Dossier } from '../../libs/rules/src/dossier/dossier.js';
import type { InstalledUnit, Opening } from '../../libs/rules/src/dossier/installation.js';
import { factsOf } from '../../libs/rules/src/graph/facts.js';
import { rules } from '../../libs/rules/src/rules/registry.js';
import { approvalOf, limitationOf, linkOf, typeOf, unitOf } from '../../libs/rules/testing/builders.js';
import { catalogueOf } from '../../libs/rules/testing/changes.js';
import { dossierOf, jointsComplete } from '../../libs/rules/testing/dossiers.js';
import { said } from './said.js';

/** Figures and habits that the trade shares without a published source (source: common practice). Each stands in an example of its own. */

const outcome = (ruleId: string, subject: string, dossier: Dossier, types: readonly EquipmentType[] = []) =>
  said(ruleId, { dossier, types, subject, at: '2026-03-02T14:00Z' });

const aircraft = (configuration: Partial<Dossier['configuration']>) => dossierOf({ configuration }, jointsComplete);
const stack = (part: Partial<Opening>): Opening => ({
  id: 'stack',
  place: 'centre-stack',
  widthIn: 6.25,
  heightIn: 2,
  depthIn: 12,
  rightOfEyeIn: null,
  belowEyeIn: null,
  eyeDistanceIn: null,
  ...part,
});
const plain = (id: string, ...functions: readonly FunctionCode[]) => unitOf({ id, functions: [...functions] });
const own = (part: Partial<InstalledUnit>) => unitOf({ id: 'u', typeId: 't', ...part });
const joint = (from: string, to: string, signal: string) =>
  linkOf(from, signal, to, signal, { id: `${from}-${to}-${signal}` });

describe('common practice: sizes', () => {
  test('a unit two inches high takes an opening of 6.25 in by 2 in', () => {
    const type = typeOf({ id: 't', functions: ['com'], bezel: { widthIn: 6.25, heightIn: 2, depthIn: null } });
    const fits = (part: Partial<Opening>) =>
      outcome(
        'fits-the-opening',
        'stack',
        aircraft({ openings: [stack(part)], units: [own({ openingId: 'stack' })] }),
        [type],
      );
    expect([fits({}), fits({ heightIn: 1.99 }), fits({ widthIn: 6.24 })]).toEqual(['met', 'not-met', 'not-met']);
  });

  test('units of one family differ in depth by more than twice, 4.7 in and 10 in: judged unit by unit', () => {
    const deep = (id: string, depthIn: number) =>
      typeOf({ id, family: 'one', functions: ['com'], bezel: { widthIn: 6.25, heightIn: 1.3, depthIn } });
    const room = aircraft({
      openings: [stack({ heightIn: 4, depthIn: 6 })],
      units: [
        own({ id: 'short', typeId: 'a', openingId: 'stack' }),
        own({ id: 'long', typeId: 'b', openingId: 'stack' }),
      ],
    });
    const of = (unit: string) => outcome('depth-behind-panel', unit, room, [deep('a', 4.7), deep('b', 10)]);
    expect([of('short'), of('long')]).toEqual(['met', 'not-met']);
  });
});

test('common practice: a unit with its own fan needs no outside air, yet its intakes and exhaust must stay clear', () => {
  const type = typeOf({
    id: 't',
    functions: ['gnss'],
    cooling: { by: 'own-fan', clearanceIn: null, document: 'Installation manual t' },
  });
  const cooled = (airwaysClear: boolean | null) =>
    outcome(
      'cooling-path',
      'u',
      aircraft({
        units: [own({ asBuilt: { air: 'none', airwaysClear, couldStrike: null, bears: null, lights: null } })],
      }),
      [type],
    );
  expect([cooled(true), cooled(false), cooled(null)]).toEqual(['met', 'not-met', 'cannot-tell']);
});

test('common practice: communication is spaced by 25 kHz, by 8.33 kHz where that is required', () => {
  expect(vhfChannel('127.350')).toEqual({ spacingKHz: 25, carrierMHz: 127.35 });
  expect(vhfChannel('127.355')).toEqual({ spacingKHz: 8.33, carrierMHz: 127.35 });
});

describe('common practice: what the installation of a navigator needs at least, for VFR', () => {
  test('a place that its manual approves', () => {
    const type = typeOf({
      id: 't',
      functions: ['gnss'],
      bezel: { widthIn: 6.25, heightIn: 2, depthIn: 8 },
      view: {
        approvedPlaces: ['centre-stack'],
        maxHorizontalDeg: null,
        maxOffsetIn: null,
        document: 'Installation manual t',
      },
    });
    const at = (place: InstalledUnit['place']) =>
      outcome('reach-and-view', 'u', aircraft({ units: [own({ place })] }), [type]);
    expect([at('centre-stack'), at('copilot-panel'), at(null)]).toEqual(['met', 'not-met', 'cannot-tell']);
  });

  test('an antenna approved for a receiver with augmentation', () => {
    const type = typeOf({ id: 't', functions: ['gnss'], authorisations: [{ tso: 'C146c', class: 'Gamma-3' }] });
    const by = (kind: 'gnss' | 'gnss-sbas', approved: boolean | null) =>
      outcome(
        'antenna-fitted',
        'u:gnss',
        aircraft({ units: [own({})], antennas: [{ id: 'a', kind, units: ['u'], approved, xIn: null, yIn: null }] }),
        [type],
      );
    expect([by('gnss-sbas', true), by('gnss-sbas', false), by('gnss-sbas', null), by('gnss', true)]).toEqual([
      'met',
      'not-met',
      'cannot-tell',
      'not-met',
    ]);
  });

  test('a communication antenna where it transmits', () => {
    const complete = {
      status: { completeness: [{ list: 'equipment', stated: { asOf: '2026-01-01', by: 'J. Orrell' } }] },
    } as const;
    const fitted = dossierOf(complete, {
      configuration: {
        units: [plain('u', 'gnss', 'com')],
        antennas: [{ id: 'a', kind: 'com', units: ['u'], approved: null, xIn: null, yIn: null }],
      },
    });
    const without = dossierOf(complete, { configuration: { units: [plain('u', 'gnss', 'com')] } });
    const receiver = dossierOf(complete, { configuration: { units: [plain('u', 'gnss')] } });
    const of = (dossier: Dossier) => outcome('antenna-fitted', 'u:com', dossier);
    expect([of(fitted), of(without), of(receiver)]).toEqual(['met', 'not-met', 'no statement']);
  });

  test('an indicator outside it for lateral guidance, where its own screen may stand in for none', () => {
    const type = typeOf({
      id: 't',
      functions: ['gnss', 'lateral-deviation'],
      limitations: [limitationOf({ kind: 'not-a-substitute', functions: ['lateral-deviation'] })],
      ports: [
        {
          name: 'LAT',
          signal: 'lateral-deviation',
          direction: 'out',
          standard: 'analog',
          speed: null,
          requiredFor: [],
        },
      ],
    });
    const alone = aircraft({ units: [own({})] });
    const joined = aircraft({
      units: [plain('cdi', 'lateral-deviation'), own({})],
      links: [linkOf('u', 'LAT', 'cdi', 'lateral-deviation')],
    });
    expect(outcome('lateral-indicator', 'u>u', alone, [type])).toBe('not-met');
    expect(outcome('lateral-indicator', 'u>cdi', joined, [type])).toBe('met');
  });

  test('and one for the glide path', () => {
    const lateral = joint('u', 'cdi', 'lateral-deviation');
    const both = [lateral, joint('u', 'cdi', 'vertical-deviation')];
    const units = [plain('cdi', 'lateral-deviation', 'vertical-deviation'), plain('u', 'gnss')];
    expect(outcome('vertical-indicator', 'u>cdi', aircraft({ units, links: [lateral] }))).toBe('not-met');
    expect(outcome('vertical-indicator', 'u>cdi', aircraft({ units, links: both }))).toBe('met');
  });

  test.each([
    ['integrity-annunciation', 'integrity-flag', 'u:u:integrity-annunciation', 'u:ann:integrity-annunciation'],
    ['approach-annunciation', 'approach-status', 'u', 'u'],
  ] as const)('%s repeated where the unit is out of view', (code, signal, onItself, onLight) => {
    const type = typeOf({
      id: 't',
      functions: ['gnss', code],
      view: {
        approvedPlaces: ['pilot-panel'],
        maxHorizontalDeg: null,
        maxOffsetIn: null,
        document: 'Installation manual t',
      },
      ports: [{ name: 'OUT', signal, direction: 'out', standard: 'discrete', speed: null, requiredFor: [] }],
    });
    const seen = aircraft({ units: [own({ place: 'pilot-panel' })] });
    const far = aircraft({ units: [own({ place: 'centre-stack' })] });
    const light = typeOf({ ...type, id: 'light', functions: [code], ports: [] });
    const repeated = (place: 'pilot-panel' | 'remote') =>
      aircraft({
        units: [unitOf({ id: 'ann', typeId: 'light', place }), own({ place: 'centre-stack' })],
        links: [linkOf('u', 'OUT', 'ann', signal)],
      });
    const of = (dossier: Dossier, subject: string) => outcome(code, subject, dossier, [type, light]);
    expect([of(seen, onItself), of(far, onItself)]).toEqual(['met', 'not-met']);
    expect([of(repeated('pilot-panel'), onLight), of(repeated('remote'), onLight)]).toEqual(['met', 'not-met']);
  });

  test('a placard next to it, in clear view: VFR only', () => {
    const vfr = (inView: boolean | null) =>
      aircraft({
        units: [{ ...plain('u', 'gnss'), approval: approvalOf({ grants: ['vfr-only'] }) }],
        placards: [
          { id: 'p', kind: 'gnss-vfr-only', unitId: 'u', inView, text: 'Satellite navigation limited to VFR' },
        ],
      });
    const of = (inView: boolean | null) => outcome('vfr-limited-placard', 'u', vfr(inView));
    expect([of(true), of(false), of(null)]).toEqual(['met', 'not-met', 'cannot-tell']);
  });
});

describe('common practice: what IFR adds', () => {
  const fed = [plain('u', 'gnss')];

  test('the indicator in primary view, or where its maker approves', () => {
    const indicator = (rightOfEyeIn: number) =>
      aircraft({
        openings: [stack({ rightOfEyeIn, belowEyeIn: 8, eyeDistanceIn: 30 })],
        units: [{ ...plain('cdi', 'lateral-deviation'), openingId: 'stack' }, ...fed],
        links: [joint('u', 'cdi', 'lateral-deviation')],
      });
    expect([indicator(8), indicator(9)].map((each) => outcome('indicator-in-view', 'cdi', each))).toEqual([
      'met',
      'not-met',
    ]);
    const told = typeOf({
      id: 't',
      functions: ['lateral-deviation'],
      view: {
        approvedPlaces: ['centre-stack'],
        maxHorizontalDeg: null,
        maxOffsetIn: null,
        document: 'Installation manual t',
      },
      ports: [
        { name: 'LAT', signal: 'lateral-deviation', direction: 'in', standard: 'analog', speed: null, requiredFor: [] },
      ],
    });
    const placed = aircraft({
      units: [own({ id: 'cdi', place: 'centre-stack' }), ...fed],
      links: [linkOf('u', 'lateral-deviation', 'cdi', 'LAT')],
    });
    expect(outcome('indicator-in-view', 'cdi', placed, [told])).toBe('met');
  });

  test('vertical deviation for vertical guidance: without it the chain loses what guides down, and nothing else', () => {
    const rule = rules.find(({ meta }) => meta.id === 'vertical-indicator');
    const dossier = aircraft({
      units: [plain('cdi', 'lateral-deviation'), ...fed],
      links: [joint('u', 'cdi', 'lateral-deviation')],
    });
    const [draft] = rule?.evaluate(factsOf(dossier, catalogueOf()), []) ?? [];
    expect(draft?.effects.flatMap((each) => (each.stops === 'capability' ? [each.capability] : []))).toEqual([
      'approach-lnav-vnav',
      'approach-lpv',
    ]);
  });

  const shared = (...more: readonly FunctionCode[]) =>
    aircraft({
      units: [plain('cdi', 'lateral-deviation', ...more), plain('nav', 'vor-receiver'), ...fed],
      links: [joint('nav', 'cdi', 'lateral-deviation'), joint('u', 'cdi', 'lateral-deviation')],
    });

  test('the source shown at a shared indicator; an indicator that shows its own source stands in', () => {
    expect(outcome('source-annunciation', 'u>cdi', shared())).toBe('not-met');
    expect(outcome('source-annunciation', 'u>cdi:cdi:source-annunciation', shared('source-annunciation'))).toBe('met');
  });

  test('a selector or relay where the former source is kept', () => {
    const relay = aircraft({
      units: [plain('cdi', 'lateral-deviation'), plain('nav', 'vor-receiver'), plain('sel', 'source-selector'), ...fed],
      links: [
        joint('nav', 'sel', 'lateral-deviation'),
        joint('u', 'sel', 'lateral-deviation'),
        joint('sel', 'cdi', 'lateral-deviation'),
      ],
    });
    const bare = typeOf({
      id: 't',
      functions: ['lateral-deviation'],
      ports: ['A', 'B'].map(
        (name) =>
          ({
            name,
            signal: 'lateral-deviation',
            direction: 'in',
            standard: 'analog',
            speed: null,
            requiredFor: [],
          }) as const,
      ),
    });
    const kept = aircraft({
      units: [own({ id: 'cdi' }), plain('nav', 'vor-receiver'), ...fed],
      links: [linkOf('nav', 'lateral-deviation', 'cdi', 'A'), linkOf('u', 'lateral-deviation', 'cdi', 'B')],
    });
    expect(outcome('source-selector', 'cdi', relay)).toBe('met');
    expect(outcome('source-selector', 'cdi', kept, [bare])).toBe('not-met');
  });
});

describe('common practice: limits on joining are data of the manual', () => {
  const bound = (
    kind: 'no-link' | 'no-chain',
    functions: readonly FunctionCode[],
    beyond: readonly FunctionCode[] = [],
  ) =>
    typeOf({
      id: 't',
      functions: ['gnss'],
      limitations: [limitationOf({ kind, functions: [...functions], beyond: [...beyond] })],
    });
  const typed = (id: string, ...functions: readonly FunctionCode[]) => typeOf({ id, functions: [...functions] });
  const joined = (id: string, ...more: readonly (readonly [string, string])[]) =>
    aircraft({
      units: [
        own({}),
        unitOf({ id, typeId: id }),
        ...[...new Set(more.flat())].filter((each) => each !== id).map((each) => unitOf({ id: each, typeId: each })),
      ],
      links: [
        linkOf('u', 'data', id, 'data', { id: 'joint' }),
        ...more.map(([from, to]) => linkOf(from, 'data', to, 'data')),
      ],
    });

  test('another navigator', () => {
    const limit = bound('no-link', ['gnss']);
    expect(outcome('link-not-prohibited', 'joint', joined('second'), [limit, typed('second', 'gnss')])).toBe('not-met');
    expect(outcome('link-not-prohibited', 'joint', joined('second'), [limit, typed('second', 'autopilot')])).toBe(
      'met',
    );
  });

  test('an active traffic system', () => {
    const limit = bound('no-link', ['active-traffic']);
    expect(
      outcome('link-not-prohibited', 'joint', joined('traffic'), [limit, typed('traffic', 'active-traffic')]),
    ).toBe('not-met');
    expect(
      outcome('link-not-prohibited', 'joint', joined('traffic'), [limit, typed('traffic', 'traffic-display')]),
    ).toBe('met');
  });

  test('correlated traffic while its sensor is also joined to an active traffic system', () => {
    const limit = bound('no-chain', ['correlated-traffic'], ['active-traffic']);
    const types = [limit, typed('sensor', 'correlated-traffic'), typed('active', 'active-traffic')];
    expect(outcome('link-not-prohibited', 'joint', joined('sensor'), types)).toBe('met');
    expect(outcome('link-not-prohibited', 'joint', joined('sensor', ['active', 'sensor']), types)).toBe('not-met');
  });

  test('set up as a traffic display, it excludes correlated traffic on another display', () => {
    const limit = typeOf({
      id: 't',
      functions: ['traffic-display'],
      limitations: [
        limitationOf({
          kind: 'not-both',
          functions: ['traffic-display'],
          beyond: ['correlated-traffic'],
          elsewhere: true,
        }),
      ],
    });
    const set = (value: string, other: string) =>
      aircraft({
        units: [
          own({ options: [{ name: 'traffic-display', value }] }),
          unitOf({ id: 'other', typeId: 'other', options: [{ name: 'correlated-traffic', value: other }] }),
        ],
      });
    const of = (value: string, other: string) =>
      outcome('options-not-exclusive', 'u', set(value, other), [limit, typed('other', 'correlated-traffic')]);
    expect([of('on', 'on'), of('on', 'off'), of('off', 'on')]).toEqual(['not-met', 'met', 'met']);
  });

  test('a portable device stands in for no required display', () => {
    const shows = (...more: readonly InstalledUnit[]) =>
      aircraft({
        units: [plain('u', 'gnss'), plain('tablet', 'portable-display', 'lateral-deviation'), ...more],
        links: [
          joint('u', 'tablet', 'lateral-deviation'),
          ...more.map(({ id }) => joint('u', id, 'lateral-deviation')),
        ],
      });
    expect(outcome('portable-link-not-primary', 'tablet', shows())).toBe('not-met');
    expect(outcome('lateral-indicator', 'u', shows())).toBe('not-met');
    expect(outcome('portable-link-not-primary', 'tablet', shows(plain('cdi', 'lateral-deviation')))).toBe('met');
  });
});
