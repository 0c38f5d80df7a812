import { describe, expect, it } from 'vitest';
import { mechanic, recordOf } from '../../testing/builders.js';
import { goodDay, trainer, trainerCatalogue } from '../../testing/trainer.js';
import { allOf, anyOf, flight, implies, met, notMet, ref, within } from '../verdict/build.js';
import { capabilities } from '../verdict/capability.js';
import type { Clause } from '../verdict/clause.js';
import { defaultConditions } from '../verdict/conditions.js';
import type { Effect } from '../verdict/result.js';
import { dependsOnFlight, effectOf, findingsOf } from './findings.js';

const end = '2026-05-20T00:00Z';
const held = trainer({
  status: {
    holds: [{ id: 'h', reason: 'Panel open', by: 'J. Orrell', from: '2026-03-18T00:00Z', until: '2026-03-20T00:00Z' }],
  },
});
const lesson = { ...defaultConditions, rules: 'vfr', airspace: [] } as const;
const ofRule = (ruleId: string, flights: Parameters<typeof findingsOf>[4], from = goodDay, to = end) =>
  findingsOf(held, trainerCatalogue, from, to, flights).filter((each) => each.ruleId === ruleId);

describe('a finding', () => {
  it('is open from its first minute to its last, with what can be done', () => {
    expect(ofRule('held', [lesson])).toEqual([
      {
        key: 'held|h',
        ruleId: 'held',
        topic: 'authority',
        subject: 'h',
        outcome: 'not-met',
        messageId: 'held',
        data: { reason: 'Panel open', by: 'J. Orrell', since: '2026-03-18T00:00Z' },
        opensAt: '2026-03-18T00:00Z',
        closesAt: '2026-03-20T00:00Z',
        above: -1,
        upTo: null,
        effect: 'stops-aircraft',
        capabilities: ['fly'],
        remedies: [{ kind: 'do', change: 'hold.lift', subject: 'h', facts: [] }],
      },
    ]);
  });

  it('that was open before is open from the start, one that goes on has no end', () => {
    expect(ofRule('held', [lesson], '2026-03-19T00:00Z')).toMatchObject([
      { opensAt: '2026-03-19T00:00Z', closesAt: '2026-03-20T00:00Z' },
    ]);
    expect(ofRule('held', [lesson], goodDay, '2026-03-19T00:00Z')).toMatchObject([
      { opensAt: '2026-03-18T00:00Z', closesAt: null },
    ]);
    expect(ofRule('held', [lesson], goodDay, '2026-03-20T00:00Z')).toMatchObject([{ closesAt: null }]);
    expect(ofRule('held', [lesson], '2026-03-20T00:00Z')).toEqual([]);
  });

  it('of hours stands beyond them, and is in doubt before them once the reading is old', () => {
    expect(
      ofRule('hundred-hour-inspection', [lesson]).map((each) => [
        each.outcome,
        each.opensAt,
        each.closesAt,
        each.above,
        each.upTo,
      ]),
    ).toEqual([
      ['cannot-tell', '2026-04-15T20:00Z', null, -1, 7000],
      ['not-met', goodDay, null, 7000, null],
    ]);
  });

  it('is one only on a flight that somebody makes', () => {
    const home = { ...lesson, purpose: 'private' } as const;
    expect(ofRule('hundred-hour-inspection', [home])).toEqual([]);
    expect(ofRule('hundred-hour-inspection', [home, lesson]).length).toBe(2);
    expect(ofRule('vor-check', [lesson])).toEqual([]);
    // Good through 31 March in Chicago.
    expect(ofRule('vor-check', undefined)).toMatchObject([
      { outcome: 'not-met', opensAt: '2026-04-01T05:00Z', closesAt: null, effect: 'stops-operation' },
    ]);
    expect(ofRule('vor-check', undefined)[0]?.capabilities).toEqual(['nav-vor', 'approach-vor']);
  });
});

it('every finding is of a statement, names its topic, and the capabilities that it stops and no others', () => {
  const all = findingsOf(held, trainerCatalogue, goodDay, end);
  for (const each of all) expect(each.key).toBe(`${each.ruleId}|${each.subject}`);
  expect(all.find(({ ruleId }) => ruleId === 'vor-check')?.topic).toBe('inspections');
  expect(all.find(({ ruleId }) => ruleId === 'next-cycle-loaded')).toMatchObject({
    topic: 'databases',
    effect: 'advice',
    capabilities: [],
  });
  expect(all.flatMap((each) => each.capabilities).filter((each) => !capabilities.includes(each))).toEqual([]);
});

