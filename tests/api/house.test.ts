import { beforeAll, describe, expect, it } from 'vitest';
import { add, daysAgo, defineMeter, flyable, readMeter } from './cast.js';
import type { Client, Data } from './client.js';
import { asOwner } from './owner.js';
import { as } from './people.js';
import { shared } from './shared.js';

const lists = `{ house { operators { id name revision aircraft } bases { id name zone revision aircraft otherZone }
  profiles { id name wanted conditions revision } } }`;
const entries = `query ($first: Int, $after: String) { houseEntries(first: $first, after: $after) { totalCount
  pageInfo { hasNextPage endCursor } edges { node { id at by kind subject { kind id name } before after } } } }`;
const addOperator = 'mutation ($name: String!) { addOperator(name: $name) { id name revision aircraft } }';
const rename =
  'mutation ($input: RenameOperatorInput!) { renameOperator(input: $input) { id name revision aircraft } }';
const addBase = 'mutation ($name: String!, $zone: String!) { addBase(name: $name, zone: $zone) { id zone revision } }';
const amendBase = 'mutation ($input: AmendBaseInput!) { amendBase(input: $input) { name zone revision otherZone } }';
const addProfile =
  'mutation ($input: NewFlightProfileInput!) { addFlightProfile(input: $input) { id name wanted conditions revision } }';
const amendProfile =
  'mutation ($input: AmendFlightProfileInput!) { amendFlightProfile(input: $input) { id wanted conditions revision } }';
const order = 'mutation ($ids: [ID!]!) { orderFlightProfiles(ids: $ids) { id } }';

const conditions = {
  rules: 'VFR',
  light: 'NIGHT',
  purpose: 'RENTAL',
  airspace: ['CONTROLLED'],
  topFt: 6500,
  localTrainingNm: null,
  overWaterBeyondGlide: false,
  crewOnly: false,
  errand: null as string | null,
  region: null as string | null,
  approaches: [] as string[],
};

let manager: Client;
let auditor: Client;
beforeAll(async () => {
  manager = await as('manager@one.example');
  auditor = await as('auditor@one.example');
});

const house = async (who = manager): Promise<Data> => (await who.data(lists)).house;
const judgingAgain = async (): Promise<number> =>
  (await manager.data('{ judging { judgingAgain } }')).judging.judgingAgain;
const lastEntry = async (): Promise<Data> =>
  (await auditor.data(entries, { first: 1 })).houseEntries.edges[0].node as Data;

describe('operators and bases', () => {
  it('adds an operator with an id made of its name, and renames it', async () => {
    const { addOperator: made } = await manager.data(addOperator, { name: ' Élan Flyers ' });
    expect(made).toEqual({ id: 'elan-flyers', name: 'Élan Flyers', revision: 1, aircraft: 0 });
    const input = { operatorId: 'elan-flyers', expectedRevision: 1, name: 'Élan Flying Club' };
    expect((await manager.data(rename, { input })).renameOperator).toMatchObject({ revision: 2 });
    expect(await lastEntry()).toMatchObject({
      kind: 'operator.rename',
      by: 'Manager One',
      subject: { kind: 'operator', id: 'elan-flyers', name: 'Élan Flying Club' },
      before: { name: 'Élan Flyers' },
      after: { name: 'Élan Flying Club' },
    });
    // The same again changes nothing, and is no entry.
    const before = (await lastEntry()).id;
    expect((await manager.data(rename, { input: { ...input, expectedRevision: 2 } })).renameOperator).toMatchObject({
      revision: 2,
    });
    expect((await lastEntry()).id).toBe(before);
    expect(await manager.problem(rename, { input: { ...input, name: 'Late' } })).toMatchObject({
      code: 'STALE_REVISION',
      changedBy: 'Manager One',
    });
    expect(await manager.problem(addOperator, { name: 'élan flying club' })).toMatchObject({ field: 'name' });
    expect(await manager.problem(addOperator, { name: ' ' })).toMatchObject({ code: 'BAD_INPUT', field: 'name' });
  });

  it('takes only a zone that the rules know', async () => {
    expect(await manager.problem(addBase, { name: 'Moon', zone: 'Moon/Sea' })).toMatchObject({
      code: 'BAD_INPUT',
      field: 'zone',
    });
    expect((await manager.data(addBase, { name: 'Harbour', zone: 'America/New_York' })).addBase).toEqual({
      id: 'harbour',
      zone: 'America/New_York',
      revision: 1,
    });
  });

  it('rewrites no aircraft record and no verdict with a base’s zone, and says where the two differ', async () => {
    const technician = await as('technician@one.example');
    const home = { id: 'strip', name: 'Strip', zone: 'America/Chicago' };
    await technician.record('house-plane', 0, [add('TW-HSE', { base: home, seats: 1 }), ...flyable()]);
    const look =
      'query { aircraft(id: "house-plane") { revision dossier verdicts { ready changesAt } findings { key } } }';
    const before = await technician.data(look);
    const { revision } = (await house()).bases.find((each: Data) => each.id === 'strip');
    const input = { baseId: 'strip', expectedRevision: revision, name: 'Long Strip', zone: 'Pacific/Auckland' };
    expect((await manager.data(amendBase, { input })).amendBase).toEqual({
      name: 'Long Strip',
      zone: 'Pacific/Auckland',
      revision: 2,
      otherZone: 1,
    });
    expect(await technician.data(look)).toEqual(before);
    expect(before.aircraft.dossier.configuration.aircraft.base).toEqual(home);
    expect(await judgingAgain()).toBe(0);
  });
});

