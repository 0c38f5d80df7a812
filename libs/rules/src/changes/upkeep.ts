import { z } from 'zod';
import { databaseKind } from '../catalogue/type.js';
import { id, note, shortText } from '../catalogue/words.js';
import type { Performed } from '../dossier/common.js';
import { agency, performed, statement } from '../dossier/common.js';
import type { Dossier } from '../dossier/dossier.js';
import { instant } from '../dossier/common.js';
import { installationApproval } from '../dossier/installation.js';
import type { Directive } from '../dossier/status.js';
import {
  completeness,
  databaseLoad,
  databaseSlot,
  deferral,
  defect,
  directive,
  hold,
  recordHead,
  touched,
} from '../dossier/status.js';
import {
  afterManufacture,
  knownSubject,
  knownUnit,
  metersOfParts,
  namedMeter,
  notInFuture,
  touchesAgree,
} from './checks.js';
import { defineChange } from './define.js';
import { drop, has, put, withConfiguration, withStatus } from './lists.js';
import { answerObligations, openObligations } from './obligations.js';
import { keepHeads } from './records.js';
import { refuse } from './refusal.js';

export const recordAdd = defineChange({
  kind: 'record.add',
  schema: z.object({ record: recordHead }),
  admit: (change, context) => [
    ...(has(context.dossier.status.records, change.record.id)
      ? [refuse('id-taken', 'record.id', { id: change.record.id })]
      : []),
    ...change.record.subjects.flatMap((subject, index) => knownSubject(subject, `record.subjects.${index}`, context)),
    ...change.record.meters.flatMap((each, index) => namedMeter(each.meter, `record.meters.${index}.meter`, context)),
    ...notInFuture(change.record.done.date, 'record.done.date', context.now),
    ...afterManufacture(change.record.done.date, 'record.done.date', context.dossier),
  ],
  apply: (dossier, change) => {
    const obligations = answerObligations(dossier.status.obligations, change.record);
    return withStatus(dossier, {
      obligations,
      records: keepHeads(put(dossier.status.records, change.record), obligations),
    });
  },
});

/** Replaces a mistaken head; the mistaken one stays in the history. */
export const recordCorrect = defineChange({
  kind: 'record.correct',
  schema: z.object({ record: recordHead, reason: note }),
  admit: (change, context) => [
    ...(has(context.dossier.status.records, change.record.id)
      ? []
      : [refuse('unknown-id', 'record.id', { id: change.record.id })]),
    ...change.record.subjects.flatMap((subject, index) => knownSubject(subject, `record.subjects.${index}`, context)),
    ...change.record.meters.flatMap((each, index) => namedMeter(each.meter, `record.meters.${index}.meter`, context)),
    ...notInFuture(change.record.done.date, 'record.done.date', context.now),
    ...afterManufacture(change.record.done.date, 'record.done.date', context.dossier),
  ],
  apply: (dossier, change) => {
    const reopened = dossier.status.obligations.map((owed) =>
      owed.closedBy === change.record.id ? { ...owed, closedBy: null } : owed,
    );
    const obligations = answerObligations(reopened, change.record);
    return withStatus(dossier, {
      obligations,
      records: keepHeads(put(dossier.status.records, change.record), obligations),
    });
  },
});

/** Loaded otherwise than from the flight deck, without tools, it is maintenance (43.3(k)) and wants its release; not asked, nothing follows here. */
export const databaseLoadChange = defineChange({
  kind: 'database.load',
  schema: z.object({ load: databaseLoad }),
  admit: (change, { dossier, now }) => {
    const { load } = change;
    return [
      ...knownUnit(load.unitId, 'load.unitId', dossier),
      ...notInFuture(load.loaded.date, 'load.loaded.date', now),
      ...(load.effective !== null && load.expires !== null && load.expires <= load.effective
        ? [
            refuse('dates-out-of-order', 'load.expires', {
              later: 'The expiry',
              laterDate: load.expires,
              earlier: 'the effective time',
              earlierDate: load.effective,
            }),
          ]
        : []),
    ];
  },
  apply: (dossier, change) => {
    const { load } = change;
    const next = withStatus(dossier, {
      loads: [...dossier.status.loads.filter((each) => loadKey(each) !== loadKey(load)), load].sort((a, b) =>
        loadKey(a) < loadKey(b) ? -1 : 1,
      ),
    });
    if (load.fromFlightDeck !== false) return next;
    return withStatus(next, {
      obligations: openObligations(next, {
        touched: [],
        unitId: load.unitId,
        performed: load.loaded,
        kind: 'database.load',
        release: true,
      }),
    });
  },
});

