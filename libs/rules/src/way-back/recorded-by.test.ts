import { describe, expect, it } from 'vitest';
import { recordedBy } from './recorded-by.js';

const said = (fact: string, ...named: readonly string[]) =>
  recordedBy(
    fact,
    named.map((each) => {
      const [change = '', subject = ''] = each.split(' ');
      return { change, subject };
    }),
  ).map(({ change, subject }) => `${change} ${subject}`);

describe('how a fact is recorded', () => {
  it.each([
    ['configuration.aircraft.certificate', 'aircraft.amend aircraft'],
    ['configuration.authority.ifr', 'authority.set aircraft'],
    ['configuration.equipment.clock', 'equipment.state clock'],
    ['configuration.electrical.busV', 'electrical.set aircraft'],
    ['configuration.supplements.gps1.grants', 'supplement.set gps1'],
    ['configuration.units.gps1.serial', 'unit.amend gps1'],
    ['configuration.units', 'unit.amend aircraft'],
    ['configuration.supplements', 'supplement.set aircraft'],
    ['status.records.vor-1', 'record.correct vor-1'],
    ['configuration.mass', 'mass.revise aircraft'],
    ['status.records', 'record.add aircraft'],
    ['status.records.elt-1.agency', 'record.correct elt-1'],
    ['status.completeness.directives', 'completeness.state directives'],
    ['meters.utilisation.perMonth', 'utilisation.set aircraft'],
  ])('%s, where no rule says how: %s', (fact, way) => {
    expect(said(fact)).toEqual([way]);
  });

  it('knows one way only, whatever else asks for it', () => {
    expect(said('configuration.aircraft.seats', 'record.add elt1', 'equipment.state aircraft')).toEqual([
      'aircraft.amend aircraft',
    ]);
    expect(said('status.records.elt-1.expires', 'record.add elt1')).toEqual(['record.correct elt-1']);
    expect(said('configuration.electrical.circuits.c1.loadA', 'electrical.set c1')).toEqual(['electrical.set c1']);
  });

  it('is as the rules say where there are several', () => {
    expect(said('configuration.mass.changesSince', 'mass.note aircraft')).toEqual(['mass.note aircraft']);
    expect(said('configuration.mass.envelope')).toEqual(['mass.revise aircraft']);
    expect(said('configuration.units.gps1.approval', 'adopt gps1', 'unit.amend gps1', 'adopt gps1')).toEqual([
      'adopt gps1',
      'unit.amend gps1',
    ]);
    expect(said('configuration.links.a.P>b.Q.cover', 'link.connect a.P>b.Q')).toEqual(['link.connect a.P>b.Q']);
    expect(said('status.records', 'record.add vor-check')).toEqual(['record.add vor-check']);
  });

  it('of a type in the catalogue, and of what has no kind, is what the rules say, or nothing', () => {
    expect(said('catalogue.aircraft.drawA', 'electrical.set aircraft')).toEqual(['electrical.set aircraft']);
    expect(said('something.else')).toEqual([]);
  });
});
