import { describe, expect, it } from 'vitest';
import { approvalOf, deferralOf, mechanic } from '../../testing/builders.js';
import { busy, ifr, ils, lpv, vfr } from '../../testing/flights.js';
import { openPanel, wornHose } from '../../testing/lost-flights.js';
import { entries, goodDay, trainer, trainerCatalogue, trainerRecords } from '../../testing/trainer.js';
import type { AskedMoment } from '../assess/assess.js';
import { widenMoment } from '../assess/assess.js';
import type { Dossier } from '../dossier/dossier.js';
import type { Defect, Deferral } from '../dossier/status.js';
import type { FlightConditions } from '../verdict/conditions.js';
import { widenConditions } from '../verdict/conditions.js';
import { defaultLabour } from './labour.js';
import { problemOf, wayBack } from './way-back.js';

const lesson: Partial<FlightConditions> = { ...vfr, purpose: 'training-provided' };

const inOrder = trainer();
const { units, links } = inOrder.configuration;
const old = (name: keyof typeof trainerRecords) => ({
  ...trainerRecords[name],
  id: `${name}-old`,
  done: { date: '2023-12-05', at: null },
});
const lapsed = (...names: readonly (keyof typeof trainerRecords)[]) =>
  trainer(entries({ without: names, and: names.map(old) }));
const battery = trainer(entries({ without: ['battery'], and: [{ ...trainerRecords.battery, expires: '2026-02-28' }] }));
const without = (unitId: string) => trainer({ configuration: { units: units.filter(({ id }) => id !== unitId) } });
const gps1 = (part: Partial<Dossier['configuration']['units'][number]>) =>
  trainer({ configuration: { units: units.map((each) => (each.id === 'gps1' ? { ...each, ...part } : each)) } });
const putOff: Deferral = deferralOf({ on: '2026-03-11' });
const defective = (subject: string, kind: Defect['kind'], deferral: Deferral | null) =>
  trainer({
    status: {
      defects: [
        {
          id: 'd1',
          kind,
          subject,
          text: 'Cuts out',
          raised: { date: '2026-03-10', at: null },
          decidedBy: mechanic,
          deferral,
        },
      ],
    },
  });
const onGps = ['load-database gps1 navigation 0.4', 'data-verification gps1 0.2', 'approve-installation gps1 12'];

const searchFrom = (
  dossier: Dossier,
  flight: Partial<FlightConditions>,
  moment: AskedMoment = { instant: goodDay, hours: 1 },
  labour = defaultLabour,
) => problemOf(dossier, trainerCatalogue, widenMoment(moment), widenConditions(flight), labour);
type Search = ReturnType<typeof searchFrom>;
const movesOf = ({ start, moves }: Search) => moves(start).map(({ id, cost }) => `${id} ${cost}`);
/** The aircraft after these moves, each of which must be offered where it is made. */
const after = (search: Search, ...ids: readonly string[]) =>
  ids.reduce((state, id) => {
    const move = search.moves(state).find((each) => each.id === id);
    if (!move) throw new Error(`${id} is not offered; ${search.moves(state).map((each) => each.id)}`);
    return search.after(state, move.action);
  }, search.start);

