import { describe, expect, it } from 'vitest';
import { factWords, pathWords } from './facts.js';

const names = {
  nav1: 'SR 12, serial S-9, centre stack',
  'nav1.LAT-OUT>cdi1.LAT-IN': 'SR 12 LAT OUT to SI 3 LAT IN',
};

describe('a missing fact in words', () => {
  it.each([
    ['configuration.units.nav1.approval', 'Unit SR 12, serial S-9, centre stack: approval'],
    ['configuration.units.nav1.asBuilt.bears', 'Unit SR 12, serial S-9, centre stack: as built, bears'],
    ['configuration.links.nav1.LAT-OUT>cdi1.LAT-IN.cover', 'Joint SR 12 LAT OUT to SI 3 LAT IN: cover'],
    ['configuration.links.nav1.LAT-OUT>cdi1.LAT-IN', 'Joint SR 12 LAT OUT to SI 3 LAT IN'],
    ['configuration.equipment.magnetic-compass', 'Required item magnetic compass'],
    ['status.completeness.life-limits', 'Whether the list of life limits is complete'],
    ['configuration.papers', 'Papers aboard and on file'],
    ['configuration.authority', 'Authority'],
    ['configuration.aircraft.basis', 'Basis of the aircraft'],
    ['status.loads.nav1.chart.this', 'Database of SR 12, serial S-9, centre stack: chart, cycle in use'],
  ])('%s: %s', (fact, words) => {
    expect(factWords(fact, names)).toBe(words);
  });

  it('goes by short names where nothing has another', () => {
    expect(factWords('configuration.units.nav2.approval', names)).toBe('Unit nav2: approval');
    expect(factWords('configuration.links.gps1.POS-OUT>tab1.POS-IN.cover', names)).toBe(
      'Joint gps1.POS-OUT>tab1.POS-IN: cover',
    );
  });
});

it('a path is words of its parts', () => {
  expect(pathWords('configuration.electrical.busV')).toBe('electrical › bus (V)');
  expect(pathWords('configuration.units.nav1.asBuilt.grants')).toBe('units › nav1 › as built › grants');
});
