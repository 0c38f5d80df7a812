import { expect, it } from 'vitest';
import { linkOf, typeOf, unitOf } from '../../testing/builders.js';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import type { Port } from '../catalogue/type.js';
import type { Link } from '../dossier/installation.js';
import { openJoins } from './joins.js';

const port = (name: string, direction: Port['direction'], part: Partial<Port> = {}): Port => ({
  name,
  signal: 'heading',
  direction,
  standard: 'rs-232',
  speed: 9600,
  requiredFor: [],
  ...part,
});
/** Units `a`, `b`, ... with these ports; asked of `a`. */
const joins = (ports: Readonly<Record<string, readonly Port[]>>, links: readonly Link[] = []) =>
  openJoins(
    'a',
    dossierOf({ configuration: { units: Object.keys(ports).map((id) => unitOf({ id, typeId: id })), links } }),
    catalogueOf(...Object.entries(ports).map(([id, list]) => typeOf({ id, functions: ['other'], ports: [...list] }))),
  ).map(({ fromUnit, fromPort, toUnit, toPort }) => `${fromUnit} ${fromPort} > ${toUnit} ${toPort}`);

it.each<[string, Port, Port, readonly string[]]>([
  ['an output to an input', port('O', 'out'), port('I', 'in'), ['a O > b I']],
  ['an input from an output', port('I', 'in'), port('O', 'out'), ['b O > a I']],
  ['both ways to an input', port('B', 'both'), port('I', 'in'), ['a B > b I']],
  ['both ways with both ways', port('B', 'both'), port('C', 'both'), ['a B > b C']],
  ['an input from both ways', port('I', 'in'), port('B', 'both'), ['b B > a I']],
  ['two outputs', port('O', 'out'), port('P', 'out'), []],
  ['two inputs', port('I', 'in'), port('J', 'in'), []],
  ['both ways with an output', port('B', 'both'), port('O', 'out'), []],
  ['another signal', port('O', 'out'), port('I', 'in', { signal: 'position' }), []],
  ['another standard', port('O', 'out'), port('I', 'in', { standard: 'rs-422' }), []],
  ['another speed', port('O', 'out'), port('I', 'in', { speed: 4800 }), []],
])('%s', (_, mine, other, expected) => {
  expect(joins({ a: [mine], b: [other] })).toEqual(expected);
});

it('an output feeds several inputs, an input takes one', () => {
  expect(joins({ a: [port('I', 'in'), port('J', 'in')], b: [port('O', 'out')] })).toEqual(['b O > a I', 'b O > a J']);
  expect(joins({ a: [port('O', 'out'), port('P', 'out')], b: [port('I', 'in')] })).toEqual(['a O > b I']);
  expect(joins({ a: [port('O', 'out')], b: [port('I', 'in')], c: [port('J', 'in')] })).toEqual(['a O > b I']);
});

it('what is joined already is left, but for an output of another unit', () => {
  const ports = { a: [port('O', 'out')], b: [port('I', 'in')], c: [port('J', 'in')] };
  expect(joins(ports, [linkOf('a', 'O', 'b', 'I')])).toEqual([]);
  expect(joins(ports, [linkOf('x', 'y', 'b', 'I')])).toEqual(['a O > c J']);
  const fed = { a: [port('I', 'in')], b: [port('O', 'out')] };
  expect(joins(fed, [linkOf('b', 'O', 'c', 'J')])).toEqual(['b O > a I']);
});

it('a unit without a type, or that is not there, has nothing to join', () => {
  const units = [{ id: 'a' }, { id: 'b' }, { id: 'c', typeId: 'gone' }, { id: 'd', typeId: 'gone' }].map(unitOf);
  for (const id of ['a', 'b', 'c', 'd', 'e'])
    expect(openJoins(id, dossierOf({ configuration: { units } }), catalogueOf())).toEqual([]);
});
