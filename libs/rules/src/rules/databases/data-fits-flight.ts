import type { DatabaseLoad } from '../../dossier/status.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { anyOf, flight, implies, unknown, within } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Draft } from '../../verdict/result.js';
import { aim } from '../cite.js';
import type { DataUse } from '../data-verification.js';
import { usedFor, verifications, verified } from '../data-verification.js';
import { gnssCapabilities, lostThrough } from '../effects.js';
import { navigationLoads, regionOf } from '../navigation-data.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';

const region = aim('1-1-17 b.2(b)');
const notice = aim('1-1-17 b.2(b)(4)');

/**
 * Whether the data are in force is another rule. Here: for the region of this flight, and with no notice of their provider against
 * what it uses. Which procedure it uses only the pilot knows: a notice on record leaves it open until that pilot verified it for the day.
 */
export const dataFitsFlight = defineRule(
  {
    id: 'data-fits-flight',
    topic: 'databases',
    asks: 'Navigation data cover the region of the flight, and no notice of their provider stands against a procedure or waypoint that it uses.',
    binds:
      'Navigation data of satellite units under IFR; the region where the flight names one, notices where some are recorded. That none came in is looked up before each flight and on no record.',
    sources: [region, notice, verified],
    messages: {
      covered: 'Navigation data of {unit} cover the region of this flight: {coverage}.',
      elsewhere: 'Navigation data of {unit} do not cover the region of this flight; they cover {coverage}.',
      unclear: 'Which region the navigation data of {unit} cover is not recorded.',
      verified: 'Notices against data of {unit} ({against}): a pilot verified what this flight uses.',
      noticed: 'Notices against data of {unit} ({against}): whether this flight uses them cannot be told.',
      'not-asked': 'Region and notices of the data of {unit} are not asked of this flight.',
    },
    establishes: [],
  },
  (facts) =>
    [...facts.units.values()]
      .filter((each) => each.functions.has('gnss'))
      .flatMap((each) =>
        navigationLoads(facts, each.id).flatMap((load) => [
          ofRegion(facts, each, load),
          ...(['en-route', 'approach'] as const).flatMap((use) => ofNotices(facts, each, load, use)),
        ]),
      ),
);

function ofRegion(facts: Facts, { id, unit }: UnitFacts, load: DatabaseLoad): Draft {
  const extra = { source: region };
  const path = `status.loads.${id}.navigation.${load.slot}.coverage`;
  const { coverage } = load;
  const covers =
    coverage === null
      ? unknown('coverage-recorded', [path], extra)
      : flight('covers-the-region', { region: coverage }, extra);
  return {
    subject: `${id}:${load.slot}:region`,
    clause: asked(facts, load, implies(flight('region-named', { regionSaid: true }, extra), covers)),
    messages: { met: 'covered', 'not-met': 'elsewhere', 'cannot-tell': 'unclear', 'not-applicable': 'not-asked' },
    data: { unit: unit.name, coverage: coverage === null ? null : coverage.join(', ') || 'nothing', against: null },
    effects: lostThrough(id, gnssCapabilities),
    remedies: [
      { kind: 'do', change: 'database.load', subject: id, facts: [] },
      ...(coverage === null ? [findOut('database.load', id, path)] : []),
    ],
  };
}

/** A waypoint may lie on the route or in a procedure; a procedure bears on approaches alone. */
function ofNotices(facts: Facts, each: UnitFacts, load: DatabaseLoad, use: DataUse): readonly Draft[] {
  const against = load.notices.filter(({ on }) => on === 'waypoint' || use === 'approach');
  if (against.length === 0) return [];
  const open = unknown('notice-concerns-this-flight', [], { source: notice });
  return [
    {
      subject: `${each.id}:${load.slot}:${use}`,
      clause: asked(facts, load, anyOf('verified-by-pilot', [...verifications(facts, each, use), open], 'cannot-tell')),
      messages: { met: 'verified', 'not-met': 'noticed', 'cannot-tell': 'noticed', 'not-applicable': 'not-asked' },
      data: { unit: each.unit.name, coverage: null, against: against.map((one) => one.against).join(', ') },
      effects: lostThrough(each.id, usedFor(use)),
      remedies: [
        { kind: 'do', change: 'record.add', subject: `data-verification:${each.id}`, facts: [] },
        { kind: 'do', change: 'database.load', subject: each.id, facts: [] },
      ],
    },
  ];
}

/** Under IFR, while these data are the ones in use: this cycle until the next takes over. */
function asked(facts: Facts, load: DatabaseLoad, body: Clause): Clause {
  const takesOver = navigationLoads(facts, load.unitId).find(({ slot }) => slot === 'next');
  const from = takesOver ? regionOf(takesOver).from : null;
  const underIfr = implies(flight('under-ifr', { rules: 'ifr' }, { source: region }), body);
  if (from === null) return underIfr;
  return implies(within('in-use', load.slot === 'next' ? { from } : { before: from }), underIfr);
}
