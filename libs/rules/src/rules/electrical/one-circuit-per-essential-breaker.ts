import { oldPart23, ownProtectorSince } from '../../facts/old-part-23.js';
import type { Circuit } from '../../dossier/installation.js';
import { allOf, fact, implies } from '../../verdict/build.js';
import { basisKnown, effectsBy, oldPart23Binds } from '../certification-basis.js';
import { missingOf } from '../circuits.js';
import { planAndRelease } from '../effects.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';

const source = oldPart23('23.1357', '(b)');

/** One statement a circuit that is essential, or of which nobody said. */
export const oneCircuitPerEssentialBreaker = defineRule(
  {
    id: 'one-circuit-per-essential-breaker',
    topic: 'electrical',
    asks: 'The protector of a circuit that is essential to flight safety guards no other circuit.',
    binds:
      'Protected circuits of aircraft under part 23 before amendment 23-64 that are essential; under CAR 3 as advice where one is shared, and as advice where the basis is not known.',
    sources: [source, ownProtectorSince.source],
    messages: {
      alone: 'The protector of {circuit} guards nothing else.',
      shared: '{circuit} is essential, and its protector guards {guarded} circuits.',
      unclear: 'Whether {circuit} is essential and has its protector to itself cannot be told.',
      'not-essential': '{circuit} is not essential.',
    },
    establishes: [],
  },
  (facts) => {
    const binding = oldPart23Binds(facts, ownProtectorSince, 'unknown');
    if (binding === 'does-not') return [];
    const { aircraft, electrical } = facts.dossier.configuration;
    // The text of CAR 3 was not read: a protector with one circuit is no question there, a shared one is.
    const asks = ({ circuitsGuarded }: Circuit) => aircraft.basis?.code !== 'car-3' || circuitsGuarded !== 1;
    return (electrical?.circuits ?? [])
      .filter((circuit) => circuit.protector !== 'none' && asks(circuit))
      .map((circuit) => ({
        subject: circuit.id,
        clause: implies(
          fact(circuit.essential, 'essential', pathOf(circuit, 'essential'), { source }),
          allOf(
            'own-protector',
            [
              basisKnown(facts, binding, ownProtectorSince.source),
              fact(
                circuit.circuitsGuarded === null ? null : circuit.circuitsGuarded === 1,
                'guards-one-circuit',
                pathOf(circuit, 'circuitsGuarded'),
                { source },
              ),
            ],
            'cannot-tell',
          ),
        ),
        messages: {
          met: 'alone',
          'not-met': 'shared',
          'cannot-tell': 'unclear',
          'not-applicable': 'not-essential',
        },
        data: { circuit: circuit.name, guarded: circuit.circuitsGuarded },
        effects: effectsBy(binding, planAndRelease),
        remedies: [findOut('electrical.set', circuit.id, ...missingOf(circuit, 'essential', 'circuitsGuarded'))],
      }));
  },
);

function pathOf({ id }: Circuit, name: 'essential' | 'circuitsGuarded'): string {
  return `configuration.electrical.circuits.${id}.${name}`;
}
