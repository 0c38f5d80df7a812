import { describe, expect, it } from 'vitest';
import { means, says, smallSystem } from '../../testing/small-system.js';
import { goodDay, trainer, trainerCatalogue } from '../../testing/trainer.js';
import { met, notMet, ref, unknown, within } from '../verdict/build.js';
import { defaultConditions } from '../verdict/conditions.js';
import { assess, changed, hourEdges, notJudgedIn, resultsOf, verdictAt, viewOf } from './assess.js';
import { snapshotOf } from './snapshot.js';
import { hasRef } from './system.js';

const day = (date: number) => `2026-03-${date}T00:00Z`;
const vfr = { ...defaultConditions, rules: 'vfr', purpose: 'private', airspace: [] } as const;
const tach = (value: number, perFlightHour = 1000) => ({
  meters: {
    definitions: [{ id: 'tach', name: 'T', kind: 'tachometer' as const, perFlightHour, offset: 0 }],
    readings: { tach: { value, asOf: day(10), by: 'Desk' } },
  },
});
const asked = (from: number, to = from, hoursAhead = 0) => ({ instant: day(from), to: day(to), hoursAhead });
const flies = says('flies', met('flies'), 'fly');
const until = (date: number, key = 'data') => says(key, within(key, { before: day(date) }), 'fly');

describe('a verdict over the whole flight', () => {
  const system = smallSystem({ spoken: [flies, until(18)] });
  const at = (from: number, to?: number) => verdictAt(system, asked(from, to), vfr);

  it('is the worst of it', () => {
    expect(at(16)).toMatchObject({ ready: 'yes', changesAt: day(18), because: ['data'] });
    expect(at(16, 17)).toMatchObject({ ready: 'yes', changesAt: day(18) });
    expect(at(16, 18)).toMatchObject({ ready: 'no', because: ['data'] });
    expect('changesAt' in at(16, 18)).toBe(false);
    expect(at(18)).toMatchObject({ ready: 'no', because: ['data'] });
  });

  it('is no where it is no at first, cannot be told later and is yes in the end', () => {
    const stretch = says('late', within('late', { from: day(18) }), 'fly');
    const doubt = says('doubt', within('doubt', { from: day(20) }, {}, 'met', 'cannot-tell'), 'fly');
    const three = smallSystem({ spoken: [flies, stretch, doubt] });
    expect(verdictAt(three, asked(16, 21), vfr)).toMatchObject({ ready: 'no', because: ['late', 'doubt'] });
    expect(verdictAt(three, asked(19, 21), vfr)).toMatchObject({ ready: 'cannot-tell', because: ['doubt'] });
    expect(verdictAt(three, asked(20, 21), vfr)).toMatchObject({ ready: 'yes', because: [] });
    expect(verdictAt(three, asked(16), vfr)).toMatchObject({ ready: 'no', changesAt: day(18) });
    expect(verdictAt(three, asked(18), vfr)).toMatchObject({ ready: 'cannot-tell', changesAt: day(20) });
  });
});

describe('hours left', () => {
  const limit = says('hundred', within('hundred', { atMost: { tach: 1000 } }), 'fly');
  const system = smallSystem({ spoken: [flies, limit], dossier: tach(400) });
  const at = (hoursAhead: number) => verdictAt(system, asked(16, 16, hoursAhead), vfr);

  it('are those up to the limit, which itself still counts', () => {
    expect(at(0)).toMatchObject({ ready: 'yes', hoursLeft: 600, because: ['hundred'] });
    expect(at(250)).toMatchObject({ ready: 'yes', hoursLeft: 350 });
    expect(at(600)).toMatchObject({ ready: 'yes', hoursLeft: 0 });
    expect(at(601)).toMatchObject({ ready: 'no', because: ['hundred'] });
    expect(at(601).hoursLeft).toBeUndefined();
  });

  it('are asked about where something changes that stops no flight, and then do not count', () => {
    const other = says('oil', within('oil', { atMost: { tach: 500 } }), 'night');
    const both = smallSystem({ spoken: [flies, other, limit], dossier: tach(400) });
    expect(verdictAt(both, asked(16), vfr).hoursLeft).toBe(600);
  });

  it('end by the day where that comes too: the day is told as the reason', () => {
    const both = smallSystem({ spoken: [flies, limit, until(18)], dossier: tach(400) });
    expect(verdictAt(both, asked(16), vfr)).toMatchObject({
      changesAt: day(18),
      hoursLeft: 600,
      because: ['data'],
    });
  });

  it('lie at limits not yet passed, of meters that run', () => {
    const limits = (of: number, dossier = tach(of)) => hourEdges(smallSystem({ spoken: [limit], dossier }));
    expect(limits(400)).toEqual([600]);
    expect(limits(1000)).toEqual([0]);
    expect(limits(1001)).toEqual([]);
    expect(limits(400, tach(400, 0))).toEqual([]);
    const two = smallSystem({
      spoken: [limit, ...[700, 900, 700].map((at) => says(`${at}`, within('x', { atMost: { tach: at } }), 'fly'))],
      dossier: tach(400),
    });
    expect(hourEdges(two)).toEqual([300, 500, 600]);
  });
});

