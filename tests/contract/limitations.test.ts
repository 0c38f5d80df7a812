import { expect, it } from 'vitest';
import type { EquipmentType, FunctionCode, Limitation } from '../../libs/rules/src/catalogue/type.js';
import { limitation } from '../../libs/rules/src/catalogue/type.js';
import type { Dossier } from '../../libs/rules/src/dossier/dossier.js';
import { factsOf } from '../../libs/rules/src/graph/facts.js';
import { metersAt } from '../../libs/rules/src/assess/meters.js';
import { rules } from '../../libs/rules/src/rules/registry.js';
import { strictest } from '../../libs/rules/src/verdict/conditions.js';
import { evaluate } from '../../libs/rules/src/verdict/evaluate.js';
import { limitationOf, linkOf, typeOf, unitOf } from '../../libs/rules/testing/builders.js';
import { catalogueOf } from '../../libs/rules/testing/changes.js';
import { dossierOf } from '../../libs/rules/testing/dossiers.js';

/** Each kind of the catalogue's closed list of limitations is read by a rule: with it in the manual, something is lost that was there without. */
type Example = { readonly rule: string; readonly limit: Omit<Limitation, 'kind'>; readonly dossier: Dossier };

const stated = (['equipment', 'links'] as const).map((list) => ({
  list,
  stated: { asOf: '2026-01-01', by: 'J. Orrell' },
}));
const on = (...names: readonly FunctionCode[]) => names.map((name) => ({ name, value: 'on' }));
const joined = (...links: readonly (readonly [string, string])[]) =>
  dossierOf({
    status: { completeness: stated },
    configuration: {
      units: [
        unitOf({ id: 'own', typeId: 'own', place: 'centre-stack', options: on('gnss', 'com') }),
        ...['first', 'second'].map((id) => unitOf({ id, typeId: id })),
      ],
      links: links.map(([from, to]) => linkOf(from, 'data', to, 'data')),
    },
  });
const { kind: _kind, ...blank } = limitationOf({ kind: 'no-link' });

const examples: Readonly<Record<Limitation['kind'], Example>> = {
  'no-link': {
    rule: 'link-not-prohibited',
    limit: { ...blank, functions: ['autopilot'] },
    dossier: joined(['own', 'first']),
  },
  'no-chain': {
    rule: 'link-not-prohibited',
    limit: { ...blank, functions: ['autopilot'], beyond: ['active-traffic'] },
    dossier: joined(['own', 'first'], ['first', 'second']),
  },
  'not-both': {
    rule: 'options-not-exclusive',
    limit: { ...blank, functions: ['gnss'], beyond: ['com'] },
    dossier: joined(),
  },
  requires: {
    rule: 'required-companions',
    limit: { ...blank, functions: ['gnss'], beyond: ['dme'] },
    dossier: joined(),
  },
  'not-a-substitute': {
    rule: 'lateral-indicator',
    limit: { ...blank, functions: ['lateral-deviation'] },
    dossier: joined(),
  },
};

it.each(limitation.shape.kind.options)('%s', (kind) => {
  const { rule, limit, dossier } = examples[kind];
  const lost = (limitations: EquipmentType['limitations']) => {
    const own = typeOf({
      id: 'own',
      functions: ['gnss', 'com', 'lateral-deviation'],
      view: {
        approvedPlaces: ['centre-stack'],
        maxHorizontalDeg: null,
        maxOffsetIn: null,
        document: 'Installation manual',
      },
      limitations,
    });
    const types = [
      own,
      typeOf({ id: 'first', functions: ['autopilot'] }),
      typeOf({ id: 'second', functions: ['active-traffic'] }),
    ];
    const found =
      rules.find(({ meta }) => meta.id === rule)?.evaluate(factsOf(dossier, catalogueOf(...types)), []) ?? [];
    return found.filter(
      ({ clause }) =>
        evaluate(clause, {
          instant: '2026-03-02T14:00Z',
          meters: metersAt(dossier, 0),
          conditions: strictest,
          capability: () => 'cannot-tell',
        }) === 'not-met',
    ).length;
  };
  expect(lost([])).toBe(0);
  expect(lost([{ kind, ...limit }])).toBeGreaterThan(0);
});
