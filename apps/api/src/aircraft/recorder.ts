import { admit, apply, blankDossier, parseChange, rulesVersion } from '@tallywing/rules';
import type { Catalogue, Change, Dossier } from '@tallywing/rules';
import { contentHash } from '../common/canonical.js';
import { instantOf } from '../common/clock.js';
import { AppError } from '../common/errors.js';
import type { Refusal } from '../common/errors.js';
import type { Connection } from '../database/database.js';
import type { Actor } from '../identity/access.js';
import { AircraftData, dossierOf, typeIdsOf } from './aircraft.data.js';
import type { AircraftRow } from './aircraft.data.js';
import { writeDifferences } from './differences.data.js';
import type { Written } from './differences.data.js';
import { judge } from './judge.js';
import type { Judgement } from './judge.js';
import { noteEdges } from './notices.data.js';
import { worded } from './refusals.js';
import { isLaterVersion } from './stamp.js';
import type { Profile } from './stamp.js';

export interface RecordRequest {
  readonly aircraftId: string;
  /** Revision that the person saw; 0 for an aircraft that is to be added. */
  readonly expectedRevision: number;
  readonly key: string;
  /** As the core reads them: kind, version, fields. */
  readonly changes: readonly unknown[];
  readonly jobId?: string | null;
}

/** What a recording did. Stored with its key, so that a repeated request is answered the same. */
export interface Recorded {
  readonly aircraftId: string;
  readonly revision: number;
  /** Numbers of the entries made, first and last. */
  readonly firstEntry: number;
  readonly lastEntry: number;
  readonly recordedAt: string;
  readonly opened: readonly string[];
  readonly closed: readonly string[];
  readonly verdicts: readonly { readonly profileId: string; readonly was: string | null; readonly is: string }[];
}

/**
 * Records work on one aircraft within an open transaction whose rows are locked: admit, apply, judge, append, store, write the
 * difference to the read tables, note the event. Throws before anything is written, or lets the transaction fail as a whole.
 * @throws AppError REFUSED naming each change and field, STALE_REVISION, UNAVAILABLE for a process that is too old
 */
export async function recordWithin(
  connection: Connection,
  actor: Actor,
  request: RecordRequest,
  before: AircraftRow | null,
  profiles: readonly Profile[],
  now: Date,
): Promise<{ readonly recorded: Recorded; readonly written: Written }> {
  const data = new AircraftData(connection, actor.organisationId);
  const changes = readChanges(request.changes);
  if (before !== null && isLaterVersion(before.rules_version, rulesVersion)) {
    throw new AppError({ code: 'UNAVAILABLE', reason: 'A newer version of the program is being put into service.' });
  }
  if ((before?.revision ?? 0) !== request.expectedRevision)
    throw await staleRevision(data, request.aircraftId, before?.revision ?? 0);
  const old = before === null ? blankDossier(request.aircraftId) : dossierOf(before);
  const catalogue = await data.catalogueFor([...typeIdsOf(old), ...changes.flatMap(namedTypes)]);
  const steps = applyAll(old, catalogue, changes, now);
  const next = steps.at(-1)?.dossier ?? old;
  await refuseClashes(data, next, old, changes);
  const used = await data.catalogueFor(typeIdsOf(next));
  const judged = judge(next, used, profiles, now);
  const earlier = before === null ? null : await data.standing(request.aircraftId, now);

  await noteEdges(connection, actor.organisationId, [request.aircraftId], now);
  await data.ensureBase(next.configuration.aircraft.base);
  await data.store(next, before, {
    dossierHash: steps.at(-1)?.hash ?? contentHash(next),
    stamp: judged.stamp,
    catalogueVersion: used.version,
    assessmentHash: judged.shown.hash,
    windowsTo: judged.windowsTo,
    at: now,
    // A part that no change touched is the same object.
    changedParts: (['configuration', 'status', 'meters'] as const).filter((part) => old[part] !== next[part]),
  });
  await data.append(
    steps.map(({ change, dossier, hash }) => {
      const { kind, version, ...body } = change;
      return {
        aircraft_id: request.aircraftId,
        seq: dossier.revision,
        kind,
        version,
        body,
        dossier_hash_after: hash,
        member_id: actor.memberId,
        commit_key: request.key,
      };
    }),
    now,
    request.jobId ?? null,
  );
  await data.keepAssessment(request.aircraftId, next.revision, judged.shown, now);
  const written = await writeDifferences(connection, actor.organisationId, request.aircraftId, judged, now);
  const recorded = summary(request.aircraftId, old, next, earlier, judged, now);
  await data.addEvent('recorded', request.aircraftId, now, { recorded, by: actor.memberId, findings: judged.spans });
  if (request.jobId != null && !(await data.closeJob(request.jobId, request.aircraftId, now))) {
    throw new AppError({ code: 'NOT_FOUND', what: 'open job on this aircraft', field: 'input.jobId' });
  }
  return { recorded, written };
}