export const databaseDrop = defineChange({
  kind: 'database.drop',
  schema: z.object({ unitId: id, database: databaseKind, slot: databaseSlot }),
  admit: (change, { dossier }) => knownUnit(change.unitId, 'unitId', dossier),
  apply: (dossier, change) =>
    withStatus(dossier, { loads: dossier.status.loads.filter((each) => loadKey(each) !== loadKey(change)) }),
});

export const defectRaise = defineChange({
  kind: 'defect.raise',
  schema: z.object({ defect }),
  admit: (change, context) => [
    ...(has(context.dossier.status.defects, change.defect.id)
      ? [refuse('id-taken', 'defect.id', { id: change.defect.id })]
      : []),
    ...knownSubject(change.defect.subject, 'defect.subject', context),
    ...notInFuture(change.defect.raised.date, 'defect.raised.date', context.now),
  ],
  apply: (dossier, change) => withStatus(dossier, { defects: put(dossier.status.defects, change.defect) }),
});

export const defectDefer = defineChange({
  kind: 'defect.defer',
  schema: z.object({ defectId: id, deferral }),
  admit: (change, { dossier, now }) => {
    const found = dossier.status.defects.find((each) => each.id === change.defectId);
    return [
      ...(found ? [] : [refuse('unknown-id', 'defectId', { id: change.defectId })]),
      ...notInFuture(change.deferral.on, 'deferral.on', now),
      ...(found && change.deferral.on < found.raised.date
        ? [
            refuse('dates-out-of-order', 'deferral.on', {
              later: 'The deferral',
              laterDate: change.deferral.on,
              earlier: 'the defect',
              earlierDate: found.raised.date,
            }),
          ]
        : []),
    ];
  },
  apply: (dossier, change) =>
    withStatus(dossier, {
      defects: dossier.status.defects.map((each) =>
        each.id === change.defectId ? { ...each, deferral: change.deferral } : each,
      ),
    }),
});

/**
 * A defect ends by an entry, a repair or a recorded "no fault found", never by deletion. The full text stays in the history.
 * Repaired, replaced or removed is maintenance: it wants an approval for return to service (91.407(a), 91.405(b)), and what it
 * touched wants its tests. An inspection that found no fault is not; 91.405(c) lets one stand for a deferred item.
 */
export const defectClose = defineChange({
  kind: 'defect.close',
  schema: z.object({
    defectId: id,
    how: z.enum(['repaired', 'replaced', 'removed', 'no-fault-found']).meta({ id: 'DefectEnd' }),
    by: agency,
    performed,
    touched: z.array(touched),
    entry: shortText,
  }),
  admit: (change, { dossier, now }) => [
    ...(has(dossier.status.defects, change.defectId)
      ? []
      : [refuse('unknown-id', 'defectId', { id: change.defectId })]),
    ...notInFuture(change.performed.date, 'performed.date', now),
    ...touchesAgree(change.touched, 'touched'),
    ...afterRaised(change, dossier),
  ],
  apply: (dossier, change) => {
    const { units } = dossier.configuration;
    const subject = dossier.status.defects.find((each) => each.id === change.defectId)?.subject;
    const worked = change.how !== 'no-fault-found';
    const next = withStatus(dossier, { defects: drop(dossier.status.defects, change.defectId) });
    return withStatus(next, {
      obligations: openObligations(next, {
        touched: change.touched,
        unitId: units.find((each) => each.id === subject)?.id ?? null,
        performed: change.performed,
        kind: 'defect.close',
        release: worked,
        mustSay: worked,
      }),
    });
  },
});