describe('flight profiles', () => {
  it('adds one in the words of the rules', async () => {
    const input = { name: 'Night rental, house', wanted: false, conditions };
    const { addFlightProfile: made } = await manager.data(addProfile, { input });
    expect(made).toMatchObject({
      id: 'night-rental-house',
      wanted: false,
      conditions: { rules: 'vfr', light: 'night', purpose: 'rental', airspace: ['controlled'], approaches: [] },
    });
    const errand = {
      name: 'Ferry to the shop',
      wanted: false,
      conditions: { ...conditions, errand: 'TO_REPAIR_OF_ELT', region: ' Islands ' },
    };
    expect((await manager.data(addProfile, { input: errand })).addFlightProfile.conditions).toMatchObject({
      errand: 'to-repair-of-elt',
      region: 'Islands',
    });
    expect((await manager.data('{ profiles { id } }')).profiles).not.toContainEqual({ id: 'night-rental-house' });
  });

  it.each([
    ['approaches under VFR', { approaches: ['ILS'] }, 'input.conditions.approaches'],
    ['an altitude above all', { topFt: 60_001 }, 'input.conditions.topFt'],
    ['a region with a name too long', { region: 'x'.repeat(201) }, 'input.conditions.region'],
    ['a radius of nothing', { localTrainingNm: 0 }, 'input.conditions.localTrainingNm'],
  ])('refuses %s', async (_, wrong, field) => {
    const input = { name: 'Wrong', wanted: true, conditions: { ...conditions, ...wrong } };
    expect(await manager.problem(addProfile, { input })).toMatchObject({ code: 'BAD_INPUT', field });
  });

  it('has every aircraft judged again when one is changed, and meanwhile shows no yes', async () => {
    const technician = await as('technician@one.example');
    await technician.record('house-again', 0, [
      add('TW-HAG', { seats: 1 }),
      ...flyable(),
      defineMeter(),
      readMeter(100_000, `${daysAgo(1)}T12:00Z`),
    ]);
    const board = `query { readyBoard(profile: "vfr-cross-country", filter: { text: "TW-HAG" }) {
      counts { yes no cannotTell judgingAgain } } }`;
    const before = (await technician.data(board)).readyBoard.counts[0];
    expect(before.judgingAgain).toBe(0);
    const { profiles } = await house();
    const profile = profiles.find((each: Data) => each.id === 'vfr-cross-country');
    const input = {
      profileId: profile.id,
      expectedRevision: profile.revision,
      name: profile.name,
      wanted: true,
      conditions: { ...conditions, light: 'DAY', purpose: 'PRIVATE', airspace: [], topFt: 9000 },
    };
    // The worker passes over an aircraft that somebody has in hand: it stays as it was judged, as long as this takes.
    const owner = await asOwner(shared);
    await owner.query(`begin; select 1 from aircraft where id = 'house-again' for update`);
    await manager.data(amendProfile, { input });
    expect(await judgingAgain()).toBeGreaterThan(0);
    expect((await technician.data(board)).readyBoard.counts).toEqual([
      { yes: 0, no: 0, cannotTell: 0, judgingAgain: 1 },
    ]);
    expect(await lastEntry()).toMatchObject({
      kind: 'flight-profile.amend',
      before: { topFt: 9500 },
      after: { topFt: 9000 },
    });
    await owner.query('rollback');
    await owner.end();
    await expect.poll(judgingAgain, { timeout: 100_000, interval: 1000 }).toBe(0);
    expect((await technician.data(board)).readyBoard.counts).toEqual([before]);
    expect(await manager.problem(amendProfile, { input })).toMatchObject({ code: 'STALE_REVISION' });
  });

  it('keeps the order that it is given, whole lists only', async () => {
    const ids = (await house()).profiles.map((each: Data) => each.id);
    const turned = [...ids].reverse();
    expect((await manager.data(order, { ids: turned })).orderFlightProfiles.map((each: Data) => each.id)).toEqual(
      turned,
    );
    expect(await lastEntry()).toMatchObject({ kind: 'flight-profile.order', after: { order: turned } });
    const wanted = (await manager.data('{ profiles { id } }')).profiles.map((each: Data) => each.id);
    expect(turned.filter((id) => wanted.includes(id))).toEqual(wanted);
    for (const wrong of [ids.slice(1), [...ids.slice(1), ids[1]], [...ids, 'more']])
      expect(await manager.problem(order, { ids: wrong })).toMatchObject({ code: 'NOT_FOUND', field: 'ids' });
    await manager.data(order, { ids });
    expect(await judgingAgain()).toBe(0);
  });
});