describe('what is looked at', () => {
  const system = smallSystem({
    spoken: [until(20, 'b'), until(18, 'a'), says('h', within('h', { atMost: { tach: 900 } }), 'fly')],
    dossier: tach(400),
  });
  const view = viewOf(system, { instant: day(16) });

  it('are the instants after, in order, and the hours from those flown on', () => {
    // The reading of the 10th counts for 31 days.
    const grownOld = '2026-04-10T00:00Z';
    expect(view.later(day(16))).toEqual([day(18), day(20), grownOld]);
    expect(view.later(day(18))).toEqual([day(20), grownOld]);
    expect(viewOf(system, { instant: day(18) }).later(day(16))).toEqual([day(20), grownOld]);
    expect(view.between(day(16), day(20))).toEqual([day(18), day(20)]);
    expect(view.between(day(18), day(19))).toEqual([]);
    expect([view.furtherHours(499), view.furtherHours(500), view.furtherHours(501)]).toEqual([[500], [500], []]);
  });

  it('is one snapshot for flights that differ in their approaches alone', () => {
    const one = view.at(day(16), 0, vfr);
    expect(view.at(day(16), 0, { ...vfr, approaches: ['lpv'] })).toBe(one);
    expect(view.at(day(16), 0, { ...vfr, light: 'night' })).not.toBe(one);
    expect(view.at(day(16), 1, vfr)).not.toBe(one);
    expect(view.at(day(17), 0, vfr)).not.toBe(one);
  });
});

it('that nothing more can change has no end, and nothing that will end it', () => {
  const began = says('late', within('late', { from: day(10) }), 'fly');
  const verdict = verdictAt(smallSystem({ spoken: [flies, began] }), asked(16), vfr);
  expect(verdict).toMatchObject({ ready: 'yes', because: [] });
  expect('changesAt' in verdict).toBe(false);
});

describe('a yes by either of two means', () => {
  const ways = [means('r1', 'two-way-radio'), means('v1', 'nav-vor'), means('g1', 'nav-gnss')];
  const ifr = { ...vfr, rules: 'ifr' } as const;
  const either = smallSystem({
    means: ways,
    spoken: [
      flies,
      says('ifr', met('ifr'), 'ifr-aircraft'),
      says('radio', met('radio'), 'two-way-radio', { through: 'r1' }),
      says('vor', within('vor', { before: day(18) }), 'nav-vor', { through: 'v1' }),
      says('gnss', within('gnss', { before: day(20) }), 'nav-gnss', { through: 'g1' }),
    ],
  });
  const at = (date: number) => snapshotOf(either, day(date), 0, ifr);

  it('ends with the last of them, and that is told; what was gone before is told where it goes', () => {
    expect(verdictAt(either, asked(16), ifr)).toMatchObject({ ready: 'yes', changesAt: day(20), because: ['gnss'] });
    expect(changed(either, at(16), at(18), ifr)).toEqual(['vor']);
    expect(changed(either, at(16), at(20), ifr)).toEqual(['vor']);
    expect(changed(either, at(18), at(20), ifr)).toEqual(['gnss']);
  });
});

describe('what changes a verdict', () => {
  const at = (spoken: Parameters<typeof smallSystem>[0]['spoken'], before: number, after: number) => {
    const system = smallSystem({ spoken });
    const snapshot = (date: number) => snapshotOf(system, day(date), 0, vfr);
    return changed(system, snapshot(before), snapshot(after), vfr);
  };

  it('is what newly stops it, or where it gets better, what no longer does', () => {
    expect(at([flies, until(18)], 16, 18)).toEqual(['data']);
    expect(at([flies, until(18)], 18, 16)).toEqual(['data']);
    expect(at([flies, until(18), says('x', notMet('x'), 'fly')], 16, 18)).toEqual(['data']);
    expect(at([flies, until(18), says('x', notMet('x'), 'fly')], 18, 16)).toEqual(['data']);
    expect(at([flies], 16, 18)).toEqual([]);
    const system = smallSystem({ spoken: [flies] });
    expect(changed(system, snapshotOf(system, day(16), 0, vfr), null, vfr)).toEqual([]);
  });
});

it('a clause leans on a capability wherever it names one', () => {
  const leaf = met('a');
  const leans = ref('night');
  const group = (of: readonly (typeof leaf | typeof leans)[]) =>
    ({ is: 'all', label: 'x', of, ifEmpty: 'met' }) as const;
  expect([leaf, leans, group([leaf]), group([leaf, leans])].map(hasRef)).toEqual([false, true, false, true]);
  expect(hasRef({ is: 'implies', if: leaf, then: leaf })).toBe(false);
  expect(hasRef({ is: 'implies', if: leans, then: leaf })).toBe(true);
  expect(hasRef({ is: 'implies', if: leaf, then: leans })).toBe(true);
});

