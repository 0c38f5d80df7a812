import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, fact, implies, not, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import { aim, cfr } from '../cite.js';
import { gnssCapabilities, lostThrough } from '../effects.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';

const governs = aim('1-1-17 b.2(a)(4)');
const aboard = cfr('91.9(b)');

/** One statement an installed satellite unit that is not limited to VFR. A supplement that nobody recorded may lie in a drawer: it is asked for. */
export const flightManualSupplement = defineRule(
  {
    id: 'flight-manual-supplement',
    topic: 'indication',
    asks: 'The flight manual supplement of the installation is aboard.',
    binds: 'Satellite navigation units used under IFR; units approved for VFR or for surveillance alone need none.',
    sources: [governs, aboard],
    messages: {
      aboard: 'The supplement of {unit}, {document}, is aboard.',
      missing: 'The supplement of {unit}, {document}, is not aboard.',
      unrecorded: 'No flight manual supplement is recorded for {unit}.',
      unclear: 'Whether the supplement of {unit}, {document}, is aboard is not recorded.',
      'not-for-ifr': '{unit} is approved for no navigation under IFR and needs no supplement.',
    },
    establishes: [],
  },
  (facts) =>
    [...facts.units.values()]
      .filter((each) => each.functions.has('gnss') && !each.functions.has('portable-display'))
      .map((each) => {
        const found = supplementsOf(facts, each);
        return {
          subject: each.id,
          clause: implies(usedUnderIfr(each), isAboard(found)),
          messages: {
            met: 'aboard',
            'not-met': 'missing',
            'cannot-tell': found.length === 0 ? 'unrecorded' : 'unclear',
            'not-applicable': 'not-for-ifr',
          },
          data: { unit: each.unit.name, document: found[0]?.document.title ?? null },
          effects: lostThrough(each.id, gnssCapabilities),
          remedies: [
            { kind: 'do' as const, change: 'supplement.set', subject: each.id, facts: [] },
            findOut('supplement.set', each.id, ...found.map(({ id }) => `configuration.supplements.${id}.aboard`)),
          ],
        };
      }),
);

function supplementsOf(facts: Facts, each: UnitFacts) {
  return facts.dossier.configuration.supplements.filter(({ units }) => units.includes(each.id));
}

function usedUnderIfr({ id, unit }: UnitFacts): Clause {
  const grants = unit.approval?.grants ?? null;
  const without =
    grants === null ? null : grants.includes('vfr-only') || !gnssCapabilities.some((each) => grants.includes(each));
  return not(fact(without, 'approved-for-ifr-use', `configuration.units.${id}.approval.grants`, { source: governs }));
}

function isAboard(found: ReturnType<typeof supplementsOf>): Clause {
  if (found.length === 0) return unknown('supplement-recorded', ['configuration.supplements'], { source: governs });
  return allOf(
    'supplements-aboard',
    found.map((each) =>
      fact(each.aboard, 'supplement-aboard', `configuration.supplements.${each.id}.aboard`, {
        source: aboard,
        evidence: [each.id],
      }),
    ),
    'cannot-tell',
  );
}
