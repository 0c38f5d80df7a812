import { z } from 'zod';
import { id, note } from '../catalogue/words.js';
import { aircraft, authority, equipmentState } from '../dossier/aircraft.js';
import { performed, statement } from '../dossier/common.js';
import type { Dossier } from '../dossier/dossier.js';
import { staticSystem, touched } from '../dossier/status.js';
import { isZone } from '../time/zones.js';
import { defineChange } from './define.js';
import { put, withConfiguration, withStatus } from './lists.js';
import { openObligations, sayTouched } from './obligations.js';
import { refuse } from './refusal.js';
import { notInFuture, touchesAgree } from './checks.js';

export const aircraftAdd = defineChange({
  kind: 'aircraft.add',
  starts: true,
  schema: z.object({ aircraft }),
  admit: (change, { dossier, now }) => [
    ...(dossier.revision > 0 ? [refuse('aircraft-exists', 'aircraft')] : []),
    ...(isZone(change.aircraft.base.zone)
      ? []
      : [refuse('unknown-zone', 'aircraft.base.zone', { zone: change.aircraft.base.zone })]),
    ...notInFuture(change.aircraft.manufactured, 'aircraft.manufactured', now),
  ],
  apply: (dossier, change) => withConfiguration(dossier, { aircraft: change.aircraft }),
});

/** Replaces the aircraft's own facts. A new registration opens what a registration change calls for. */
export const aircraftAmend = defineChange({
  kind: 'aircraft.amend',
  schema: z.object({ aircraft, reason: note, performed }),
  admit: (change, { now }) => [
    ...(isZone(change.aircraft.base.zone)
      ? []
      : [refuse('unknown-zone', 'aircraft.base.zone', { zone: change.aircraft.base.zone })]),
    ...notInFuture(change.aircraft.manufactured, 'aircraft.manufactured', now),
    ...notInFuture(change.performed.date, 'performed.date', now),
  ],
  apply: (dossier, change) => {
    const renamed = change.aircraft.registration !== dossier.configuration.aircraft.registration;
    const next = withConfiguration(dossier, { aircraft: change.aircraft });
    if (!renamed) return next;
    const work = {
      touched: ['registration' as const],
      unitId: null,
      performed: change.performed,
      kind: 'aircraft.amend',
      release: false,
    };
    return withStatus(next, { obligations: openObligations(next, work) });
  },
});

export const authoritySet = defineChange({
  kind: 'authority.set',
  schema: z.object({ authority }),
  admit: () => [],
  apply: (dossier, change) => withConfiguration(dossier, { authority: change.authority }),
});

/** States what is fitted of the items of 91.205; items not named stay as they were. */
export const equipmentStateChange = defineChange({
  kind: 'equipment.state',
  schema: z.object({ items: z.array(equipmentState).min(1) }),
  admit: (change, { dossier }) =>
    change.items.flatMap((each, index) =>
      each.unitId !== null && !dossier.configuration.units.some((unit) => unit.id === each.unitId)
        ? [refuse('unknown-unit', `items.${index}.unitId`, { id: each.unitId })]
        : [],
    ),
  apply: (dossier, change) => {
    const named = new Set(change.items.map((each) => each.item));
    const items = [...dossier.configuration.equipment.filter((each) => !named.has(each.item)), ...change.items];
    return withConfiguration(dossier, { equipment: items.sort((a, b) => (a.item < b.item ? -1 : 1)) });
  },
});

export const staticSystemSet = defineChange({
  kind: 'static-system.set',
  schema: z.object({ system: staticSystem }),
  admit: (change, { now }) => notInFuture(change.system.lastOpened?.date ?? null, 'system.lastOpened.date', now),
  apply: (dossier, change) =>
    withConfiguration(dossier, { staticSystems: put(dossier.configuration.staticSystems, change.system) }),
});

/** Work that changed no unit but opened or touched something: a static line opened, a shield tied, a compass moved. */
export const workDone = defineChange({
  kind: 'work.done',
  schema: z.object({ what: note, unitId: id.nullable(), touched: z.array(touched).min(1), performed }),
  admit: (change, { dossier, now }) => [
    ...notInFuture(change.performed.date, 'performed.date', now),
    ...touchesAgree(change.touched, 'touched'),
    ...(change.unitId !== null && !dossier.configuration.units.some((unit) => unit.id === change.unitId)
      ? [refuse('unknown-unit', 'unitId', { id: change.unitId })]
      : []),
  ],
  apply: (dossier, change) =>
    withStatus(dossier, {
      obligations: openObligations(dossier, {
        touched: change.touched,
        unitId: change.unitId,
        performed: change.performed,
        kind: 'work.done',
        release: true,
      }),
    }),
});

/** Says what a piece of work touched, where that was left open when the work was written down. */
export const touchedState = defineChange({
  kind: 'touched.state',
  schema: z.object({ obligationId: id, touched: z.array(touched).min(1), by: statement }),
  admit: (change, { dossier, now }) => [
    ...(unsaid(dossier, change.obligationId)
      ? []
      : [refuse('unknown-id', 'obligationId', { id: change.obligationId })]),
    ...touchesAgree(change.touched, 'touched'),
    ...notInFuture(change.by.asOf, 'by.asOf', now),
  ],
  apply: (dossier, change) => {
    const owed = unsaid(dossier, change.obligationId);
    return owed ? withStatus(dossier, { obligations: sayTouched(dossier, owed, change.touched) }) : dossier;
  },
});

function unsaid({ status }: Dossier, wanted: string) {
  return status.obligations.find((each) => each.id === wanted && each.what === 'what-was-touched');
}
