import { describe, expect, test } from 'vitest';
import { c129Classes, sbasOperationalClasses } from '../../libs/rules/src/facts/gnss.js';
import type { DatabaseLoad, RecordHead } from '../../libs/rules/src/dossier/status.js';
import type { Grant } from '../../libs/rules/src/dossier/installation.js';
import { gnssCapabilities } from '../../libs/rules/src/rules/effects.js';
import { approvalOf, pilot, recordOf, typeOf, unitOf } from '../../libs/rules/testing/builders.js';
import { dossierOf } from '../../libs/rules/testing/dossiers.js';
import { said } from './said.js';

const at = '2026-03-02T14:00Z';
const everything: Grant[] = [...gnssCapabilities];
const installed = (part: Parameters<typeof unitOf>[0]) =>
  dossierOf({
    configuration: {
      units: [unitOf({ approval: approvalOf({ grants: everything }), ...part })],
      supplements: [
        {
          id: 's1',
          units: [part.id],
          document: { title: 'Supplement 12', revision: 'A', date: null },
          aboard: true,
          currentDataRequired: null,
          grants: everything,
        },
      ],
    },
  });
const unit = installed({ id: 'gps1', typeId: 'nx' });

/** Papers that grant everything: the class alone decides. */
function allows(tso: string, marked: string | null, use: (typeof gnssCapabilities)[number]) {
  const types = [typeOf({ id: 'nx', functions: ['gnss'], authorisations: [{ tso, class: marked }] })];
  return said('gnss-class', { dossier: unit, types, at, subject: `gps1:${use}` });
}
const asksForOther = (tso: string, marked: string | null) =>
  said('gnss-alternate-means', {
    dossier: unit,
    types: [typeOf({ id: 'nx', functions: ['gnss'], authorisations: [{ tso, class: marked }] })],
    at,
    capabilities: { 'nav-vor': 'not-met' },
  });

/** AIM 1-1-17, table of classes, issue of 9 July 2026: integrity watched, oceanic, en route, terminal, non-precision approach. */
const classes = [
  ['A1', 'receiver', 'yes'],
  ['A2', 'receiver', 'no'],
  ['B1', 'receiver', 'yes'],
  ['B2', 'receiver', 'no'],
  ['B3', 'integrated-system', 'yes'],
  ['B4', 'integrated-system', 'no'],
  ['C1', 'receiver', 'yes'],
  ['C2', 'receiver', 'no'],
  ['C3', 'integrated-system', 'yes'],
  ['C4', 'integrated-system', 'no'],
] as const;

describe('AIM 1-1-17, classes of TSO-C129', () => {
  test.each(classes)('%s: integrity by the %s, approach %s', (name, raim, approach) => {
    expect(allows('C129a', name, 'approach-lnav')).toBe(approach === 'yes' ? 'met' : 'not-met');
    expect(c129Classes.value[name]).toMatchObject({ raim, oceanic: true, enRoute: true, terminal: true });
  });

  test.each(classes)(
    '%s: b.3(b) names A1, B1, B3, C1, C3 alone for domestic flight, though the table says yes for all',
    (name) => {
      const named = ['A1', 'B1', 'B3', 'C1', 'C3'].includes(name);
      expect(allows('C129a', name, 'nav-gnss')).toBe(named ? 'met' : 'cannot-tell');
    },
  );

  test.each(classes)('%s: no vertical guidance, no localizer performance', (name) => {
    for (const use of ['approach-lp', 'approach-lnav-vnav', 'approach-lpv'] as const)
      expect(allows('C129a', name, use)).toBe('not-met');
  });

  test('no other class is in the table', () => {
    expect(Object.keys(c129Classes.value)).toEqual(classes.map(([name]) => name));
    expect(allows('C129a', 'D1', 'nav-gnss')).toBe('cannot-tell');
  });

  test('b.2(a)(1): TSO-C115a does not meet C129; hand-held and VFR sets are not for IFR', () => {
    expect(allows('C115a', null, 'nav-gnss')).toBe('not-met');
    const handHeld = installed({ id: 'tablet', functions: ['gnss', 'portable-display'] });
    expect(said('gnss-class', { dossier: handHeld, at, subject: 'tablet:nav-gnss' })).toBe('not-met');
    const vfrPanel = installed({ id: 'gps1', typeId: 'nx', approval: approvalOf({ grants: ['vfr-only'] }) });
    const types = [typeOf({ id: 'nx', functions: ['gnss'], authorisations: [{ tso: 'C146d', class: 'Gamma-3' }] })];
    expect(said('gnss-class', { dossier: vfrPanel, types, at, subject: 'gps1:nav-gnss' })).toBe('not-met');
  });

  test('b.3(b), (c)(1): C196 flies en route and lateral approaches', () => {
    expect(gnssCapabilities.filter((use) => allows('C196a', null, use) === 'met')).toEqual([
      'nav-gnss',
      'approach-lnav',
    ]);
  });

  test('b.2(a)(2), 1-1-18 c.8, c.9: C129 and C196 lean on another means, C145 and C146 do not', () => {
    expect([asksForOther('C129a', 'A1'), asksForOther('C196a', null)]).toEqual(['not-met', 'not-met']);
    expect([asksForOther('C145c', 'Beta-3'), asksForOther('C146c', 'Gamma-3')]).toEqual([
      'not-applicable',
      'not-applicable',
    ]);
  });
});

