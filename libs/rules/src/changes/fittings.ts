import { z } from 'zod';
import { id, note } from '../catalogue/words.js';
import { performed } from '../dossier/common.js';
import { antenna, electrical, link, mass, massChange, opening, placard, supplement } from '../dossier/installation.js';
import { touched } from '../dossier/status.js';
import { knownUnit, notInFuture } from './checks.js';
import type { AdmitContext } from './define.js';
import { defineChange } from './define.js';
import { drop, has, put, withConfiguration, withStatus } from './lists.js';
import { openObligations } from './obligations.js';
import type { Refusal } from './refusal.js';
import { refuse } from './refusal.js';

/** Joins a port of one unit to a port of another. A new or moved joint reopens the supplement's word on interfaces through the rules, not here. */
export const linkConnect = defineChange({
  kind: 'link.connect',
  schema: z.object({ link, performed, touched: z.array(touched) }),
  admit: (change, context) => [
    ...(has(context.dossier.configuration.links, change.link.id)
      ? [refuse('id-taken', 'link.id', { id: change.link.id })]
      : []),
    ...(change.link.fromUnit === change.link.toUnit ? [refuse('same-unit', 'link.toUnit')] : []),
    ...portRefusals(change.link.fromUnit, change.link.fromPort, 'link.from', context),
    ...portRefusals(change.link.toUnit, change.link.toPort, 'link.to', context),
    ...notInFuture(change.performed.date, 'performed.date', context.now),
  ],
  apply: (dossier, change) => {
    const next = withConfiguration(dossier, {
      links: put(dossier.configuration.links, { ...change.link, fitted: change.performed }),
    });
    return withStatus(next, {
      obligations: openObligations(next, {
        touched: change.touched,
        unitId: change.link.fromUnit,
        performed: change.performed,
        kind: 'link.connect',
        release: false,
      }),
    });
  },
});

export const linkDisconnect = defineChange({
  kind: 'link.disconnect',
  schema: z.object({ linkId: id, performed, touched: z.array(touched), reason: note }),
  admit: (change, { dossier, now }) => [
    ...knownIn(dossier.configuration.links, change.linkId, 'linkId'),
    ...notInFuture(change.performed.date, 'performed.date', now),
  ],
  apply: (dossier, change) => {
    const gone = dossier.configuration.links.find((each) => each.id === change.linkId);
    const next = withConfiguration(dossier, { links: drop(dossier.configuration.links, change.linkId) });
    return withStatus(next, {
      obligations: openObligations(next, {
        touched: change.touched,
        unitId: gone?.fromUnit ?? null,
        performed: change.performed,
        kind: 'link.disconnect',
        release: false,
      }),
    });
  },
});

export const antennaFit = defineChange({
  kind: 'antenna.fit',
  schema: z.object({ antenna, performed, touched: z.array(touched) }),
  admit: (change, { dossier, now }) => [
    ...change.antenna.units.flatMap((unitId, index) => knownUnit(unitId, `antenna.units.${index}`, dossier)),
    ...notInFuture(change.performed.date, 'performed.date', now),
  ],
  apply: (dossier, change) => {
    const next = withConfiguration(dossier, { antennas: put(dossier.configuration.antennas, change.antenna) });
    return withStatus(next, {
      obligations: openObligations(next, {
        touched: change.touched,
        unitId: null,
        performed: change.performed,
        kind: 'antenna.fit',
        release: false,
      }),
    });
  },
});

export const antennaRemove = defineChange({
  kind: 'antenna.remove',
  schema: z.object({ antennaId: id, performed, reason: note }),
  admit: (change, { dossier, now }) => [
    ...knownIn(dossier.configuration.antennas, change.antennaId, 'antennaId'),
    ...notInFuture(change.performed.date, 'performed.date', now),
  ],
  apply: (dossier, change) =>
    withConfiguration(dossier, { antennas: drop(dossier.configuration.antennas, change.antennaId) }),
});

export const placardFit = defineChange({
  kind: 'placard.fit',
  schema: z.object({ placard }),
  admit: (change, { dossier }) =>
    change.placard.unitId === null ? [] : knownUnit(change.placard.unitId, 'placard.unitId', dossier),
  apply: (dossier, change) =>
    withConfiguration(dossier, { placards: put(dossier.configuration.placards, change.placard) }),
});

export const placardRemove = defineChange({
  kind: 'placard.remove',
  schema: z.object({ placardId: id, reason: note }),
  admit: (change, { dossier }) => knownIn(dossier.configuration.placards, change.placardId, 'placardId'),
  apply: (dossier, change) =>
    withConfiguration(dossier, { placards: drop(dossier.configuration.placards, change.placardId) }),
});

export const supplementSet = defineChange({
  kind: 'supplement.set',
  schema: z.object({ supplement }),
  admit: (change, { dossier }) =>
    change.supplement.units.flatMap((unitId, index) => knownUnit(unitId, `supplement.units.${index}`, dossier)),
  apply: (dossier, change) =>
    withConfiguration(dossier, { supplements: put(dossier.configuration.supplements, change.supplement) }),
});

export const openingSet = defineChange({
  kind: 'opening.set',
  schema: z.object({ opening }),
  admit: () => [],
  apply: (dossier, change) =>
    withConfiguration(dossier, { openings: put(dossier.configuration.openings, change.opening) }),
});

export const electricalSet = defineChange({
  kind: 'electrical.set',
  schema: z.object({ electrical }),
  admit: (change, { dossier }) =>
    change.electrical.circuits.flatMap((each, index) =>
      each.units.flatMap((unitId) => knownUnit(unitId, `electrical.circuits.${index}.units`, dossier)),
    ),
  apply: (dossier, change) => withConfiguration(dossier, { electrical: change.electrical }),
});

/** A new empty-weight record: by weighing, or by calculation from exact weights and arms. */
export const massRevise = defineChange({
  kind: 'mass.revise',
  schema: z.object({ mass }),
  admit: (change, { now }) => notInFuture(change.mass.revisedOn, 'mass.revisedOn', now),
  apply: (dossier, change) => withConfiguration(dossier, { mass: change.mass }),
});

/** A small change that goes onto the list without a revision of the record. */
export const massNote = defineChange({
  kind: 'mass.note',
  schema: z.object({ item: massChange }),
  admit: (change, { dossier, now }) => [
    ...(dossier.configuration.mass === null ? [refuse('no-mass-record', 'item')] : []),
    ...notInFuture(change.item.on, 'item.on', now),
  ],
  apply: (dossier, change) => {
    const { mass: record } = dossier.configuration;
    return record === null
      ? dossier
      : withConfiguration(dossier, { mass: { ...record, changesSince: [...record.changesSince, change.item] } });
  },
});

function knownIn(list: readonly { readonly id: string }[], wanted: string, field: string): Refusal[] {
  return has(list, wanted) ? [] : [refuse('unknown-id', field, { id: wanted })];
}

function portRefusals(
  unitId: string,
  portName: string,
  field: string,
  { dossier, catalogue }: AdmitContext,
): Refusal[] {
  const found = dossier.configuration.units.find((each) => each.id === unitId);
  if (!found) return [refuse('unknown-unit', `${field}Unit`, { id: unitId })];
  const type = found.typeId === null ? undefined : catalogue.types[found.typeId];
  // An uncatalogued unit has no list of ports to check against; the rules will say cannot-tell.
  if (!type || type.ports.some((each) => each.name === portName)) return [];
  return [refuse('unknown-port', `${field}Port`, { unit: unitId, port: portName })];
}