describe('what can be done first, with its hours', () => {
  it.each<readonly [string, Dossier, Partial<FlightConditions>, readonly string[]]>([
    ['nothing where the flight is a yes', inOrder, lpv, []],
    ['a held aircraft is let go', trainer({ status: { holds: [openPanel] } }), vfr, ['lift-hold h1 0.1']],
    [
      'a test alone, in the visit for all, or without the unit',
      lapsed('transponder'),
      busy,
      ['transponder-test xpdr1 1.5', 'altitude-suite 3', 'deactivate-unit xpdr1 0.6'],
    ],
    ['of two lapsed on the aircraft, the ways to mend one', lapsed('annual', 'locator'), vfr, ['annual-inspection 18']],
    [
      'the inspection again, or who signed it is found out',
      trainer(entries({ without: ['annual'], and: [{ ...trainerRecords.annual, agency: null }] })),
      vfr,
      ['annual-inspection 18', `find-out status.records.${trainerRecords.annual.id}.agency 0.5`],
    ],
    [
      'a list that nobody stated to be complete is asked about',
      trainer({ status: { completeness: [] } }),
      vfr,
      ['find-out status.completeness.defects 0.5'],
    ],
    [
      'navigation by either of two sources, each by its own ways',
      trainer(entries({ without: ['vor'], and: [old('vor')] }), { status: { loads: [] } }),
      ifr,
      [
        'vor-check nav1 0.2',
        'approve-installation nav1 12',
        'load-database gps1 navigation 0.4',
        'data-verification gps1 0.2',
        'find-out status.loads 0.5',
        'approve-installation gps1 12',
      ],
    ],
    [
      'ports are joined, shown on another indicator, or the unit is approved for more',
      trainer({ configuration: { links: [] } }),
      ils,
      [
        'join-ports nav1 3',
        'fit-indicator di1 4',
        'fit-indicator di2 4',
        'approve-installation nav1 12',
        'join-ports gps1 3',
        'approve-installation gps1 12',
      ],
    ],
    [
      'a transponder that gets no altitude is joined, or fed by another unit',
      trainer({ configuration: { links: links.filter(({ toUnit }) => toUnit !== 'xpdr1') } }),
      busy,
      ['join-ports xpdr1 3', 'fit-other en1 12', 'fit-navigator nx5 45', 'approve-installation xpdr1 12'],
    ],
    [
      'an approval that nobody recorded is found out, or made anew',
      gps1({ approval: null }),
      lpv,
      ['approve-installation gps1 12', 'find-out configuration.units.gps1.approval 0.5'],
    ],
    [
      'a navigator approved for visual flight is approved for more',
      gps1({ approval: approvalOf({ permission: true, modelListed: true, grants: ['vfr-only'] }) }),
      lpv,
      ['approve-installation gps1 12'],
    ],
    [
      'a transponder that is inoperative is repaired, also where that was put off',
      defective('xpdr1', 'inoperative-item', putOff),
      busy,
      ['repair-defect d1 4', 'approve-installation xpdr1 12'],
    ],
    [
      'so is ADS-B Out',
      defective('xpdr1', 'inoperative-item', putOff),
      { ...vfr, airspace: ['gulf-3000'] },
      ['repair-defect d1 4', 'approve-installation xpdr1 12'],
    ],
    [
      'so is an emergency transmitter',
      defective('elt1', 'inoperative-item', putOff),
      vfr,
      ['repair-defect d1 4', 'elt-inspection elt1 1', 'elt-battery elt1 0.8'],
    ],
    ['no emergency transmitter: one is fitted', without('elt1'), vfr, ['fit-elt el4 8']],
    ['no radio: one is fitted', without('nav1'), ifr, ['fit-com vc1 12']],
    ['no transponder: one is fitted', without('xpdr1'), busy, ['fit-transponder ms4 16']],
    ['no navigator: one is fitted', without('gps1'), lpv, ['fit-navigator nx5 45']],
    ['no navigator, and none is asked for', without('gps1'), ifr, []],
  ])('%s', (_, dossier, flight, expected) => {
    expect(movesOf(searchFrom(dossier, flight))).toEqual(expected);
  });

  it('meters that were last read long ago are read, and no sooner', () => {
    const readOn = (asOf: string) => trainer({ meters: { readings: { tach: { value: 405_000, asOf, by: 'Desk' } } } });
    const at = { instant: goodDay, hours: 1 };
    expect(movesOf(searchFrom(readOn('2026-02-13T16:00Z'), lesson, at))).toEqual([
      'hundred-hour-inspection 14',
      'read-meters 0.1',
    ]);
    expect(movesOf(searchFrom(readOn('2026-02-13T16:01Z'), lesson, at))).toEqual([]);
    // Overflown is overflown: to read the meter again does not help.
    expect(movesOf(searchFrom(inOrder, lesson, { instant: goodDay, hours: 70.01 }))).toEqual([
      'hundred-hour-inspection 14',
    ]);
  });

  it('a meter that was not read with the others is read', () => {
    const tach = { value: 405_000, asOf: '2026-03-10T12:00Z', by: 'Desk' };
    const hobbs = { value: 500_000, asOf: '2026-03-15T20:00Z', by: 'Desk' };
    const dossier = trainer({
      meters: {
        definitions: [
          ...inOrder.meters.definitions,
          { id: 'hobbs', name: 'Hobbs', kind: 'hour-meter', perFlightHour: 1000, offset: 0 },
        ],
        readings: { tach, hobbs },
      },
    });
    expect(movesOf(searchFrom(dossier, lesson))).toContain('read-meters 0.1');
  });

  it('what lapses while the aircraft is under way counts, what lapses after it does not', () => {
    const flown = (to: string) => searchFrom(inOrder, lpv, { instant: '2026-03-19T08:00Z', to, hoursAhead: 100 });
    expect(movesOf(flown('2026-03-19T09:00Z'))).toEqual([]);
    expect(movesOf(flown('2026-03-19T09:01Z'))).toEqual(onGps);
    expect(flown('2026-03-19T09:00Z').solved(flown('2026-03-19T09:00Z').start)).toBe(true);
    const late = flown('2026-03-19T09:01Z');
    expect(late.solved(late.start)).toBe(false);
  });

  it('by the price of an hour and of parts, where there is one', () => {
    const labour = {
      hourly: 80,
      jobs: { ...defaultLabour.jobs, 'transponder-test': { ...defaultLabour.jobs['transponder-test'], parts: 30 } },
    };
    expect(movesOf(searchFrom(lapsed('transponder'), busy, undefined, labour))).toEqual([
      'transponder-test xpdr1 150',
      'altitude-suite 240',
      'deactivate-unit xpdr1 48',
    ]);
  });
});

