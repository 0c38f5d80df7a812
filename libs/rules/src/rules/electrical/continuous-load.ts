import { drawsNothing } from '../../catalogue/type.js';
import { roundTo } from '../../calculations/rounding.js';
import { continuousLoadShare, lowVoltageLightV } from '../../facts/wire.js';
import type { Electrical } from '../../dossier/installation.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, fact, met, notMet, unknown } from '../../verdict/build.js';
import type { Clause, Leaf } from '../../verdict/clause.js';
import { loadLimitOf, lowVoltageLightOf, missingOf, nominalV, unitsOnTheBus } from '../circuits.js';
import { advice } from '../effects.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';

/** A rule of thumb and no load analysis: advice alone. A placard or monitoring lifts the 80 %; the output itself stays the limit. */
export const continuousLoad = defineRule(
  {
    id: 'continuous-load',
    topic: 'electrical',
    asks: 'The continuous load stays within 80 % of what the generator or alternator gives, where no placard and no monitoring watch it.',
    binds: 'Aircraft whose electrical system is recorded.',
    sources: [continuousLoadShare.source, lowVoltageLightV.source],
    messages: {
      within: 'Known loads add up to {loadA} A of {alternatorA} A.',
      over: 'Known loads add up to {loadA} A, more than {limitA} A of {alternatorA} A.',
      unwatched:
        'Known loads add up to {loadA} A, more than {limitA} A of {alternatorA} A, and nothing watches them. A placard would, or monitoring such as a light that trips below {lightV} V.',
      unclear:
        'Known loads add up to {loadA} A; whether the total stays within {limitA} A of {alternatorA} A cannot be told.',
    },
    establishes: [],
  },
  (facts) => {
    const { electrical } = facts.dossier.configuration;
    if (electrical === null) return [];
    return [
      {
        subject: 'aircraft',
        clause: judge(facts, electrical),
        messages: {
          met: 'within',
          'not-met': couldBeWatched(facts, electrical) ? 'unwatched' : 'over',
          'cannot-tell': 'unclear',
          'not-applicable': 'within',
        },
        data: {
          loadA: known(facts, electrical),
          alternatorA: electrical.alternatorA,
          limitA: loadLimitOf(electrical),
          lightV: lowVoltageLightOf(electrical),
        },
        effects: advice,
        remedies: [findOut('electrical.set', 'aircraft', ...unknownLoads(facts, electrical))],
      },
    ];
  },
);

function judge(facts: Facts, electrical: Electrical): Clause {
  const { source } = continuousLoadShare;
  const { alternatorA } = electrical;
  if (alternatorA === null) return unknown('within-80-percent', ['configuration.electrical.alternatorA'], { source });
  const load = known(facts, electrical);
  const limit = loadLimitOf(electrical) ?? alternatorA;
  const extra = { source, value: { amount: load, unit: 'A' }, limit: { amount: limit, unit: 'A' } };
  if (load > alternatorA) return notMet('within-output', extra);
  const missing = unknownLoads(facts, electrical);
  return allOf(
    'load-within-share',
    [
      load <= limit ? met('within-80-percent', extra) : aboveShare(electrical, extra),
      missing.length === 0 ? met('every-load-known', { source }) : unknown('every-load-known', missing, { source }),
      fact(
        facts.complete('equipment') === null ? null : true,
        'equipment-list-complete',
        'status.completeness.equipment',
        {
          source,
        },
      ),
    ],
    'cannot-tell',
  );
}

/** Between the share and the output itself. */
function aboveShare({ loadWatch }: Electrical, extra: Parameters<typeof notMet>[1]): Leaf {
  return loadWatch === null
    ? unknown('placard-or-monitoring-above-80-percent', ['configuration.electrical.loadWatch'], extra)
    : notMet('within-80-percent', extra);
}

/** Within the output, so that watching the load would be enough, in a system whose light has a voltage. */
function couldBeWatched(facts: Facts, electrical: Electrical): boolean {
  const { alternatorA } = electrical;
  return alternatorA !== null && known(facts, electrical) <= alternatorA && lowVoltageLightOf(electrical) !== null;
}

function draw({ type }: UnitFacts, busV: number | null): number | null {
  if (type !== null && drawsNothing(type)) return 0;
  if (!type?.drawA) return null;
  const nominal = nominalV({ busV });
  if (nominal === 14) return type.drawA.at14V;
  return nominal === 28 ? type.drawA.at28V : null;
}

/** Units by their manuals, and circuits that feed something else by their recorded load. */
function known(facts: Facts, { busV, circuits }: Electrical): number {
  const lamps = circuits.filter(({ units, intermittent }) => units.length === 0 && intermittent === false);
  return roundTo(
    unitsOnTheBus(facts).reduce((sum, each) => sum + (draw(each, busV) ?? 0), 0) +
      lamps.reduce((sum, each) => sum + (each.loadA ?? 0), 0),
    2,
  );
}

/** Units without a draw, and circuits that feed something else without a recorded load; an intermittent one does not count. */
function unknownLoads(facts: Facts, { busV, circuits }: Electrical): readonly string[] {
  return [
    ...unitsOnTheBus(facts).flatMap((each) => (draw(each, busV) === null ? [`catalogue.${each.id}.drawA`] : [])),
    ...circuits.flatMap((each) =>
      each.units.length === 0 && each.intermittent !== true ? missingOf(each, 'loadA', 'intermittent') : [],
    ),
  ];
}