describe('what no rule judges', () => {
  const of = (parts: Parameters<typeof smallSystem>[0]) => notJudgedIn(smallSystem(parts));
  const all = (['fly', 'night', 'hire', 'ifr-aircraft'] as const).map((each) => says(each, met(each), each));

  it('is a capability of the aircraft that no rule establishes, whatever others say of it', () => {
    expect(of({ spoken: all })).toEqual([]);
    expect(of({ spoken: all.slice(1) })).toEqual(['fly']);
    expect(of({ spoken: [...all.slice(1), says('fly', notMet('x'), 'fly', { only: true })] })).toEqual(['fly']);
  });

  it('is a capability of which something is fitted, and of nothing fitted it is spoken', () => {
    const radios = [means('r1', 'two-way-radio'), means('r2', 'two-way-radio')];
    expect(of({ spoken: all, means: radios })).toEqual(['two-way-radio']);
    const one = says('r', notMet('r'), 'two-way-radio', { through: 'r1' });
    expect(of({ spoken: [...all, one], means: radios })).toEqual([]);
  });
});

describe('an assessment', () => {
  it('names what no rule judges on this aircraft', () => {
    const { notJudged } = assess(trainer(), trainerCatalogue, { instant: goodDay });
    expect(notJudged).toEqual([]);
    const withoutUnits = trainer({ configuration: { units: [], links: [], antennas: [] } });
    // What is not fitted is no gap in the rules.
    expect(assess(withoutUnits, trainerCatalogue, { instant: goodDay }).notJudged).toEqual([]);
  });

  it('says of a result when it changes and how many hours it has, and offers nothing where it is met', () => {
    const found = (instant: string, hours: number, key: string) =>
      assess(trainer(), trainerCatalogue, { instant, hours }, { ...vfr, purpose: 'training-provided' }).results.find(
        (each) => each.key === key,
      );
    const hundred = 'hundred-hour-inspection|aircraft';
    expect(found(goodDay, 0, hundred)).toMatchObject({ outcome: 'met', hoursLeft: 7000, remedies: [] });
    expect(found(goodDay, 70, hundred)).toMatchObject({ outcome: 'met', hoursLeft: 0 });
    expect(found(goodDay, 70.01, hundred)?.hoursLeft).toBeUndefined();
    // The reading of 15 March carries limits for 31 days.
    expect(found(goodDay, 0, hundred)?.changesAt).toBe('2026-04-15T20:00Z');
    expect(found(goodDay, 70.01, hundred)?.remedies.length).toBeGreaterThan(0);
    const vor = 'vor-check|nav1';
    expect(found(goodDay, 0, vor)?.due).toMatchObject([{ what: 'vor-check', lastGoodDay: '2026-03-31' }]);
    const all = assess(trainer(), trainerCatalogue, { instant: goodDay }).results;
    expect(all.some(({ due }) => due.length === 0)).toBe(true);
    expect(all.flatMap(({ due }) => due).every(({ what }) => what.length > 1)).toBe(true);
    expect(all.flatMap(({ remedies }) => remedies).every(({ change }) => change.length > 1)).toBe(true);
    expect(all.every((each) => 'changesAt' in each === (each.changesAt !== undefined))).toBe(true);
    const idle = all.filter(({ outcome }) => outcome === 'not-applicable');
    expect(idle.length).toBeGreaterThan(0);
    expect(idle.filter(({ remedies, messageId }) => remedies.length > 0 || !messageId)).toEqual([]);
    expect(found(goodDay, 0, vor)?.hoursLeft).toBeUndefined();
  });
});

it('a result that names no due point and nothing to be done has none', () => {
  const [result] = resultsOf(smallSystem({ spoken: [says('a', notMet('a'), 'fly')] }), asked(16), vfr);
  expect(result).toMatchObject({ due: [], remedies: [] });
});

it('a means that is asked for through another capability is seen to change with it', () => {
  const spoken = [
    flies,
    says('leans', ref('two-way-radio'), 'fly'),
    says('radio', within('radio', { before: day(18) }), 'two-way-radio', { through: 'r1' }),
    says('doubt', unknown('d', ['x']), 'night'),
  ];
  const system = smallSystem({ spoken, means: [means('r1', 'two-way-radio')] });
  expect(verdictAt(system, asked(16), vfr)).toMatchObject({ ready: 'yes', changesAt: day(18), because: ['leans'] });
});

it('a result that leans on a capability has the day and the hours of that capability', () => {
  const spoken = [
    says('leans', ref('two-way-radio'), 'fly'),
    says('radio', within('radio', { before: day(18), atMost: { tach: 1000 } }), 'two-way-radio', { through: 'r1' }),
    says('apart', met('apart'), 'fly'),
  ];
  const system = smallSystem({ spoken, means: [means('r1', 'two-way-radio')], dossier: tach(400) });
  const [leans, radio, apart] = resultsOf(system, asked(16, 16, 100), vfr);
  for (const each of [leans, radio]) expect(each).toMatchObject({ outcome: 'met', changesAt: day(18), hoursLeft: 500 });
  expect([apart?.changesAt, apart?.hoursLeft]).toEqual([undefined, undefined]);
});
