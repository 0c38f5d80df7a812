import { blankDossier, type Dossier } from '@tallywing/rules';
import { describe, expect, it } from 'vitest';
import { namesIn } from '../../trade/units.js';
import { gainWords } from './components/fleet-visits.js';
import { grouped, missingWords, waysOf } from './words.js';

const blank = blankDossier('a');
const dossier = {
  ...blank,
  configuration: {
    ...blank.configuration,
    units: [
      { id: 'nav1', name: 'SR 12', serial: 'S-9' },
      { id: 'cdi1', name: 'SI 3', serial: null },
    ],
    staticSystems: [],
    links: [],
  },
} as unknown as Dossier;

const names = namesIn(dossier);

it('names the entries that may exist', () => {
  const by = [
    { change: 'record.add', subject: 'altimeter-test:alt1' },
    { change: 'record.add', subject: 'annual-inspection' },
  ];
  const words = missingWords({ fact: 'status.records', by, opens: [], settles: [] }, names);
  expect(words).toMatch(/^Entries that may exist and that nobody recorded: altimeter .* and annual inspection$/);
});

describe('where it is recorded', () => {
  const ways = (fact: string, ...by: { change: string; subject: string }[]) => waysOf({ fact, by }, 'tw-1', names);

  it('is the job screen with the change and its subject', () => {
    expect(ways('status.records', { change: 'record.add', subject: 'altimeter-test:nav1' })).toEqual([
      {
        to: '/aircraft/tw-1/job?record=record.add&about=altimeter-test%3Anav1',
        words: expect.stringMatching(/^Do and record .* of SR 12, serial S-9$/i),
      },
    ]);
  });

  it('is the job screen with the item to look at, and with an entry of which nothing is known yet', () => {
    expect(ways('configuration.equipment.clock', { change: 'equipment.state', subject: 'aircraft' })).toMatchObject([
      { to: '/aircraft/tw-1/job?record=equipment.state&about=clock' },
    ]);
    expect(ways('status.records', { change: 'record.add', subject: 'aircraft' })).toMatchObject([
      { to: '/aircraft/tw-1/job?record=record.add&about=', words: 'Record an entry' },
    ]);
  });

  it('is the catalogue for what the type does not say', () => {
    const asked = ways('catalogue.nav1.drawA', { change: 'electrical.set', subject: 'aircraft' });
    expect(asked).toEqual([{ to: '/catalogue', words: 'Revise the equipment type in the catalogue' }]);
  });

  it('is this screen for an acceptance and for a statement', () => {
    expect(ways('x', { change: 'adopt', subject: 'nav1' })).toMatchObject([{ to: '#accept' }]);
    expect(ways('x', { change: 'completeness.state', subject: 'directives' })).toMatchObject([{ to: '#state-lists' }]);
  });
});

it('puts together what one form takes and what settles nothing alone', () => {
  const fact = (path: string, settles: readonly string[] = []) => ({ fact: path, by: [], opens: [], settles });
  const groups = grouped(
    [
      fact('configuration.equipment.landing-light', ['x|aircraft']),
      fact('configuration.equipment.clock'),
      fact('configuration.equipment.altimeter'),
      fact('configuration.authority'),
    ],
    'tw-1',
    names,
  );
  expect(groups.map(({ facts }) => facts.length)).toEqual([1, 2, 1]);
  expect(groups[1]?.ways).toMatchObject([{ to: '/aircraft/tw-1/job?record=equipment.state&about=clock%2Caltimeter' }]);
});

it.each([
  [4, ['IFR rental'], 'Settles 4 answers and opens IFR rental.'],
  [1, [], 'Settles 1 answer.'],
  [0, ['a', 'b', 'c', 'd'], 'Opens 4 flights.'],
  [0, [], 'Settles nothing by itself.'],
])('%i answers and %j: %s', (settles, opens, words) => {
  expect(gainWords(settles, opens)).toBe(words);
});
