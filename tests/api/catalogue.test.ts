import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Change, EquipmentType, TypeEntry } from '../../libs/rules/src/index.js';
import { approvalOf, limitationOf, typeOf, unitOf } from '../../libs/rules/testing/builders.js';
import { add, daysAgo, defineMeter, flyable, readMeter } from './cast.js';
import type { Answer, Client, Data } from './client.js';
import { as } from './people.js';

let technician: Client;
let manager: Client;
beforeAll(async () => {
  technician = await as('technician@one.example');
  manager = await as('manager@one.example');
});

function entry(family: string, part: Partial<TypeEntry> = {}): TypeEntry {
  const { id: _id, ...body } = typeOf({ id: family, functions: ['com'], name: `${family} set`, ...part });
  return body;
}

const fields = 'id family document revision supersededBy enteredBy body versions { id revision current enteredBy }';
const enter = (client: Client, body: unknown, key: string = randomUUID()): Promise<Answer> =>
  client.ask(`mutation ($input: EnterTypeInput!) { enterType(input: $input) { ${fields} } }`, { input: { key, body } });
const revise = (client: Client, expectedId: string, body: unknown, key: string = randomUUID()): Promise<Answer> =>
  client.ask(`mutation ($input: ReviseTypeInput!) { reviseType(input: $input) { ${fields} } }`, {
    input: { key, expectedId, body },
  });
const preview = (client: Client, body: unknown, expectedId: string | null = null): Promise<Answer> =>
  client.ask(
    `query ($input: PreviewTypeInput!) { previewType(input: $input) { remarks { field text } effect { total aircraft {
      aircraft { registration } units { unitId typeId } verdicts { profile { id } was is } capabilities { capability was is }
      opened { key text } closed { key } refused } } } }`,
    { input: { body, expectedId } },
  );
const problem = ({ errors }: Answer) => errors?.[0]?.extensions;
const refusals = (answer: Answer) =>
  ((problem(answer)?.['refusals'] ?? []) as readonly { code: string; field: string }[]).map(({ code, field }) => [
    code,
    field,
  ]);

async function entered(family: string, part: Partial<TypeEntry> = {}): Promise<string> {
  const answer = await enter(technician, entry(family, part));
  expect(answer.errors).toBeUndefined();
  return answer.data.enterType.id as string;
}

describe('entering a type', () => {
  it('makes the first version of a product, and says who entered it', async () => {
    const body = entry('ent-1', { document: 'Manual ENT', revision: 'A' });
    const answer = await enter(technician, body);
    expect(answer.errors).toBeUndefined();
    const made = answer.data.enterType;
    expect(made).toMatchObject({ family: 'ent-1', document: 'Manual ENT', revision: 'A', supersededBy: null });
    expect(made.enteredBy).toBe('Technician One');
    expect(made.body).toEqual({ ...body, id: made.id });
    expect(made.versions).toEqual([{ id: made.id, revision: 'A', current: true, enteredBy: 'Technician One' }]);
    const list = await technician.data('{ catalogue(filter: { text: "ent-1" }) { edges { node { id } } totalCount } }');
    expect(list.catalogue).toEqual({ edges: [{ node: { id: made.id } }], totalCount: 1 });
  });

  it('is done once for one key, and refuses the key for anything else', async () => {
    const key = randomUUID();
    const first = await enter(technician, entry('ent-2'), key);
    const again = await enter(technician, entry('ent-2'), key);
    expect(again).toEqual(first);
    expect(problem(await enter(technician, entry('ent-2b'), key))).toMatchObject({
      code: 'KEY_REUSED',
      field: 'input.key',
    });
    expect(problem(await enter(manager, entry('ent-2'), key))).toMatchObject({ code: 'KEY_REUSED' });
    expect(problem(await enter(technician, entry('ent-2c'), 'short'))).toMatchObject({ field: 'input.key' });
  });

  it('is done once by two people at the same moment', async () => {
    const both = await Promise.all([
      enter(technician, entry('ent-3')),
      enter(manager, entry('ent-3', { revision: 'C' })),
    ]);
    expect(both.filter(({ errors }) => errors === undefined)).toHaveLength(1);
    const lost = both.find(({ errors }) => errors !== undefined);
    expect(lost && refusals(lost)).toEqual([['family-taken', 'input.body.family']]);
    const { catalogue } = await technician.data('{ catalogue(filter: { text: "ent-3" }) { totalCount } }');
    expect(catalogue.totalCount).toBe(1);
  });

  it('refuses a product that is there already, before and at saving', async () => {
    await entered('ent-4');
    const taken = [['family-taken', 'input.body.family']];
    expect(refusals(await enter(manager, entry('ent-4', { name: 'Another' })))).toEqual(taken);
    expect(refusals(await preview(manager, entry('ent-4', { name: 'Another' })))).toEqual(taken);
  });

  it('names every bad field, and saves nothing', async () => {
    const wrong = {
      ...entry('ent-5'),
      document: '',
      massLb: -1,
      functions: ['com', 'juggling'],
      ports: [{ name: 'A' }],
    };
    const codes = refusals(await enter(technician, wrong));
    const places = codes.map(([, field]) => field);
    for (const field of ['document', 'massLb', 'functions.1', 'ports.0.signal', 'ports.0.speed'])
      expect(places).toContain(`input.body.${field}`);
    const crossed = {
      ...entry('ent-5'),
      limitations: [limitationOf({ kind: 'no-link' })],
      drawA: { at14V: null, at28V: null },
    };
    expect(refusals(await enter(technician, crossed))).toEqual([
      ['missing-for-kind', 'input.body.limitations.0.functions'],
      ['no-current', 'input.body.drawA'],
    ]);
    expect(refusals(await enter(technician, 'not an entry'))).toEqual([['malformed', 'input.body']]);
    const { catalogue } = await technician.data('{ catalogue(filter: { text: "ent-5" }) { totalCount } }');
    expect(catalogue.totalCount).toBe(0);
  });

  it('remarks on pairs with products that nobody entered, and lets them stand', async () => {
    await entered('ent-6');
    const pair = (family: string) => ({
      family,
      signals: ['audio' as const],
      software: null,
      document: 'Manual',
      revision: 'A',
    });
    const body = entry('ent-7', { pairs: [pair('ent-6'), pair('ent-none')] });
    const answer = await preview(technician, body);
    expect(answer.data.previewType).toMatchObject({
      remarks: [{ field: 'pairs.1.family' }],
      effect: { total: 0, aircraft: [] },
    });
    expect((await enter(technician, body)).errors).toBeUndefined();
  });
});

