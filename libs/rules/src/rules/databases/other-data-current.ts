import type { DatabaseKind } from '../../catalogue/type.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { unknown, within } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Draft } from '../../verdict/result.js';
import { maker, practice } from '../cite.js';
import { advice } from '../effects.js';
import { defineRule } from '../rule.js';

const source = practice('terrain, obstacle and chart data are kept in date');

/** Only what the provider printed: these data follow no common cycle. No rule that was read asks for them, so it advises. */
export const otherDataCurrent = defineRule(
  {
    id: 'other-data-current',
    topic: 'databases',
    asks: 'Terrain, obstacle, chart and other data are loaded and not beyond the day that their provider printed.',
    binds: 'Units with such databases; advice only. Navigation data have a rule of their own.',
    sources: [source],
    messages: {
      current: '{unit}: {database} data are in date until {expires}.',
      expired: '{unit}: {database} data expired at {expires}.',
      unclear: '{unit}: whether {database} data are loaded and in date is not recorded.',
    },
    establishes: [],
  },
  (facts) =>
    [...facts.units.values()].flatMap((unit) =>
      (unit.type?.databases ?? [])
        .filter(({ kind }) => kind !== 'navigation')
        .map(({ kind }) => statement(facts, unit, kind)),
    ),
);

function statement(facts: Facts, { id, unit }: UnitFacts, database: DatabaseKind): Draft {
  const loads = facts.dossier.status.loads.filter((each) => each.unitId === id && each.database === database);
  const load = loads.find((each) => each.slot === 'this') ?? null;
  const expires = load?.expires ?? null;
  const path = `status.loads.${id}.${database}.this`;
  const clause: Clause =
    expires === null
      ? unknown('expiry-printed', [load === null ? path : `${path}.expires`], { source })
      : within(
          'before-printed-expiry',
          { before: expires },
          { source: maker('label of the database', `${database} data`), evidence: [path] },
        );
  return {
    subject: `${id}:${database}`,
    clause,
    messages: { met: 'current', 'not-met': 'expired', 'cannot-tell': 'unclear', 'not-applicable': 'current' },
    data: { unit: unit.name, database, expires },
    effects: advice,
    due: expires === null ? [] : [{ what: `${database}-data`, lapses: expires, combine: 'first' }],
    remedies: [{ kind: 'do', change: 'database.load', subject: id, facts: [] }],
  };
}
