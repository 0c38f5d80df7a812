import { expect, it } from 'vitest';
import { add, daysAgo, hold } from './cast.js';
import type { Data } from './client.js';
import { as } from './people.js';

const question = `query ($id: ID!) { rule(id: $id) {
  entry { id topic open sources { status } } messages { id text } costs { stops capability ofUnit kind }
  values { label amount unit source { document } } cases { name outcome text } } }`;

it('shows each rule of the book with words, costs and cases that ran', async () => {
  const auditor = await as('auditor@one.example');
  const { ruleBook }: Data = await auditor.data('{ ruleBook { id } }');
  for (const { id } of ruleBook) {
    const { rule }: Data = await auditor.data(question, { id });
    expect(rule.entry.id).toBe(id);
    expect(rule.messages.length, id).toBeGreaterThan(0);
    expect(rule.costs.length, id).toBeGreaterThan(0);
    const told = rule.cases.filter((each: Data) => each.outcome !== null);
    expect(
      told.some((each: Data) => each.outcome === 'MET'),
      id,
    ).toBe(true);
    for (const each of told) expect(each.text, `${id}, ${each.name}`).not.toMatch(/[{}]|no longer in force/);
  }
});

it('says in words what a case came to, and nothing where the rule is silent', async () => {
  const technician = await as('technician@one.example');
  const { rule }: Data = await technician.data(question, { id: 'held' });
  expect(rule.cases).toContainEqual({
    name: 'from its first minute',
    outcome: 'NOT_MET',
    text: 'The aircraft is held: Fuel smell (J. Orrell).',
  });
  expect(rule.costs).toEqual([{ stops: 'capability', capability: 'fly', ofUnit: false, kind: null }]);
  const check: Data = await technician.data(question, { id: 'vor-check' });
  const thirty = { label: 'within-thirty-days', amount: 30, unit: 'days', source: { document: '14 CFR 91.171' } };
  expect(check.rule.values[0]).toEqual(thirty);
  // A house may count a day less; then the figure is its own.
  expect(check.rule.values).toContainEqual({ ...thirty, amount: 29, source: { document: 'house policy' } });
  const port: Data = await technician.data(question, { id: 'required-ports-joined' });
  expect(port.rule.cases).toContainEqual({ name: 'not catalogued: no ports known', outcome: null, text: null });
});

it('counts what it bites now in the own house only', async () => {
  const openIn = async (email: string): Promise<number> => {
    const { rule }: Data = await (await as(email)).data(question, { id: 'held' });
    return rule.entry.open;
  };
  const [ours, theirs] = [await openIn('auditor@one.example'), await openIn('technician@two.example')];
  const technician = await as('technician@one.example');
  const answer = await technician.record('rule-bites', 0, [
    add('TW-B01'),
    hold('squawk', `${daysAgo(1)}T00:00Z`, null),
  ]);
  expect(answer.errors).toBeUndefined();
  expect(await openIn('auditor@one.example')).toBe(ours + 1);
  expect(await openIn('technician@two.example')).toBe(theirs);
});

it('knows no rule by another name, and shows none to nobody', async () => {
  const dispatcher = await as('dispatcher@one.example');
  expect((await dispatcher.data(question, { id: '../package' })).rule).toBeNull();
  expect(await (await as(null)).problem(question, { id: 'held' })).toMatchObject({ code: 'SIGNED_OUT' });
});
