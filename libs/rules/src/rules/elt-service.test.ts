import { expect, it } from 'vitest';
import { typeOf, unitOf } from '../../testing/builders.js';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import { factsOf } from '../graph/facts.js';
import { inService } from './elt-service.js';
import { asked } from './gaps.js';

const labels = ['standard-named-by-rule', 'c91-fitted-before-the-ban', 'installation-approved'];

/** What its standard comes to: each thing asked of it. */
function standard(tsos: readonly string[], fitted: string) {
  const type = typeOf({
    id: 'el',
    functions: ['elt'],
    authorisations: tsos.map((tso) => ({ tso, class: null })),
  });
  const units = [unitOf({ id: 'elt1', typeId: 'el', fitted: { date: fitted, at: null } })];
  const facts = factsOf(dossierOf({ configuration: { units } }), catalogueOf(type));
  const unit = facts.units.get('elt1');
  return (
    unit && asked(inService(facts, unit).clause).flatMap((leaf) => (labels.includes(leaf.label) ? [leaf.inside] : []))
  );
}

// 91.207(a): TSO-C91 newly installed until 21 June 1995 only; TSO-C142 is of its battery.
it.each<[readonly string[], string, readonly string[]]>([
  [['C91'], '1995-06-21', ['not-met', 'met']],
  [['C91'], '1995-06-22', ['not-met', 'not-met']],
  [['C91', 'C142a'], '1995-06-21', ['not-met', 'met']],
  [['C91a'], '2001-06-21', ['met']],
  [['C126b', 'C142a'], '2001-06-21', ['met']],
  [['C142a'], '2001-06-21', ['cannot-tell']],
])('authorised to %j, fitted on %s', (tsos, fitted, outcomes) => {
  expect(standard(tsos, fitted)).toEqual(outcomes);
});
