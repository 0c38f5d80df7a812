import { expect, it } from 'vitest';
import { unitOf } from '../../testing/builders.js';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import type { Defect, Obligation } from '../dossier/status.js';
import { factsOf } from '../graph/facts.js';
import { releaseOwed } from './release-owed.js';
import { backInUse, stateOf, waysOut } from './unit-state.js';

const units = [unitOf({ id: 'u1', functions: ['com'] }), unitOf({ id: 'u2', functions: ['com'] })];
const since = { date: '2026-01-10', at: null };
const defect = (subject: string, kind: Defect['kind']): Defect => ({
  id: `${subject}-${kind}`,
  kind,
  subject,
  text: 'Silent.',
  raised: since,
  decidedBy: null,
  deferral: null,
});
const owed = (subject: string, what: Obligation['what'], closedBy: string | null): Obligation => ({
  id: `${subject}-${what}`,
  what,
  subject,
  since,
  becauseOf: 'unit.install',
  touched: null,
  closedBy,
});

it.each([
  ['with no defect', [], 'working'],
  ['entered as inoperative', [defect('u1', 'inoperative-item')], 'inoperative'],
  ['beside another that is', [defect('u2', 'inoperative-item')], 'working'],
  ['with wear', [defect('u1', 'wear')], 'working'],
] as const)('a unit %s: %s', (_, defects, expected) => {
  const facts = factsOf(dossierOf({ configuration: { units }, status: { defects } }), catalogueOf());
  const unit = facts.units.get('u1');
  expect(unit && stateOf(facts, unit)).toBe(expected);
});

const inoperative = (id: string) => ({ ...defect('u1', 'inoperative-item'), id });

it.each([
  ['that works: another in its place', null, [], [], ['unit.install u1']],
  [
    'entered as inoperative: each such entry is closed, by its own name',
    null,
    [inoperative('d1'), defect('u1', 'wear'), inoperative('d2'), defect('u2', 'inoperative-item')],
    ['defect.close d1', 'defect.close d2'],
    ['defect.close d1', 'defect.close d2'],
  ],
  ['deactivated: it is put back first', since, [inoperative('d1')], ['unit.reactivate u1'], ['unit.reactivate u1']],
] as const)('what to do with a unit %s', (_, off, defects, back, out) => {
  const deactivated = off && { since: off, placarded: true, recorded: true };
  const facts = factsOf(
    dossierOf({ configuration: { units: [{ ...units[0]!, deactivated }, units[1]!] }, status: { defects } }),
    catalogueOf(),
  );
  const unit = facts.units.get('u1')!;
  const said = (remedies: ReturnType<typeof waysOut>) => remedies.map((each) => `${each.change} ${each.subject}`);
  expect(said(backInUse(facts, unit))).toEqual(back);
  expect(said(waysOut(facts, unit))).toEqual(out);
  expect([...backInUse(facts, unit), ...waysOut(facts, unit)].every(({ kind }) => kind === 'do')).toBe(true);
});

it('a release is owed by the units aboard whose entry nobody made, and by that entry alone', () => {
  const obligations = [
    owed('u1', 'release-entry', null),
    owed('u2', 'release-entry', 'entry'),
    owed('u2', 'transponder-test', null),
    owed('gone', 'release-entry', null),
  ];
  expect(releaseOwed(factsOf(dossierOf({ configuration: { units }, status: { obligations } }), catalogueOf()))).toEqual(
    ['u1'],
  );
});