describe('after a move', () => {
  const both = searchFrom(lapsed('annual', 'locator'), vfr);

  it('the next failing result has its ways, and then the flight is a yes', () => {
    const once = after(both, 'annual-inspection');
    expect(both.moves(once).map(({ id }) => id)).toEqual(['elt-inspection elt1', 'elt-battery elt1']);
    const twice = after(both, 'annual-inspection', 'elt-inspection elt1');
    expect([both.solved(once), both.solved(twice)]).toEqual([false, true]);
    expect(both.moves(twice)).toEqual([]);
  });

  it('each deed is a minute after the one before', () => {
    const { deeds } = after(both, 'annual-inspection', 'elt-inspection elt1');
    const minutes = deeds.flatMap(({ changes }) => changes).map((each) => 'record' in each && each.record.done?.at);
    expect(minutes).toEqual([goodDay, '2026-03-16T16:01Z']);
  });

  it('a fact that was asked is not asked again, and what waited for it is taken as met', () => {
    const search = searchFrom(trainer({ status: { completeness: [] } }), vfr);
    const asked = after(search, 'find-out status.completeness.defects');
    expect([...asked.supposed]).toEqual(['status.completeness.defects']);
    expect(search.moves(asked).map(({ id }) => id)).not.toContain('find-out status.completeness.defects');
    expect(asked.dossier).toBe(search.start.dossier);
    const [next] = search.moves(asked);
    const further = search.after(asked, next!.action);
    expect(further.supposed.size).toBe(2);
  });

  it('other work is not done twice', () => {
    const removed = searchFrom(without('gps1'), lpv);
    const fitted = after(removed, 'fit-navigator nx5');
    expect(removed.moves(fitted).map(({ id }) => id)).not.toContain('fit-navigator nx5');
  });

  it('an entry that later work undid is put after that work, at no cost, and stands once', () => {
    const search = searchFrom(lapsed('transponder'), busy);
    const tested = after(search, 'transponder-test xpdr1');
    const [other] = searchFrom(lapsed('annual'), vfr).moves(searchFrom(lapsed('annual'), vfr).start);
    const worked = search.after(tested, other!.action);
    // As it is thought of two minutes on.
    const [test] = search.moves({ ...search.start, steps: 2 });
    const again = search.after(worked, test!.action);
    expect(again.deeds.map(({ id }) => id)).toEqual(['annual-inspection', 'transponder-test xpdr1']);
    expect(again.steps).toBe(3);
    const tests = again.dossier.status.records.filter((each) => each.kind === 'transponder-test');
    expect(tests.map(({ done }) => done.at)).toEqual([null, '2026-03-16T16:02Z']);
    expect(again.dossier.status.records).toHaveLength(worked.dossier.status.records.length);
  });
});

it('a list that was stated complete too long ago is asked about anew, and the flight is a yes', () => {
  const { completeness } = inOrder.status;
  const longAgo = completeness.map(({ list, stated }) => ({ list, stated: { ...stated, asOf: '2020-01-01' } }));
  const kept = completeness.filter(({ list }) => list !== 'directives');
  const stale = trainer({
    status: { completeness: [...kept, ...longAgo.filter(({ list }) => list === 'directives')] },
  });
  const search = searchFrom(stale, vfr);
  const fact = 'status.completeness.directives';
  expect(movesOf(search)).toEqual([`find-out ${fact} 0.5`]);
  expect(search.solved(after(search, `find-out ${fact}`))).toBe(true);
});

