import { eltC91LastInstallation, eltInspectionMonths } from '../facts/elt.js';
import type { Antenna } from '../dossier/installation.js';
import type { Facts } from '../graph/facts.js';
import type { UnitFacts } from '../graph/units.js';
import type { CivilDate } from '../time/instant.js';
import { allOf, anyOf, fact, unknown } from '../verdict/build.js';
import type { Clause } from '../verdict/clause.js';
import { accomplished } from './accomplished.js';
import { antennasFor, oneServes } from './antennas.js';
import { cfr } from './cite.js';
import { batteryOf } from './elt-battery.js';
import { withinMonths } from './periodic.js';
import { tsoNumber } from './tso.js';
import { builtTo, operable, stateOf } from './unit-state.js';
import { release } from './who-may.js';

export interface Service {
  readonly clause: Clause;
  /** In use, with an antenna on record. */
  readonly connected: boolean;
  readonly inspected: CivilDate | null;
  readonly inspectionGoodTo: CivilDate | null;
  readonly batteryGoodTo: CivilDate | null;
}

/** An emergency transmitter that is attached, has an antenna and is in service: 91.207(a), (c), (d). An annual inspection says nothing about it. */
export function inService(facts: Facts, unit: UnitFacts): Service {
  const antennas = antennaOf(facts, unit);
  const { certificate } = facts.dossier.configuration.aircraft;
  // 91.207(d) does not say who may inspect: part 43 is taken to apply.
  const by = { ...release(unit.functions, certificate), source: cfr('43.3, 43.7', 'reading') };
  const inspections = accomplished(facts, ['elt-inspection'], unit.id, { by });
  const inspection = withinMonths(
    facts,
    inspections,
    eltInspectionMonths.value,
    eltInspectionMonths.source,
    unknown('elt-inspection-recorded', ['status.records'], { source: eltInspectionMonths.source }),
  );
  const battery = batteryOf(facts, unit);
  return {
    clause: allOf(
      'elt-in-service',
      [
        operable(stateOf(facts, unit), cfr('91.207(a)')),
        standard(unit),
        allOf('elt-inspected', [inspection.clause], 'cannot-tell'),
        battery.clause,
        oneServes(facts, unit, antennas),
      ],
      'cannot-tell',
    ),
    connected: unit.active && antennas.length > 0,
    inspected: inspection.done,
    inspectionGoodTo: inspection.lastGood,
    batteryGoodTo: battery.goodTo,
  };
}

/** Of several transmitters the one to tell of: of those in use with an antenna, else of all, the one that is good for longest. */
export function longestGood(services: readonly Service[]): Service | undefined {
  const goodTo = ({ inspectionGoodTo, batteryGoodTo }: Service) =>
    inspectionGoodTo === null || batteryGoodTo === null ? '' : earlier(inspectionGoodTo, batteryGoodTo);
  const rank = (each: Service) => `${each.connected ? 1 : 0} ${goodTo(each)}`;
  return [...services].sort((a, b) => (rank(a) > rank(b) ? -1 : rank(a) < rank(b) ? 1 : 0))[0];
}

function earlier(a: CivilDate, b: CivilDate): CivilDate {
  return a < b ? a : b;
}

/** Without one nothing is heard, and 91.207(d)(4) has its signal looked for there. */
export function antennaOf(facts: Facts, unit: UnitFacts): readonly Antenna[] {
  return antennasFor(facts, unit, ['elt', 'combined']);
}

/** Built to TSO-C91 without a letter, to which none may be newly fitted any more. */
export function isC91(unit: UnitFacts): boolean {
  return unit.type?.authorisations.some((each) => each.tso === 'C91') === true;
}

/** TSO-C91 without a letter: only where it was fitted by the last day on which that was allowed. */
function standard(unit: UnitFacts): Clause {
  const { source, value } = eltC91LastInstallation;
  const family = (tso: string) => ['C91', 'C126'].includes(tsoNumber(tso));
  const newer = builtTo(unit, family, (tso) => tso !== 'C91', source);
  if (!isC91(unit)) return newer;
  const fitted = unit.unit.fitted?.date ?? null;
  const early = fact(
    fitted === null ? null : fitted <= value,
    'c91-fitted-before-the-ban',
    `configuration.units.${unit.id}.fitted`,
    { source },
  );
  return anyOf('newer-than-c91-or-fitted-before-the-ban', [newer, early], 'cannot-tell');
}
