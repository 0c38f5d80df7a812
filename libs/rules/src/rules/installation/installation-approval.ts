import type { FunctionCode } from '../../catalogue/type.js';
import type { InstallationApproval } from '../../dossier/installation.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, fact, met, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Draft, Remedy } from '../../verdict/result.js';
import { accepted } from '../as-found.js';
import { cfr, maker, practice } from '../cite.js';
import { lostThrough } from '../effects.js';
import { needsApprovalFirst } from '../release-owed.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';

const permission = cfr('91.403(d)');
const modelList = practice('exact model on the list revision in force (AC 23-22)');

/** Whether the papers of a unit are in order. That they were so before the work was released is `dates-in-order`. */
export const installationApproval = defineRule(
  {
    id: 'installation-approval',
    topic: 'installation',
    asks: 'Approved data are named for the installation of each avionics unit, with the permission and the model listing they need.',
    binds: 'Communication, navigation and surveillance units and their indicators; portable units are not installed.',
    sources: [permission, modelList],
    messages: {
      approved: 'The installation of {unit} rests on {document}.',
      'not-approved': 'The approval of {unit} by {document} does not hold for this aircraft.',
      unrecorded: 'Nobody recorded on which approved data {unit} was installed.',
      unclear: 'Whether {document} covers the installation of {unit} cannot be told.',
    },
    establishes: [],
  },
  (facts) => [...facts.units.values()].filter(isAvionics).map((each) => papers(facts, each)),
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

function adoptOrFind(each: UnitFacts): Remedy[] {
  return [
    { kind: 'do', change: 'adopt', subject: each.id, facts: [] },
    findOut('unit.amend', each.id, `configuration.units.${each.id}.approval`),
  ];
}