describe('revising a type', () => {
  it('puts a new version in force and leaves the old one as it was', async () => {
    const first = await entered('rev-1', { revision: 'A' });
    const answer = await revise(manager, first, entry('rev-1', { revision: 'B', massLb: 3.5 }));
    expect(answer.errors).toBeUndefined();
    const made = answer.data.reviseType;
    expect(made.id).not.toBe(first);
    expect(made).toMatchObject({ revision: 'B', supersededBy: null, enteredBy: 'Manager One' });
    expect(made.versions).toEqual([
      { id: made.id, revision: 'B', current: true, enteredBy: 'Manager One' },
      { id: first, revision: 'A', current: false, enteredBy: 'Technician One' },
    ]);
    const { old } = await technician.data(`{ old: equipmentType(id: "${first}") { supersededBy body } }`);
    expect(old.supersededBy).toBe(made.id);
    expect(old.body).toEqual({ ...entry('rev-1', { revision: 'A' }), id: first });
  });

  it('tells the second of two who revise it who was first, and takes the work once it is seen', async () => {
    const first = await entered('rev-2', { revision: 'A' });
    const theirs = (await revise(manager, first, entry('rev-2', { revision: 'B' }))).data.reviseType.id;
    const mine = entry('rev-2', { revision: 'B', massLb: 2 });
    for (const answer of [await revise(technician, first, mine), await preview(technician, mine, first)]) {
      expect(problem(answer)).toMatchObject({
        code: 'STALE_REVISION',
        field: 'input.expectedId',
        changedBy: 'Manager One',
        currentId: theirs,
        wayOut: expect.stringContaining('your draft is kept'),
      });
    }
    expect((await revise(technician, theirs, mine)).errors).toBeUndefined();
  });

  it('is done once by two people at the same moment', async () => {
    const first = await entered('rev-3', { revision: 'A' });
    const both = await Promise.all(
      [technician, manager].map((client, at) =>
        revise(client, first, entry('rev-3', { revision: 'B', massLb: at + 1 })),
      ),
    );
    expect(both.map((answer) => problem(answer)?.code ?? 'saved').sort()).toEqual(['STALE_REVISION', 'saved']);
    const { equipmentType } = await technician.data(`{ equipmentType(id: "${first}") { versions { current } } }`);
    expect(equipmentType.versions).toEqual([{ current: true }, { current: false }]);
  });

  it('gives a repeated request its first answer, also when somebody revised it since', async () => {
    const first = await entered('rev-4', { revision: 'A' });
    const key = randomUUID();
    const second = await revise(technician, first, entry('rev-4', { revision: 'B' }), key);
    const third = await revise(manager, second.data.reviseType.id, entry('rev-4', { revision: 'C' }));
    expect(third.errors).toBeUndefined();
    const again = await revise(technician, first, entry('rev-4', { revision: 'B' }), key);
    expect(again.errors).toBeUndefined();
    expect(again.data.reviseType.id).toBe(second.data.reviseType.id);
    expect(again.data.reviseType.versions).toHaveLength(3);
  });

  it('says so when nothing changed, when old words come back, and when it became another product', async () => {
    const first = await entered('rev-5', { revision: 'A' });
    expect(refusals(await revise(technician, first, entry('rev-5', { revision: 'A' })))).toEqual([
      ['nothing-changed', 'input.body'],
    ]);
    const second = (await revise(technician, first, entry('rev-5', { revision: 'B' }))).data.reviseType.id;
    const back = await revise(technician, second, entry('rev-5', { revision: 'A' }));
    expect(refusals(back)).toEqual([['old-content', 'input.body']]);
    expect(back.errors?.[0]?.message).toMatch(/revision A, entered on \d{4}-\d{2}-\d{2}/);
    expect(refusals(await revise(technician, second, entry('rev-other', { revision: 'C' })))).toEqual([
      ['family-differs', 'input.body.family'],
    ]);
    expect(problem(await revise(technician, 'rev-5@none', entry('rev-5')))).toMatchObject({
      code: 'NOT_FOUND',
      field: 'input.expectedId',
    });
    const { equipmentType } = await technician.data(
      `{ equipmentType(id: "${second}") { supersededBy versions { id } } }`,
    );
    expect(equipmentType.supersededBy).toBeNull();
    expect(equipmentType.versions).toHaveLength(2);
  });
});

