import { expect, it } from 'vitest';
import { recordOf, timeInService } from '../../testing/builders.js';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import type { RecordHead } from '../dossier/status.js';
import { factsOf } from '../graph/facts.js';
import { totalTimeEntered } from './total-time.js';

const inspection = (meters: RecordHead['meters'], kind: RecordHead['kind'] = 'annual-inspection') =>
  recordOf({ kind, id: 'a', on: '2026-01-10', meters });
const tach = [{ meter: 'tach', value: 400_000 }];
const path = 'status.records.a.meters';

// 43.11(a): the entry of an inspection holds total time in service.
it.each<[string, object, RecordHead, readonly unknown[]]>([
  ['entered', timeInService, inspection(tach), [['met', []]]],
  ['not entered', timeInService, inspection([]), [['cannot-tell', [path]]]],
  ['some meter entered, none stands for it', {}, inspection(tach), [['cannot-tell', ['meters.timeInService']]]],
  ['nothing entered, none stands for it', {}, inspection([]), [['cannot-tell', ['meters.timeInService', path]]]],
  ['no approval for return to service', {}, inspection([], 'airworthiness-certificate-inspection'), []],
])('total time %s', (_, meters, record, expected) => {
  const facts = factsOf(dossierOf({ meters }), catalogueOf());
  expect(totalTimeEntered(facts, record).map((leaf) => [leaf.inside, leaf.missing ?? []])).toEqual(expected);
});
