import type { InstallationApproval, InstalledUnit } from '../../dossier/installation.js';
import type { RecordHead } from '../../dossier/status.js';
import type { Facts } from '../../graph/facts.js';
import { anyOf, fact, implies, met, notMet } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Draft } from '../../verdict/result.js';
import { practice } from '../cite.js';
import { needsApprovalFirst } from '../release-owed.js';
import { findOut, recordIt } from '../remedies.js';
import { defineRule } from '../rule.js';

const order = practice('data approved, then work, conformity, release');

/**
 * A release signed before its data were approved, or before the work was done, is no release, however good the work; a later entry of
 * release mends it. That an entry follows work recorded here is `tests-after-change`, that a form comes before it `major-alteration-decision`.
 */
export const datesInOrder = defineRule(
  {
    id: 'dates-in-order',
    topic: 'after-work',
    asks: 'The data of an installation were approved before the work, and its release was signed after both, or on the day.',
    binds:
      'Units with a recorded approval that is needed before the release; work begun too early is advice. That the release does not come before the work binds whatever the data are, where both days are recorded.',
    sources: [order],
    messages: {
      'in-order': 'The data for {unit} were approved on {approvedOn}, before its release.',
      'too-early': '{unit} was released before its data were approved on {approvedOn}.',
      unclear: 'Whether the data for {unit} were approved before its release cannot be told.',
      'no-data-to-wait-for': 'The installation of {unit} asks for no approval before its release.',
      'work-in-order': '{unit} was fitted on {fittedOn}, its data approved on {approvedOn}.',
      'work-too-early':
        '{unit} was fitted on {fittedOn}, before its data were approved on {approvedOn}: what the data ask may differ from what was done.',
      'released-after-work': '{unit} was fitted on {fittedOn} and released on {releasedOn}.',
      'released-before-work':
        '{unit} was released on {releasedOn}, before it was fitted on {fittedOn}: nobody released this work.',
    },
    establishes: [],
  },
  (facts) =>
    [...facts.units.values()].flatMap(({ unit }) =>
      unit.approval === null
        ? []
        : [release(facts, unit, unit.approval), ...work(unit, unit.approval), ...afterWork(facts, unit, unit.approval)],
    ),
);

function release(facts: Facts, unit: InstalledUnit, approval: InstallationApproval): Draft {
  const path = `configuration.units.${unit.id}.approval`;
  const { approvedOn, releasedOn } = approval;
  const waits = needsApprovalFirst(approval.basis) ? met : notMet;
  const missing = [
    ...(approvedOn === null ? [`${path}.approvedOn`] : []),
    ...(releasedOn === null ? [`${path}.releasedOn`] : []),
  ];
  return {
    subject: unit.id,
    clause: implies(
      waits('approval-comes-first', { source: order }),
      anyOf(
        'approved-before-release',
        [before(approvedOn, releasedOn, `${path}.${approvedOn === null ? 'approvedOn' : 'releasedOn'}`), ...entries()],
        'cannot-tell',
      ),
    ),
    messages: {
      met: 'in-order',
      'not-met': 'too-early',
      'cannot-tell': 'unclear',
      'not-applicable': 'no-data-to-wait-for',
    },
    data: { unit: unit.name, approvedOn },
    effects: [{ stops: 'release' }],
    remedies: [
      recordIt('release-entry', unit.id),
      ...(missing.length > 0 ? [findOut('unit.amend', unit.id, ...missing)] : []),
    ],
  };

  function entries(): readonly Clause[] {
    return entriesSeen(facts, unit).map((each) => before(approvedOn, each.done.date, `${path}.approvedOn`, each.id));
  }
}

/** Later entries of release that were seen. */
function entriesSeen(facts: Facts, { id }: InstalledUnit): readonly RecordHead[] {
  return facts.records('release-entry', id).filter((each) => each.evidence === 'entry-seen');
}

function before(approvedOn: string | null, releasedOn: string | null, path: string, evidence?: string): Clause {
  return fact(
    approvedOn === null || releasedOn === null ? null : approvedOn <= releasedOn,
    'approved-before-release',
    path,
    {
      source: order,
      ...(evidence === undefined ? {} : { evidence: [evidence] }),
    },
  );
}

/** Only where both days are known: whoever looks for them is asked by the statement on the release. */
function work(unit: InstalledUnit, { basis, approvedOn }: InstallationApproval): readonly Draft[] {
  const fittedOn = unit.fitted?.date ?? null;
  if (!needsApprovalFirst(basis) || approvedOn === null || fittedOn === null) return [];
  return [
    {
      subject: `${unit.id}:work`,
      clause: (approvedOn <= fittedOn ? met : notMet)('approved-before-work', { source: order }),
      messages: {
        met: 'work-in-order',
        'not-met': 'work-too-early',
        'cannot-tell': 'work-too-early',
        'not-applicable': 'work-in-order',
      },
      data: { unit: unit.name, approvedOn, fittedOn },
      effects: [{ stops: 'nothing', kind: 'advice' }],
      remedies: [],
    },
  ];
}

/** Only where both days are known, as above. */
function afterWork(facts: Facts, unit: InstalledUnit, { releasedOn }: InstallationApproval): readonly Draft[] {
  const fittedOn = unit.fitted?.date ?? null;
  const days = [...(releasedOn === null ? [] : [releasedOn]), ...entriesSeen(facts, unit).map(({ done }) => done.date)];
  const last = days.toSorted().at(-1);
  if (fittedOn === null || last === undefined) return [];
  return [
    {
      subject: `${unit.id}:released`,
      clause: (fittedOn <= last ? met : notMet)('work-before-release', { source: order }),
      messages: {
        met: 'released-after-work',
        'not-met': 'released-before-work',
        'cannot-tell': 'released-before-work',
        'not-applicable': 'released-after-work',
      },
      data: { unit: unit.name, fittedOn, releasedOn: last },
      effects: [{ stops: 'release' }],
      remedies: [recordIt('release-entry', unit.id)],
    },
  ];
}
