import { z } from 'zod';
import { id, note } from '../catalogue/words.js';
import { performed } from '../dossier/common.js';
import type { Dossier } from '../dossier/dossier.js';
import { massChange, unit } from '../dossier/installation.js';
import type { MassChange } from '../dossier/installation.js';
import { touched } from '../dossier/status.js';
import {
  afterManufacture,
  functionsOf,
  knownUnit,
  notInFuture,
  touchedBy,
  touchesAgree,
  touchesStated,
} from './checks.js';
import type { AdmitContext } from './define.js';
import { defineChange } from './define.js';
import { drop, has, put, withConfiguration, withStatus } from './lists.js';
import { openObligations, withoutUnit } from './obligations.js';
import type { Refusal } from './refusal.js';
import { refuse } from './refusal.js';

/** `touched` says what the work opened; `mass` goes onto the empty-weight record. */
const work = { touched: z.array(touched), mass: massChange.nullable() };

export const unitInstall = defineChange({
  kind: 'unit.install',
  schema: z.object({ unit, performed, ...work }),
  admit: (change, context) => [
    ...(has(context.dossier.configuration.units, change.unit.id)
      ? [refuse('id-taken', 'unit.id', { id: change.unit.id })]
      : []),
    ...unitRefusals(change.unit, context),
    ...sameUnitAsBefore(change.unit, context.dossier),
    ...touchesStated(change.touched, touchedBy(functionsOf(change.unit, context.catalogue.types)), 'touched'),
    ...dateRefusals(change.performed.date, context),
    ...massRefusals(change.mass, context.dossier),
  ],
  apply: (dossier, change) => {
    const next = withMass(
      withConfiguration(dossier, {
        units: put(dossier.configuration.units, { ...change.unit, fitted: change.performed }),
        takenOut: drop(dossier.configuration.takenOut, change.unit.id),
      }),
      change.mass,
    );
    return withStatus(next, {
      obligations: openObligations(next, {
        touched: change.touched,
        unitId: change.unit.id,
        performed: change.performed,
        kind: 'unit.install',
        release: true,
      }),
    });
  },
});

/** Takes the unit out with its links and loads. Its entries stay: they follow the serial number. */
export const unitRemove = defineChange({
  kind: 'unit.remove',
  schema: z.object({ unitId: id, performed, reason: note, ...work }),
  admit: (change, context) => {
    const found = context.dossier.configuration.units.find((each) => each.id === change.unitId);
    if (!found) return knownUnit(change.unitId, 'unitId', context.dossier);
    return [
      ...touchesStated(change.touched, touchedBy(functionsOf(found, context.catalogue.types)), 'touched'),
      ...dateRefusals(change.performed.date, context),
      ...massRefusals(change.mass, context.dossier),
    ];
  },
  apply: (dossier, change) => {
    const { configuration, status } = dossier;
    const without = withMass(
      withConfiguration(dossier, {
        units: drop(configuration.units, change.unitId),
        takenOut: configuration.units
          .filter((each) => each.id === change.unitId)
          .reduce((list, { id, serial }) => put(list, { id, serial }), [...configuration.takenOut]),
        links: configuration.links.filter((each) => each.fromUnit !== change.unitId && each.toUnit !== change.unitId),
        antennas: configuration.antennas.map((each) => ({
          ...each,
          units: each.units.filter((unitId) => unitId !== change.unitId),
        })),
        equipment: configuration.equipment.map((each) =>
          each.unitId === change.unitId ? { ...each, unitId: null, state: 'absent' as const } : each,
        ),
        electrical: configuration.electrical && {
          ...configuration.electrical,
          circuits: configuration.electrical.circuits.map((each) => ({
            ...each,
            units: each.units.filter((unitId) => unitId !== change.unitId),
          })),
        },
      }),
      change.mass,
    );
    const next = withStatus(without, {
      loads: status.loads.filter((each) => each.unitId !== change.unitId),
      obligations: withoutUnit(status.obligations, change.unitId),
    });
    // The release of a removal belongs to the aircraft: the unit is no longer there to carry it.
    return withStatus(next, {
      obligations: openObligations(next, {
        touched: change.touched,
        unitId: null,
        performed: change.performed,
        kind: 'unit.remove',
        release: true,
      }),
    });
  },
});

/**
 * Corrects or completes what is known of an installed unit: serial, software, approval papers, place. No work was done.
 * Entries belong to serial numbers: another one is admitted only where somebody says that it is the same unit, wrongly written down.
 */
