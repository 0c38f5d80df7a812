import { describe, expect, it } from 'vitest';
import { linkOf, mechanic, typeOf, unitOf } from '../../testing/builders.js';
import { goodDay, trainer, trainerCatalogue, trainerTypes } from '../../testing/trainer.js';
import type { EquipmentType } from '../catalogue/type.js';
import type { Change } from '../changes/changes.js';
import { parseChange } from '../changes/changes.js';
import type { Dossier } from '../dossier/dossier.js';
import { factsOf } from '../graph/facts.js';
import { widenConditions } from '../verdict/conditions.js';
import { actionsFor, findOutAction, readMeters } from './actions.js';
import { antennasFor, entry, fit, grantsOf, load, performedAt, supplementFor } from './deeds.js';
import { approvals, feeders, fittingsFor, indicators, replacements } from './fittings.js';

const inOrder = trainer();
const { units } = inOrder.configuration;
const unit = (id: string) => units.find((each) => each.id === id)!;
const situation = (dossier: Dossier = inOrder, catalogue = trainerCatalogue, topFt = 9000) => ({
  dossier,
  catalogue,
  facts: factsOf(dossier, catalogue),
  at: goodDay,
  flight: widenConditions({ topFt }),
});
const withTypes = (...types: readonly EquipmentType[]) => ({
  version: 'test',
  types: { ...trainerCatalogue.types, ...Object.fromEntries(types.map((each) => [each.id, each])) },
});
const doing = (change: string, subject: string, where = situation()) =>
  actionsFor({ kind: 'do', change, subject, facts: [] }, where);
const ids = (actions: readonly { readonly id: string }[]) => actions.map(({ id }) => id);
const changeOf = <K extends Change['kind']>(changes: readonly Change[], kind: K) =>
  changes.filter((each): each is Extract<Change, { readonly kind: K }> => each.kind === kind);
/** Of some changes, those that nobody could record as they are: a text is empty or too long, a figure is missing. */
const unreadable = (changes: readonly Change[]) =>
  changes.filter((each) => !parseChange(JSON.parse(JSON.stringify(each))).ok);

describe('an entry', () => {
  const made = (kind: Parameters<typeof entry>[2], dossier = inOrder, topFt = 9000) =>
    entry(dossier, goodDay, kind, 'x', topFt).record;

  it.each([
    ['transponder-test', 'repair-station'],
    ['vor-check', 'pilot'],
    ['data-verification', 'pilot'],
    ['annual-inspection', 'mechanic'],
  ] as const)('of a %s is signed by a %s', (kind, signer) => {
    expect(made(kind).agency?.kind).toBe(signer);
  });

  it('of an inspection approves, of a test passes', () => {
    expect(made('annual-inspection').outcome).toBe('approved');
    expect(made('release-entry').outcome).toBe('approved');
    expect(made('transponder-test').outcome).toBe('passed');
  });

  it('of a test of altimeter or reporting goes to 20,000 ft, or as high as the flight', () => {
    for (const kind of ['altimeter-test', 'altitude-reporting-test'] as const)
      expect([9000, 20_001, 25_000].map((topFt) => made(kind, inOrder, topFt).testedToFt)).toEqual([
        20_000, 20_001, 25_000,
      ]);
    expect(made('transponder-test').testedToFt).toBeNull();
    const [high] = doing('record.add', 'altimeter-test:alt1', situation(inOrder, trainerCatalogue, 25_000));
    expect(high?.changes).toMatchObject([{ record: { testedToFt: 25_000, subjects: ['alt1'] } }]);
  });

  it('of an altimeter is marked on it, of a battery has the day on which it ends', () => {
    expect([made('altimeter-test').marked, made('transponder-test').marked]).toEqual([true, null]);
    expect([made('elt-battery').expires, made('elt-inspection').expires]).toEqual(['2028-03-15', null]);
    expect(made('vor-check').readings?.vor).toMatchObject({ expectedDeg: 360, indicatedDeg: 360 });
    expect(made('elt-battery').readings).toBeNull();
  });

  it('has the hours last read, but a new battery starts its counter again', () => {
    const counted = trainer({
      meters: {
        definitions: [
          ...inOrder.meters.definitions,
          { id: 'elt-use', name: 'Transmitter', kind: 'elt-transmitter', perFlightHour: 0, offset: 0 },
        ],
        readings: { 'elt-use': { value: 40, asOf: '2026-03-15T20:00Z', by: 'Desk' } },
      },
    });
    const tach = { meter: 'tach', value: 407_000 };
    expect(made('elt-inspection', counted).meters).toEqual([tach, { meter: 'elt-use', value: 40 }]);
    expect(made('elt-battery', counted).meters).toEqual([tach]);
  });

  it('is made on the day where the aircraft lives', () => {
    expect(performedAt(inOrder, '2026-03-17T04:59Z')).toEqual({ date: '2026-03-16', at: '2026-03-17T04:59Z' });
    expect(performedAt(inOrder, '2026-03-17T05:00Z').date).toBe('2026-03-17');
    expect(made('vor-check')).toMatchObject({ id: 'way-back-vor-check-x-202603161600', place: 'Field' });
  });

  it('can be recorded, however long the name of its subject', () => {
    expect(unreadable([entry(inOrder, goodDay, 'altitude-correspondence-test', 'x'.repeat(80), 0)])).toEqual([]);
  });
});

