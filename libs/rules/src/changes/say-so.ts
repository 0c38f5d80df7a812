import { z } from 'zod';
import { id, note } from '../catalogue/words.js';
import { instant } from '../dossier/common.js';
import { sayso } from '../dossier/status.js';
import { defineChange } from './define.js';
import { has, put, withStatus } from './lists.js';
import { refuse } from './refusal.js';

export const saySoGive = defineChange({
  kind: 'say-so.give',
  schema: z.object({ sayso }),
  admit: ({ sayso: given }, { dossier }) => [
    ...(has(dossier.status.sayings ?? [], given.id) ? [refuse('id-taken', 'sayso.id', { id: given.id })] : []),
    ...(given.until <= given.from
      ? [
          refuse('dates-out-of-order', 'sayso.until', {
            later: 'Its end',
            laterDate: given.until,
            earlier: 'its beginning',
            earlierDate: given.from,
          }),
        ]
      : []),
  ],
  apply: (dossier, change) => withStatus(dossier, { sayings: put(dossier.status.sayings ?? [], change.sayso) }),
});

/** Taken back before its time; what it let count until then stays as it was. */
export const saySoEnd = defineChange({
  kind: 'say-so.end',
  schema: z.object({ saysoId: id, at: instant, reason: note }),
  admit: (change, { dossier }) =>
    has(dossier.status.sayings ?? [], change.saysoId) ? [] : [refuse('unknown-id', 'saysoId', { id: change.saysoId })],
  apply: (dossier, change) =>
    withStatus(dossier, {
      sayings: (dossier.status.sayings ?? []).map((each) =>
        each.id === change.saysoId && change.at < each.until ? { ...each, until: change.at } : each,
      ),
    }),
});