export const unitAmend = defineChange({
  kind: 'unit.amend',
  schema: z.object({ unit, sameUnit: z.boolean().nullable(), reason: note }),
  admit: (change, context) => [
    ...knownUnit(change.unit.id, 'unit.id', context.dossier),
    ...anotherSerial(change.unit, change.sameUnit, context.dossier),
    ...unitRefusals(change.unit, context),
  ],
  apply: (dossier, change) => withConfiguration(dossier, { units: put(dossier.configuration.units, change.unit) }),
});

export const unitDeactivate = defineChange({
  kind: 'unit.deactivate',
  schema: z.object({ unitId: id, performed, placarded: z.boolean().nullable(), recorded: z.boolean().nullable() }),
  admit: (change, context) => [
    ...knownUnit(change.unitId, 'unitId', context.dossier),
    ...dateRefusals(change.performed.date, context),
  ],
  apply: (dossier, change) =>
    withConfiguration(dossier, {
      units: dossier.configuration.units.map((each) =>
        each.id === change.unitId
          ? {
              ...each,
              deactivated: { since: change.performed, placarded: change.placarded, recorded: change.recorded },
            }
          : each,
      ),
    }),
});

export const unitReactivate = defineChange({
  kind: 'unit.reactivate',
  schema: z.object({ unitId: id, performed, touched: z.array(touched) }),
  admit: (change, context) => [
    ...knownUnit(change.unitId, 'unitId', context.dossier),
    ...touchesAgree(change.touched, 'touched'),
    ...dateRefusals(change.performed.date, context),
  ],
  apply: (dossier, change) => {
    const next = withConfiguration(dossier, {
      units: dossier.configuration.units.map((each) =>
        each.id === change.unitId ? { ...each, deactivated: null } : each,
      ),
    });
    return withStatus(next, {
      obligations: openObligations(next, {
        touched: change.touched,
        unitId: change.unitId,
        performed: change.performed,
        kind: 'unit.reactivate',
        release: true,
        mustSay: true,
      }),
    });
  },
});

/** A serial number that is on record is neither replaced nor taken back by the way: what came before would stand for another unit. */
function anotherSerial(
  { id, serial }: Dossier['configuration']['units'][number],
  sameUnit: boolean | null,
  { configuration }: Dossier,
): Refusal[] {
  const was = configuration.units.find((each) => each.id === id)?.serial ?? null;
  return was === null || was === serial || sameUnit === true
    ? []
    : [refuse('another-serial', 'unit.serial', { id, was, serial })];
}

/** The short name of a unit that was taken out serves that unit alone. */
function sameUnitAsBefore(
  { id, serial }: Dossier['configuration']['units'][number],
  { configuration }: Dossier,
): Refusal[] {
  const before = configuration.takenOut.find((each) => each.id === id);
  return before === undefined || (before.serial !== null && before.serial === serial)
    ? []
    : [refuse('id-of-another-unit', 'unit.id', { id, was: before.serial ?? 'not recorded' })];
}

function withMass(dossier: Dossier, item: MassChange | null): Dossier {
  const { mass } = dossier.configuration;
  return item === null || mass === null
    ? dossier
    : withConfiguration(dossier, { mass: { ...mass, changesSince: [...mass.changesSince, item] } });
}

function massRefusals(item: MassChange | null, dossier: Dossier): Refusal[] {
  return item !== null && dossier.configuration.mass === null ? [refuse('no-mass-record', 'mass')] : [];
}

function dateRefusals(date: string, { dossier, now }: AdmitContext): Refusal[] {
  return [...notInFuture(date, 'performed.date', now), ...afterManufacture(date, 'performed.date', dossier)];
}

function unitRefusals(
  item: Dossier['configuration']['units'][number],
  { dossier, catalogue, now }: AdmitContext,
): Refusal[] {
  const refusals: Refusal[] = [];
  if (item.typeId === null && item.functions.length === 0) refusals.push(refuse('no-functions', 'unit.functions'));
  if (item.typeId !== null && catalogue.types[item.typeId] === undefined)
    refusals.push(refuse('unknown-type', 'unit.typeId', { typeId: item.typeId }));
  if (item.typeId !== null && item.functions.length > 0) refusals.push(refuse('functions-disagree', 'unit.functions'));
  if (item.openingId !== null && !has(dossier.configuration.openings, item.openingId))
    refusals.push(refuse('unknown-opening', 'unit.openingId', { id: item.openingId }));
  return [
    ...refusals,
    ...notInFuture(item.manufactured, 'unit.manufactured', now),
    ...notInFuture(item.approval?.approvedOn ?? null, 'unit.approval.approvedOn', now),
  ];
}