describe('data', () => {
  it('are loaded from the flight deck in the cycle of the day', () => {
    expect(load(inOrder, goodDay, 'gps1', 'navigation')).toMatchObject({
      load: {
        unitId: 'gps1',
        database: 'navigation',
        slot: 'this',
        cycle: '2602',
        fromFlightDeck: true,
        expires: null,
      },
    });
    expect(ids(doing('database.load', 'gps1'))).toEqual(['load-database gps1 navigation']);
    // Of a unit without a type nobody knows what it holds.
    const untyped = trainer({
      configuration: { units: units.map((each) => (each.id === 'gps1' ? { ...each, typeId: null } : each)) },
    });
    expect(ids(doing('database.load', 'gps1', situation(untyped)))).toEqual(['load-database gps1 navigation']);
    expect(ids(doing('database.load', 'xpdr1'))).toEqual([]);
  });
});

describe('a unit that is fitted', () => {
  const fitted = (type: EquipmentType, replaced: string | null = null, dossier = inOrder) =>
    fit(dossier, goodDay, type, replaced === null ? null : unit(replaced));

  it('comes with antennas, supplement and data, and an approval for all that it can do', () => {
    const changes = fitted(trainerTypes.navigator);
    expect(changes.map(({ kind }) => kind)).toEqual(['unit.install', 'antenna.fit', 'supplement.set', 'database.load']);
    const [installed] = changeOf(changes, 'unit.install');
    expect(installed?.unit).toMatchObject({
      id: 'new-navigator',
      place: 'pilot-panel',
      offsetIn: 0,
      openingId: null,
      armIn: null,
      massLb: 5.2,
      approval: { permission: true, modelListed: true, grants: grantsOf(['gnss']) },
    });
    expect(installed?.touched).toContain('behind-panel');
    expect(changeOf(changes, 'antenna.fit')[0]?.antenna).toMatchObject({
      id: 'new-antenna-gnss-sbas',
      units: ['new-navigator'],
      approved: true,
    });
    expect(changeOf(changes, 'supplement.set')[0]?.supplement).toMatchObject({
      id: 'supplement-new-navigator',
      aboard: true,
      currentDataRequired: true,
    });
  });

  it('comes onto the weight record with what came out, where there is one and weight and arm are known', () => {
    const masses = (massLb: number | null, armIn: number | null, mass: Dossier['configuration']['mass']) => {
      const placed = trainer({
        configuration: { mass, units: units.map((each) => (each.id === 'gps1' ? { ...each, massLb, armIn } : each)) },
      });
      const old = placed.configuration.units.find(({ id }) => id === 'gps1')!;
      return changeOf(fit(placed, goodDay, trainerTypes.navigator, old), 'unit.remove')[0]?.mass;
    };
    const record = {
      emptyWeightLb: 1400,
      emptyArmIn: 38,
      revisedOn: '2024-02-01',
      weighed: true,
      macIn: null,
      envelope: null,
      stations: null,
      equipmentListRevisedOn: null,
      changesSince: [],
    } as unknown as Dossier['configuration']['mass'];
    expect(masses(5, 30, record)).toMatchObject({ weightLb: -5, armIn: 30 });
    expect([masses(null, 30, record), masses(5, null, record), masses(5, 30, null)]).toEqual([null, null, null]);
  });

  it('in place of another takes its place, its antenna and what was written for it', () => {
    const placed = trainer({
      configuration: {
        units: units.map((each) => (each.id === 'gps1' ? { ...each, openingId: 'o1', offsetIn: 4, armIn: 30 } : each)),
        placards: [{ id: 'p1', kind: 'gnss-vfr-only', unitId: 'gps1', inView: true, text: 'VFR only' }],
      },
    });
    const old = placed.configuration.units.find(({ id }) => id === 'gps1')!;
    const changes = fit(placed, goodDay, { ...trainerTypes.navigator, id: 'nx6' }, old);
    expect(unreadable(changes)).toEqual([]);
    expect(changes.map(({ kind }) => kind)).toEqual([
      'unit.remove',
      'placard.remove',
      'unit.install',
      'antenna.fit',
      'supplement.set',
      'database.load',
    ]);
    expect(changeOf(changes, 'unit.remove')[0]).toMatchObject({
      unitId: 'gps1',
      mass: { weightLb: -5.2, armIn: 30, listed: true },
    });
    expect(changeOf(changes, 'placard.remove')[0]).toMatchObject({ placardId: 'p1' });
    expect(changeOf(changes, 'unit.install')[0]?.unit).toMatchObject({
      place: 'centre-stack',
      openingId: 'o1',
      offsetIn: 4,
      armIn: 30,
    });
    expect(changeOf(changes, 'unit.install')[0]?.mass).toMatchObject({ weightLb: 5.2, armIn: 30, listed: true });
    expect(changeOf(changes, 'antenna.fit')[0]?.antenna).toMatchObject({ id: 'a-gps', units: ['new-navigator'] });
  });

  it('leaves an antenna to those who share it, and takes no antenna of another band', () => {
    const shared = trainer({
      configuration: {
        antennas: [
          { id: 'a1', kind: 'gnss-sbas', units: ['elt1'], approved: true, xIn: 52, yIn: 0 },
          { id: 'a2', kind: 'com', units: ['gps1'], approved: true, xIn: 52, yIn: 0 },
          { id: 'a3', kind: 'gnss-sbas', units: ['gps1', 'elt1'], approved: null, xIn: 52, yIn: 0 },
        ],
      },
    });
    expect(
      changeOf(fitted(trainerTypes.navigator, 'gps1', shared), 'antenna.fit').map(({ antenna }) => antenna),
    ).toEqual([{ id: 'a3', kind: 'gnss-sbas', units: ['elt1', 'new-navigator'], approved: true, xIn: 52, yIn: 0 }]);
  });

  it('is named for its first function, and has the software that its approval is for', () => {
    const [install] = changeOf(fitted(trainerTypes.navCom), 'unit.install');
    expect(install?.unit).toMatchObject({ id: 'new-com', software: null });
    const bare = typeOf({ id: 'b1', functions: [] });
    expect(changeOf(fitted(bare), 'unit.install')[0]?.unit).toMatchObject({ id: 'new-unit', place: 'remote' });
    const pair = { family: 'x', signals: [], document: 'm', revision: 'A' };
    const soft = {
      ...bare,
      pairs: [
        { ...pair, software: null },
        { ...pair, software: '2.1' },
      ],
    };
    expect(changeOf(fitted(soft), 'unit.install')[0]?.unit.software).toBe('2.1');
  });

  it('needs one antenna for each band, and may give what its functions can', () => {
    expect(antennasFor(['com', 'vor-receiver', 'loc-receiver', 'altimeter'])).toEqual(['com', 'vor-loc']);
    expect(grantsOf(['transponder', 'altitude-reporting', 'altimeter'])).toEqual(['altitude-reporting']);
  });

  it('writes its supplement over the one of before', () => {
    const document = { title: 'New', revision: null, date: null };
    expect(supplementFor(inOrder, 'gps1', document, ['com'])).toMatchObject({ supplement: { id: 'sup-gps1' } });
    expect(supplementFor(inOrder, 'nav1', document, ['com'])).toMatchObject({
      supplement: { id: 'supplement-nav1', units: ['nav1'], document, grants: ['com'] },
    });
  });
});

