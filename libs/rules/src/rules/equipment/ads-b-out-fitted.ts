import { adsBClasses, adsBTso } from '../../facts/ads-b.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, anyOf, flight, met, not, notMet, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Draft } from '../../verdict/result.js';
import { cfr, maker } from '../cite.js';
import { findOut } from '../gaps.js';
import { defineRule } from '../rule.js';
import { tsoNumber } from '../tso.js';
import { builtTo, fittedWith, noUnit, operable, stateOf, waysOut } from '../unit-state.js';

const source = cfr('91.225(a), (b), (d)');
const family = (tso: string) => ['C166', 'C154'].includes(tsoNumber(tso));

/** 1090 MHz serves everywhere; 978 MHz only below 18,000 ft and outside class A. Fitted, inoperative and deactivated are kept apart. */
export const adsBOutFitted = defineRule(
  {
    id: 'ads-b-out-fitted',
    topic: 'equipment',
    asks: 'ADS-B Out equipment to a standard that 91.225 names, of a class of power and antenna that 91.227 names, is fitted and operable, on the frequency that the airspace takes.',
    binds: 'Each fitted ADS-B Out unit, not a portable one; flights in the airspace of 91.225 need one.',
    sources: [source, cfr('91.225(f), (g)'), adsBTso.source, adsBClasses.source],
    messages: {
      fitted: '{unit} is fitted and serves this airspace.',
      unfit: '{unit} does not serve this airspace, or meets none of the standards and classes that the rules name.',
      inoperative: '{unit} is recorded as inoperative; until it is repaired it is deactivated, placarded and recorded.',
      deactivated: '{unit} is deactivated.',
      unclear: 'To which standard and class {unit} was built is not recorded.',
      none: 'No ADS-B Out equipment is fitted.',
      unrecorded: 'Whether ADS-B Out equipment is fitted is not recorded.',
    },
    establishes: ['ads-b-out'],
  },
  (facts) => {
    const units = fittedWith(facts, 'ads-b-out-1090', 'ads-b-out-uat');
    return units.length === 0
      ? [noUnit(facts, 'ads-b-out-fitted', 'ads-b-out', source)]
      : units.map((each) => statement(facts, each));
  },
);

function statement(facts: Facts, unit: UnitFacts): Draft {
  const state = stateOf(facts, unit);
  const clause = allOf(
    'ads-b-out',
    [operable(state, source), anyOf('by-frequency', bands(unit), 'cannot-tell')],
    'cannot-tell',
  );
  return {
    subject: unit.id,
    clause,
    messages: {
      met: 'fitted',
      'not-met': state === 'working' ? 'unfit' : state,
      'cannot-tell': 'unclear',
      'not-applicable': 'fitted',
    },
    data: { unit: unit.unit.name },
    effects: [{ stops: 'capability', capability: 'ads-b-out', through: unit.id }],
    remedies: [...waysOut(facts, unit), ...findOut(clause, 'unit.amend', unit.id)],
  };
}

function bands(unit: UnitFacts): readonly Clause[] {
  const { es1090, uat978, uatBelowFt } = adsBTso.value;
  const built = (letters: readonly string[]) => builtTo(unit, family, (tso) => letters.includes(tso), adsBTso.source);
  return [
    ...(unit.functions.has('ads-b-out-1090')
      ? [allOf('1090-mhz', [built(es1090), ofClass(unit, es1090, adsBClasses.value.es1090)], 'cannot-tell')]
      : []),
    ...(unit.functions.has('ads-b-out-uat')
      ? [
          allOf(
            '978-mhz',
            [
              not(flight('outside-class-a', { airspace: ['class-a'] }, { source: adsBTso.source })),
              not(flight('below-18000-ft', { topFt: uatBelowFt }, { source: adsBTso.source })),
              built(uat978),
              ofClass(unit, uat978, adsBClasses.value.uat978),
            ],
            'cannot-tell',
          ),
        ]
      : []),
  ];
}

/** Class of power and antenna, as the mark of the authorisation gives it; where it gives none, the approval of this installation stands in. */
function ofClass({ id, unit, type }: UnitFacts, letters: readonly string[], named: readonly string[]): Clause {
  const { source } = adsBClasses;
  const authorised = (type?.authorisations ?? []).filter(({ tso }) => letters.includes(tso));
  const classes = authorised.map((each) => each.class?.toUpperCase().match(/\b[A-C]\d[A-Z]?\b/g) ?? []);
  if (classes.flat().some((each) => named.includes(each))) return met('class-named-by-rule', { source });
  if (classes.length > 0 && classes.every((each) => each.length > 0)) return notMet('class-named-by-rule', { source });
  return unit.approval === null
    ? unknown('class-named-by-rule', [`configuration.units.${id}.typeId`, `configuration.units.${id}.approval`], {
        source,
      })
    : met('installation-approved', { source: maker(unit.approval.document.title, 'approval of this installation') });
}
