import type { Aircraft } from '../../libs/rules/src/dossier/aircraft.js';
import { rules } from '../../libs/rules/src/rules/registry.js';
import type { Outcome } from '../../libs/rules/src/verdict/clause.js';
import { evaluate } from '../../libs/rules/src/verdict/evaluate.js';
import { circuitOf } from '../../libs/rules/testing/builders.js';
import { dossierOf } from '../../libs/rules/testing/dossiers.js';
import type { RuleCase } from '../../libs/rules/testing/rule-case.js';
import { pointOf, statements } from '../../libs/rules/testing/rule-case.js';

export type Asked = Pick<RuleCase, 'dossier' | 'types' | 'at' | 'hoursAhead' | 'flight' | 'capabilities' | 'subject'>;

/** What a rule says of a subject, or first where none is named, at one point and for one flight; fields of the flight left out ask the most. */
export function said(ruleId: string, asked: Asked): Outcome | 'no statement' {
  const rule = rules.find(({ meta }) => meta.id === ruleId);
  if (!rule) throw new Error(`There is no rule ${ruleId}.`);
  const each: RuleCase = { name: ruleId, expect: 'met', ...asked };
  const draft = statements(rule, each).find(({ subject }) => asked.subject === undefined || subject === asked.subject);
  return draft ? evaluate(draft.clause, pointOf(each, asked.dossier)) : 'no statement';
}

/** What is said of the protector of an essential circuit that guards so many, on an aircraft of this basis. */
export function saidOfProtector(basis: Aircraft['basis'], circuitsGuarded: number): Outcome | 'no statement' {
  return said('one-circuit-per-essential-breaker', {
    dossier: dossierOf({
      configuration: {
        aircraft: { basis },
        electrical: {
          busV: 28,
          alternatorA: 60,
          batteryAh: null,
          batteryShare: null,
          loadWatch: null,
          circuits: [circuitOf({ id: 'c', essential: true, circuitsGuarded })],
        },
      },
    }),
    at: '2026-03-02T14:00Z',
  });
}
