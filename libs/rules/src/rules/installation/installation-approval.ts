import type { FunctionCode } from '../../catalogue/type.js';
import type { InstallationApproval } from '../../dossier/installation.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, fact, met, notApplicable, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Draft, Remedy } from '../../verdict/result.js';
import { accepted } from '../as-found.js';
import { cfr, maker, practice } from '../cite.js';
import { lostThrough } from '../effects.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';

const permission = cfr('91.403(d)');
const modelList = practice('exact model on the list revision in force (AC 23-22)');
const order = practice('data approved, then work, then release');

/** Two statements a unit: that its papers are in order, and that they were so before the work was released. */
export const installationApproval = defineRule(
  {
    id: 'installation-approval',
    topic: 'installation',
    asks: 'Approved data are named for the installation of each avionics unit, with the permission and the model listing they need, and were approved before the release.',
    binds: 'Communication, navigation and surveillance units and their indicators; portable units are not installed.',
    sources: [permission, modelList, order],
    messages: {
      approved: 'The installation of {unit} rests on {document}.',
      'not-approved': 'The approval of {unit} by {document} does not hold for this aircraft.',
      unrecorded: 'Nobody recorded on which approved data {unit} was installed.',
      unclear: 'Whether {document} covers the installation of {unit} cannot be told.',
      'in-order': 'The data for {unit} were approved on {approvedOn}, before the release on {releasedOn}.',
      'too-early': '{unit} was released on {releasedOn}, before its data were approved on {approvedOn}.',
      'order-unclear': 'Whether the data for {unit} were approved before its release cannot be told.',
      'no-data-to-wait-for': 'The installation of {unit} asks for no approval before its release.',
    },
    establishes: [],
  },
  (facts) => [...facts.units.values()].filter(isAvionics).flatMap((each) => [papers(facts, each), ...sequence(each)]),
);

const avionics = new Set<FunctionCode>([
  'com',
  'vor-receiver',
  'loc-receiver',
  'gs-receiver',
  'gnss',
  'lateral-deviation',
  'vertical-deviation',
  'integrity-annunciation',
  'approach-annunciation',
  'source-annunciation',
  'source-selector',
  'transponder',
  'altitude-reporting',
  'ads-b-out-1090',
  'ads-b-out-uat',
]);

function isAvionics({ functions }: UnitFacts): boolean {
  return !functions.has('portable-display') && [...functions].some((each) => avionics.has(each));
}

function papers(facts: Facts, each: UnitFacts): Draft {
  const { approval } = each.unit;
  return {
    subject: each.id,
    clause:
      approval === null
        ? unknown('approval-recorded', [`configuration.units.${each.id}.approval`], { source: permission })
        : approvalClause(approval, `configuration.units.${each.id}.approval`),
    messages: {
      met: 'approved',
      'not-met': 'not-approved',
      'cannot-tell': approval === null ? 'unrecorded' : 'unclear',
      'not-applicable': 'approved',
    },
    data: { unit: each.unit.name, document: approval?.document.title ?? null },
    effects: [{ stops: 'release' }, ...lostThrough(each.id, facts.capabilitiesThrough(each.id))],
    remedies:
      approval === null
        ? adoptOrFind(each)
        : [findOut('unit.amend', each.id, `configuration.units.${each.id}.approval`)],
  };
}

function approvalClause(approval: InstallationApproval, path: string): Clause {
  const { basis, document } = approval;
  const named = maker(document.title, document.revision ?? 'revision not recorded');
  if (basis === 'as-found') return accepted(approval.acceptedBy, `${path}.acceptedBy`);
  const parts: Clause[] = [met('approved-data-named', { source: named })];
  if (basis === 'stc' || basis === 'stc-model-list')
    parts.push(fact(approval.permission, 'permission-of-holder', `${path}.permission`, { source: permission }));
  if (basis === 'stc-model-list') {
    parts.push(fact(approval.modelListed, 'model-listed', `${path}.modelListed`, { source: modelList }));
    parts.push(
      fact(document.revision === null ? null : true, 'list-revision', `${path}.document.revision`, {
        source: modelList,
      }),
    );
  }
  if (needsApprovalFirst(basis))
    parts.push(
      fact(approval.approvedOn === null ? null : true, 'approval-dated', `${path}.approvedOn`, { source: named }),
    );
  return allOf('approved', parts, 'cannot-tell');
}

function sequence(each: UnitFacts): Draft[] {
  const { approval } = each.unit;
  if (approval === null) return [];
  const { approvedOn, releasedOn } = approval;
  const path = `configuration.units.${each.id}.approval`;
  const missing = [
    ...(approvedOn === null ? [`${path}.approvedOn`] : []),
    ...(releasedOn === null ? [`${path}.releasedOn`] : []),
  ];
  const inOrder =
    approvedOn === null || releasedOn === null
      ? unknown('approved-before-release', missing, { source: order })
      : fact(approvedOn <= releasedOn, 'approved-before-release', '', { source: order });
  return [
    {
      subject: `${each.id}:order`,
      clause: needsApprovalFirst(approval.basis)
        ? inOrder
        : notApplicable('approved-before-release', { source: order }),
      messages: {
        met: 'in-order',
        'not-met': 'too-early',
        'cannot-tell': 'order-unclear',
        'not-applicable': 'no-data-to-wait-for',
      },
      data: { unit: each.unit.name, approvedOn, releasedOn },
      effects: [{ stops: 'release' }],
      remedies: [findOut('unit.amend', each.id, ...missing)],
    },
  ];
}

/** Data for a major alteration are approved before the release; type design and minor alterations wait for nobody. */
function needsApprovalFirst(basis: InstallationApproval['basis']): boolean {
  return basis === 'stc' || basis === 'stc-model-list' || basis === 'field-approval';
}

function adoptOrFind(each: UnitFacts): Remedy[] {
  return [
    { kind: 'do', change: 'adopt', subject: each.id, facts: [] },
    findOut('unit.amend', each.id, `configuration.units.${each.id}.approval`),
  ];
}