describe('who may', () => {
  it.each([
    ['dispatcher@one.example', 'FORBIDDEN'],
    ['auditor@one.example', 'FORBIDDEN'],
    [null, 'SIGNED_OUT'],
  ])('%s: %s', async (email, code) => {
    const someone = await as(email);
    const id = await entered(`may-${randomUUID().slice(0, 8)}`);
    const family = id.split('@')[0] ?? '';
    for (const answer of [
      await enter(someone, entry('may-new')),
      await revise(someone, id, entry(family, { revision: 'Z' })),
      await preview(someone, entry(family, { revision: 'Z' }), id),
      await someone.ask(`{ movingTo(typeId: "${id}") { total } }`),
    ])
      expect(problem(answer)?.code).toBe(code);
  });

  it('another organisation neither sees nor revises it, and may have its own of the same name', async () => {
    const id = await entered('may-ours');
    const stranger = await as('technician@two.example');
    expect((await stranger.data(`{ equipmentType(id: "${id}") { id } }`)).equipmentType).toBeNull();
    expect(problem(await revise(stranger, id, entry('may-ours', { revision: 'Z' })))).toMatchObject({
      code: 'NOT_FOUND',
    });
    expect(problem(await stranger.ask(`{ movingTo(typeId: "${id}") { total } }`))).toMatchObject({ code: 'NOT_FOUND' });
    const theirs = await enter(stranger, entry('may-ours', { revision: 'Z' }));
    expect(theirs.errors).toBeUndefined();
    const { equipmentType } = await technician.data(`{ equipmentType(id: "${id}") { supersededBy versions { id } } }`);
    expect(equipmentType).toEqual({ supersededBy: null, versions: [{ id }] });
  });
});

