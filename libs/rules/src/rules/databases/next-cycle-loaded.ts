import { instantOf, minutesOf, minutesPerDay } from '../../time/instant.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { met, unknown, within } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import { practice } from '../cite.js';
import { advice } from '../effects.js';
import { holdsNextCycle, navigationLoads, regionOf } from '../navigation-data.js';
import { defineRule } from '../rule.js';

/** Days before the end of a cycle from which the next one should lie ready. */
const daysAhead = 7;
const source = practice(`the next cycle is loaded in the last ${daysAhead} days of the present one`);

/** One statement a unit that can hold two cycles. Advice: nothing is lost before the present cycle ends. */
export const nextCycleLoaded = defineRule(
  {
    id: 'next-cycle-loaded',
    topic: 'databases',
    asks: 'In the last week of a cycle the next one is loaded, where the unit can hold both.',
    binds: 'Satellite units that hold this and the next cycle.',
    sources: [source],
    messages: {
      ready: '{unit} is not waiting for the next cycle.',
      wanted: '{unit} changes cycle {expires}, and the next one is not loaded.',
      unclear: 'When {unit} changes cycle is not recorded.',
    },
    establishes: [],
  },
  (facts) =>
    [...facts.units.values()]
      .filter((each) => each.functions.has('gnss') && holdsNextCycle(each) === true)
      .map((each) => ({
        subject: each.id,
        clause: judge(facts, each),
        messages: { met: 'ready', 'not-met': 'wanted', 'cannot-tell': 'unclear', 'not-applicable': 'ready' },
        data: { unit: each.unit.name, expires: presentEnd(facts, each) },
        effects: advice,
        remedies: [{ kind: 'do' as const, change: 'database.load', subject: each.id, facts: [] }],
      })),
);

function presentEnd(facts: Facts, each: UnitFacts): string | null {
  const present = navigationLoads(facts, each.id).find(({ slot }) => slot === 'this');
  return present ? regionOf(present).before : null;
}

function judge(facts: Facts, each: UnitFacts): Clause {
  const end = presentEnd(facts, each);
  const path = `status.loads.${each.id}.navigation`;
  if (end === null) return unknown('present-cycle-recorded', [`${path}.this`], { source });
  const next = navigationLoads(facts, each.id).find(({ slot }) => slot === 'next');
  if (!next)
    return within(
      'next-cycle-not-yet-wanted',
      { before: instantOf(minutesOf(end) - daysAhead * minutesPerDay) },
      { source },
    );
  const { before } = regionOf(next);
  if (before === null) return unknown('next-cycle-recorded', [`${path}.next.cycle`], { source });
  return before > end
    ? met('next-cycle-loaded', { source })
    : within(
        'next-cycle-not-yet-wanted',
        { before: instantOf(minutesOf(end) - daysAhead * minutesPerDay) },
        { source },
      );
}
