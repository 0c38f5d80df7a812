import type { Grant, InstalledUnit, Supplement } from '../../dossier/installation.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { c129Classes, c196, lpFromLetter, sbasOperationalClasses } from '../../facts/gnss.js';
import type { SourceRef } from '../../facts/source.js';
import { allOf, met, notMet, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import { aim, maker } from '../cite.js';
import type { GnssCapability } from '../effects.js';
import { gnssCapabilities, lostThrough } from '../effects.js';
import { allowedByClass } from '../gnss-authorisation.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';

const handHeld = aim('1-1-17 b.1');
const supplementGoverns = aim('1-1-17 b.2(a)(4)');

/**
 * One statement a satellite unit and capability: what class, installation approval and flight manual supplement all allow.
 * The class alone approves nothing, and of two papers that differ the narrower holds.
 */
export const gnssClass = defineRule(
  {
    id: 'gnss-class',
    topic: 'indication',
    asks: 'The class of the unit, the approval of its installation and its flight manual supplement all allow the use.',
    binds: 'Satellite navigation units, for each use under IFR; VFR asks nothing of them.',
    sources: [
      handHeld,
      supplementGoverns,
      c129Classes.source,
      c196.source,
      lpFromLetter.source,
      sbasOperationalClasses['1'].source,
      sbasOperationalClasses['3'].source,
    ],
    messages: {
      approved: '{unit} is approved for {capability} by class, installation and supplement.',
      'not-approved': '{unit} is not approved for {capability}.',
      unclear: 'Whether {unit} is approved for {capability} cannot be told.',
    },
    establishes: [...gnssCapabilities],
  },
  (facts) =>
    [...facts.units.values()]
      .filter((each) => each.functions.has('gnss'))
      .flatMap((each) =>
        gnssCapabilities.map((capability) => ({
          subject: `${each.id}:${capability}`,
          clause: allOf(
            'class-installation-supplement',
            [
              ...(each.functions.has('portable-display')
                ? [notMet('installed-not-hand-held', { source: handHeld })]
                : []),
              allowedByClass(each.id, each.type, capability),
              grantedByApproval(each.unit, capability),
              ...grantedBySupplements(facts, each, capability),
            ],
            'cannot-tell',
          ),
          messages: {
            met: 'approved',
            'not-met': 'not-approved',
            'cannot-tell': 'unclear',
            'not-applicable': 'unclear',
          },
          data: { unit: each.unit.name, capability },
          effects: lostThrough(each.id, [capability]),
          remedies: [
            { kind: 'do' as const, change: 'unit.install', subject: each.id, facts: [] },
            findOut('unit.amend', each.id, ...missingPapers(facts, each)),
          ],
        })),
      ),
);

function grantedByApproval({ id, approval }: InstalledUnit, capability: GnssCapability): Clause {
  const path = `configuration.units.${id}.approval`;
  if (approval === null) return unknown('approved-in-this-installation', [path], { source: handHeld });
  const source = maker(approval.document.title, 'use allowed');
  return granted('approved-in-this-installation', approval.grants, `${path}.grants`, capability, source);
}

function grantedBySupplements(facts: Facts, each: UnitFacts, capability: GnssCapability): readonly Clause[] {
  const found = supplementsOf(facts, each);
  if (found.length === 0)
    return [unknown('supplement-allows', ['configuration.supplements'], { source: supplementGoverns })];
  return found.map(({ id, document, grants }) =>
    granted(
      'supplement-allows',
      grants,
      `configuration.supplements.${id}.grants`,
      capability,
      maker(document.title, document.revision ?? 'revision not recorded'),
    ),
  );
}

function granted(
  label: string,
  grants: readonly Grant[] | null,
  path: string,
  capability: GnssCapability,
  source: SourceRef,
): Clause {
  if (grants === null) return unknown(label, [path], { source });
  return !grants.includes('vfr-only') && grants.includes(capability)
    ? met(label, { source })
    : notMet(label, { source });
}

function supplementsOf(facts: Facts, each: UnitFacts): readonly Supplement[] {
  return facts.dossier.configuration.supplements.filter(({ units }) => units.includes(each.id));
}

function missingPapers(facts: Facts, each: UnitFacts): readonly string[] {
  const { approval } = each.unit;
  const supplements = supplementsOf(facts, each);
  return [
    ...(each.type === null ? [`configuration.units.${each.id}.typeId`] : []),
    ...(approval === null ? [`configuration.units.${each.id}.approval`] : []),
    ...(approval?.grants === null ? [`configuration.units.${each.id}.approval.grants`] : []),
    ...(supplements.length === 0 ? ['configuration.supplements'] : []),
    ...supplements.flatMap(({ id, grants }) => (grants === null ? [`configuration.supplements.${id}.grants`] : [])),
  ];
}
