import type { FunctionCode } from '../../catalogue/type.js';
import type { Antenna } from '../../dossier/installation.js';
import type { UnitFacts } from '../../graph/units.js';
import type { SourceRef } from '../../facts/source.js';
import { allOf, fact, met, notMet, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Capability } from '../../verdict/capability.js';
import { antennaNeeded, antennasFor, inBand, oneServes } from '../antennas.js';
import { ac } from '../cite.js';
import { gnssCapabilities, lostThrough } from '../effects.js';
import { isSbas } from '../gnss-authorisation.js';
import { defineRule } from '../rule.js';

const sbas = ac('20-138D', 'antenna of the augmented receiver (from memory)', 'change 2, 7 Apr 2016', 'from-memory');

interface Band {
  readonly id: string;
  readonly functions: readonly FunctionCode[];
  readonly kinds: readonly Antenna['kind'][];
  readonly costs: readonly Capability[];
}
const bands: readonly Band[] = [
  { id: 'com', functions: ['com'], kinds: ['com', 'combined'], costs: ['two-way-radio'] },
  {
    id: 'vor-loc',
    functions: ['vor-receiver', 'loc-receiver'],
    kinds: ['vor-loc', 'combined'],
    costs: ['nav-vor', 'approach-vor', 'approach-loc', 'approach-ils'],
  },
  { id: 'glide-slope', functions: ['gs-receiver'], kinds: ['glide-slope', 'combined'], costs: ['approach-ils'] },
  {
    id: 'gnss',
    functions: ['gnss'],
    kinds: ['gnss', 'gnss-sbas', 'combined'],
    costs: [...gnssCapabilities, 'ads-b-out'],
  },
  {
    id: 'transponder',
    functions: ['transponder', 'ads-b-out-1090'],
    kinds: ['transponder', 'combined'],
    costs: ['altitude-reporting', 'ads-b-out'],
  },
  { id: 'uat', functions: ['ads-b-out-uat'], kinds: ['uat', 'combined'], costs: ['ads-b-out'] },
];

/**
 * One statement for each band of a unit, so that a missing navigation antenna does not cost the communication radio. Of an emergency
 * transmitter `elt` asks for the antenna, because some flights need none. The record knows no antenna of distance measuring alone, and
 * no unit that receives markers.
 */
export const antennaFitted = defineRule(
  {
    id: 'antenna-fitted',
    topic: 'installation',
    asks: 'An antenna for its band serves each radio; a navigator with augmentation has one made for it.',
    binds:
      'Communication, VOR, localizer, glide slope and satellite receivers, transponders and ADS-B Out transmitters; portable units carry their own.',
    sources: [antennaNeeded, sbas],
    messages: {
      served: '{antenna} serves {unit} ({band}).',
      missing: 'No antenna that will do serves {unit} ({band}).',
      unclear: 'Which antenna serves {unit} ({band}) cannot be told.',
    },
    establishes: [],
  },
  (facts) =>
    [...facts.units.values()]
      .filter((each) => !each.functions.has('portable-display'))
      .flatMap((each) =>
        bands
          .filter((band) => band.functions.some((code) => each.functions.has(code)))
          .map((band) => {
            const antennas = antennasFor(facts, each, band.kinds);
            return {
              subject: `${each.id}:${band.id}`,
              clause: oneServes(facts, each, antennas, (one) => serves(each, band, one)),
              messages: { met: 'served', 'not-met': 'missing', 'cannot-tell': 'unclear', 'not-applicable': 'served' },
              data: { unit: each.unit.name, band: band.id, antenna: antennas[0]?.id ?? null },
              effects: lostThrough(each.id, band.costs),
              remedies: [{ kind: 'do' as const, change: 'antenna.fit', subject: each.id, facts: [] }],
            };
          }),
      ),
);

function serves(each: UnitFacts, band: Band, antenna: Antenna): Clause {
  if (band.id !== 'gnss') return inBand(antenna);
  const path = `configuration.antennas.${antenna.id}`;
  return allOf(
    'antenna-serves',
    [
      inBand(antenna),
      fact(antenna.approved, 'antenna-approved-for-unit', `${path}.approved`, { source: sbas, evidence: [antenna.id] }),
      augmented(each, antenna, sbas),
    ],
    'cannot-tell',
  );
}

function augmented(each: UnitFacts, antenna: Antenna, source: SourceRef): Clause {
  const extra = { source, evidence: [antenna.id] };
  const wanted = isSbas(each.type);
  if (wanted === false || antenna.kind === 'gnss-sbas') return met('antenna-for-augmentation', extra);
  if (wanted === null) return unknown('antenna-for-augmentation', [`catalogue.${each.id}.authorisations`], extra);
  return antenna.kind === 'gnss'
    ? notMet('antenna-for-augmentation', extra)
    : unknown('antenna-for-augmentation', [`configuration.antennas.${antenna.id}.kind`], extra);
}
