import { expect, it } from 'vitest';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import type { Aircraft } from '../dossier/aircraft.js';
import { batteryHalfHourSince } from '../facts/old-part-23.js';
import { factsOf } from '../graph/facts.js';
import { basisKnown, oldPart23Binds } from './certification-basis.js';

type Basis = Aircraft['basis'];
const part23 = (amendment: number | null): Basis => ({ code: 'part-23', amendment });
const path = 'configuration.aircraft.basis';

// A paragraph since amendment 23-49; the text was rewritten by 23-64. What is not known of the basis is asked for; CAR 3 has no amendment to ask for.
it.each<[string, Basis, string, string, readonly string[]]>([
  ['amendment 48', part23(48), 'does-not', 'cannot-tell', []],
  ['amendment 49', part23(49), 'binds', 'met', []],
  ['amendment 63', part23(63), 'binds', 'met', []],
  ['amendment 64', part23(64), 'unknown', 'cannot-tell', []],
  ['amendment not recorded', part23(null), 'unknown', 'cannot-tell', [`${path}.amendment`]],
  ['basis not recorded', null, 'unknown', 'cannot-tell', [path]],
  ['CAR 3', { code: 'car-3', amendment: null }, 'unknown', 'cannot-tell', []],
  ['a consensus standard', { code: 'consensus', amendment: null }, 'does-not', 'cannot-tell', []],
])('%s', (_, basis, binding, outcome, missing) => {
  const facts = factsOf(dossierOf({ configuration: { aircraft: { basis } } }), catalogueOf());
  const found = oldPart23Binds(facts, batteryHalfHourSince, 'unknown');
  const known = basisKnown(facts, found, batteryHalfHourSince.source);
  expect([found, known.inside, known.missing ?? []]).toEqual([binding, outcome, missing]);
});