export const directiveSet = defineChange({
  kind: 'directive.set',
  schema: z.object({ directive }),
  admit: (change, context) => [
    ...(change.directive.subject === change.directive.id
      ? []
      : knownSubject(change.directive.subject, 'directive.subject', context)),
    ...(change.directive.state === 'not-applicable' && change.directive.reason === null
      ? [refuse('reason-missing', 'directive.reason')]
      : []),
    ...(doneOnceYetAgain(change.directive)
      ? [refuse('once-yet-again', 'directive.recurs', { number: change.directive.number })]
      : []),
    ...(change.directive.interval === null
      ? []
      : metersOfParts(change.directive.interval.parts, 'directive.interval.parts', context)),
    ...(change.directive.nextDue?.meter != null
      ? namedMeter(change.directive.nextDue.meter, 'directive.nextDue.meter', context)
      : []),
  ],
  apply: (dossier, change) => withStatus(dossier, { directives: put(dossier.status.directives, change.directive) }),
});

export const holdPlace = defineChange({
  kind: 'hold.place',
  schema: z.object({ hold }),
  admit: (change, { dossier }) =>
    has(dossier.status.holds, change.hold.id) ? [refuse('id-taken', 'hold.id', { id: change.hold.id })] : [],
  apply: (dossier, change) => withStatus(dossier, { holds: put(dossier.status.holds, change.hold) }),
});

export const holdLift = defineChange({
  kind: 'hold.lift',
  schema: z.object({ holdId: id, at: instant, reason: note }),
  admit: (change, { dossier }) => {
    const found = dossier.status.holds.find((each) => each.id === change.holdId);
    if (!found) return [refuse('unknown-id', 'holdId', { id: change.holdId })];
    return found.until !== null && found.until <= change.at ? [refuse('hold-lifted', 'holdId')] : [];
  },
  apply: (dossier, change) =>
    withStatus(dossier, {
      holds: dossier.status.holds.map((each) => (each.id === change.holdId ? { ...each, until: change.at } : each)),
    }),
});

export const completenessState = defineChange({
  kind: 'completeness.state',
  schema: z.object({ lists: z.array(completeness).min(1) }),
  admit: (change, { now }) =>
    change.lists.flatMap((each, index) => notInFuture(each.stated.asOf, `lists.${index}.stated.asOf`, now)),
  apply: (dossier, change) => {
    const named = new Set(change.lists.map((each) => each.list));
    return withStatus(dossier, {
      completeness: [...dossier.status.completeness.filter((each) => !named.has(each.list)), ...change.lists].sort(
        (a, b) => (a.list < b.list ? -1 : 1),
      ),
    });
  },
});

/** A named person accepts units and links as found, on a day, with a source. It keeps an old aircraft from being unknown for ever. */
export const adopt = defineChange({
  kind: 'adopt',
  schema: z.object({ units: z.array(id), links: z.array(id), by: statement, approval: installationApproval }),
  admit: (change, { dossier, now }) => [
    ...change.units.flatMap((unitId, index) => knownUnit(unitId, `units.${index}`, dossier)),
    ...change.links.flatMap((linkId, index) =>
      has(dossier.configuration.links, linkId) ? [] : [refuse('unknown-id', `links.${index}`, { id: linkId })],
    ),
    ...notInFuture(change.by.asOf, 'by.asOf', now),
  ],
  apply: (dossier, change) =>
    withConfiguration(dossier, {
      units: dossier.configuration.units.map((each) =>
        change.units.includes(each.id) && each.approval === null
          ? { ...each, approval: { ...change.approval, basis: 'as-found', acceptedBy: change.by } }
          : each,
      ),
      links: dossier.configuration.links.map((each) =>
        change.links.includes(each.id) && each.cover === null
          ? { ...each, cover: { by: 'as-found', document: change.approval.document, acceptedBy: change.by } }
          : each,
      ),
    }),
});

function afterRaised(
  { defectId, performed: done }: { readonly defectId: string; readonly performed: Performed },
  { status }: Dossier,
) {
  const raised = status.defects.find((each) => each.id === defectId)?.raised.date;
  return raised === undefined || done.date >= raised
    ? []
    : [
        refuse('dates-out-of-order', 'performed.date', {
          later: 'The end of the defect',
          laterDate: done.date,
          earlier: 'its report',
          earlierDate: raised,
        }),
      ];
}

function loadKey(load: { readonly unitId: string; readonly database: string; readonly slot: string }): string {
  return `${load.unitId}|${load.database}|${load.slot}`;
}

/** What is done once has no next time, unless its first has not come yet. */
function doneOnceYetAgain({ recurs, interval, state, nextDue }: Directive): boolean {
  return recurs === false && (interval !== null || (state === 'complied' && nextDue !== null));
}
