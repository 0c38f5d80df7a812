import { expect, it } from 'vitest';
import { linkOf, unitOf } from '../../testing/builders.js';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import type { Link } from '../dossier/installation.js';
import { factsOf } from '../graph/facts.js';
import { reportersOf, transpondersOf } from './altitude-chain.js';

const units = [
  unitOf({ id: 'enc1', functions: ['altitude-reporting'] }),
  unitOf({ id: 'enc2', functions: ['altitude-reporting'] }),
  unitOf({ id: 'gps1', functions: ['gnss'] }),
  unitOf({ id: 'own', functions: ['transponder', 'altitude-reporting'] }),
  unitOf({ id: 'xp1', functions: ['transponder'] }),
  unitOf({ id: 'xp2', functions: ['transponder'] }),
];
const link = (from: string, signal: string, to: string) => linkOf(from, signal, to, signal);

/** Which transponders each reporter serves, and which reporters each transponder has. */
function served(...links: readonly Link[]) {
  const facts = factsOf(dossierOf({ configuration: { units, links } }), catalogueOf());
  const all = [...facts.units.values()];
  const named = (of: (unit: (typeof all)[number]) => readonly (typeof all)[number][], ids: readonly string[]) =>
    Object.fromEntries(
      all
        .filter(({ id }) => ids.includes(id))
        .map((each) => [
          each.id,
          of(each)
            .map(({ id }) => id)
            .join(' '),
        ]),
    );
  return {
    ...named((each) => transpondersOf(facts, each), ['enc1', 'enc2', 'own']),
    ...named((each) => reportersOf(facts, each), ['xp1', 'xp2']),
  };
}
const nothing = { enc1: '', enc2: '', own: 'own', xp1: '', xp2: '' };

it.each<[string, readonly Link[], object]>([
  ['one that reports itself serves itself', [], {}],
  ['by parallel lines', [link('enc1', 'altitude-gray', 'xp1')], { enc1: 'xp1', xp1: 'enc1' }],
  ['by a serial line', [link('enc2', 'altitude-serial', 'xp2')], { enc2: 'xp2', xp2: 'enc2' }],
  [
    'by two lines to one',
    [link('enc1', 'altitude-gray', 'xp1'), link('enc1', 'altitude-serial', 'xp1')],
    { enc1: 'xp1', xp1: 'enc1' },
  ],
  [
    'one reporter two transponders, two reporters one',
    [link('enc1', 'altitude-gray', 'xp1'), link('enc1', 'altitude-gray', 'xp2'), link('enc2', 'altitude-gray', 'xp2')],
    { enc1: 'xp1 xp2', enc2: 'xp2', xp1: 'enc1', xp2: 'enc1 enc2' },
  ],
  ['no other signal carries altitude', [link('enc1', 'position', 'xp1')], {}],
  ['a port that nobody knows carries nothing', [link('enc1', 'J1', 'xp1')], {}],
  ['what goes to something else serves no transponder', [link('enc1', 'altitude-serial', 'gps1')], {}],
])('%s', (_, links, expected) => {
  expect(served(...links)).toEqual({ ...nothing, ...expected });
});