describe('what can be fitted', () => {
  const second = { ...trainerTypes.navigator, id: 'nx7', family: 'nx7' };

  it.each([
    ['two-way-radio', ['approve-installation nav1']],
    ['nav-gnss', ['approve-installation gps1']],
    ['altitude-reporting', ['approve-installation xpdr1']],
    ['ads-b-out', ['approve-installation xpdr1']],
    ['fly', ['approve-installation elt1']],
    ['night', []],
  ] as const)('for %s: another type in place of what is there, or approval of it', (capability, expected) => {
    expect(ids(fittingsFor(capability, situation()))).toEqual(expected);
  });

  it('another navigator replaces the one that is there, or is added where there is none', () => {
    const catalogue = withTypes(second);
    expect(ids(fittingsFor('nav-gnss', situation(inOrder, catalogue)))).toEqual([
      'replace-navigator nx7 gps1',
      'approve-installation gps1',
    ]);
    const without = trainer({ configuration: { units: units.filter(({ id }) => id !== 'gps1') } });
    expect(ids(fittingsFor('nav-gnss', situation(without, catalogue)))).toEqual([
      'fit-navigator nx5',
      'fit-navigator nx7',
    ]);
  });

  it('no version whose place another has taken, whatever the two manuals call their revisions', () => {
    const versions = ['9', '10', '8'].map((revision) => ({ ...second, id: `nx7-${revision}`, revision }));
    const catalogue = { ...withTypes(...versions), superseded: ['nx7-8', 'nx7-9'] };
    expect(ids(fittingsFor('nav-gnss', situation(inOrder, catalogue)))).toEqual([
      'replace-navigator nx7-10 gps1',
      'approve-installation gps1',
    ]);
  });

  it('a receiver that does all of it takes the place of none that does a part', () => {
    const localizer = unitOf({ id: 'loc1', functions: ['loc-receiver'] });
    const old = trainer({ configuration: { units: [localizer, ...units.filter(({ id }) => id !== 'nav1')] } });
    expect(ids(fittingsFor('approach-ils', situation(old)))).toEqual(['fit-com vc1']);
    expect(ids(fittingsFor('approach-loc', situation(old)))).toEqual(['fit-com vc1 loc1', 'approve-installation loc1']);
  });

  it('in place of a unit what does all that it is bought for', () => {
    const plain = { ...second, functions: ['gnss' as const] };
    // That it also annunciates comes with it and is not asked for.
    expect(ids(replacements(unit('gps1'), situation(inOrder, withTypes(plain))))).toEqual([
      'replace-navigator nx7 gps1',
    ]);
    const comOnly = typeOf({ id: 'co1', functions: ['com'] });
    expect(ids(replacements(unit('nav1'), situation(inOrder, withTypes(comOnly))))).toEqual([]);
    const lamps = typeOf({ id: 'la1', functions: ['integrity-annunciation'] });
    const other = typeOf({ id: 'la2', functions: ['source-annunciation'] });
    const withLamp = trainer({
      configuration: {
        units: [...units, { ...unit('gps1'), id: 'lamp', typeId: null, functions: ['integrity-annunciation'] }],
      },
    });
    const lamp = withLamp.configuration.units.find(({ id }) => id === 'lamp')!;
    expect(ids(replacements(lamp, situation(withLamp, withTypes(lamps, other))))).toEqual([
      'fit-other la1 lamp',
      'replace-navigator nx5 lamp',
    ]);
  });

  it('reckons an altimeter, an encoder and an audio panel each by its own hours, a display with the altimeter in it by none of them', () => {
    const of = (id: string, functions: EquipmentType['functions']) => {
      const old = unitOf({ id: 'old', functions });
      const dossier = trainer({ configuration: { units: [...units, old] } });
      return ids(replacements(old, situation(dossier, withTypes(typeOf({ id, functions }))))).filter((each) =>
        each.includes(` ${id} `),
      );
    };
    expect(of('x1', ['altimeter'])).toEqual(['replace-altimeter x1 old']);
    expect(of('x2', ['altitude-reporting'])).toEqual(['replace-encoder x2 old']);
    expect(of('x3', ['audio'])).toEqual(['fit-audio x3 old']);
    expect(of('x4', ['altimeter', 'attitude'])).toEqual(['fit-other x4 old']);
    expect(of('x5', ['dme'])).toEqual(['fit-other x5 old']);
  });

  it('a transponder with ADS-B Out takes the place of the one without', () => {
    const modeC = typeOf({ id: 'mc1', functions: ['transponder'] });
    const old = trainer({
      configuration: { units: units.map((each) => (each.id === 'xpdr1' ? { ...each, typeId: 'mc1' } : each)) },
    });
    expect(ids(fittingsFor('ads-b-out', situation(old, withTypes(modeC))))).toEqual([
      'replace-transponder ms4 xpdr1',
      'approve-installation xpdr1',
    ]);
    const none = trainer({ configuration: { units: units.filter(({ id }) => id !== 'xpdr1') } });
    expect(ids(fittingsFor('ads-b-out', situation(none)))).toEqual(['fit-transponder ms4']);
  });

  it('ADS-B Out on the other link is added, or takes the place of a box of its own kind', () => {
    const box = typeOf({ id: 'ub1', functions: ['ads-b-out-uat'] });
    const other = typeOf({ id: 'ub2', functions: ['ads-b-out-uat'] });
    expect(ids(fittingsFor('ads-b-out', situation(inOrder, withTypes(box))))).toEqual([
      'approve-installation xpdr1',
      'fit-other ub1',
    ]);
    const fitted = trainer({ configuration: { units: [...units, unitOf({ id: 'u1', typeId: 'ub1' })] } });
    expect(ids(fittingsFor('ads-b-out', situation(fitted, withTypes(box, other))))).toEqual([
      'approve-installation xpdr1',
      'fit-other ub2 u1',
      'approve-installation u1',
    ]);
  });

  it('another indicator, for a source that shows itself on one', () => {
    expect(ids(indicators('nav1', situation()))).toEqual(['fit-indicator di1', 'fit-indicator di2']);
    for (const source of ['gps1', 'nav1']) expect(indicators(source, situation()).length).toBeGreaterThan(0);
    for (const other of ['xpdr1', 'alt1', 'nothing']) expect(indicators(other, situation())).toEqual([]);
    for (const code of ['gnss', 'vor-receiver', 'loc-receiver'] as const) {
      const alone = trainer({ configuration: { units: [unitOf({ id: 'r1', functions: [code] })] } });
      expect(ids(indicators('r1', situation(alone)))).toEqual(['fit-indicator di1', 'fit-indicator di2']);
    }
  });

  it('for a source without glide path, one that shows the course is enough', () => {
    const half = typeOf({ id: 'di3', functions: ['lateral-deviation'] });
    const offered = (...functions: Parameters<typeof unitOf>[0]['functions'] & object) => {
      const alone = trainer({ configuration: { units: [unitOf({ id: 'r1', functions })] } });
      return ids(indicators('r1', situation(alone, withTypes(half))));
    };
    expect(offered('vor-receiver')).toContain('fit-indicator di3');
    expect(offered('loc-receiver')).toContain('fit-indicator di3');
    expect(offered('vor-receiver', 'gs-receiver')).not.toContain('fit-indicator di3');
    expect(offered('gnss')).not.toContain('fit-indicator di3');
  });

  it('no indicator that shows half of a glide, and no other source for the sake of what it shows', () => {
    const half = typeOf({ id: 'di3', functions: ['lateral-deviation'] });
    const source = typeOf({ id: 'sn1', functions: ['com', 'lateral-deviation', 'vertical-deviation'] });
    expect(ids(indicators('nav1', situation(inOrder, withTypes(half, source))))).toEqual([
      'fit-indicator di1',
      'fit-indicator di2',
    ]);
  });

  it('another unit that sends what a port waits for, as long as nothing is joined to it', () => {
    const unfed = trainer({ configuration: { links: [] } });
    expect(ids(feeders('xpdr1', situation(unfed)))).toEqual(['fit-other en1', 'fit-navigator nx5']);
    expect(feeders('xpdr1', situation())).toEqual([]);
    // Ports that a unit works without, and units that nobody knows, wait for nothing.
    for (const id of ['cdi1', 'gps1', 'nothing']) expect(feeders(id, situation(unfed))).toEqual([]);
    const slow = withTypes({
      ...trainerTypes.encoder,
      ports: trainerTypes.encoder.ports.map((port) => ({ ...port, standard: 'gray-code' as never })),
    });
    expect(ids(feeders('xpdr1', situation(unfed, slow)))).toEqual(['fit-navigator nx5']);
  });

  it('of two ports only the one that waits is fed, whatever is joined to a port of its name elsewhere', () => {
    const half = trainer({
      configuration: {
        units: [...units, { ...unit('xpdr1'), id: 'xpdr2' }],
        links: [linkOf('enc1', 'OUT', 'xpdr1', 'ALT'), linkOf('gps1', 'P2-POS', 'xpdr2', 'POS')],
      },
    });
    expect(ids(feeders('xpdr1', situation(half)))).toEqual(['fit-navigator nx5']);
    expect(ids(feeders('xpdr2', situation(half)))).toEqual(['fit-other en1']);
  });

  it('approval for all that a unit can do takes away the placard that limited it', () => {
    const limited = trainer({
      configuration: {
        placards: [
          { id: 'p1', kind: 'gnss-vfr-only', unitId: 'gps1', inView: true, text: 'VFR only' },
          { id: 'p2', kind: 'gnss-vfr-only', unitId: 'nav1', inView: true, text: 'VFR only' },
        ],
      },
    });
    const [approved] = approvals(unit('gps1'), situation(limited));
    expect(unreadable(approved?.changes ?? [])).toEqual([]);
    expect(changeOf(approved?.changes ?? [], 'placard.remove').map(({ placardId }) => placardId)).toEqual(['p1']);
    expect(changeOf(approved?.changes ?? [], 'unit.amend')[0]?.unit).toMatchObject({
      id: 'gps1',
      approval: { basis: 'field-approval', grants: grantsOf(['gnss']), permission: null },
    });
  });
});