describe('what was changed', () => {
  it('starts with the founding and comes in pages without gap or repeat', async () => {
    const { houseEntries: all } = await auditor.data(entries, { first: 500 });
    const found: string[] = [];
    for (let after: string | null = null; ;) {
      const { houseEntries: page }: Data = await auditor.data(entries, { first: 3, after });
      found.push(...page.edges.map((each: Data) => each.node.id));
      expect(page.totalCount).toBe(all.totalCount);
      if (!page.pageInfo.hasNextPage) break;
      after = page.pageInfo.endCursor;
    }
    expect(found).toEqual(all.edges.map((each: Data) => each.node.id));
    expect(all.totalCount).toBe(found.length);
    expect(all.edges.at(-2).node).toMatchObject({ kind: 'person.add', subject: { name: 'Manager One' } });
    expect(all.edges.at(-1).node).toMatchObject({ kind: 'organisation.found', subject: { name: 'shop-one' } });
  });
});

describe('roles', () => {
  const profile = { name: 'X', wanted: true, conditions };
  const writes: readonly (readonly [string, string, Record<string, unknown>])[] = [
    ['addOperator', addOperator, { name: 'X' }],
    ['renameOperator', rename, { input: { operatorId: 'north', expectedRevision: 1, name: 'X' } }],
    ['addBase', addBase, { name: 'X', zone: 'UTC' }],
    ['amendBase', amendBase, { input: { baseId: 'field', expectedRevision: 1, name: 'X', zone: 'UTC' } }],
    ['addFlightProfile', addProfile, { input: profile }],
    ['amendFlightProfile', amendProfile, { input: { ...profile, profileId: 'ferry-crew', expectedRevision: 1 } }],
    ['orderFlightProfiles', order, { ids: [] }],
  ];
  it.each(writes)('%s is for managers', async (_, query, variables) => {
    for (const email of ['technician@one.example', 'dispatcher@one.example', 'auditor@one.example'])
      expect(await (await as(email)).problem(query, variables), email).toMatchObject({ code: 'FORBIDDEN' });
    expect(await (await as(null)).problem(query, variables)).toMatchObject({ code: 'SIGNED_OUT' });
  });

  it.each([
    ['house', lists],
    ['houseEntries', entries],
  ])('%s is for managers and auditors to read', async (_, query) => {
    expect(await auditor.problem(query)).toEqual({ code: 'none' });
    for (const email of ['technician@one.example', 'dispatcher@one.example'])
      expect(await (await as(email)).problem(query), email).toMatchObject({ code: 'FORBIDDEN' });
  });
});
