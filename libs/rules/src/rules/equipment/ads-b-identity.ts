import type { Aircraft } from '../../dossier/aircraft.js';
import type { Identity } from '../../dossier/upkeep.js';
import { emitterWeightsLb } from '../../facts/ads-b.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, fact, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Draft } from '../../verdict/result.js';
import { unitsWith } from '../altitude-chain.js';
import { cfr, practice } from '../cite.js';
import { lostThrough } from '../effects.js';
import { findOut } from '../gaps.js';
import { defineRule } from '../rule.js';

const elements = cfr('91.227(d)');
const usual = practice('wrong address, flight identification or emitter category are the usual faults of ADS-B Out');

/**
 * An identity that somebody recorded is judged; one that nobody recorded is asked for at the release of work. The record does not hold
 * the address that goes with the registration, so nothing here says that the one that is sent is that one.
 */
export const adsBIdentity = defineRule(
  {
    id: 'ads-b-identity',
    topic: 'equipment',
    asks: 'Each ADS-B Out transmitter sends an address that can be one, all send the same, with a flight identification and the emitter category of the weight; a named person saw it. Whether it is the address of the registration is compared with the registration itself, which the record does not hold.',
    binds: 'ADS-B Out transmitters in use; where nothing is recorded of what they send, only the release of work.',
    sources: [elements, emitterWeightsLb.source, usual],
    messages: {
      agrees:
        '{unit} sends {address} as {category}: an address that can be one, the same from every transmitter, and the category for this weight. Compare the address with the registration.',
      wrong:
        '{unit} sends {address} as {category}: the address can be none or differs from that of another transmitter, or the category is not the one for this weight.',
      unclear: '{unit}: what it sends of itself is not recorded in full.',
    },
    establishes: [],
  },
  (facts) => transmitters(facts).map((each) => statement(facts, each)),
);

function transmitters(facts: Facts): readonly UnitFacts[] {
  return unitsWith(facts, 'ads-b-out-1090', 'ads-b-out-uat').filter(({ active }) => active);
}

function statement(facts: Facts, { id, unit }: UnitFacts): Draft {
  const { identities } = facts.dossier.configuration;
  const identity = identities.find((each) => each.id === id) ?? null;
  const path = `configuration.identities.${id}`;
  const clause =
    identity === null
      ? unknown('identity-recorded', [path], { source: elements })
      : allOf('identity', clausesOf(facts, identity, path), 'cannot-tell');
  return {
    subject: id,
    clause,
    messages: { met: 'agrees', 'not-met': 'wrong', 'cannot-tell': 'unclear', 'not-applicable': 'agrees' },
    data: {
      unit: unit.name,
      address: identity?.address ?? 'no recorded address',
      category: identity?.emitterCategory ?? 'no recorded category',
    },
    effects:
      identity === null
        ? [{ stops: 'release' }, { stops: 'nothing', kind: 'record' }]
        : [{ stops: 'release' }, ...lostThrough(id, ['ads-b-out'])],
    remedies: [{ kind: 'do', change: 'identity.set', subject: id, facts: [] }, ...findOut(clause, 'identity.set', id)],
  };
}

function clausesOf(facts: Facts, identity: Identity, path: string): readonly Clause[] {
  const { aircraft } = facts.dossier.configuration;
  const { address, flightId, emitterCategory } = identity;
  const sent = addressesSent(facts);
  const differs = sent.some((each) => each !== null && each !== address);
  const oneAddress = address !== null && differs ? false : sent.includes(null) ? null : true;
  const right = categoryOf(aircraft);
  return [
    fact(
      address === null ? null : address !== '000000' && address !== 'FFFFFF',
      'address-that-can-be-one',
      `${path}.address`,
      { source: elements },
    ),
    fact(oneAddress, 'one-address', 'configuration.identities', { source: usual }),
    fact(flightId === null ? null : true, 'flight-identification', `${path}.flightId`, { source: elements }),
    right === null
      ? unknown('category-of-the-aircraft', ['configuration.aircraft.maxWeightLb'], { source: emitterWeightsLb.source })
      : fact(emitterCategory === null ? null : emitterCategory === right, 'category', `${path}.emitterCategory`, {
          source: emitterWeightsLb.source,
        }),
    fact(identity.seen === null ? null : true, 'seen-by-a-person', `${path}.seen`, { source: usual }),
  ];
}

/** Of every unit in use with a recorded identity, and null for each transmitter of which nothing is recorded. */
function addressesSent(facts: Facts): readonly (string | null)[] {
  const { identities } = facts.dossier.configuration;
  const silent = transmitters(facts).filter(({ id }) => !identities.some((each) => each.id === id));
  return [
    ...identities.filter(({ id }) => facts.units.get(id)?.active === true).map(({ address }) => address),
    ...silent.map(() => null),
  ];
}

function categoryOf({ kind, maxWeightLb }: Aircraft): Identity['emitterCategory'] {
  if (kind === 'helicopter') return 'rotorcraft';
  if (kind === 'glider') return 'glider';
  if (kind !== 'airplane') return 'other';
  if (maxWeightLb === null) return null;
  const { lightBelow, smallTo } = emitterWeightsLb.value;
  if (maxWeightLb < lightBelow) return 'light';
  return maxWeightLb <= smallTo ? 'small' : 'large';
}
