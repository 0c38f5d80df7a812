import { describe, expect, it } from 'vitest';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import { means, says, smallSystem } from '../../testing/small-system.js';
import { holdOfJob } from '../dossier/hold.js';
import type { SourceStatus } from '../facts/source.js';
import { fact, implies, met, notApplicable, notMet, ref, unknown, within } from '../verdict/build.js';
import type { Capability } from '../verdict/capability.js';
import type { Clause } from '../verdict/clause.js';
import type { FlightConditions } from '../verdict/conditions.js';
import { defaultConditions } from '../verdict/conditions.js';
import { snapshotOf } from './snapshot.js';
import type { Spoken } from './system.js';
import { systemOf } from './system.js';

const noon = '2026-03-16T12:00Z';
const vfr: FlightConditions = { ...defaultConditions, rules: 'vfr', purpose: 'private', airspace: [] };
const ifr: FlightConditions = { ...vfr, rules: 'ifr' };

type Parts = Parameters<typeof smallSystem>[0];
const snap = (parts: Parts, flight = ifr) => snapshotOf(smallSystem(parts), noon, 0, flight);
const answered = (parts: Parts, flight = ifr) => snap(parts, flight).answer(flight);
const source = (status: SourceStatus) => ({ source: { document: 'D', paragraph: '1', edition: '1', status } });
const flies = says('flies', met('flies'), 'fly');
const yesMeans = (id: string, capability: Capability, clause: Clause = met('ok'), part = {}) =>
  says(`${id}-${capability}`, clause, capability, { through: id, ...part });

describe('a capability of the aircraft', () => {
  it.each<readonly [string, readonly Spoken[], string]>([
    ['nobody judges it', [], 'cannot-tell'],
    ['a rule that does not establish it is content', [says('a', met('a'), 'fly', { only: true })], 'cannot-tell'],
    ['a rule that establishes it is content', [flies], 'met'],
    ['all that bears on it does not apply', [says('a', notApplicable('a'), 'fly')], 'cannot-tell'],
    ['one of two is not met', [flies, says('a', notMet('a'), 'fly')], 'not-met'],
    ['one of two cannot be told', [flies, says('a', unknown('a', ['x']), 'fly')], 'cannot-tell'],
    ['not met, and judged by none that establishes it', [says('a', notMet('a'), 'fly', { only: true })], 'not-met'],
    ['what bears on another capability', [flies, says('a', notMet('a'), 'night')], 'met'],
    ['what bears on a unit only', [flies, says('a', notMet('a'), 'fly', { through: 'u' })], 'met'],
  ])('%s', (_, spoken, outcome) => {
    expect(snap({ spoken }).capability('fly')).toBe(outcome);
  });

  it('that leans on itself proves nothing', () => {
    expect(snap({ spoken: [says('a', ref('fly'), 'fly')] }).capability('fly')).toBe('cannot-tell');
    expect(snap({ spoken: [says('a', ref('night'), 'fly'), says('b', met('b'), 'night')] }).capability('fly')).toBe(
      'met',
    );
  });
});

describe('a capability by means', () => {
  const radio = means('r1', 'two-way-radio');
  const second = means('r2', 'two-way-radio');
  const ofRadio = (spoken: readonly Spoken[], ways: Parts['means'] = [radio], listed = true) =>
    snap({ spoken, means: ways, listed }).capability('two-way-radio');

  it('is not judged by what speaks of the aircraft alone', () => {
    expect(ofRadio([says('all', met('all'), 'two-way-radio')])).toBe('cannot-tell');
  });

  it('is no where none is fitted, but only if somebody stated the list of equipment complete', () => {
    expect(ofRadio([], [])).toBe('not-met');
    expect(ofRadio([], [], false)).toBe('cannot-tell');
    expect(ofRadio([], [means('v1', 'nav-vor')])).toBe('not-met');
  });

  it.each<readonly [string, readonly Spoken[], string]>([
    ['no rule speaks of it', [], 'cannot-tell'],
    ['one is content', [yesMeans('r1', 'two-way-radio')], 'met'],
    [
      'one that does not establish it is content',
      [yesMeans('r1', 'two-way-radio', met('a'), { only: true })],
      'cannot-tell',
    ],
    ['one is not', [yesMeans('r1', 'two-way-radio', notMet('a'))], 'not-met'],
    ['all that is said of it does not apply', [yesMeans('r1', 'two-way-radio', notApplicable('a'))], 'cannot-tell'],
    ['it speaks of another unit', [yesMeans('r9', 'two-way-radio')], 'cannot-tell'],
    ['it speaks of another capability', [yesMeans('r1', 'nav-vor')], 'cannot-tell'],
    [
      'the aircraft as a whole fails',
      [yesMeans('r1', 'two-way-radio'), says('a', notMet('a'), 'two-way-radio')],
      'not-met',
    ],
  ])('%s', (_, spoken, outcome) => {
    expect(ofRadio(spoken)).toBe(outcome);
  });

  it('holds by the best of several', () => {
    const both = (one: Clause, other: Clause) =>
      ofRadio([yesMeans('r1', 'two-way-radio', one), yesMeans('r2', 'two-way-radio', other)], [radio, second]);
    expect(both(notMet('a'), met('b'))).toBe('met');
    expect(both(notMet('a'), unknown('b', ['x']))).toBe('cannot-tell');
    expect(both(notMet('a'), notMet('b'))).toBe('not-met');
  });
});