describe('what a remedy means', () => {
  const hold = (id: string, until: string | null) =>
    ({ id, reason: 'x', by: 'J. Orrell', from: '2026-03-01T12:00Z', until }) as const;
  const held = situation(
    trainer({
      status: {
        holds: [
          hold('h1', null),
          hold('h2', '2026-03-16T16:01Z'),
          hold('h3', goodDay),
          hold('h4', '2026-03-02T12:00Z'),
        ],
      },
    }),
  );

  it('a hold that still holds is lifted, by its name or all of the aircraft', () => {
    expect(ids(doing('hold.lift', 'aircraft', held))).toEqual(['lift-hold h1', 'lift-hold h2']);
    expect(ids(doing('hold.lift', 'h2', held))).toEqual(['lift-hold h2']);
    expect(ids(doing('hold.lift', 'h3', held))).toEqual([]);
  });

  it('a unit is replaced or approved for more; what is not aboard is neither', () => {
    expect(ids(doing('unit.install', 'gps1'))).toEqual(['approve-installation gps1']);
    expect(doing('unit.install', 'nothing')).toEqual([]);
  });

  it('a joint is parted by its own name or that of its two ends', () => {
    const joint = 'gps1.P2-POS-xpdr1.POS';
    expect(ids(doing('link.disconnect', joint))).toEqual([`part-ports ${joint}`]);
    expect(ids(doing('link.disconnect', 'gps1>xpdr1'))).toEqual([`part-ports ${joint}`]);
    expect(doing('link.disconnect', 'xpdr1>gps1')).toEqual([]);
  });

  it('a test of altitude equipment is made alone or in the visit for all of it', () => {
    expect(ids(doing('record.add', 'transponder-test:xpdr1'))).toEqual(['transponder-test xpdr1', 'altitude-suite']);
    expect(ids(doing('record.add', 'annual-inspection'))).toEqual(['annual-inspection']);
    expect(doing('record.add', 'no-such-entry:xpdr1')).toEqual([]);
    const [, suite] = doing('record.add', 'transponder-test:xpdr1');
    expect(changeOf(suite?.changes ?? [], 'record.add').map(({ record }) => [record.kind, ...record.subjects])).toEqual(
      [
        ['static-system-test', 'static-1'],
        ['altimeter-test', 'alt1'],
        ['altitude-reporting-test', 'enc1'],
        ['transponder-test', 'xpdr1'],
        ['altitude-correspondence-test', 'aircraft'],
      ],
    );
    const off = trainer({
      configuration: {
        units: units.map((each) =>
          each.id === 'xpdr1'
            ? { ...each, deactivated: { since: { date: '2026-01-05', at: null }, placarded: true, recorded: true } }
            : each,
        ),
      },
    });
    const [, rest] = doing('record.add', 'altimeter-test:alt1', situation(off));
    expect(changeOf(rest?.changes ?? [], 'record.add').map(({ record }) => record.kind)).not.toContain(
      'transponder-test',
    );
  });

  it('facts are found out together, and nothing is recorded by it', () => {
    expect(findOutAction('k', ['a', 'b'])).toMatchObject({
      id: 'find-out a b',
      subjects: ['k'],
      change: null,
      changes: [],
      supposes: ['a', 'b'],
    });
  });

  it('meters are read with what they showed, on their own dial, unless they were read later', () => {
    const dial = trainer({
      meters: {
        definitions: [
          { id: 'tach', name: 'T', kind: 'tachometer', perFlightHour: 1000, offset: 400_000 },
          { id: 'unread', name: 'U', kind: 'hour-meter', perFlightHour: 1000, offset: 0 },
          { id: 'later', name: 'L', kind: 'hour-meter', perFlightHour: 1000, offset: 0 },
          { id: 'same', name: 'S', kind: 'hour-meter', perFlightHour: 1000, offset: 0 },
        ],
        readings: {
          later: { value: 1, asOf: '2026-03-16T16:01Z', by: 'Desk' },
          same: { value: 2, asOf: goodDay, by: 'Desk' },
        },
      },
    });
    expect(unreadable(readMeters(situation(dial)).changes)).toEqual([]);
    expect(readMeters(situation(dial))).toMatchObject({
      id: 'read-meters',
      change: 'meter.read',
      changes: [
        { meter: 'tach', dial: 7000, asOf: goodDay },
        { meter: 'same', dial: 2 },
      ],
      assumes: ['not-due-again'],
    });
  });

  it('a verification of data is for one flight, every other entry passes and is signed', () => {
    expect(doing('record.add', 'data-verification:gps1')[0]?.assumes).toEqual(['this-flight-only']);
    expect(doing('record.add', 'annual-inspection')[0]?.assumes).toEqual(['passes-and-is-signed']);
  });

  it('a directive is complied with: once for all, or until the day of the flight where it recurs and nobody knows when', () => {
    const directive = {
      id: 'd1',
      number: 'TW-1',
      subject: 'nav1',
      state: 'open' as const,
      reason: null,
      method: null,
      partNumber: null,
      serial: null,
      recurs: null,
      interval: null,
      nextDue: null,
      recordId: null,
    };
    const other = { ...directive, id: 'd0', number: 'TW-0', subject: 'aircraft' };
    const complied = (part: object) => {
      const dossier = trainer(
        {
          configuration: {
            units: [...units, unitOf({ id: 'horn', functions: ['source-annunciation'], serial: 'H1' })],
          },
        },
        { status: { directives: [other, { ...directive, ...part }] } },
      );
      const [action] = doing('directive.set', 'd1', situation(dossier));
      expect(action).toMatchObject({ id: 'directive-compliance d1', change: 'directive.set' });
      expect(action?.assumes).toEqual(['passes-and-is-signed', 'not-due-again']);
      return changeOf(action?.changes ?? [], 'directive.set')[0]?.directive;
    };
    expect(complied({})).toMatchObject({
      id: 'd1',
      state: 'complied',
      recurs: false,
      method: 'as the directive says',
      nextDue: null,
      partNumber: 'QW-vc1',
      serial: 'V1',
    });
    expect(complied({ method: 'Paragraph (a)' })?.method).toBe('Paragraph (a)');
    expect(complied({ recurs: true })?.nextDue).toEqual({ by: 'date', date: '2026-03-16', meter: null, at: null });
    const yearly = {
      interval: {
        parts: [{ kind: 'calendar-months', count: 12, meter: null, tolerance: null }],
        combine: 'first',
        countFrom: 'done',
        toleranceFor: 'none',
      },
    };
    // How often is known: the rules count on from the entry.
    for (const recurs of [true, null])
      expect(complied({ ...yearly, recurs })).toMatchObject({ recurs: true, nextDue: null });
    expect(complied({ subject: 'horn' })).toMatchObject({ partNumber: null, serial: 'H1' });
    expect(complied({ subject: 'aircraft', partNumber: 'QW-x', serial: 'S1' })).toMatchObject({
      partNumber: 'QW-x',
      serial: 'S1',
    });
    expect(doing('directive.set', 'nothing')).toEqual([]);
  });

  it('a defect is deferred anew by the way, the person and the day of its deferral of before, looked at again today', () => {
    const performed = { date: '2026-03-05', at: null };
    const defect = { kind: 'wear' as const, text: 'Knob loose.', raised: performed, decidedBy: null, deferral: null };
    const deferral = {
      route: 'mel' as const,
      notRequired: null,
      secured: null,
      placarded: false,
      recorded: null,
      noHazardBy: mechanic,
      letterAboard: true,
      on: '2026-03-06',
      reinspectedOn: null,
    };
    const known = situation(
      trainer({
        status: {
          defects: [
            { ...defect, id: 'd0', subject: 'gps1' },
            { ...defect, id: 'd1', subject: 'nav1', deferral },
          ],
        },
      }),
    );
    const deferred = (id: string) =>
      changeOf(doing('defect.defer', id, known)[0]?.changes ?? [], 'defect.defer').map((each) => each.deferral);
    const carriedOut = { secured: true, placarded: true, recorded: true, notRequired: true };
    expect(deferred('d1')).toEqual([{ ...deferral, ...carriedOut, reinspectedOn: '2026-03-16' }]);
    expect(deferred('d0')).toMatchObject([
      { ...carriedOut, route: '91.213(d)', letterAboard: null, on: '2026-03-16', reinspectedOn: null },
    ]);
  });

  it('a repair touches what its unit is part of, and of anything else nothing that wants a test', () => {
    const raised = { date: '2026-03-05', at: null };
    const known = situation(
      trainer({
        status: {
          defects: ['gps1', 'nav1', 'aircraft'].map((subject) => ({
            id: `d-${subject}`,
            kind: 'wear' as const,
            subject,
            text: 'Loose.',
            raised,
            decidedBy: null,
            deferral: null,
          })),
        },
      }),
    );
    const touched = (subject: string) =>
      changeOf(doing('defect.close', `d-${subject}`, known)[0]?.changes ?? [], 'defect.close').map(
        (each) => each.touched,
      );
    expect(['gps1', 'nav1', 'aircraft'].map(touched)).toEqual([[['gnss']], [['nothing']], [['nothing']]]);
  });

  it('a joint has a name of its own, also where ports are called by several words', () => {
    const port = (name: string) => ({ ...trainerTypes.transponder.ports[0]!, name });
    const dual = withTypes({ ...trainerTypes.transponder, ports: [port('A 1'), port('A1')] });
    const unfed = trainer({ configuration: { links: [] } });
    const [joined] = doing('link.connect', 'xpdr1', situation(unfed, dual));
    expect(unreadable(joined?.changes ?? [])).toEqual([]);
    expect(changeOf(joined?.changes ?? [], 'link.connect').map(({ link }) => link.id)).toEqual([
      'enc1.OUT-xpdr1.A-1',
      'enc1.OUT-xpdr1.A1',
    ]);
  });

  it('ports joined on the day of the fitting touch nothing anew behind the panel, on a later day they do', () => {
    const fittedOn = (date: string) =>
      trainer({
        configuration: {
          links: [],
          units: units.map((each) => (each.id === 'xpdr1' ? { ...each, fitted: { date, at: null } } : each)),
        },
      });
    const touched = (date: string) =>
      changeOf(doing('link.connect', 'xpdr1', situation(fittedOn(date)))[0]?.changes ?? [], 'link.connect').map(
        (each) => each.touched.includes('behind-panel'),
      );
    expect(touched('2026-03-16')).toEqual([false, false]);
    expect(touched('2026-03-15')).toEqual([true, true]);
  });
});
