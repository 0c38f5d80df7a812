import type { FunctionCode } from '../../catalogue/type.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { lineOfSightBelowDeg, maximumView } from '../../facts/view.js';
import { allOf, anyOf, fact, notMet } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import { unitAcceptedAsFound } from '../as-found.js';
import { maker, practice } from '../cite.js';
import { planAndRelease } from '../effects.js';
import { inView } from '../in-view.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';
import { seenUnits } from '../seen-units.js';

const reach = practice('what the pilot works in flight lies within the reach of the belted pilot');
/** Functions that the pilot sets, tunes or reads in flight. */
const worked: ReadonlySet<FunctionCode> = new Set([
  'com',
  'vor-receiver',
  'loc-receiver',
  'gnss',
  'transponder',
  'audio',
  'autopilot',
  'dme',
  'traffic-display',
]);

/** One statement a control head. Indicators and annunciators have a rule of their own; a box without a face is worked elsewhere. */
export const reachAndView = defineRule(
  {
    id: 'reach-and-view',
    topic: 'installation',
    asks: 'Units that the pilot works in flight sit where their manual approves, or where it is silent within reach and the wider cone of view.',
    binds:
      'Radios, navigators, transponders, audio panels and autopilots with a face in the panel; units accepted as found serve as they sit.',
    sources: [reach, lineOfSightBelowDeg.source, maximumView.source],
    messages: {
      'at-hand': '{unit} is in view and within reach.',
      away: '{unit} sits out of view or out of reach.',
      unclear: 'Whether {unit} is in view and within reach cannot be told.',
    },
    establishes: [],
  },
  (facts) => {
    const elsewhere = new Set(seenUnits(facts).map(([each]) => each.id));
    return [...facts.units.values()]
      .filter((each) => hasFace(each) && !elsewhere.has(each.id))
      .map((each) => ({
        subject: each.id,
        clause: anyOf(
          'at-hand',
          [
            unitAcceptedAsFound(each),
            allOf('seen-and-reached', [inView(facts, each, 'maximum'), reached(each)], 'cannot-tell'),
          ],
          'cannot-tell',
        ),
        messages: { met: 'at-hand', 'not-met': 'away', 'cannot-tell': 'unclear', 'not-applicable': 'at-hand' },
        data: { unit: each.unit.name },
        effects: planAndRelease,
        remedies: [findOut('unit.amend', each.id, ...missing(facts, each))],
      }));
  },
);

function hasFace({ functions, type, unit, active }: UnitFacts): boolean {
  const boxElsewhere = type === null ? unit.place === 'remote' : type.bezel === null;
  return (
    active && !boxElsewhere && !functions.has('portable-display') && [...functions].some((code) => worked.has(code))
  );
}

/** A place that the manual approves is within reach; for the others the far side of the panel is an open question. */
function reached({ id, type, unit }: UnitFacts): Clause {
  const path = `configuration.units.${id}.place`;
  if (unit.place === 'remote') return notMet('within-reach', { source: reach });
  if (type?.view && unit.place !== null && type.view.approvedPlaces.includes(unit.place))
    return fact(true, 'within-reach', path, { source: maker(type.view.document, 'location and view') });
  return fact(unit.place === null || unit.place === 'copilot-panel' ? null : true, 'within-reach', path, {
    source: reach,
  });
}

function missing(facts: Facts, { id, unit }: UnitFacts): readonly string[] {
  const path = `configuration.units.${id}`;
  return [
    ...(unit.place === null ? [`${path}.place`] : []),
    ...(unit.offsetIn === null ? [`${path}.offsetIn`] : []),
    ...(facts.dossier.configuration.openings.some((each) => each.id === unit.openingId) ? [] : [`${path}.openingId`]),
  ];
}
