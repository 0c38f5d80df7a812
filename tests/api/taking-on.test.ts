import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { add, defineMeter } from './cast.js';
import type { Client, Data } from './client.js';
import { founded } from './founded.js';
import { Server } from './server.js';

let server: Server;
let person: (name: string) => Client;

beforeAll(async () => {
  server = await Server.start();
  person = await founded(server);
  for (const registration of ['TW-01T', 'TW-02T', 'TW-03T'])
    await recorded('technician@one', registration.toLowerCase(), 0, [add(registration)]);
  // Of this one a little more is known.
  await recorded('technician@one', 'tw-02t', 1, [defineMeter()]);
});
afterAll(() => server.remove());

async function recorded(name: string, id: string, revision: number, changes: readonly { kind: string }[]) {
  const { errors } = await person(name).record(id, revision, changes);
  expect(errors).toBeUndefined();
}

const fields = `totalCount told openAnswers pageInfo { hasNextPage endCursor }
  edges { node { aircraft { id registration } openAnswers openFlights
    visits { visit settles opens { id } facts { fact opens settles } } } }`;

async function fleet(name: string, args = ''): Promise<Data> {
  return (await person(name).data(`{ takingOn${args} { ${fields} } }`)).takingOn;
}

describe('taking on', () => {
  it.each([
    ['nobody', 'SIGNED_OUT'],
    ['dispatcher@one', 'FORBIDDEN'],
  ])('%s may not see it', async (name, code) => {
    expect(await person(name).problem(`{ takingOn { totalCount } }`)).toMatchObject({ code });
  });

  it.each(['manager@one', 'technician@one', 'auditor@one'])('%s may', async (name) => {
    expect(await fleet(name)).toMatchObject({ totalCount: 3 });
  });

  it('shows another house nothing of it', async () => {
    expect(await fleet('manager@two')).toMatchObject({ totalCount: 0, told: 0, openAnswers: 0, edges: [] });
  });

  it('says per aircraft what cannot be told, as the board and the findings do', async () => {
    const { edges, told, openAnswers } = await fleet('manager@one');
    expect(told).toBe(0);
    const nodes: Data[] = edges.map((edge: Data) => edge.node);
    expect(openAnswers).toBe(nodes.reduce((sum, each) => sum + each.openAnswers, 0));
    for (const { aircraft, openAnswers: open, openFlights } of nodes) {
      const seen: Data = await person('manager@one').data(
        'query ($id: ID!) { aircraft(id: $id) { findings { key outcome } verdicts { ready } } }',
        { id: aircraft.id },
      );
      const keys = seen.aircraft.findings.filter((each: Data) => each.outcome === 'CANNOT_TELL');
      expect(open).toBe(new Set(keys.map((each: Data) => each.key)).size);
      expect(openFlights).toBe(seen.aircraft.verdicts.filter((each: Data) => each.ready === 'CANNOT_TELL').length);
      expect(openFlights).toBeGreaterThan(0);
    }
  });

  it('puts what is missing into visits, the most useful first', async () => {
    const { edges } = await fleet('technician@one', '(first: 1)');
    const [{ node }] = edges as Data[];
    const facts = node.visits.flatMap((each: Data) => each.facts.map(({ fact }: Data) => fact));
    expect(new Set(facts).size).toBe(facts.length);
    expect(facts).toContain('status.completeness.directives');
    for (const { facts: own, settles } of node.visits) {
      expect(own.length).toBeGreaterThan(0);
      const ranks = own.map((each: Data) => each.opens * 1000 + each.settles);
      expect(ranks).toEqual([...ranks].sort((a: number, b: number) => b - a));
      expect(settles).toBeGreaterThanOrEqual(Math.max(...own.map((each: Data) => each.settles)));
    }
  });

  it('comes in pages, each aircraft once', async () => {
    const seen: string[] = [];
    for (let after: string | null = null; ;) {
      const page: Data = await fleet('manager@one', `(first: 1${after === null ? '' : `, after: "${after}"`})`);
      seen.push(...page.edges.map((edge: Data) => edge.node.aircraft.id));
      if (!page.pageInfo.hasNextPage) break;
      after = page.pageInfo.endCursor;
    }
    expect([...seen].sort()).toEqual(['tw-01t', 'tw-02t', 'tw-03t']);
    expect(await person('manager@one').problem('{ takingOn(first: 26) { totalCount } }')).toMatchObject({
      code: 'BAD_INPUT',
      field: 'first',
    });
  });

  it('has one answer less to find where a person stated a list to be complete', async () => {
    const before = (await fleet('manager@one', '(filter: { text: "TW-03T" })')).edges[0].node;
    const stated = { asOf: '2026-11-20', by: 'Wenna Tarrant' };
    const statement = { kind: 'completeness.state', version: 1, lists: [{ list: 'directives', stated }] };
    await recorded('technician@one', 'tw-03t', 1, [statement]);
    const after = (await fleet('manager@one', '(filter: { text: "TW-03T" })')).edges[0].node;
    expect(after.openAnswers).toBeLessThan(before.openAnswers);
    const facts = after.visits.flatMap((each: Data) => each.facts.map(({ fact }: Data) => fact));
    expect(facts).not.toContain('status.completeness.directives');
  });
});
