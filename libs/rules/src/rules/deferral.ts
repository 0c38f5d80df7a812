import type { Agency } from '../dossier/common.js';
import type { Defect, Deferral } from '../dossier/status.js';
import type { Facts } from '../graph/facts.js';
import { allOf, anyOf, fact, met, notMet, unknown } from '../verdict/build.js';
import type { Clause } from '../verdict/clause.js';
import { holdsAny } from './accomplished.js';
import { cfr } from './cite.js';

const smallMostLb = 12_500;

/** May the aircraft take off with this item inoperative? Either route: the four parts of 91.213(d), or a minimum equipment list with its letter. */
export function deferred(facts: Facts, defect: Defect): Clause {
  const { deferral } = defect;
  const path = `status.defects.${defect.id}.deferral`;
  if (deferral === null) return notMet('repaired-or-deferred', { source: cfr('91.213(a), (d)') });
  if (deferral.route === 'mel') return byList(deferral, path);
  const source = (part: string) => ({ source: cfr(`91.213(d)(${part})`) });
  return allOf(
    'deferred-by-91.213(d)',
    [
      allOf('class-of-aircraft', [classOf(facts)], 'cannot-tell'),
      fact(deferral.notRequired, 'item-not-required', `${path}.notRequired`, source('2')),
      allOf(
        'removed-or-deactivated',
        [
          fact(deferral.secured, 'removed-or-deactivated', `${path}.secured`, source('3')),
          fact(deferral.placarded, 'placarded', `${path}.placarded`, source('3')),
          fact(deferral.recorded, 'maintenance-recorded', `${path}.recorded`, source('3')),
        ],
        'cannot-tell',
      ),
      fact(
        deferral.noHazardBy === null ? null : mayFindNoHazard(deferral.noHazardBy),
        'no-hazard-found-by-a-rated-person',
        `${path}.noHazardBy`,
        source('4'),
      ),
    ],
    'cannot-tell',
  );
}

/** What the list says of this item stands in the list; the entry says that it was followed. */
function byList(deferral: Deferral, path: string): Clause {
  const source = cfr('91.213(a)');
  return allOf(
    'deferred-by-minimum-equipment-list',
    [
      fact(deferral.letterAboard, 'list-and-letter-aboard', `${path}.letterAboard`, { source }),
      fact(deferral.secured, 'procedure-of-the-list-done', `${path}.secured`, { source }),
      fact(deferral.placarded, 'placarded', `${path}.placarded`, { source }),
      fact(deferral.recorded, 'recorded', `${path}.recorded`, { source }),
    ],
    'cannot-tell',
  );
}

/** 91.213(d)(1): turbine airplanes are not named. Above 12,500 lb it hangs on whether a master list exists, which is not recorded. */
function classOf(facts: Facts): Clause {
  const { kind, engine, maxWeightLb } = facts.dossier.configuration.aircraft;
  const source = cfr('91.213(d)(1)');
  const path = 'configuration.aircraft';
  if (kind === 'other') return unknown('class-named', [`${path}.kind`], { source });
  const turbine = engine === null ? null : ['turboprop', 'turbojet', 'turboshaft'].includes(engine);
  const small =
    maxWeightLb !== null && maxWeightLb <= smallMostLb
      ? met('small-aircraft', { source: cfr('1.1') })
      : unknown('small-or-without-master-list', [`${path}.maxWeightLb`], { source });
  if (kind === 'glider' || kind === 'balloon') return met('class-named', { source });
  if (kind === 'helicopter') return anyOf('rotorcraft', [small], 'cannot-tell');
  return allOf(
    'airplane-without-turbine',
    [fact(turbine === null ? null : !turbine, 'no-turbine', `${path}.engine`, { source }), small],
    'cannot-tell',
  );
}

/** A rated pilot, or a person certificated and rated for maintenance. */
function mayFindNoHazard(agency: Agency): boolean | null {
  if (agency.kind === 'pilot') return holdsAny(agency, 'private-pilot', 'sport-pilot');
  if (agency.kind === 'mechanic') return holdsAny(agency, 'airframe', 'powerplant', 'inspection-authorization');
  if (agency.kind === 'repairman') return holdsAny(agency, 'light-sport-maintenance');
  return agency.kind === 'repair-station' ? (agency.ratings === null ? null : agency.ratings.length > 0) : true;
}
