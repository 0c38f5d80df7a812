import { z } from 'zod';
import { id, note } from '../catalogue/words.js';
import { decision, documentPack, identity, lifeLimit, paper, recurringItem } from '../dossier/upkeep.js';
import { knownSubject, knownUnit, metersOfParts, namedMeter, notInFuture } from './checks.js';
import type { AdmitContext } from './define.js';
import { defineChange } from './define.js';
import { drop, has, put, withConfiguration, withStatus } from './lists.js';
import type { Refusal } from './refusal.js';
import { refuse } from './refusal.js';

export const identitySet = defineChange({
  kind: 'identity.set',
  schema: z.object({ identity }),
  admit: (change, { dossier }) => [
    ...knownUnit(change.identity.id, 'identity.id', dossier),
    ...(change.identity.positionUnit === null
      ? []
      : knownUnit(change.identity.positionUnit, 'identity.positionUnit', dossier)),
  ],
  apply: (dossier, change) =>
    withConfiguration(dossier, { identities: put(dossier.configuration.identities, change.identity) }),
});

export const recurringSet = defineChange({
  kind: 'recurring.set',
  schema: z.object({ item: recurringItem }),
  admit: (change, context) => [
    ...ownOrKnown(change.item.id, change.item.subject, 'item.subject', context),
    ...metersOfParts(change.item.parts, 'item.parts', context),
  ],
  apply: (dossier, change) => withStatus(dossier, { recurring: put(dossier.status.recurring, change.item) }),
});

export const recurringEnd = defineChange({
  kind: 'recurring.end',
  schema: z.object({ itemId: id, reason: note }),
  admit: (change, { dossier }) => knownIn(dossier.status.recurring, change.itemId, 'itemId'),
  apply: (dossier, change) => withStatus(dossier, { recurring: drop(dossier.status.recurring, change.itemId) }),
});

export const lifeLimitSet = defineChange({
  kind: 'life-limit.set',
  schema: z.object({ limit: lifeLimit }),
  admit: (change, context) => [
    ...ownOrKnown(change.limit.id, change.limit.subject, 'limit.subject', context),
    ...(change.limit.life === null
      ? []
      : [
          ...metersOfParts(change.limit.life.parts, 'limit.life.parts', context),
          ...change.limit.life.meters.flatMap((each, index) =>
            namedMeter(each.meter, `limit.life.meters.${index}.meter`, context),
          ),
        ]),
    ...(change.limit.retireBy === null || change.limit.retireBy.at === null
      ? []
      : namedMeter(change.limit.retireBy.meter, 'limit.retireBy.meter', context)),
  ],
  apply: (dossier, change) => withStatus(dossier, { lifeLimits: put(dossier.status.lifeLimits, change.limit) }),
});

/** The part was replaced or removed: its limit goes with it. */
export const lifeLimitEnd = defineChange({
  kind: 'life-limit.end',
  schema: z.object({ limitId: id, reason: note }),
  admit: (change, { dossier }) => knownIn(dossier.status.lifeLimits, change.limitId, 'limitId'),
  apply: (dossier, change) => withStatus(dossier, { lifeLimits: drop(dossier.status.lifeLimits, change.limitId) }),
});

export const paperSet = defineChange({
  kind: 'paper.set',
  schema: z.object({ paper }),
  admit: () => [],
  apply: (dossier, change) => withConfiguration(dossier, { papers: put(dossier.configuration.papers, change.paper) }),
});

export const packSet = defineChange({
  kind: 'pack.set',
  schema: z.object({ pack: documentPack }),
  admit: (change, { dossier }) => knownUnit(change.pack.unitId, 'pack.unitId', dossier),
  apply: (dossier, change) => withConfiguration(dossier, { packs: put(dossier.configuration.packs, change.pack) }),
});

export const decisionRecord = defineChange({
  kind: 'decision.record',
  schema: z.object({ decision }),
  admit: (change, context) => [
    ...knownSubject(change.decision.subject, 'decision.subject', context),
    ...notInFuture(change.decision.on, 'decision.on', context.now),
  ],
  apply: (dossier, change) => withStatus(dossier, { decisions: put(dossier.status.decisions, change.decision) }),
});

/** An item may be its own subject: a part that is no unit of the panel. */
function ownOrKnown(own: string, subject: string, field: string, context: AdmitContext): Refusal[] {
  return subject === own ? [] : knownSubject(subject, field, context);
}

function knownIn(list: readonly { readonly id: string }[], wanted: string, field: string): Refusal[] {
  return has(list, wanted) ? [] : [refuse('unknown-id', field, { id: wanted })];
}
