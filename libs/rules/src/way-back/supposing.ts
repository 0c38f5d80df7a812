import type { System } from '../assess/system.js';
import { systemFrom } from '../assess/system.js';
import type { Clause, Outcome } from '../verdict/clause.js';

/** The same statements, with every leaf that waits for nothing but these facts taken as met wherever it cannot be told. */
export function supposing(system: System, facts: ReadonlySet<string>): System {
  if (facts.size === 0) return system;
  return systemFrom(
    system.dossier,
    system.facts,
    system.statements.map((statement, index) => ({
      statement: { ...statement, clause: suppose(statement.clause, facts) },
      establishes: system.establishes[index] ?? [],
    })),
  );
}

function suppose(clause: Clause, facts: ReadonlySet<string>): Clause {
  if (clause.is === 'leaf') {
    const waits =
      clause.missing !== undefined && clause.missing.length > 0 && clause.missing.every((each) => facts.has(each));
    return waits ? { ...clause, inside: settled(clause.inside), outside: settled(clause.outside) } : clause;
  }
  if (clause.is === 'ref') return clause;
  if (clause.is === 'implies') return { ...clause, if: suppose(clause.if, facts), then: suppose(clause.then, facts) };
  return { ...clause, of: clause.of.map((each) => suppose(each, facts)) };
}

/** What is known whatever the fact turns out to be stays. */
function settled(outcome: Outcome): Outcome {
  return outcome === 'cannot-tell' ? 'met' : outcome;
}