describe('augmented receivers, operational classes (AIM, as copied in May 2010; the issue of 2026 names none)', () => {
  test.each([
    ['approach-lpv', ['Gamma-3', 'Delta-4']],
    ['approach-lnav-vnav', ['Gamma-2', 'Gamma-3', 'Delta-4']],
  ] as const)('%s: %j', (use, able) => {
    const marks = ['Gamma-1', 'Gamma-2', 'Gamma-3', 'Delta-4'];
    expect(marks.filter((marked) => allows('C146c', marked, use) === 'met')).toEqual(able);
  });

  test('what is not read in the present issue is not called verified', () => {
    expect(Object.values(sbasOperationalClasses).map(({ source }) => source.status)).not.toContain('verified');
  });

  test.each([
    ['C145', 'Beta-3', 'not-met'],
    ['C145a', 'Beta-3', 'not-met'],
    ['C145b', 'Beta-3', 'met'],
    ['C146', 'Gamma-3', 'not-met'],
    ['C146a', 'Gamma-3', 'not-met'],
    ['C146b', 'Gamma-3', 'met'],
    ['C146e', 'Gamma-3', 'met'],
  ] as const)('AIM 1-1-18 b.3, note: %s %s, LP %s', (tso, marked, outcome) => {
    expect(allows(tso, marked, 'approach-lp')).toBe(outcome);
  });
});

describe('AIM 1-1-17 and 1-2-3 on navigation data, issue of 9 July 2026', () => {
  const types = [typeOf({ id: 'nx', functions: ['gnss'], databases: [{ kind: 'navigation', holdsNext: true }] })];
  const cycle2601: DatabaseLoad = {
    unitId: 'gps1',
    database: 'navigation',
    slot: 'this',
    cycle: '2601',
    effective: null,
    expires: null,
    loaded: { date: '2026-01-22', at: null },
    fromFlightDeck: true,
    coverage: null,
    notices: [],
  };
  const aircraft = (
    currentDataRequired: boolean | null,
    records: readonly RecordHead[] = [],
    load: Partial<DatabaseLoad> = {},
  ) =>
    dossierOf(
      {
        configuration: {
          units: [unitOf({ id: 'gps1', typeId: 'nx' })],
          supplements: [
            {
              id: 's1',
              units: ['gps1'],
              document: { title: 'Supplement 12', revision: 'A', date: null },
              aboard: true,
              currentDataRequired,
              grants: null,
            },
          ],
        },
      },
      { status: { loads: [{ ...cycle2601, ...load }], records } },
    );
  const compared = recordOf({
    kind: 'data-verification',
    on: '2026-03-02',
    subjects: ['gps1'],
    agency: pilot,
    note: 'Approach to runway 18 against its chart of 19 February.',
  });
  const use = (
    kind: 'en-route' | 'approach',
    dossier: ReturnType<typeof aircraft>,
    moment: string,
    rules: 'vfr' | 'ifr' = 'ifr',
  ) => said('navigation-data-current', { dossier, types, at: moment, subject: `gps1:${kind}`, flight: { rules } });

  test('b.1(c)(2): VFR has no requirement, however old the data', () => {
    expect(use('en-route', aircraft(true), '2031-03-02T12:00Z', 'vfr')).toBe('not-applicable');
  });

  test.each(['en-route', 'approach'] as const)(
    'b.2(b)(4)[a][1]: the use must lie before the expiration, to the minute (cycle 2601, %s: 0900Z, not 0901Z of 19 February 2026)',
    (kind) => {
      expect(use(kind, aircraft(true), '2026-02-19T09:00Z')).toBe('met');
      expect(use(kind, aircraft(true), '2026-02-19T09:01Z')).toBe('not-met');
      expect(use(kind, aircraft(true), '2026-01-22T09:00Z')).toBe('not-met');
    },
  );

  test('the expiration that the provider printed goes before the computed one', () => {
    const printed = aircraft(true, [], { expires: '2026-02-18T00:00Z' });
    expect([use('approach', printed, '2026-02-17T23:59Z'), use('approach', printed, '2026-02-18T00:00Z')]).toEqual([
      'met',
      'not-met',
    ]);
  });

  test('approval table, note 2: en route and terminal with expired data only verified for correctness', () => {
    expect(use('en-route', aircraft(false), '2026-03-02T18:00Z')).toBe('cannot-tell');
    expect(use('en-route', aircraft(false, [compared]), '2026-03-02T18:00Z')).toBe('met');
  });

  test('approval table, note 3: an approach with expired data only if the procedure was not amended since', () => {
    expect(use('approach', aircraft(false), '2026-03-02T18:00Z')).toBe('not-met');
    expect(use('approach', aircraft(false, [compared]), '2026-03-02T18:00Z')).toBe('met');
    expect(use('approach', aircraft(false, [{ ...compared, note: null }]), '2026-03-02T18:00Z')).toBe('cannot-tell');
  });

  test('b.2(a)(4): the supplement goes before the notes', () => {
    expect(use('approach', aircraft(true, [compared]), '2026-03-02T18:00Z')).toBe('not-met');
    expect(use('approach', aircraft(null, [compared]), '2026-03-02T18:00Z')).toBe('cannot-tell');
  });
});
