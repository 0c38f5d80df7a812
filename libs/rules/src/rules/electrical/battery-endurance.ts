import { batteryLoad, batteryMinutesAt } from '../../calculations/electrical-load.js';
import { batteryByAltitudeSince, batteryHalfHourSince } from '../../facts/old-part-23.js';
import { batteryMinutes } from '../../facts/wire.js';
import type { Electrical } from '../../dossier/installation.js';
import type { Facts } from '../../graph/facts.js';
import { allOf, met, notMet, unknown } from '../../verdict/build.js';
import type { Clause, Leaf } from '../../verdict/clause.js';
import { basisKnown, bindingOf, effectsBy } from '../certification-basis.js';
import { everyLoadOnACircuit, missingOf } from '../circuits.js';
import { planAndRelease } from '../effects.js';
import { missingPaths } from '../gaps.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';

/** One statement. The time includes finding out and shedding load, so nothing is taken off it. Older bases ask for less or nothing. */
export const batteryEndurance = defineRule(
  {
    id: 'battery-endurance',
    topic: 'electrical',
    asks: 'After the generator fails, the battery carries the essential loads for 30 minutes, or 60 where the maximum altitude lies above 25,000 ft.',
    binds:
      'Aircraft under part 23, amendments 23-49 (30 minutes) and 23-62 (by altitude) to 23-63; not under CAR 3; advice where the basis is not known.',
    sources: [batteryMinutes.source, batteryHalfHourSince.source],
    messages: {
      lasts: 'The battery carries the essential {loadA} A for {minutes} minutes; {asked} are asked.',
      short: 'The battery carries the essential {loadA} A for {minutes} minutes at best; {asked} are asked.',
      unclear: 'Whether the battery carries the essential loads for {asked} minutes cannot be told.',
    },
    establishes: [],
  },
  (facts) => {
    const { electrical } = facts.dossier.configuration;
    const binding = bindingOf(facts, { part23: batteryHalfHourSince, part27: null, car3: 'does-not' });
    if (electrical === null || binding === 'does-not') return [];
    const { loadA } = batteryLoad(electrical.circuits);
    const { batteryAh, batteryShare } = electrical;
    const asked = askedMinutes(facts);
    const clause = allOf(
      'endurance',
      [
        basisKnown(facts, binding, batteryHalfHourSince.source),
        endurance(facts, electrical),
        everyLoadOnACircuit(facts, electrical, sourceOf(facts)),
      ],
      'cannot-tell',
    );
    return [
      {
        subject: 'aircraft',
        clause,
        messages: { met: 'lasts', 'not-met': 'short', 'cannot-tell': 'unclear', 'not-applicable': 'lasts' },
        data: {
          loadA,
          minutes: batteryAh === null || loadA === 0 ? null : batteryMinutesAt(loadA, batteryAh, batteryShare ?? 1),
          asked: Math.max(...asked),
        },
        effects: effectsBy(binding, planAndRelease),
        remedies: [findOut('electrical.set', 'aircraft', ...toRecord(clause, electrical))],
      },
    ];
  },
);

function endurance(facts: Facts, electrical: Electrical): Leaf {
  const { batteryAh, batteryShare, circuits } = electrical;
  const asked = askedMinutes(facts);
  const source = sourceOf(facts);
  const { loadA, open } = batteryLoad(circuits);
  const paths = missing(electrical);
  if (batteryAh === null || loadA === 0) return unknown('minutes-on-battery', paths, { source });
  const minutes = batteryMinutesAt(loadA, batteryAh, batteryShare ?? 1);
  const extra = (limit: number) => ({
    source,
    value: { amount: minutes, unit: 'min' },
    limit: { amount: limit, unit: 'min' },
  });
  // At best, with all of its capacity and no load that is still open.
  if (minutes < Math.min(...asked)) return notMet('minutes-on-battery', extra(Math.min(...asked)));
  const most = Math.max(...asked);
  if (batteryShare === null || open.length > 0) return unknown('minutes-on-battery', paths, extra(most));
  return minutes >= most
    ? met('minutes-on-battery', extra(most))
    : unknown('minutes-on-battery', ['configuration.aircraft.maxOperatingAltitudeFt'], extra(most));
}

/** Every figure that the recorded facts leave possible. */
function askedMinutes(facts: Facts): readonly number[] {
  const { basis, maxOperatingAltitudeFt } = facts.dossier.configuration.aircraft;
  const { upToFt, minutes, minutesAbove } = batteryMinutes.value;
  if (basis?.amendment != null && basis.amendment < batteryByAltitudeSince.value) return [minutes];
  if (maxOperatingAltitudeFt === null) return [minutes, minutesAbove];
  return [maxOperatingAltitudeFt <= upToFt ? minutes : minutesAbove];
}

function sourceOf(facts: Facts) {
  const amendment = facts.dossier.configuration.aircraft.basis?.amendment ?? batteryByAltitudeSince.value;
  return amendment < batteryByAltitudeSince.value ? batteryHalfHourSince.source : batteryMinutes.source;
}

/** What `electrical.set` can say of it. */
function toRecord(clause: Clause, electrical: Electrical): readonly string[] {
  const asked = missingPaths(clause).filter((each) => each.startsWith('configuration.electrical'));
  return [...new Set([...missing(electrical), ...asked])];
}

function missing({ batteryAh, batteryShare, circuits }: Electrical): readonly string[] {
  const path = 'configuration.electrical';
  const { loadA, open } = batteryLoad(circuits);
  return [
    ...(batteryAh === null ? [`${path}.batteryAh`] : []),
    ...(batteryShare === null ? [`${path}.batteryShare`] : []),
    // No load at all: what the battery carries is on no circuit of the list.
    ...(loadA === 0 && open.length === 0 ? [`${path}.circuits`] : []),
    ...open.flatMap((each) => missingOf(each, 'loadA', 'usedIn', 'intermittent', 'essential')),
  ];
}
