import type { Catalogue } from '../catalogue/type.js';
import type { Dossier } from '../dossier/dossier.js';
import { authorisedPerson } from '../rules/after-work/authorised-person.js';
import { rules } from '../rules/registry.js';
import { releaseOf } from '../rules/who-may.js';
import type { Instant } from '../time/instant.js';
import { strictest } from '../verdict/conditions.js';
import type { Statement } from '../verdict/result.js';
import type { OpenResult } from './in-short.js';
import { snapshotOf } from './snapshot.js';
import type { System } from './system.js';
import { systemOf } from './system.js';

export interface OpenAtRelease extends OpenResult {
  /** Work may not be approved for return to service over it; else it is to be seen, and costs what it costs. */
  readonly stops: boolean;
}

const afterWork = new Set(rules.filter(({ meta }) => meta.topic === 'after-work').map(({ meta }) => meta.id));

/**
 * What is open when work is to be approved for return to service: tests, entries and signatures that the work called for, and
 * whatever stops a release. `entryId` is the entry of release, recorded in this dossier: what is wrong with it always stops.
 */
export function openAtRelease(
  dossier: Dossier,
  catalogue: Catalogue,
  instant: Instant,
  entryId: string | null = null,
): readonly OpenAtRelease[] {
  const system = systemOf(dossier, catalogue);
  const snapshot = snapshotOf(system, instant, 0, strictest);
  const open = system.statements.flatMap((statement, index): OpenAtRelease[] => {
    const outcome = snapshot.outcome(index);
    if (outcome !== 'not-met' && outcome !== 'cannot-tell') return [];
    const { key, ruleId, subject, messages, data } = statement;
    const ofEntry = afterWork.has(ruleId) && subject === entryId;
    if (!ofEntry && !bearsOnRelease(statement)) return [];
    const stops = ofEntry || (afterWork.has(ruleId) && stopsRelease(statement));
    return [{ key, ruleId, subject, outcome, messageId: messages[outcome], data, stops }];
  });
  const signer = entryId === null ? null : signerOf(system, entryId);
  return signer === null || open.some((each) => each.key === signer.key) ? open : [...open, signer];
}

/** Who signed is asked of this entry even where a later one is the newest, and the rule speaks of that one. */
function signerOf(system: System, entryId: string): OpenAtRelease | null {
  const entry = system.dossier.status.records.find((each) => each.id === entryId);
  const agency = entry?.agency ?? null;
  const may = entry && agency ? releaseOf(system.facts, entry.subjects).may(agency) : null;
  if (may === true) return null;
  const { id: ruleId } = authorisedPerson.meta;
  return {
    key: `${ruleId}|${entryId}`,
    ruleId,
    subject: entryId,
    outcome: may === false ? 'not-met' : 'cannot-tell',
    messageId: may === false ? 'not-allowed' : 'unclear',
    data: { what: 'release-entry', done: entry?.done.date ?? null, name: agency?.name ?? 'the signer' },
    stops: true,
  };
}

function bearsOnRelease({ ruleId, effects }: Statement): boolean {
  const costs = effects.some((each) => each.stops !== 'nothing');
  return afterWork.has(ruleId) ? costs : effects.some((each) => each.stops === 'release');
}

function stopsRelease({ effects }: Statement): boolean {
  return effects.some((each) => each.stops === 'release' || (each.stops === 'capability' && each.capability === 'fly'));
}
