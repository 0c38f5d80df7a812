import { expect, it } from 'vitest';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import type { Aircraft } from '../dossier/aircraft.js';
import { batteryHalfHourSince } from '../facts/old-part-23.js';
import { rotorcraftLightsSince } from '../facts/part-27.js';
import { factsOf } from '../graph/facts.js';
import type { Demand } from './certification-basis.js';
import { basisKnown, bindingOf, sourceOf } from './certification-basis.js';

type Basis = Aircraft['basis'];
const part23 = (amendment: number | null): Basis => ({ code: 'part-23', amendment });
const part27 = (amendment: number | null): Basis => ({ code: 'part-27', amendment });
const path = 'configuration.aircraft.basis';

const inBoth: Demand = {
  part23: batteryHalfHourSince,
  part27: { since: rotorcraftLightsSince, before: 'does-not' },
  car3: 'unknown',
};
const shown = (basis: Basis, demand: Demand) => {
  const facts = factsOf(dossierOf({ configuration: { aircraft: { basis } } }), catalogueOf());
  const found = bindingOf(facts, demand);
  const known = basisKnown(facts, found, sourceOf(facts, demand));
  return [found, known.inside, known.missing ?? []];
};

// A paragraph since amendment 23-49, whose text was rewritten by 23-64, and since amendment 27-11. What is not known of the basis is asked
// for; CAR 3 has no amendment to ask for.
it.each<[string, Basis, string, string, readonly string[]]>([
  ['amendment 23-48', part23(48), 'does-not', 'cannot-tell', []],
  ['amendment 23-49', part23(49), 'binds', 'met', []],
  ['amendment 23-63', part23(63), 'binds', 'met', []],
  ['amendment 23-64', part23(64), 'unknown', 'cannot-tell', []],
  ['amendment of part 23 not recorded', part23(null), 'unknown', 'cannot-tell', [`${path}.amendment`]],
  ['amendment 27-10', part27(10), 'does-not', 'cannot-tell', []],
  ['amendment 27-11', part27(11), 'binds', 'met', []],
  ['amendment of part 27 not recorded', part27(null), 'unknown', 'cannot-tell', [`${path}.amendment`]],
  ['basis not recorded', null, 'unknown', 'cannot-tell', [path]],
  ['CAR 3', { code: 'car-3', amendment: null }, 'unknown', 'cannot-tell', []],
  ['a consensus standard', { code: 'consensus', amendment: null }, 'does-not', 'cannot-tell', []],
])('%s', (_, basis, binding, outcome, missing) => {
  expect(shown(basis, inBoth)).toEqual([binding, outcome, missing]);
});

it('a text that part 27 does not have binds no rotorcraft; one that was not read before an amendment may', () => {
  expect(shown(part27(40), { ...inBoth, part27: null })[0]).toBe('does-not');
  const unread: Demand = { ...inBoth, part27: { since: rotorcraftLightsSince, before: 'unknown' } };
  expect([shown(part27(10), unread)[0], shown(part27(11), unread)[0]]).toEqual(['unknown', 'binds']);
});

it('the demand is cited as the part of the aircraft words it', () => {
  const cited = (basis: Basis, demand: Demand) =>
    sourceOf(factsOf(dossierOf({ configuration: { aircraft: { basis } } }), catalogueOf()), demand);
  expect(cited(part27(11), inBoth)).toBe(rotorcraftLightsSince.source);
  expect(cited(part23(49), inBoth)).toBe(batteryHalfHourSince.source);
  expect(cited(part27(11), { ...inBoth, part27: null })).toBe(batteryHalfHourSince.source);
});