describe('the answer for a flight', () => {
  const ways = [means('r1', 'two-way-radio'), means('v1', 'nav-vor'), means('g1', 'nav-gnss')];
  const aircraft = [flies, says('ifr', met('ifr'), 'ifr-aircraft')];
  const radio = yesMeans('r1', 'two-way-radio');
  const vor = (clause: Clause, part = {}) => yesMeans('v1', 'nav-vor', clause, part);
  const gnss = (clause: Clause, part = {}) => yesMeans('g1', 'nav-gnss', clause, part);

  it('yes: by which means, to what height, on what weakest source', () => {
    const spoken = [
      says('flies', met('flies', source('verified')), 'fly', { topFt: 18_000 }),
      says('ifr', met('ifr', source('maker')), 'ifr-aircraft', { topFt: 12_000 }),
      radio,
      vor(met('v', source('from-memory'))),
      gnss(notMet('g', source('from-memory')), { topFt: 3_000 }),
      says('no matter', notApplicable('x', source('from-memory')), 'fly', { topFt: 1_000 }),
    ];
    expect(answered({ spoken, means: ways })).toEqual({
      ready: 'yes',
      standing: 'judged',
      by: ['r1', 'v1'],
      stoppedBy: [],
      restsOn: [0, 5, 1, 2, 3],
      topFt: 12_000,
      weakest: 'from-memory',
    });
    expect(answered({ spoken: spoken.slice(0, 1), means: [] }, vfr)).toMatchObject({
      ready: 'yes',
      by: [],
      topFt: 18_000,
      weakest: 'verified',
    });
  });

  it('counts only the sources of what is met', () => {
    const clause: Clause = {
      is: 'any',
      label: 'either',
      of: [met('a', source('verified')), notMet('b', source('from-memory')), unknown('c', ['x'], source('reading'))],
      ifEmpty: 'met',
    };
    expect(answered({ spoken: [says('a', clause, 'fly')] }, vfr)).toMatchObject({ ready: 'yes', weakest: 'verified' });
    expect(answered({ spoken: [flies] }, vfr)).toMatchObject({ ready: 'yes', weakest: null, topFt: null });
  });

  it('counts no source of what does not apply', () => {
    const aside = implies(notMet('asked'), met('then', source('from-memory')));
    const spoken = [says('a', met('a', source('verified')), 'fly'), says('b', aside, 'fly')];
    expect(answered({ spoken }, vfr)).toMatchObject({ ready: 'yes', weakest: 'verified' });
    expect(answered({ spoken: [flies, says('a', notApplicable('a'), 'fly')] }, vfr).weakest).toBeNull();
  });

  it('no: what stops it, the certain ones first, then in the order of the rules', () => {
    const spoken = [
      says('a', unknown('a', ['x']), 'fly'),
      says('b', notMet('b'), 'fly'),
      says('c', unknown('c', ['y']), 'fly'),
      says('d', notMet('d'), 'fly'),
      flies,
    ];
    const { ready, stoppedBy, standing, weakest, by, restsOn } = answered({ spoken }, vfr);
    expect({ ready, stoppedBy, standing, weakest, by, restsOn }).toEqual({
      restsOn: [],
      ready: 'no',
      stoppedBy: ['b', 'd', 'a', 'c'],
      standing: 'judged',
      weakest: null,
      by: [],
    });
  });

  it('says once what stops several needs, and nothing of what does not fail', () => {
    const both = says('a', notMet('a'), 'fly', {
      effects: (['fly', 'ifr-aircraft'] as const).map((capability) => ({ stops: 'capability', capability })),
    });
    const spoken = [...aircraft, both, radio, vor(met('v')), gnss(met('g'))];
    expect(answered({ spoken, means: ways })).toMatchObject({ ready: 'no', stoppedBy: ['a'], by: ['r1', 'v1', 'g1'] });
  });

  it.each<readonly [string, Clause, Clause, string, readonly string[]]>([
    ['both fail: the unknown one is nearer', notMet('v'), unknown('g', ['x']), 'cannot-tell', ['g1-nav-gnss']],
    ['the other way round', unknown('v', ['x']), notMet('g'), 'cannot-tell', ['v1-nav-vor']],
    ['both fail alike: the first', notMet('v'), notMet('g'), 'no', ['v1-nav-vor']],
    ['one holds', notMet('v'), met('g'), 'yes', []],
  ])('either of two sources: %s', (_, one, other, ready, stoppedBy) => {
    const spoken = [...aircraft, radio, vor(one), gnss(other)];
    expect(answered({ spoken, means: ways })).toMatchObject({ ready, stoppedBy });
  });

  it('what is fitted and fails is nearer than what is not fitted', () => {
    const spoken = [
      ...aircraft,
      radio,
      ...['a', 'b', 'c'].map((key) => says(key, notMet(key), 'nav-gnss', { through: 'g1' })),
    ];
    const found = answered({ spoken, means: ways.filter(({ id }) => id !== 'v1') });
    expect(found).toMatchObject({ ready: 'no', stoppedBy: ['a', 'b', 'c'], standing: 'judged' });
  });

  it('of two means the one with less that fails is told of, and any number of unknowns is less than a certain failure', () => {
    const two = [means('r1', 'two-way-radio'), means('r2', 'two-way-radio'), ...ways.slice(1)];
    const fails = (id: string, ...clauses: readonly Clause[]) =>
      clauses.map((clause, at) => says(`${id}.${at}`, clause, 'two-way-radio', { through: id }));
    const told = (...spoken: readonly Spoken[]) =>
      answered({ spoken: [...aircraft, vor(met('v')), ...spoken], means: two }).stoppedBy;
    expect(told(...fails('r1', notMet('a'), notMet('b')), ...fails('r2', notMet('c')))).toEqual(['r2.0']);
    expect(told(...fails('r1', notMet('a')), ...fails('r2', notMet('b'), notMet('c')))).toEqual(['r1.0']);
    const unknowns = [unknown('b', ['x']), unknown('c', ['y'])];
    expect(told(...fails('r1', notMet('a')), ...fails('r2', ...unknowns))).toEqual(['r2.0', 'r2.1']);
    expect(told(...fails('r1', unknown('a', ['z'])), ...fails('r2', ...unknowns))).toEqual(['r1.0']);
  });

  it('is remembered for the flight asked', () => {
    const snapshot = snap({ spoken: [flies] }, vfr);
    expect(snapshot.answer(vfr)).toBe(snapshot.answer(vfr));
    expect(snapshot.answer({ ...vfr, light: 'night' }).ready).toBe('cannot-tell');
  });
});

