import { calendarMonths } from '../../facts/intervals.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, implies, met, notApplicable, notMet, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Draft } from '../../verdict/result.js';
import { transpondersOf, underControlledIfr, unitsWith } from '../altitude-chain.js';
import type { Tested } from '../altitude-tests.js';
import { altimeterTested, reporterTested, staticSystemTested, transponderTested } from '../altitude-tests.js';
import { cfr } from '../cite.js';
import { findOut, recordIt } from '../remedies.js';
import { defineRule } from '../rule.js';
import { tasks } from '../who-may.js';

const source = calendarMonths.staticAndAltimeter.source;

/** One clock for each static system, altimeter and altitude reporter. How high they were tested is the rule `ifr-altitude-limit`. */
export const staticAltimeterTest = defineRule(
  {
    id: 'static-altimeter-test',
    topic: 'inspections',
    asks: 'Within the preceding 24 calendar months each static system, altimeter and altitude reporting system was tested to part 43 appendices E and F.',
    binds:
      'Airplanes and helicopters under IFR in controlled airspace, whatever the weather; not VFR, and not IFR in uncontrolled airspace.',
    sources: [source, cfr('91.411(b)'), cfr('91.411(c)'), tasks.transponderTest.source],
    messages: {
      current: '{item}: tested, good through {lastGood}.',
      lapsed: '{item}: no test that counts within the preceding 24 calendar months.',
      unclear: '{item}: whether a test counts cannot be told from the record.',
      'not-asked': '{item}: not asked of this aircraft or flight.',
      known: 'What has to be tested is recorded.',
      unknown: 'A static system, an altimeter or what reports altitude is not recorded.',
    },
    establishes: [],
  },
  (facts) => [
    listed(facts),
    ...facts.dossier.configuration.staticSystems.map((each) =>
      statement(
        facts,
        each.id,
        each.name,
        [staticSystemTested(facts, each.id)],
        [recordIt('static-system-test', each.id)],
      ),
    ),
    ...unitsWith(facts, 'altimeter', 'altitude-reporting').map((each) => ofUnit(facts, each)),
  ],
);

function ofUnit(facts: Facts, unit: UnitFacts): Draft {
  const { functions, active } = unit;
  const altimeter = functions.has('altimeter') ? [altimeterTested(facts, unit)] : [];
  const reporter = functions.has('altitude-reporting') ? [reporterTested(facts, unit), ...appendixF(facts, unit)] : [];
  const draft = statement(
    facts,
    unit.id,
    unit.unit.name,
    [...altimeter, ...reporter],
    [
      ...(altimeter.length > 0 ? [recordIt('altimeter-test', unit.id)] : []),
      ...(reporter.length > 0 ? [recordIt('altitude-reporting-test', unit.id)] : []),
      ...(reporter.length > 0 ? transpondersOf(facts, unit).map(({ id }) => recordIt('transponder-test', id)) : []),
      findOut('unit.amend', unit.id, `configuration.units.${unit.id}.manufactured`),
    ],
  );
  const inUse = active ? met('in-use', { source }) : notMet('in-use', { source });
  return { ...draft, clause: implies(inUse, draft.clause) };
}

/** An altitude reporting system ends in a transponder: appendix F asks of it what 91.413 asks. */
function appendixF(facts: Facts, reporter: UnitFacts): readonly Tested[] {
  const fed = transpondersOf(facts, reporter);
  if (fed.length > 0) return fed.filter((each) => each.active).map((each) => transponderTested(facts, each.id));
  const joined = { source: cfr('91.411(a)(1)') };
  const clause =
    facts.complete('links') === null
      ? unknown('transponder-it-serves', ['configuration.links'], joined)
      : notApplicable('serves-no-transponder', joined);
  return [{ clause, lastGood: null, due: [] }];
}

function statement(
  facts: Facts,
  subject: string,
  item: string,
  tested: readonly Tested[],
  remedies: NonNullable<Draft['remedies']>,
): Draft {
  return {
    subject,
    clause: underControlledIfr(
      facts,
      allOf(
        'tested-in-time',
        tested.map((each) => each.clause),
        'cannot-tell',
      ),
    ),
    messages: { met: 'current', 'not-met': 'lapsed', 'cannot-tell': 'unclear', 'not-applicable': 'not-asked' },
    data: { item, lastGood: tested.flatMap((each) => each.lastGood ?? []).sort()[0] ?? null },
    effects: [{ stops: 'capability', capability: 'ifr-aircraft' }],
    due: tested.flatMap((each) => each.due),
    remedies,
  };
}

/** Nothing is tested by not being there: every airplane has a static system and an altimeter; a reporter may be lacking. */
function listed(facts: Facts): Draft {
  const known = (there: boolean, label: string, path: string): Clause =>
    there ? met(label, { source }) : unknown(label, [path], { source });
  const { staticSystems } = facts.dossier.configuration;
  const reporters = unitsWith(facts, 'altitude-reporting').length > 0 || facts.complete('equipment') !== null;
  return {
    subject: 'aircraft',
    clause: underControlledIfr(
      facts,
      allOf(
        'what-is-tested-is-recorded',
        [
          known(staticSystems.length > 0, 'static-system-recorded', 'configuration.staticSystems'),
          known(unitsWith(facts, 'altimeter').length > 0, 'altimeter-recorded', 'configuration.units'),
          known(reporters, 'altitude-reporter-recorded-or-none', 'configuration.units'),
        ],
        'cannot-tell',
      ),
    ),
    messages: { met: 'known', 'not-met': 'unknown', 'cannot-tell': 'unknown', 'not-applicable': 'not-asked' },
    data: { item: 'Static and altimeter system', lastGood: null },
    effects: [{ stops: 'capability', capability: 'ifr-aircraft' }],
    remedies: [
      findOut('static-system.set', 'aircraft', 'configuration.staticSystems'),
      findOut('completeness.state', 'equipment', 'status.completeness'),
    ],
  };
}
