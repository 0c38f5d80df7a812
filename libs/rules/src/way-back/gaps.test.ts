import { describe, expect, it } from 'vitest';
import { assess } from '../assess/assess.js';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import { forget } from '../../testing/forgetting.js';
import { goodDay, trainer, trainerCatalogue } from '../../testing/trainer.js';
import { defaultConditions } from '../verdict/conditions.js';
import { gapsOf, visitFor } from './gaps.js';

const asked = { instant: goodDay };
const local = { id: 'local', conditions: { ...defaultConditions, rules: 'vfr' as const, purpose: 'private' as const } };
const ifr = { id: 'ifr', conditions: { ...defaultConditions, rules: 'ifr' as const } };

describe('where a fact is found', () => {
  it.each([
    ['configuration.equipment.altimeter', 'aircraft'],
    ['configuration.units.nav1.serial', 'aircraft'],
    ['configuration.units.nav1.approval', 'papers'],
    ['configuration.units.nav1.approval.permission', 'papers'],
    ['configuration.links.a>b.cover', 'papers'],
    ['configuration.authority', 'papers'],
    ['configuration.mass', 'papers'],
    ['meters.readings.tach', 'aircraft'],
    ['meters.utilisation.readingGoodForDays', 'papers'],
    ['status.loads.gps1.navigation.this', 'aircraft'],
    ['status.records', 'papers'],
    ['status.directives.ad1.state', 'papers'],
    ['status.completeness.directives', 'person'],
    ['status.decisions', 'person'],
  ])('%s: %s', (fact, visit) => {
    expect(visitFor(fact)).toBe(visit);
  });
});

describe('of an aircraft about which nobody recorded anything', () => {
  const gapsNow = () => gapsOf(dossierOf({}), catalogueOf(), asked, [local, ifr]);

  it('says which answers and flights cannot be told', () => {
    const gaps = gapsNow();
    const { results, operations } = assess(dossierOf({}), catalogueOf(), asked, local.conditions);
    expect(operations['flight']?.ready).toBe('cannot-tell');
    expect(gaps.flights).toContain('local');
    for (const { key, outcome } of results) if (outcome === 'cannot-tell') expect(gaps.open).toContain(key);
  });

  it('puts each fact into one visit, the most useful first', () => {
    const gaps = gapsNow();
    const facts = gaps.visits.flatMap((each) => each.facts.map(({ fact }) => fact));
    expect(new Set(facts).size).toBe(facts.length);
    const rank = (each: { opens: readonly string[]; settles: readonly string[] }) =>
      each.opens.length * 1000 + each.settles.length;
    for (const { facts: own } of gaps.visits) {
      const ranks = own.map(rank);
      expect(ranks).toEqual([...ranks].sort((a, b) => b - a));
    }
    const ranks = gaps.visits.map(rank);
    expect(ranks).toEqual([...ranks].sort((a, b) => b - a));
  });

  it('says by which changes a fact is recorded, each once, and not how another is', () => {
    const by = (fact: string) =>
      gapsNow()
        .visits.flatMap(({ facts }) => facts)
        .find((each) => each.fact === fact)
        ?.by.map(({ change, subject }) => `${change} ${subject}`)
        .sort();
    expect(by('configuration.aircraft.certificate')).toEqual(['aircraft.amend aircraft']);
    expect(by('configuration.mass')).toEqual(['mass.revise aircraft']);
    expect(by('status.records')).toEqual(['record.add annual-inspection']);
  });

  it('settles by a visit at least what each of its facts settles by itself', () => {
    const gaps = gapsNow();
    for (const { facts, settles } of gaps.visits)
      for (const each of facts) expect(settles).toEqual(expect.arrayContaining([...each.settles]));
  });
});