it('by a day or by hours, whichever is first: each band of hours has its own stretch of time', () => {
  const due = { by: 'first', date: '2026-04-01', meter: 'tach', at: 414_000 } as const;
  const directive = {
    id: 'ad',
    number: 'TW-1',
    subject: 'aircraft',
    state: 'complied',
    reason: null,
    partNumber: null,
    serial: null,
    method: 'Paragraph (a)',
    recurs: true,
    interval: null,
    nextDue: due,
    recordId: 'ad-done',
  } as const;
  const dossier = trainer({
    status: {
      directives: [directive],
      records: [
        ...trainer().status.records,
        recordOf({ kind: 'directive-compliance', on: '2026-01-05', id: 'ad-done', subjects: ['ad'], agency: mechanic }),
      ],
    },
  });
  const found = findingsOf(dossier, trainerCatalogue, goodDay, end, [lesson]).filter(({ subject }) => subject === 'ad');
  expect(found.map((each) => [each.outcome, each.opensAt, each.closesAt, each.above, each.upTo])).toEqual([
    ['not-met', '2026-04-02T05:00Z', null, -1, 7000],
    ['not-met', goodDay, null, 7000, null],
  ]);
});

it('of the last of several limits in hours begins where those hours are used up', () => {
  const atHours = (id: string, at: number) => ({
    id,
    number: id,
    subject: 'aircraft',
    state: 'complied' as const,
    reason: null,
    partNumber: null,
    serial: null,
    method: 'Paragraph (a)',
    recurs: true,
    interval: null,
    nextDue: { by: 'first' as const, date: null, meter: 'tach', at },
    recordId: 'ad-done',
  });
  const done = recordOf({
    kind: 'directive-compliance',
    on: '2026-01-05',
    id: 'ad-done',
    subjects: ['a', 'b', 'c'],
    agency: mechanic,
  });
  const dossier = trainer({
    status: {
      directives: [atHours('a', 414_000), atHours('b', 420_000), atHours('c', 430_000)],
      records: [...trainer().status.records, done],
    },
  });
  const found = findingsOf(dossier, trainerCatalogue, goodDay, '2026-03-20T00:00Z', [lesson]);
  const lost = (id: string) =>
    found.filter((each) => each.subject === id && each.outcome === 'not-met').map(({ above, upTo }) => [above, upTo]);
  expect(lost('a')).toEqual([[7000, null]]);
  expect(lost('b')).toEqual([[13_000, null]]);
  expect(lost('c')).toEqual([[23_000, null]]);
});

describe('the gravest effect', () => {
  const fly: Effect = { stops: 'capability', capability: 'fly' };
  const nav: Effect = { stops: 'capability', capability: 'nav-vor', through: 'nav1' };
  const record: Effect = { stops: 'nothing', kind: 'record' };
  const advice: Effect = { stops: 'nothing', kind: 'advice' };
  it.each<[readonly Effect[], string]>([
    [[advice, record, { stops: 'plan' }, nav, fly], 'stops-aircraft'],
    [[advice, { stops: 'release' }, nav], 'stops-operation'],
    [[advice, { stops: 'release' }], 'stops-release'],
    [[record, { stops: 'plan' }], 'stops-release'],
    [[advice, record], 'record'],
    [[advice], 'advice'],
    [[], 'advice'],
  ])('of %j: %s', (effects, effect) => {
    expect(effectOf({ effects })).toBe(effect);
  });
});

describe('whether a clause depends on the flight', () => {
  const always = met('always');
  const dated = within('dated', { from: '2026-01-01T00:00Z' });
  const night = flight('night', { light: 'night' });
  it.each<[string, Clause, boolean]>([
    ['a plain fact does not', always, false],
    ['a region of time does not', dated, false],
    ['a region of flights does', night, true],
    ['another capability does, because that may', ref('fly'), true],
    ['neither side of a condition does', implies(always, dated), false],
    ['a condition on the flight does', implies(night, always), true],
    ['what is asked of the flight does', implies(always, night), true],
    ['all of plain facts do not', allOf('all', [always, dated], 'met'), false],
    ['one of all is enough', allOf('all', [always, implies(night, dated)], 'met'), true],
    ['one of any is enough', anyOf('any', [notMet('never'), ref('fly')], 'met'), true],
    ['an empty group does not', anyOf('any', [], 'cannot-tell'), false],
  ])('%s', (_, clause, expected) => {
    expect(dependsOnFlight(clause)).toBe(expected);
  });
});
