import { expect, it } from 'vitest';
import { linkOf, unitOf } from '../../testing/builders.js';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import type { FunctionCode } from '../catalogue/type.js';
import { factsOf } from '../graph/facts.js';
import { seenUnits } from './seen-units.js';

const deactivated = { since: { date: '2026-01-10', at: null }, placarded: true, recorded: true };
const unit = (id: string, functions: readonly FunctionCode[], off = false) =>
  unitOf({ id, functions, deactivated: off ? deactivated : null });
const guides = (from: string, to: string) => linkOf(from, 'lateral-deviation', to, 'lateral-deviation');

/** Units that have to be seen, with their cone. */
function seen(units: readonly ReturnType<typeof unit>[], links: readonly ReturnType<typeof guides>[]) {
  const facts = factsOf(dossierOf({ configuration: { units, links } }), catalogueOf());
  return Object.fromEntries(seenUnits(facts).map(([each, cone]) => [each.id, cone]));
}
const gps = unit('gps', ['gnss', 'integrity-annunciation', 'approach-annunciation']);
const display = unit('gps', ['gnss', 'lateral-deviation', 'source-annunciation']);
const nav = unit('nav', ['vor-receiver']);
const cdi = unit('cdi', ['lateral-deviation']);
const cdi2 = unit('cdi2', ['lateral-deviation']);

type Row = readonly [string, readonly ReturnType<typeof unit>[], readonly ReturnType<typeof guides>[], object];
const rows: readonly Row[] = [
  ['an indicator that a source guides', [nav, cdi], [guides('nav', 'cdi')], { cdi: 'optimum' }],
  ['one that nothing guides', [nav, cdi], [], {}],
  ['what a source annunciates is asked of the chain', [gps, nav, cdi], [guides('gps', 'cdi')], { cdi: 'optimum' }],
  ['an annunciator of integrity', [unit('a', ['integrity-annunciation'])], [], { a: 'optimum' }],
  ['one of the approach', [unit('a', ['approach-annunciation'])], [], { a: 'maximum' }],
  ['one of the source', [unit('a', ['source-annunciation'])], [], { a: 'maximum' }],
  ['a deactivated one', [unit('a', ['source-annunciation'], true)], [], {}],
  ['a portable one', [unit('a', ['source-annunciation', 'portable-display'])], [], {}],
  ['a portable navigator', [unit('a', ['gnss', 'integrity-annunciation', 'portable-display'])], [], {}],
  ['a radio', [unit('a', ['com'])], [], {}],
  [
    'the display of a source that is joined to nothing',
    [display, nav, cdi2],
    [guides('nav', 'cdi2')],
    { gps: 'optimum', cdi2: 'optimum' },
  ],
  ['the display of one that is joined to an indicator', [display, cdi], [guides('gps', 'cdi')], { cdi: 'optimum' }],
  [
    'the display of one that is joined to an indicator, where another source guides it',
    [display, nav, cdi],
    [guides('gps', 'cdi'), guides('nav', 'gps')],
    { gps: 'optimum', cdi: 'optimum' },
  ],
];
it.each(rows)('%s', (_, units, links, expected) => {
  expect(seen(units, links)).toEqual(expected);
});