describe('states are one', () => {
  const search = searchFrom(lapsed('annual', 'locator'), vfr);
  const locator = searchFrom(lapsed('locator'), vfr);
  const elt = locator.moves(locator.start)[0]!.action;
  const annual = search.moves(search.start)[0]!.action;

  it('whatever the order of the deeds, where the same fails', () => {
    const oneWay = search.after(search.after(search.start, annual), elt);
    const other = search.after(search.after(search.start, elt), annual);
    expect(search.key(oneWay)).toBe(search.key(other));
  });

  it('but not where other deeds were done, or something else fails', () => {
    const keys = [search.start, search.after(search.start, annual), search.after(search.start, elt)].map(search.key);
    expect(new Set(keys).size).toBe(3);
    expect(locator.key(locator.start)).not.toBe(search.key(search.start));
    expect(search.key(search.start)).toContain('annual-inspection|aircraft');
  });

  it('named by what was done and by what fails, line by line', () => {
    const done = search.after(search.after(search.start, annual), elt);
    expect(search.solved(done)).toBe(true);
    expect(search.key(done)).toBe('annual-inspection\nelt-inspection elt1\n');
    const [none, ...failing] = search.key(search.start).split('\n');
    expect(none).toBe('');
    expect(failing).toEqual([...new Set(failing)].filter((each) => /^[a-z-]+\|./.test(each)));
    expect(failing).toEqual(expect.arrayContaining(['annual-inspection|aircraft', 'elt|aircraft']));
  });
});

describe('a way', () => {
  const cheapestOf = (dossier: Dossier, flight: Partial<FlightConditions>, labour = defaultLabour) =>
    wayBack(dossier, trainerCatalogue, { instant: goodDay, hours: 1 }, flight, labour, { states: 200, paths: 1 });

  it('adds up its hours and its parts, and says what each step is', () => {
    const labour = {
      hourly: 100,
      jobs: { ...defaultLabour.jobs, 'elt-inspection': { ...defaultLabour.jobs['elt-inspection'], parts: 12.345 } },
    };
    const { ways } = cheapestOf(lapsed('annual', 'locator'), vfr, labour);
    expect(ways).toMatchObject([
      {
        steps: [
          { job: 'annual-inspection', subjects: [], change: 'record.add', hours: { low: 10, typical: 18, high: 40 } },
          { job: 'elt-inspection', subjects: ['elt1'], facts: [], hours: { low: 0.5, typical: 1, high: 1.5 } },
        ],
        hours: { low: 10.5, typical: 19, high: 41.5 },
        money: { low: 1062.35, typical: 1912.35, high: 4162.35 },
        assumes: ['passes-and-is-signed'],
        hoursRestOn: 'from-memory',
        loses: [],
      },
    ]);
    expect(ways[0]?.then.ready).toBe('yes');
    expect(Object.keys(ways[0]?.steps[0]?.hours ?? {})).toEqual(['low', 'typical', 'high']);
  });

  it.each<readonly [string, Dossier, Partial<FlightConditions>, boolean]>([
    ['an inspection wants no parts', lapsed('annual'), vfr, false],
    ['a battery does', battery, vfr, true],
    ['a transmitter that is fitted does', without('elt1'), vfr, true],
    ['a part that is replaced does', trainer({ status: { lifeLimits: [wornHose] } }), vfr, true],
    ['a repair may want some', defective('nav1', 'discrepancy', null), vfr, true],
  ])('says whether parts are wanted that nobody priced: %s', (_, dossier, flight, unknown) => {
    const [way] = cheapestOf(dossier, flight).ways;
    expect(way?.steps.length).toBeGreaterThan(0);
    expect(way?.partsUnknown).toBe(unknown);
  });

  it('knows the price of parts where the house has entered one', () => {
    const labour = {
      hourly: null,
      jobs: { ...defaultLabour.jobs, 'elt-battery': { ...defaultLabour.jobs['elt-battery'], parts: 180 } },
    };
    expect(cheapestOf(battery, vfr, labour).ways[0]).toMatchObject({ money: null, partsUnknown: false });
  });

  it('says what the aircraft could do before and then no longer can: what its work touched wants its own tests', () => {
    const [way] = cheapestOf(defective('xpdr1', 'discrepancy', null), vfr).ways;
    expect(way?.steps.map(({ job }) => job)).toEqual(['repair-defect', 'release-entry']);
    expect(way?.loses).toEqual(['altitude-reporting', 'ads-b-out']);
  });

  it('is none where the search may look at one state only, which it says', () => {
    expect(
      wayBack(lapsed('annual'), trainerCatalogue, { instant: goodDay }, vfr, defaultLabour, { states: 1, paths: 1 }),
    ).toEqual({ now: 'no', ways: [], complete: false, looked: 1 });
  });
});
