import { oldPart23, ownProtectorSince } from '../../facts/old-part-23.js';
import { rotorcraftOwnProtectorSince } from '../../facts/part-27.js';
import type { Aircraft } from '../../dossier/aircraft.js';
import type { Circuit } from '../../dossier/installation.js';
import { allOf, fact, implies } from '../../verdict/build.js';
import type { Binding, Demand } from '../certification-basis.js';
import { basisKnown, bindingOf, effectsBy, sourceOf } from '../certification-basis.js';
import { missingOf } from '../circuits.js';
import { planAndRelease } from '../effects.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';

const airplanes = oldPart23('23.1357', '(b)');
const demand: Demand = {
  part23: ownProtectorSince,
  part27: { since: rotorcraftOwnProtectorSince, before: 'unknown' },
  car3: 'unknown',
};

/** One statement a circuit that is essential, or of which nobody said. */
export const oneCircuitPerEssentialBreaker = defineRule(
  {
    id: 'one-circuit-per-essential-breaker',
    topic: 'electrical',
    asks: 'The protector of a circuit that is essential to flight safety guards no other circuit.',
    binds:
      'Protected circuits of aircraft under part 23 before amendment 23-64, or under part 27 from amendment 27-13, that are essential; under CAR 3 or an older part 27 as advice where one is shared, and as advice where the basis is not known.',
    sources: [airplanes, ownProtectorSince.source, rotorcraftOwnProtectorSince.source],
    messages: {
      alone: 'The protector of {circuit} guards nothing else.',
      shared: '{circuit} is essential, and its protector guards {guarded} circuits.',
      unclear: 'Whether {circuit} is essential and has its protector to itself cannot be told.',
      'not-essential': '{circuit} is not essential.',
    },
    establishes: [],
  },
  (facts) => {
    const binding = bindingOf(facts, demand);
    if (binding === 'does-not') return [];
    const { aircraft, electrical } = facts.dossier.configuration;
    const source = aircraft.basis?.code === 'part-27' ? rotorcraftOwnProtectorSince.source : airplanes;
    // Where the text was not read, a protector with one circuit is no question, a shared one is.
    const asks = ({ circuitsGuarded }: Circuit) => !isTextUnread(aircraft, binding) || circuitsGuarded !== 1;
    return (electrical?.circuits ?? [])
      .filter((circuit) => circuit.protector !== 'none' && asks(circuit))
      .map((circuit) => ({
        subject: circuit.id,
        clause: implies(
          fact(circuit.essential, 'essential', pathOf(circuit, 'essential'), { source }),
          allOf(
            'own-protector',
            [
              basisKnown(facts, binding, sourceOf(facts, demand)),
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

function isTextUnread({ basis }: Aircraft, binding: Binding): boolean {
  return basis?.code === 'car-3' || (basis?.code === 'part-27' && basis.amendment !== null && binding === 'unknown');
}

function pathOf({ id }: Circuit, name: 'essential' | 'circuitsGuarded'): string {
  return `configuration.electrical.circuits.${id}.${name}`;
}