describe('how a no or cannot-tell stands', () => {
  const standing = (spoken: readonly Spoken[], parts: Partial<Parts> = {}, flight = vfr) =>
    answered({ spoken, ...parts }, flight).standing;
  const hold = (id: string, clause: Clause = notMet('held')) =>
    says(`held|${id}`, clause, 'fly', { ruleId: 'held', subject: id });
  const sayso = (key: string) => says(key, unknown('s', ['x']), 'fly', { ruleId: 'source-say-so' });

  it('held by a person, before all else; in work where jobs alone hold it', () => {
    const other = says('a', notMet('a'), 'fly');
    expect(standing([flies, hold('h1'), other])).toBe('held');
    expect(standing([flies, hold(holdOfJob('j')), other])).toBe('in-work');
    expect(standing([flies, hold(holdOfJob('j')), hold('h1')])).toBe('held');
    expect(standing([flies, hold('h1', unknown('held', ['x']))])).toBe('judged');
    expect(standing([flies, says('a', notMet('a'), 'fly', { subject: 'h1' })])).toBe('judged');
  });

  it('waits for a say-so where nothing else stops it', () => {
    expect(standing([flies, sayso('s1'), sayso('s2')])).toBe('say-so');
    expect(standing([flies, sayso('s1'), says('a', unknown('a', ['x']), 'fly')])).toBe('judged');
    expect(standing([flies])).toBe('judged');
  });

  it('not fitted where a means is asked for and the complete list has none', () => {
    const aircraft = [flies, says('ifr', met('ifr'), 'ifr-aircraft')];
    const nav = [yesMeans('v1', 'nav-vor')];
    const navOnly = { means: [means('v1', 'nav-vor')] };
    expect(standing([...aircraft, ...nav], navOnly, ifr)).toBe('not-fitted');
    expect(standing([...aircraft, ...nav], { ...navOnly, listed: false }, ifr)).toBe('not-judged');
    const withRadio = { means: [...navOnly.means, means('r1', 'two-way-radio')] };
    expect(standing([...aircraft, ...nav, yesMeans('r1', 'two-way-radio', notMet('r'))], withRadio, ifr)).toBe(
      'judged',
    );
    // One of two needs lost is enough, and what holds is not counted.
    expect(standing([...aircraft, ...nav, says('a', notMet('a'), 'fly')], navOnly, ifr)).toBe('not-fitted');
    expect(standing([flies, says('a', notMet('a'), 'fly')], { means: [] })).toBe('judged');
  });

  it('not judged where no rule that establishes it spoke, and nothing is known to fail', () => {
    expect(standing([])).toBe('not-judged');
    expect(standing([says('a', met('a'), 'fly', { only: true })])).toBe('not-judged');
    expect(standing([says('a', notMet('a'), 'fly', { only: true })])).toBe('judged');
    expect(standing([says('a', unknown('a', ['x']), 'fly')])).toBe('judged');
    const aircraft = [flies, says('ifr', met('ifr'), 'ifr-aircraft'), yesMeans('v1', 'nav-vor')];
    const two = { means: [means('v1', 'nav-vor'), means('r1', 'two-way-radio'), means('r2', 'two-way-radio')] };
    expect(standing(aircraft, two, ifr)).toBe('not-judged');
    expect(standing([...aircraft, yesMeans('r2', 'two-way-radio', unknown('r', ['x']))], two, ifr)).toBe('judged');
  });
});

