import type { Placard } from '../../dossier/installation.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, anyOf, fact, implies, met, notApplicable, notMet, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Effect } from '../../verdict/result.js';
import { aim, practice } from '../cite.js';
import { gnssCapabilities, lostThrough } from '../effects.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';

const limited = aim('1-1-17 b.1', 'from-memory');
const stale = practice('a VFR placard left after an IFR approval, or the other way round, is a question to a person');

/** One statement an installed satellite unit. Placard and paper that disagree let nobody through until a person has answered. */
export const vfrLimitedPlacard = defineRule(
  {
    id: 'vfr-limited-placard',
    topic: 'indication',
    asks: 'A satellite unit that is limited to VFR has its placard in view, and one that is not has none.',
    binds: 'Installed satellite navigation units.',
    sources: [limited, stale],
    messages: {
      placarded: '{unit} is limited to VFR, and its placard is in view.',
      missing: '{unit} is limited to VFR, but no placard in view says so.',
      disagree: 'Placard and papers of {unit} do not agree on its limitation to VFR, or do not say.',
      'not-limited': '{unit} is not limited to VFR.',
    },
    establishes: [],
  },
  (facts) =>
    [...facts.units.values()]
      .filter((each) => each.functions.has('gnss') && !each.functions.has('portable-display'))
      .map((each) => {
        const paper = limitedByPaper(each);
        const placards = placardsOf(facts, each);
        const doubt: readonly Effect[] =
          paper !== true && placards.length > 0 ? lostThrough(each.id, gnssCapabilities) : [];
        return {
          subject: each.id,
          clause: judge(facts, each, paper, placards),
          messages: {
            met: 'placarded',
            'not-met': 'missing',
            'cannot-tell': 'disagree',
            'not-applicable': 'not-limited',
          },
          data: { unit: each.unit.name },
          effects: [{ stops: 'release' as const }, ...doubt],
          remedies: [
            paper === true
              ? { kind: 'do' as const, change: 'placard.fit', subject: each.id, facts: [] }
              : findOut('unit.amend', each.id, `configuration.units.${each.id}.approval.grants`),
          ],
        };
      }),
);

function limitedByPaper({ unit }: UnitFacts): boolean | null {
  return unit.approval?.grants == null ? null : unit.approval.grants.includes('vfr-only');
}

/** Placards of the unit, and those of which nobody recorded the unit. */
function placardsOf(facts: Facts, each: UnitFacts): readonly Placard[] {
  return facts.dossier.configuration.placards.filter(
    ({ kind, unitId }) => kind === 'gnss-vfr-only' && (unitId === each.id || unitId === null),
  );
}

function judge(facts: Facts, each: UnitFacts, paper: boolean | null, placards: readonly Placard[]): Clause {
  const path = `configuration.units.${each.id}.approval.grants`;
  if (paper !== true && placards.length > 0) return unknown('placard-and-paper-agree', [path], { source: stale });
  if (paper === false) return notApplicable('limited-to-vfr', { source: limited });
  const isLimited = fact(paper, 'limited-to-vfr', path, { source: limited });
  return implies(isLimited, inView(facts, placards));
}

/** One in view is enough; a second out of view takes nothing from it. */
function inView(facts: Facts, placards: readonly Placard[]): Clause {
  if (placards.length > 0) return anyOf('a-placard-in-view', placards.map(seenByPilot), 'cannot-tell');
  return facts.complete('placards') === null
    ? unknown('placard-recorded', ['configuration.placards', 'status.completeness.placards'], { source: limited })
    : notMet('placard-recorded', { source: limited });
}

function seenByPilot({ id, unitId, inView: seen }: Placard): Clause {
  const path = `configuration.placards.${id}`;
  return allOf(
    'placard-in-view',
    [
      unitId === null
        ? unknown('placard-of-this-unit', [`${path}.unitId`], { source: limited })
        : met('placard-of-this-unit', { source: limited }),
      fact(seen, 'placard-seen-by-pilot', `${path}.inView`, { source: limited, evidence: [id] }),
    ],
    'cannot-tell',
  );
}
