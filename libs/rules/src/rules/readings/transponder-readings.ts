import type { JudgedReadings } from '../../calculations/judged.js';
import { cannotTell, judged } from '../../calculations/judged.js';
import { judgeTransponderTest } from '../../calculations/transponder-test.js';
import type { TransponderReadings } from '../../dossier/readings.js';
import { appendixF } from '../../facts/transponder.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import type { Draft } from '../../verdict/result.js';
import { reportersOf, underControlledIfr, unitsWith } from '../altitude-chain.js';
import { cfr } from '../cite.js';
import { recordedReadings } from '../recorded-readings.js';
import { recordIt } from '../remedies.js';
import { defineRule } from '../rule.js';
import { tsoNumber } from '../tso.js';
import { tasks } from '../who-may.js';

const authorised = cfr('91.215(a)');

/** By class and by the edition in force on the day of the test; watts and dBW both, the stricter decides. */
export const transponderReadings = defineRule(
  {
    id: 'transponder-readings',
    topic: 'readings',
    asks: 'The readings of the newest transponder test are complete and within part 43 appendix F for the class of the unit, which is one of its authorisation: Mode S under TSO-C112, ATCRBS under TSO-C74.',
    binds:
      'Transponders whose newest entry carries readings, for any use; where one reports altitude, also under IFR in controlled airspace.',
    sources: [appendixF('(a) to (j)'), authorised, cfr('91.413(a)'), cfr('91.411(a)(1)')],
    messages: {
      within: '{item}: the readings of {done} are within appendix F.',
      outside: '{item}: {what} reads {value} {unit}, the limit is {limit}.',
      failed: '{item}: the test of {done} was entered as failed.',
      incomplete: '{item}: the readings of {done} are not complete, or not of a class that the unit is built to.',
      none: '{item}: no readings to judge for this flight.',
    },
    establishes: [],
  },
  (facts) => unitsWith(facts, 'transponder').flatMap((each) => ofUnit(facts, each)),
);

function ofUnit(facts: Facts, transponderUnit: UnitFacts): readonly Draft[] {
  const { id, unit, functions } = transponderUnit;
  const found = recordedReadings(
    facts,
    { kinds: ['transponder-test'], subjects: [id], by: tasks.transponderTest },
    ({ transponder }, record) =>
      transponder === null
        ? null
        : ofItsClass(transponderUnit, transponder, judgeTransponderTest(transponder, record.done.date)),
  );
  const ofUse: Draft = {
    subject: id,
    clause: found.clause,
    messages: found.messages,
    data: { item: unit.name, ...found.data },
    effects: [
      { stops: 'capability', capability: 'altitude-reporting', through: id },
      ...(functions.has('ads-b-out-1090')
        ? [{ stops: 'capability' as const, capability: 'ads-b-out' as const, through: id }]
        : []),
    ],
    remedies: [recordIt('transponder-test', id)],
  };
  if (reportersOf(facts, transponderUnit).length === 0) return [ofUse];
  const effects: Draft['effects'] = [{ stops: 'capability', capability: 'ifr-aircraft' }];
  return [ofUse, { ...ofUse, subject: `${id}:ifr`, clause: underControlledIfr(facts, found.clause), effects }];
}

/**
 * Readings typed with a class that the unit is not built to were held to other limits than its own. Where the catalogue is silent,
 * the approval of this installation stands in.
 */
function ofItsClass(
  { unit, type }: UnitFacts,
  { equipmentClass }: TransponderReadings,
  found: JudgedReadings,
): JudgedReadings {
  if (equipmentClass === null) return found;
  const builtTo = (number: string) => type !== null && type.authorisations.some(({ tso }) => tsoNumber(tso) === number);
  const modeS = builtTo('C112');
  const atcrbs = builtTo('C74');
  const silent = !modeS && !atcrbs;
  const agrees = silent ? unit.approval !== null : equipmentClass.startsWith('mode-s') === modeS;
  return agrees ? found : judged([...found.points, cannotTell({ what: 'class-of-unit', source: authorised })]);
}
