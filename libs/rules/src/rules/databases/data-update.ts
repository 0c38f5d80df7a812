import type { DatabaseLoad } from '../../dossier/status.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { fact } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Draft } from '../../verdict/result.js';
import { doneAfter } from '../after-work.js';
import { cfr } from '../cite.js';
import { findOut, recordIt } from '../remedies.js';
import { defineRule } from '../rule.js';
import { release } from '../who-may.js';

const source = cfr('43.3(k)');
const returned = cfr('43.9(a)');

/** What a pilot may load is no maintenance; the rest is, and its release is owed since the change that recorded it. Here only the record. */
export const dataUpdate = defineRule(
  {
    id: 'data-update',
    topic: 'databases',
    asks: 'Each database was loaded from the flight deck, without taking the unit apart and without tools, or its loading was released as maintenance.',
    binds:
      'Databases of installed units; a matter of record. That a loading which was maintenance costs the flight until it is released is the rule of tests after a change.',
    sources: [source, returned],
    messages: {
      'by-pilot': '{unit}: {database} data of {loaded} were loaded from the flight deck.',
      released: '{unit}: the loading of {database} data of {loaded} was maintenance and is released.',
      owed: '{unit}: the loading of {database} data of {loaded} was maintenance; no release that counts is later.',
      unclear:
        '{unit}: whether the loading of {database} data of {loaded} was maintenance, or released, cannot be told.',
    },
    establishes: [],
  },
  (facts) =>
    [...facts.units.values()].flatMap((unit) =>
      facts.dossier.status.loads.filter(({ unitId }) => unitId === unit.id).map((each) => statement(facts, unit, each)),
    ),
);

function statement(facts: Facts, { id, unit, functions }: UnitFacts, load: DatabaseLoad): Draft {
  const path = `status.loads.${id}.${load.database}.${load.slot}`;
  const byPilot = load.fromFlightDeck;
  return {
    subject: `${id}:${load.database}:${load.slot}`,
    clause:
      byPilot === false
        ? released(facts, functions, load, path)
        : fact(byPilot, 'from-the-flight-deck-without-tools', `${path}.fromFlightDeck`, { source }),
    messages: {
      met: byPilot === false ? 'released' : 'by-pilot',
      'not-met': 'owed',
      'cannot-tell': 'unclear',
      'not-applicable': 'by-pilot',
    },
    data: { unit: unit.name, database: load.database, loaded: load.loaded.date },
    effects: [{ stops: 'nothing', kind: 'record' }],
    remedies: [
      byPilot === false ? recordIt('release-entry', id) : findOut('database.load', id, `${path}.fromFlightDeck`),
    ],
  };
}

function released(facts: Facts, functions: UnitFacts['functions'], load: DatabaseLoad, path: string): Clause {
  const by = release(functions, facts.dossier.configuration.aircraft.certificate);
  const work = { since: load.loaded, path: `${path}.loaded.at` };
  return doneAfter(facts, ['release-entry'], load.unitId, work, { by }, returned);
}