describe('who is affected', () => {
  const performed = { date: daysAgo(20), at: null };
  const radio = (typeId: string): Change => ({
    kind: 'unit.install',
    version: 1,
    unit: unitOf({
      id: 'radio',
      name: 'Radio',
      typeId,
      place: 'centre-stack',
      serial: '7',
      approval: approvalOf({ grants: ['com'], permission: true, modelListed: true }),
    }),
    performed,
    touched: ['behind-panel'],
    mass: null,
  });

  const antenna: Change = {
    kind: 'antenna.fit',
    version: 1,
    antenna: { id: 'whip', kind: 'com', units: ['radio'], approved: true, xIn: null, yIn: null },
    touched: [],
    performed,
  };

  /** A flyable aircraft with a radio of this type. */
  async function withRadio(id: string, registration: string, typeId: string, operatorId: string): Promise<number> {
    const answer = await technician.record(id, 0, [
      add(registration, { seats: 1, operatorId }),
      defineMeter(),
      readMeter(100_000, `${daysAgo(1)}T12:00Z`),
      ...flyable(),
      radio(typeId),
      antenna,
    ]);
    expect(answer.errors).toBeUndefined();
    return answer.data.commitChanges.revision as number;
  }

  const first = entry('aff-1', { functions: ['com'], revision: 'A' });
  /** The new manual wants something joined to it for its radio. */
  const second = entry('aff-1', {
    revision: 'B',
    limitations: [limitationOf({ kind: 'requires', functions: ['com'], beyond: ['audio'] })],
  });
  let firstId = '';
  let revision = 0;
  beforeAll(async () => {
    firstId = await entered('aff-1', first);
    revision = await withRadio('aff-north', 'TW-AFN', firstId, 'north');
    await withRadio('aff-south', 'TW-AFS', firstId, 'south');
    await withRadio('aff-other', 'TW-AFO', await entered('aff-2'), 'south');
  });

  const fitted = (client: Client, id: string): Promise<Data> =>
    client.data(
      `{ equipmentType(id: "${id}") { fitted { total units { unitId name serial typeId aircraft { registration } } } } }`,
    );

  it('lists the units of the product; a dispatcher of one operator sees that operator’s', async () => {
    const { equipmentType } = await fitted(technician, firstId);
    expect(equipmentType.fitted.total).toBe(2);
    expect(equipmentType.fitted.units[0]).toEqual({
      unitId: 'radio',
      name: 'Radio',
      serial: '7',
      typeId: firstId,
      aircraft: { registration: 'TW-AFN' },
    });
    const north = (await fitted(await as('north@one.example'), firstId)).equipmentType.fitted;
    expect([north.total, north.units.length]).toEqual([1, 1]);
  });

  it('says before saving what moving them would do, and that is what then happens', async () => {
    const before = await preview(technician, second, firstId);
    const { effect } = before.data.previewType;
    expect(effect.total).toBe(2);
    expect(effect.aircraft.map((each: Data) => each.aircraft.registration)).toEqual(['TW-AFN', 'TW-AFS']);
    const [north] = effect.aircraft;
    expect(north.units).toEqual([{ unitId: 'radio', typeId: firstId }]);
    expect(north.refused).toEqual([]);
    expect(north.opened.map(({ key }: Data) => key)).toContain('required-companions|radio:com');

    const answer = await revise(technician, firstId, second);
    expect(answer.errors).toBeUndefined();
    const secondId = answer.data.reviseType.id as string;
    // Saving moved nobody.
    const { aircraft } = await technician.data('{ aircraft(id: "aff-north") { revision dossier } }');
    expect(aircraft.revision).toBe(revision);
    expect(aircraft.dossier.configuration.units[0].typeId).toBe(firstId);

    const moving = await technician.data(`{ movingTo(typeId: "${secondId}") { total aircraft { opened { key } } } }`);
    expect(moving.movingTo.total).toBe(2);
    expect(moving.movingTo.aircraft[0].opened).toEqual(north.opened.map(({ key }: Data) => ({ key })));

    const unit = { ...aircraft.dossier.configuration.units[0], typeId: secondId } as ReturnType<typeof unitOf>;
    const moved = await technician.record('aff-north', revision, [
      { kind: 'unit.amend', version: 1, unit, sameUnit: null, reason: 'Manual revised' } as Change,
    ]);
    expect(moved.errors).toBeUndefined();
    const done = moved.data.commitChanges;
    expect([...done.opened].sort()).toEqual(north.opened.map(({ key }: Data) => key).sort());
    expect([...done.closed].sort()).toEqual(north.closed.map(({ key }: Data) => key).sort());
    expect(done.verdicts).toEqual(
      north.verdicts.map(({ was, is, profile }: Data) => ({ was, is, profile: { id: profile.id } })),
    );
    const left = await technician.data(
      `{ movingTo(typeId: "${secondId}") { total aircraft { aircraft { registration } } } }`,
    );
    expect(left.movingTo).toEqual({ total: 1, aircraft: [{ aircraft: { registration: 'TW-AFS' } }] });
  });

  it('shows flights and capabilities that are lost', async () => {
    const bare: EquipmentType['functions'] = ['audio'];
    const { versions } = (await technician.data(`{ equipmentType(id: "${firstId}") { versions { id current } } }`))
      .equipmentType;
    const current = versions.find((each: Data) => each.current).id as string;
    const answer = await preview(technician, entry('aff-1', { functions: bare, revision: 'C' }), current);
    const south = answer.data.previewType.effect.aircraft.find((each: Data) => each.aircraft.registration === 'TW-AFS');
    expect(south.capabilities).toContainEqual({ capability: 'two-way-radio', was: 'MET', is: 'NOT_MET' });
  });
});
