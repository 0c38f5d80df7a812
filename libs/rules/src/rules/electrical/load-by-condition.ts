import { continuousLoadIn } from '../../calculations/electrical-load.js';
import { oldPart23 } from '../../facts/old-part-23.js';
import { continuousLoadShare } from '../../facts/wire.js';
import type { Circuit, Electrical, LoadCondition } from '../../dossier/installation.js';
import type { Facts } from '../../graph/facts.js';
import { allOf, met, notMet, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import { everyLoadOnACircuit, loadLimitOf, missingOf } from '../circuits.js';
import { advice, planAndRelease } from '../effects.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';

const analysis = oldPart23('23.1351', '(a)(2)');
const conditions: readonly LoadCondition[] = ['ground', 'taxi', 'take-off', 'cruise', 'landing'];

/** One statement on the analysis, by the heaviest condition with the generator on. Without any analysis it is advice. */
export const loadByCondition = defineRule(
  {
    id: 'load-by-condition',
    topic: 'electrical',
    asks: 'In each condition with the generator on, the circuits that are then on keep within its output, and within 80 % of it where no placard and no monitoring watch it.',
    binds:
      'Aircraft whose electrical system is recorded; advice until somebody has recorded which circuits are on when.',
    sources: [continuousLoadShare.source, analysis],
    messages: {
      within: 'The heaviest condition, {condition}, takes {loadA} A of {alternatorA} A.',
      over: '{condition} takes {loadA} A, more than {limitA} A of {alternatorA} A.',
      unclear:
        'Whether the load of each condition stays within {alternatorA} A cannot be told; known of the heaviest, {condition}: {loadA} A.',
    },
    establishes: [],
  },
  (facts) => {
    const { electrical } = facts.dossier.configuration;
    if (electrical === null) return [];
    const heaviest = heaviestOf(electrical);
    return [
      {
        subject: 'aircraft',
        clause: judge(facts, electrical),
        messages: { met: 'within', 'not-met': 'over', 'cannot-tell': 'unclear', 'not-applicable': 'within' },
        data: { ...heaviest, alternatorA: electrical.alternatorA, limitA: loadLimitOf(electrical) },
        effects: electrical.circuits.some(({ usedIn }) => usedIn !== null) ? planAndRelease : advice,
        remedies: [findOut('electrical.set', 'aircraft', ...electrical.circuits.flatMap(openFacts))],
      },
    ];
  },
);

function judge(facts: Facts, electrical: Electrical): Clause {
  return allOf(
    'each-condition',
    [...conditions.map((each) => conditionClause(electrical, each)), everyLoadOnACircuit(facts, electrical, analysis)],
    'cannot-tell',
  );
}

function conditionClause(electrical: Electrical, condition: LoadCondition): Clause {
  const { source } = continuousLoadShare;
  const { alternatorA, loadWatch, circuits } = electrical;
  const label = `load-${condition}`;
  const { loadA, open } = continuousLoadIn(condition, circuits);
  const limit = loadLimitOf(electrical);
  if (alternatorA === null || limit === null)
    return unknown(label, ['configuration.electrical.alternatorA'], { source });
  const amounts = { source, value: { amount: loadA, unit: 'A' }, limit: { amount: limit, unit: 'A' } };
  if (loadA > alternatorA) return notMet(label, { ...amounts, source: analysis });
  // Above the share a placard or monitoring may lift the rule of thumb.
  if (loadA > limit)
    return loadWatch === null
      ? unknown(label, ['configuration.electrical.loadWatch'], amounts)
      : notMet(label, amounts);
  return open.length > 0 ? unknown(label, open.flatMap(openFacts), amounts) : met(label, amounts);
}

function heaviestOf({ circuits }: Electrical): { readonly condition: string; readonly loadA: number } {
  const loads = conditions.map((condition) => ({ condition, loadA: continuousLoadIn(condition, circuits).loadA }));
  return loads.reduce((most, each) => (each.loadA > most.loadA ? each : most));
}

function openFacts(circuit: Circuit): readonly string[] {
  return missingOf(circuit, 'loadA', 'usedIn', 'intermittent');
}
