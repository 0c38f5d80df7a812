import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Policy } from '../../catalogue/policy.js';
import type { SourceStatus } from '../../facts/source.js';
import { allOf, anyOf, implies, met, ref, unknown, within } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import { defineRule } from '../rule.js';
import { sourceSaySo } from './source-say-so.js';

const source = (status: SourceStatus) => ({ source: { document: 'test', paragraph: '1', edition: '', status } });
const memory = source('from-memory');

/** Other rules, as this one sees them: only their clauses and what they cost. */
function states(clause: Clause, costs = true) {
  return defineRule(
    {
      id: 'other-rule',
      topic: 'equipment',
      asks: '.',
      binds: '.',
      sources: [],
      messages: { all: '' },
      establishes: [],
    },
    () => [
      {
        subject: 'com1',
        clause,
        messages: { met: 'all', 'not-met': 'all', 'cannot-tell': 'all', 'not-applicable': 'all' },
        data: {},
        effects: costs
          ? [{ stops: 'capability', capability: 'two-way-radio', through: 'com1' }]
          : [{ stops: 'nothing', kind: 'advice' }],
        remedies: [],
      },
    ],
  );
}

/** 2026-03-10 begins in Chicago at 05:00Z. */
const policy: Policy = {
  kind: 'weak-source',
  version: 1,
  from: '2026-03-10',
  body: { statuses: ['from-memory'], by: ['manager'] },
};
const givenUp: Policy = { ...policy, version: 2, from: '2026-03-20', body: { statuses: [], by: [] } };
const subject = 'other-rule:com1';
const onMemory = states(within('good-for', { before: '2026-04-01T00:00Z' }, memory));
const asked = { dossier: dossierOf(), policies: [policy], beside: [onMemory], subject, at: '2026-03-11T12:00Z' };
const said = (from: string, until: string, rule = 'other-rule', of = 'com1') =>
  dossierOf({
    status: {
      sayings: [{ id: 's1', rule, subject: of, by: 'M. Tace', reason: 'Looked it up', from, until }],
    },
  });

testRule(sourceSaySo, [
  { ...asked, name: 'no policy set', policies: [], expect: 'none' },
  {
    ...asked,
    name: 'the minute before the policy counts',
    at: '2026-03-10T04:59Z',
    expect: 'not-applicable',
    message: 'not-asked',
  },
  {
    ...asked,
    name: 'from its first minute a yes from memory wants a say-so',
    at: '2026-03-10T05:00Z',
    expect: 'cannot-tell',
    message: 'wanted',
    data: { rule: 'other-rule', status: 'from-memory', result: 'other-rule|com1' },
  },
  {
    ...asked,
    name: 'a named person said so',
    dossier: said('2026-03-11T12:00Z', '2026-03-12T12:00Z'),
    expect: 'met',
    message: 'counts',
  },
  {
    ...asked,
    name: 'the minute before it was said',
    dossier: said('2026-03-11T12:01Z', '2026-03-12T12:00Z'),
    expect: 'cannot-tell',
  },
  {
    ...asked,
    name: 'until the last minute of what was said',
    dossier: said('2026-03-11T10:00Z', '2026-03-11T12:01Z'),
    expect: 'met',
  },
  {
    ...asked,
    name: 'what was said has ended',
    dossier: said('2026-03-11T10:00Z', '2026-03-11T12:00Z'),
    expect: 'cannot-tell',
  },
  {
    ...asked,
    name: 'said of another rule',
    dossier: said('2026-03-11T12:00Z', '2026-03-12T12:00Z', 'third-rule'),
    expect: 'cannot-tell',
  },
  {
    ...asked,
    name: 'said of another unit',
    dossier: said('2026-03-11T12:00Z', '2026-03-12T12:00Z', 'other-rule', 'com2'),
    at: '2026-03-11T12:05Z',
    expect: 'cannot-tell',
  },
  {
    ...asked,
    name: 'one of several that all count is from memory, one has no source',
    at: '2026-03-11T12:06Z',
    beside: [states(allOf('both', [met('counted'), met('remembered', memory)], 'cannot-tell'))],
    expect: 'cannot-tell',
  },
  {
    ...asked,
    name: 'from memory after a day, and that day is past',
    at: '2026-03-11T12:07Z',
    beside: [states(within('too-early', { before: '2026-03-01T00:00Z' }, memory, 'not-met', 'met'))],
    expect: 'cannot-tell',
    message: 'wanted',
  },
  {
    ...asked,
    name: 'what memory only forbids or leaves open makes no yes',
    at: '2026-03-11T12:08Z',
    beside: [states(within('forbidden', { before: '2026-04-01T00:00Z' }, memory, 'cannot-tell', 'not-met'))],
    expect: 'none',
  },
  {
    ...asked,
    name: 'asked only if something holds, which it does',
    at: '2026-03-11T12:09Z',
    beside: [states(implies(met('asked'), met('remembered', memory)))],
    expect: 'cannot-tell',
  },
  {
    ...asked,
    name: 'by memory, or by a capability that nothing gives',
    at: '2026-03-11T12:10Z',
    beside: [states(anyOf('either', [ref('nav-vor'), met('remembered', memory)], 'cannot-tell'))],
    expect: 'cannot-tell',
  },
  {
    ...asked,
    name: 'what is lost anyway wants no say-so',
    at: '2026-04-01T00:00Z',
    expect: 'not-applicable',
  },
  {
    ...asked,
    name: 'what nobody recorded wants that, and no say-so',
    at: '2026-03-11T12:04Z',
    beside: [
      states(
        allOf('both', [met('remembered', memory), unknown('recorded', ['status.records'], memory)], 'cannot-tell'),
      ),
    ],
    expect: 'not-applicable',
  },
  {
    ...asked,
    name: 'what a text says as well does not lean on memory',
    at: '2026-03-11T12:01Z',
    beside: [states(anyOf('either', [met('read', source('verified')), met('remembered', memory)], 'cannot-tell'))],
    expect: 'met',
  },
  {
    ...asked,
    name: 'a source of another kind',
    at: '2026-03-11T12:02Z',
    beside: [states(met('practised', source('common-practice')))],
    expect: 'none',
  },
  {
    ...asked,
    name: 'a result that costs no flight',
    at: '2026-03-11T12:03Z',
    beside: [states(met('remembered', memory), false)],
    expect: 'none',
  },
  {
    ...asked,
    name: 'the last minute before the house gives the policy up',
    policies: [policy, givenUp],
    at: '2026-03-20T04:59Z',
    expect: 'cannot-tell',
  },
  {
    ...asked,
    name: 'after the house has given it up',
    policies: [policy, givenUp],
    at: '2026-03-20T05:00Z',
    expect: 'not-applicable',
  },
]);