it('a reading that is too old carries no limit, unless it is supposed to be renewed in time', () => {
  const spoken = [says('hundred', within('hundred', { atMost: { tach: 1000 } }), 'fly')];
  const dossier = {
    meters: {
      definitions: [{ id: 'tach', name: 'T', kind: 'tachometer' as const, perFlightHour: 1000, offset: 0 }],
      readings: { tach: { value: 400, asOf: '2026-01-01T12:00Z', by: 'Desk' } },
    },
  };
  const system = smallSystem({ spoken, dossier });
  const outcomes = [undefined, false, true].map((read) => snapshotOf(system, noon, 0, vfr, read).outcome(0));
  expect(outcomes).toEqual(['cannot-tell', 'cannot-tell', 'met']);
  const counted = smallSystem({
    spoken,
    dossier,
    policies: [{ kind: 'reading-age', version: 1, from: '2026-01-01', body: { days: 90, noticeDays: null } }],
  });
  expect(snapshotOf(counted, noon, 0, vfr).outcome(0)).toBe('met');
});

describe('a system', () => {
  it('is worked out once for a dossier and a catalogue, and anew for another catalogue', () => {
    const dossier = dossierOf({});
    const catalogue = catalogueOf();
    const system = systemOf(dossier, catalogue);
    expect(systemOf(dossier, catalogue)).toBe(system);
    const other = systemOf(dossier, catalogueOf());
    expect(other).not.toBe(system);
    expect(systemOf(dossierOf({}), catalogue)).not.toBe(system);
  });

  it('knows which capabilities the rule of each statement judges', () => {
    const spoken = [flies, says('a', met('a'), 'night', { only: true }), says('b', met('b'), 'hire')];
    expect(smallSystem({ spoken }).establishes).toEqual([['fly'], [], ['hire']]);
  });

  it('knows what bears on the aircraft and what on a unit that gives the capability', () => {
    const spoken = [
      says('all', met('all'), 'two-way-radio'),
      says('one', met('one'), 'two-way-radio', { through: 'r1' }),
      flies,
    ];
    const { byCapability } = smallSystem({ spoken, means: [means('r1', 'two-way-radio')] });
    expect(byCapability['two-way-radio']).toMatchObject({ aircraft: [0], judged: true, means: [{ statements: [1] }] });
    expect(byCapability['night']).toEqual({ aircraft: [], judged: false, means: [] });
  });

  it('knows where outcomes may change', () => {
    const region = { from: '2026-03-01T00:00Z', before: '2026-04-01T00:00Z', atMost: { tach: 100 } };
    const { edges } = smallSystem({ spoken: [says('a', within('a', region), 'fly'), flies] });
    expect([...edges.instants]).toEqual([region.from, region.before]);
    expect([...edges.meters].map(([meter, limits]) => [meter, ...limits])).toEqual([['tach', 100]]);
  });

  it('takes a fact that is not recorded as cannot-tell at every point', () => {
    const outcomes = [true, false, null].map((value) =>
      snap({ spoken: [says('a', fact(value, 'a', 'x'), 'fly')] }).outcome(0),
    );
    expect(outcomes).toEqual(['met', 'not-met', 'cannot-tell']);
    expect(snap({ spoken: [] }).outcome(7)).toBe('not-applicable');
  });
});