describe('of an aircraft that was in order', () => {
  const whole = () => gapsOf(trainer(), trainerCatalogue, asked, [local]);
  const without = (path: readonly string[]) => gapsOf(forget(trainer(), path), trainerCatalogue, asked, [local]);

  it('names the list that nobody stated to be complete, and that saying so would open the flight', () => {
    const { completeness } = trainer().status;
    const dossier = {
      ...trainer(),
      status: { ...trainer().status, completeness: completeness.filter(({ list }) => list !== 'directives') },
    };
    const gaps = gapsOf(dossier, trainerCatalogue, asked, [local]);
    expect(whole().flights).toEqual([]);
    expect(gaps.flights).toEqual(['local']);
    const person = gaps.visits.find(({ visit }) => visit === 'person');
    expect(person).toMatchObject({
      opens: ['local'],
      facts: [{ fact: 'status.completeness.directives', opens: ['local'] }],
    });
  });

  it('says which units a named person may accept as found, and by which change a fact is recorded', () => {
    const at = trainer().configuration.units.findIndex(({ id }) => id === 'nav1');
    const gaps = without(['configuration', 'units', String(at), 'approval']);
    expect(whole().acceptable).not.toContain('nav1');
    expect(gaps.acceptable).toContain('nav1');
    const fact = gaps.visits
      .flatMap(({ facts }) => facts)
      .find((each) => each.fact === 'configuration.units.nav1.approval');
    expect(fact?.by).toContainEqual({ change: 'unit.amend', subject: 'nav1' });
  });

  it('names no visit for which there is nothing to find', () => {
    expect(whole().visits.map(({ visit }) => visit)).toEqual(['aircraft', 'papers']);
  });

  it('names what may be accepted in the order of names', () => {
    const { units } = trainer().configuration;
    const unapproved = units.map((each) => (['gps1', 'nav1'].includes(each.id) ? { ...each, approval: null } : each));
    for (const list of [unapproved, unapproved.toReversed()]) {
      const dossier = trainer({ configuration: { units: list } });
      expect(gapsOf(dossier, trainerCatalogue, asked, [local]).acceptable).toEqual(['gps1', 'nav1']);
    }
  });

  it('says of each flight what is asked of it alone', () => {
    const dossier = trainer({ configuration: { staticSystems: [] } });
    const gaps = gapsOf(dossier, trainerCatalogue, asked, [local, ifr]);
    expect(gaps.flights).toEqual(['ifr']);
    expect(gaps.visits[0]).toMatchObject({ visit: 'aircraft', opens: ['ifr'] });
    // What a flight does not ask for takes nothing from what it does.
    const bare = { ...dossier, configuration: { ...dossier.configuration, equipment: withoutTachometer() } };
    const both = gapsOf(bare, trainerCatalogue, asked, [local, ifr]);
    expect(both.flights).toEqual(['local', 'ifr']);
    expect(both.visits[0]).toMatchObject({ visit: 'aircraft', opens: ['local', 'ifr'] });
  });
});

it('a list that was stated complete too long ago would open the flight if it were stated anew', () => {
  const completeness = trainer().status.completeness.map((each) =>
    each.list === 'directives' ? { ...each, stated: { ...each.stated, asOf: '2020-01-01' } } : each,
  );
  const gaps = gapsOf(trainer({ status: { completeness } }), trainerCatalogue, asked, [local]);
  expect(gaps.visits[0]).toMatchObject({
    visit: 'person',
    opens: ['local'],
    facts: [{ fact: 'status.completeness.directives', opens: ['local'] }],
  });
});

describe('of an aircraft with two lists that nobody stated to be complete', () => {
  const { completeness } = trainer().status;
  const dossier = trainer({
    status: { completeness: completeness.filter(({ list }) => list !== 'directives' && list !== 'defects') },
  });
  const gapsNow = () => gapsOf(dossier, trainerCatalogue, asked, [local, ifr]);

  it('neither fact opens a flight by itself, and both together open every one', () => {
    const gaps = gapsNow();
    const person = gaps.visits.find(({ visit }) => visit === 'person');
    expect(gaps.flights).toEqual(['local', 'ifr']);
    expect(person?.facts.map(({ fact, opens, settles }) => [fact, opens, settles])).toEqual([
      ['status.completeness.defects', [], ['open-defects|defect-list']],
      ['status.completeness.directives', [], ['directives|directive-list']],
    ]);
    expect(person?.opens).toEqual(['local', 'ifr']);
    expect(person?.settles).toEqual(['directives|directive-list', 'open-defects|defect-list']);
  });

  it('comes first what opens flights, and no visit is named that has no fact', () => {
    const gaps = gapsNow();
    expect(gaps.visits[0]?.visit).toBe('person');
    expect(gaps.visits.every(({ facts }) => facts.length > 0)).toBe(true);
    expect(gaps.open).toEqual([...gaps.open].sort());
    expect(gaps.open).toContain('directives|directive-list');
  });

  it('says by which change each fact is recorded, and not how another is', () => {
    const gaps = gapsNow();
    for (const { facts } of gaps.visits)
      for (const { fact, by } of facts) {
        expect(new Set(by.map(({ change, subject }) => `${change}|${subject}`)).size).toBe(by.length);
        if (fact === 'status.completeness.directives')
          expect(by).toEqual([{ change: 'completeness.state', subject: 'directives' }]);
      }
    expect(gaps.acceptable).toEqual([]);
  });
});

function withoutTachometer() {
  return trainer().configuration.equipment.filter(({ item }) => item !== 'tachometer');
}
