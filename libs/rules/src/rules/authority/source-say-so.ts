import type { PolicyStretch } from '../../catalogue/policy.js';
import { housePolicy, stretchesOf } from '../../catalogue/policy.js';
import type { SaySo } from '../../dossier/status.js';
import type { SourceStatus } from '../../facts/source.js';
import { allOf, anyOf, implies, unknown, within } from '../../verdict/build.js';
import type { Clause, Leaf, Outcome } from '../../verdict/clause.js';
import { leaves, weakestOf } from '../../verdict/regions.js';
import type { Draft, Statement } from '../../verdict/result.js';
import { duringPolicy } from '../house-policy.js';
import { practice } from '../cite.js';
import { defineRule } from '../rule.js';

/** Speaks only where the house has set the policy. It takes yeses away; no say-so makes one of a no. */
export const sourceSaySo = defineRule(
  {
    id: 'source-say-so',
    topic: 'authority',
    asks: 'Where the house wants it, a named person lets a result count that would not be met but for a source of the doubted kind.',
    binds: 'Results that bear on a flight, in houses that have set the policy.',
    sources: [
      practice('who may send on a figure from memory, on common practice or on a reading is for the house to say'),
    ],
    messages: {
      counts: '{rule}: rests on nothing that wants a say-so, or a named person gave it.',
      wanted: '{rule}: rests on a source of the kind {status}; the house wants the say-so of a named person.',
      'not-asked': '{rule}: no say-so is asked.',
    },
    establishes: [],
  },
  ({ dossier, catalogue, zone }, said) => {
    const stretches = stretchesOf(catalogue.policies, 'weak-source', zone);
    const sayings = dossier.status.sayings ?? [];
    return said.flatMap((each) => {
      const given = sayings.filter(({ rule, subject }) => rule === each.ruleId && subject === each.subject);
      return speaksOf(each, stretches, given) ?? [];
    });
  },
);

type Stretch = PolicyStretch<'weak-source'>;

function speaksOf(said: Statement, all: readonly Stretch[], given: readonly SaySo[]): Draft | null {
  const effects = said.effects.filter((each) => each.stops === 'capability');
  const stretches = all.filter(({ policy }) => doubted(said.clause, policy.body.statuses).length > 0);
  if (effects.length === 0 || stretches.length === 0) return null;
  const statuses = stretches.flatMap(({ policy }) => policy.body.statuses);
  return {
    subject: `${said.ruleId}:${said.subject}`,
    clause: allOf(
      'say-so-where-wanted',
      stretches.map((stretch) =>
        duringPolicy(stretch, implies(surely(said.clause), notLeaningOrSaid(said.clause, stretch, given))),
      ),
      'not-applicable',
    ),
    messages: { met: 'counts', 'not-met': 'wanted', 'cannot-tell': 'wanted', 'not-applicable': 'not-asked' },
    data: {
      rule: said.ruleId,
      status: weakestOf(doubted(said.clause, statuses).map(({ source }) => source)),
      result: said.key,
    },
    effects,
    remedies: [{ kind: 'do', change: 'say-so.give', subject: said.key, facts: [] }],
  };
}

/** It leans on a doubted source where it would no longer be met if nobody knew what that source says. */
function notLeaningOrSaid(clause: Clause, { policy }: Stretch, given: readonly SaySo[]): Clause {
  const source = housePolicy(policy);
  const sayings = given.map(({ from, until }) =>
    within('named-person-said-so', { from, before: until }, { source }, 'met', 'cannot-tell'),
  );
  return anyOf(
    'without-doubted-sources-or-said-so',
    [
      doubting(clause, policy.body.statuses),
      ...(sayings.length > 0 ? sayings : [unknown('named-person-said-so', ['status.sayings'], { source })]),
    ],
    'cannot-tell',
  );
}

function doubted(clause: Clause, statuses: readonly SourceStatus[]): readonly Leaf[] {
  return [...leaves(clause)].filter(
    (leaf) =>
      leaf.source !== undefined &&
      statuses.includes(leaf.source.status) &&
      (leaf.inside === 'met' || leaf.outside === 'met'),
  );
}

/** The same clause, with nothing met by a source of these kinds. */
function doubting(clause: Clause, statuses: readonly SourceStatus[]): Clause {
  return eachLeaf(clause, (leaf) =>
    leaf.source !== undefined && statuses.includes(leaf.source.status) ? turned(leaf, 'met', 'cannot-tell') : leaf,
  );
}

/** The same clause where it is met; what nobody recorded asks for that, not for a say-so. */
function surely(clause: Clause): Clause {
  return eachLeaf(clause, (leaf) => turned(leaf, 'cannot-tell', 'not-met'));
}

/** What a clause asks only if something holds stays asked in the same cases. */
function eachLeaf(clause: Clause, change: (leaf: Leaf) => Leaf): Clause {
  switch (clause.is) {
    case 'leaf':
      return change(clause);
    case 'ref':
      return clause;
    case 'implies':
      return implies(clause.if, eachLeaf(clause.then, change));
    default:
      return { ...clause, of: clause.of.map((each) => eachLeaf(each, change)) };
  }
}

function turned(leaf: Leaf, from: Outcome, to: Outcome): Leaf {
  const turn = (outcome: Outcome) => (outcome === from ? to : outcome);
  return { ...leaf, inside: turn(leaf.inside), outside: turn(leaf.outside) };
}
