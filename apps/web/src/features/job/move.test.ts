import { blankDossier, replay, type Catalogue, type Change, type EquipmentType } from '@tallywing/rules';
import { expect, test } from 'vitest';
import { newStep } from './follow.js';
import type { Start } from './kinds.js';
import { moveTo } from './move.js';
import { planOf } from './plan.js';

const type = (id: string, family: string, revision: string): EquipmentType => ({
  id,
  family,
  maker: 'Quillon Works',
  name: family,
  partNumber: 'QW-1',
  document: 'Manual',
  revision,
  functions: ['com'],
  authorisations: [],
  bezel: null,
  massLb: null,
  drawA: null,
  supplyV: null,
  cooling: null,
  ports: [],
  databases: [],
  view: null,
  pairs: [],
  limitations: [],
});
const types = [type('set@1', 'set', 'A'), type('set@2', 'set', 'B'), type('other@1', 'other', 'A')];
const catalogue: Catalogue = { version: '1', types: Object.fromEntries(types.map((each) => [each.id, each])) };
const start: Start = {
  dossier: blankDossier('a'),
  catalogue,
  today: '2026-11-25',
  now: '2026-11-25T12:00Z',
  workedAt: null,
  by: 'A. Person',
};

const fit = newStep('unit.install', start, { unit: { id: 'radio', name: 'Radio', typeId: 'set@1', serial: '7' } });
const fitted = replay([{ kind: 'unit.install', version: 1, ...(fit.value as object) } as Change]);

test('a unit is moved to another version of its own product, with all that is known of it', () => {
  const move = moveTo(fitted, catalogue, 'radio', 'set@2');
  expect(move).toMatchObject({ unit: { id: 'radio', typeId: 'set@2', serial: '7' }, reason: 'Manual, revision B' });
  const step = newStep('unit.amend', start, { ...move });
  const plan = planOf(fitted, catalogue, [step], start.now);
  expect(plan.steps[0]?.problems).toEqual([]);
  expect(plan.after.configuration.units).toEqual([{ ...fitted.configuration.units[0], typeId: 'set@2' }]);
  // Once planned there is nothing more to offer.
  expect(moveTo(plan.after, catalogue, 'radio', 'set@2')).toBeNull();
});

test.each([
  ['no unit of that id', 'none', 'set@2'],
  ['no such version', 'radio', 'set@3'],
  ['another product', 'radio', 'other@1'],
  ['the version that it has', 'radio', 'set@1'],
  ['no link', null, null],
])('nothing is offered: %s', (_, unitId, typeId) => {
  expect(moveTo(fitted, catalogue, unitId, typeId)).toBeNull();
});
