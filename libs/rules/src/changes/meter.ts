import { z } from 'zod';
import { id, note, shortText } from '../catalogue/words.js';
import { centihours, instant } from '../dossier/common.js';
import { meterDefinition, utilisation } from '../dossier/meters.js';
import { notInFuture } from './checks.js';
import type { AdmitContext } from './define.js';
import { defineChange } from './define.js';
import { put, withMeters } from './lists.js';
import type { Refusal } from './refusal.js';
import { refuse } from './refusal.js';

export const meterDefine = defineChange({
  kind: 'meter.define',
  schema: z.object({ definition: meterDefinition, standsForTimeInService: z.boolean() }),
  admit: () => [],
  apply: (dossier, change) =>
    withMeters(dossier, {
      definitions: put(dossier.meters.definitions, change.definition),
      timeInService: change.standsForTimeInService ? change.definition.id : dossier.meters.timeInService,
    }),
});

/** `dial` is what the meter shows; the offset of a replaced meter is added when it is stored. */
export const meterRead = defineChange({
  kind: 'meter.read',
  schema: z.object({ meter: id, dial: centihours, asOf: instant, by: shortText }),
  admit: (change, context) => {
    const { offset, last, refusals } = look(change.meter, context);
    if (refusals.length > 0) return refusals;
    if (change.dial + offset < 0)
      return [refuse('hours-backwards', 'dial', { meter: change.meter, last: 0, value: change.dial + offset })];
    if (last && change.asOf < last.asOf)
      return [refuse('reading-older', 'asOf', { meter: change.meter, lastAsOf: last.asOf, asOf: change.asOf })];
    if (last && change.dial + offset < last.value)
      return [
        refuse('hours-backwards', 'dial', { meter: change.meter, last: last.value, value: change.dial + offset }),
      ];
    return notInFuture(change.asOf.slice(0, 10), 'asOf', context.now);
  },
  apply: (dossier, change) => {
    const offset = dossier.meters.definitions.find((each) => each.id === change.meter)?.offset ?? 0;
    return withMeters(dossier, {
      readings: {
        ...dossier.meters.readings,
        [change.meter]: { value: change.dial + offset, asOf: change.asOf, by: change.by },
      },
    });
  },
});

/** A new dial goes in: the offset carries the hours on. */
export const meterReplace = defineChange({
  kind: 'meter.replace',
  schema: z.object({ meter: id, oldDial: centihours, newDial: centihours, at: instant, by: shortText }),
  admit: (change, context) => {
    const { offset, last, refusals } = look(change.meter, context);
    if (refusals.length > 0) return refusals;
    if (last && change.at < last.asOf)
      return [refuse('reading-older', 'at', { meter: change.meter, lastAsOf: last.asOf, asOf: change.at })];
    if (last && change.oldDial + offset < last.value)
      return [
        refuse('hours-backwards', 'oldDial', { meter: change.meter, last: last.value, value: change.oldDial + offset }),
      ];
    return notInFuture(change.at.slice(0, 10), 'at', context.now);
  },
  apply: (dossier, change) => {
    const definition = dossier.meters.definitions.find((each) => each.id === change.meter);
    if (!definition) return dossier;
    const value = change.oldDial + definition.offset;
    return withMeters(dossier, {
      definitions: put(dossier.meters.definitions, { ...definition, offset: value - change.newDial }),
      readings: { ...dossier.meters.readings, [change.meter]: { value, asOf: change.at, by: change.by } },
    });
  },
});

/** Corrects forward, with a reason; the mistaken reading stays in the history. */
export const meterCorrect = defineChange({
  kind: 'meter.correct',
  schema: z.object({ meter: id, value: centihours, asOf: instant, by: shortText, reason: note }),
  admit: (change, context) => [
    ...look(change.meter, context).refusals,
    ...notInFuture(change.asOf.slice(0, 10), 'asOf', context.now),
  ],
  apply: (dossier, change) =>
    withMeters(dossier, {
      readings: {
        ...dossier.meters.readings,
        [change.meter]: { value: change.value, asOf: change.asOf, by: change.by },
      },
    }),
});

export const utilisationSet = defineChange({
  kind: 'utilisation.set',
  schema: z.object({ utilisation }),
  admit: () => [],
  apply: (dossier, change) => withMeters(dossier, { utilisation: change.utilisation }),
});

function look(
  meter: string,
  { dossier }: AdmitContext,
): { offset: number; last: { value: number; asOf: string } | undefined; refusals: Refusal[] } {
  const definition = dossier.meters.definitions.find((each) => each.id === meter);
  return {
    offset: definition?.offset ?? 0,
    last: dossier.meters.readings[meter],
    refusals: definition ? [] : [refuse('unknown-meter', 'meter', { id: meter })],
  };
}
