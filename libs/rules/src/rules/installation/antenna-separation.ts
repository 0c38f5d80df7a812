import { distanceBetween } from '../../calculations/antenna.js';
import { gnssFromComIn } from '../../facts/antenna.js';
import type { Antenna } from '../../dossier/installation.js';
import { allOf, fact, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import { advice } from '../effects.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';

/** One statement an antenna for satellites. Distance along and across the aircraft alone: top and belly add to it. Advice, where the manuals give no figure. */
export const antennaSeparation = defineRule(
  {
    id: 'antenna-separation',
    topic: 'installation',
    asks: 'An antenna for satellite navigation stands well away from those that transmit for communication.',
    binds: 'Satellite antennas of aircraft with a communication antenna.',
    sources: [gnssFromComIn.source],
    messages: {
      apart: '{antenna} stands {distanceIn} in from the nearest communication antenna.',
      near: '{antenna} stands only {distanceIn} in from a communication antenna.',
      unclear: 'How far {antenna} stands from the communication antennas is not recorded.',
    },
    establishes: [],
  },
  (facts) => {
    const { antennas } = facts.dossier.configuration;
    const transmitting = antennas.filter(({ kind }) => kind === 'com');
    if (transmitting.length === 0) return [];
    return antennas
      .filter(({ kind }) => kind === 'gnss' || kind === 'gnss-sbas')
      .map((antenna) => {
        const known = transmitting.flatMap((each) => distanceBetween(antenna, each) ?? []);
        return {
          subject: antenna.id,
          clause: allOf(
            'apart-from-each',
            transmitting.map((each) => apart(antenna, each)),
            'cannot-tell',
          ),
          messages: { met: 'apart', 'not-met': 'near', 'cannot-tell': 'unclear', 'not-applicable': 'apart' },
          data: { antenna: antenna.id, distanceIn: known.length > 0 ? Math.min(...known) : null },
          effects: advice,
          remedies: [findOut('antenna.fit', antenna.id, ...[antenna, ...transmitting].flatMap(missing))],
        };
      });
  },
);

function apart(antenna: Antenna, other: Antenna): Clause {
  const { source, value: limit } = gnssFromComIn;
  const distance = distanceBetween(antenna, other);
  if (distance === null) return unknown('distance', [...missing(antenna), ...missing(other)], { source });
  return fact(distance >= limit, 'distance', '', {
    source,
    evidence: [other.id],
    value: { amount: distance, unit: 'in' },
    limit: { amount: limit, unit: 'in' },
  });
}

function missing({ id, xIn, yIn }: Antenna): readonly string[] {
  const path = `configuration.antennas.${id}`;
  return [...(xIn === null ? [`${path}.xIn`] : []), ...(yIn === null ? [`${path}.yIn`] : [])];
}
