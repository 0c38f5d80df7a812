import { blankDossier, type Dossier } from '@tallywing/rules';
import { describe, expect, it } from 'vitest';
import { gainWords } from './components/fleet-visits.js';
import { factWords, jobLink, missingWords } from './words.js';

const blank = blankDossier('a');
const dossier = {
  ...blank,
  configuration: {
    ...blank.configuration,
    units: [
      { id: 'nav1', name: 'SR 12', serial: 'S-9' },
      { id: 'cdi1', name: 'SI 3', serial: null },
    ],
    links: [{ id: 'l1', fromUnit: 'nav1', fromPort: 'LAT OUT', toUnit: 'cdi1', toPort: 'LAT IN' }],
  },
} as unknown as Dossier;

describe('a missing fact in words', () => {
  it.each([
    ['configuration.units.nav1.approval', 'Unit SR 12, serial S-9: approval'],
    ['configuration.units.nav1.asBuilt.bears', 'Unit SR 12, serial S-9: as built, bears'],
    ['configuration.links.l1.cover', 'Joint SR 12, serial S-9 LAT OUT to SI 3 LAT IN: cover'],
    ['configuration.equipment.magnetic-compass', 'Required item magnetic compass'],
    ['status.completeness.life-limits', 'Whether the list of life limits is complete'],
    ['configuration.papers', 'Papers aboard and on file'],
    ['configuration.authority', 'Authority'],
  ])('%s: %s', (fact, words) => {
    expect(factWords(fact, dossier)).toBe(words);
  });

  it('goes by short names where the record is not at hand', () => {
    expect(factWords('configuration.units.nav1.approval')).toBe('Unit nav1: approval');
  });

  it('names the entries that may exist', () => {
    const by = [
      { change: 'record.add', subject: 'altimeter-test:alt1' },
      { change: 'record.add', subject: 'annual-inspection' },
    ];
    const words = missingWords({ fact: 'status.records', by, opens: [], settles: [] }, dossier);
    expect(words).toMatch(/^Entries that may exist and that nobody recorded: altimeter .* and annual inspection$/);
  });
});

describe('where it is recorded', () => {
  it('is the job screen with the change and its subject', () => {
    expect(jobLink('tw-1', 'record.add', 'altimeter-test:alt1')).toBe(
      '/aircraft/tw-1/job?record=record.add&about=altimeter-test%3Aalt1',
    );
  });

  it('is this screen for an acceptance and for a statement', () => {
    expect(jobLink('tw-1', 'adopt', 'nav1')).toBeNull();
    expect(jobLink('tw-1', 'completeness.state', 'directives')).toBeNull();
  });
});

it.each([
  [4, ['IFR rental'], 'Settles 4 answers and opens IFR rental.'],
  [1, [], 'Settles 1 answer.'],
  [0, ['a', 'b', 'c', 'd'], 'Opens 4 flights.'],
  [0, [], 'Settles nothing by itself.'],
])('%i answers and %j: %s', (settles, opens, words) => {
  expect(gainWords(settles, opens)).toBe(words);
});