/** Reads what was sent into changes of the core. @throws AppError REFUSED naming each bad field */
export function readChanges(sent: readonly unknown[]): readonly Change[] {
  const refusals: Refusal[] = [];
  const changes: Change[] = [];
  sent.forEach((each, index) => {
    const parsed = parseChange(each);
    if (parsed.ok) changes.push(parsed.change);
    else refusals.push(...parsed.refusals.map((refusal) => worded(refusal, index)));
  });
  if (refusals.length > 0) throw new AppError({ code: 'REFUSED', refusals });
  return changes;
}

function applyAll(old: Dossier, catalogue: Catalogue, changes: readonly Change[], now: Date) {
  const steps: { readonly change: Change; readonly dossier: Dossier; readonly hash: string }[] = [];
  let dossier = old;
  for (const [index, change] of changes.entries()) {
    const refusals = admit(dossier, catalogue, change, instantOf(now));
    if (refusals.length > 0)
      throw new AppError({ code: 'REFUSED', refusals: refusals.map((each) => worded(each, index)) });
    dossier = apply(dossier, change);
    steps.push({ change, dossier, hash: contentHash(dossier) });
  }
  return steps;
}

/** What the core cannot see: other aircraft and the list of operators. */
async function refuseClashes(
  data: AircraftData,
  next: Dossier,
  old: Dossier,
  changes: readonly Change[],
): Promise<void> {
  const { registration, operatorId } = next.configuration.aircraft;
  const was = old.configuration.aircraft;
  const at = changes.findIndex((change) => change.kind === 'aircraft.add' || change.kind === 'aircraft.amend');
  const refuse = (code: string, field: string, message: string, wayOut: string): never => {
    throw new AppError({ code: 'REFUSED', refusals: [{ change: at < 0 ? null : at, code, field, message, wayOut }] });
  };
  if (
    (old.revision === 0 || registration !== was.registration) &&
    (await data.registrationTaken(registration, next.aircraftId))
  ) {
    refuse(
      'registration-taken',
      'aircraft.registration',
      `${registration} already belongs to another aircraft here.`,
      'Check the registration, or amend the aircraft that has it.',
    );
  }
  if (operatorId !== null && operatorId !== was.operatorId && !(await data.operatorExists(operatorId))) {
    refuse(
      'unknown-operator',
      'aircraft.operatorId',
      `There is no operator ${operatorId}.`,
      'Pick an operator from the list, or leave it empty.',
    );
  }
}

async function staleRevision(data: AircraftData, aircraftId: string, revision: number): Promise<AppError> {
  if (revision === 0) return new AppError({ code: 'NOT_FOUND', what: 'aircraft', field: 'input.aircraftId' });
  const last = await data.lastChange(aircraftId);
  return new AppError({
    code: 'STALE_REVISION',
    revision,
    changedBy: last?.by ?? 'somebody',
    changedAt: instantOf(last?.at ?? new Date(0)),
  });
}

function namedTypes(change: Change): string[] {
  return 'unit' in change && change.unit.typeId !== null ? [change.unit.typeId] : [];
}

function summary(
  aircraftId: string,
  old: Dossier,
  next: Dossier,
  earlier: Pick<Judgement, 'open' | 'ready'> | null,
  judged: Judgement,
  now: Date,
): Recorded {
  const before = new Set(earlier?.open ?? []);
  const after = new Set(judged.open);
  return {
    aircraftId,
    revision: next.revision,
    firstEntry: old.revision + 1,
    lastEntry: next.revision,
    recordedAt: instantOf(now),
    opened: judged.open.filter((key) => !before.has(key)),
    closed: (earlier?.open ?? []).filter((key) => !after.has(key)),
    verdicts: Object.entries(judged.ready)
      .map(([profileId, is]) => ({ profileId, was: earlier?.ready[profileId] ?? null, is }))
      .filter(({ was, is }) => was !== is),
  };
}
