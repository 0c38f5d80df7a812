import type { Identity } from '../../dossier/upkeep.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, fact, met, notMet, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Draft } from '../../verdict/result.js';
import { unitsWith } from '../altitude-chain.js';
import { cfr, practice } from '../cite.js';
import { lostThrough } from '../effects.js';
import { findOut } from '../gaps.js';
import { noJoint } from '../no-joint.js';
import { defineRule } from '../rule.js';

const position = cfr('91.227(d)');
const paired = practice('the transmitter and its position source are an approved pair, and a document says so');

/** That something feeds it is `transmitter-fed`; here that it is the one whose pairing was approved. */
export const adsBPair = defineRule(
  {
    id: 'ads-b-pair',
    topic: 'equipment',
    asks: 'The unit recorded as position source of an ADS-B Out transmitter is in use, gives it its position, and a document shows the two to be an approved pair.',
    binds: 'ADS-B Out transmitters in use with a recorded identity; a box with a receiver of its own is its own pair.',
    sources: [position, paired],
    messages: {
      paired: '{unit} takes its position from {from}, an approved pair.',
      apart: '{from} is recorded as position source of {unit}, and gives it none.',
      unclear: 'Whether {unit} and its position source are an approved pair is not recorded.',
    },
    establishes: [],
  },
  (facts) =>
    unitsWith(facts, 'ads-b-out-1090', 'ads-b-out-uat')
      .filter(({ active }) => active)
      .flatMap((each) => {
        const identity = facts.dossier.configuration.identities.find(({ id }) => id === each.id);
        return identity ? [statement(facts, each, identity)] : [];
      }),
);

function statement(facts: Facts, unit: UnitFacts, identity: Identity): Draft {
  const source = identity.positionUnit === null ? null : (facts.units.get(identity.positionUnit) ?? null);
  const clause = allOf('approved-pair', clausesOf(facts, unit, identity, source), 'cannot-tell');
  return {
    subject: unit.id,
    clause,
    messages: { met: 'paired', 'not-met': 'apart', 'cannot-tell': 'unclear', 'not-applicable': 'paired' },
    data: { unit: unit.unit.name, from: source?.unit.name ?? identity.positionUnit },
    effects: [{ stops: 'release' }, ...lostThrough(unit.id, ['ads-b-out'])],
    remedies: [
      { kind: 'do', change: 'identity.set', subject: unit.id, facts: [] },
      { kind: 'do', change: 'link.connect', subject: unit.id, facts: [] },
      ...findOut(clause, 'identity.set', unit.id),
    ],
  };
}

function clausesOf(
  facts: Facts,
  unit: UnitFacts,
  { positionUnit, pairing }: Identity,
  source: UnitFacts | null,
): readonly Clause[] {
  const path = `configuration.identities.${unit.id}`;
  if (positionUnit === null)
    return [unknown('position-source-recorded', [`${path}.positionUnit`], { source: position })];
  if (source?.id === unit.id)
    return [fact(unit.functions.has('gnss'), 'receiver-of-its-own', '', { source: position })];
  return [
    (source?.active ? met : notMet)('position-source-in-use', { source: position }),
    joined(facts, unit, positionUnit),
    fact(pairing === null ? null : true, 'pairing-documented', `${path}.pairing`, { source: paired }),
  ];
}

/** A joint whose ends name no signal may carry the position. */
function joined(facts: Facts, unit: UnitFacts, from: string): Clause {
  const signals = facts.links
    .filter((link) => link.fromUnit === from && link.toUnit === unit.id)
    .map((link) => facts.signalOf(link));
  if (signals.includes('position')) return met('joined', { source: position });
  return noJoint(facts, 'joined', position, signals.includes(null) ? ['configuration.links'] : []);
}
