import type { Paper } from '../../dossier/upkeep.js';
import type { SourceRef } from '../../facts/source.js';
import type { Facts } from '../../graph/facts.js';
import { allOf, fact, met, unknown, within } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Draft, Effect } from '../../verdict/result.js';
import { cfr } from '../cite.js';
import { advice } from '../effects.js';
import { findOut, joined } from '../gaps.js';
import { dueOn, endOfDay } from '../periodic.js';
import { defineRule } from '../rule.js';

/** 91.203 was not read; that a registration expires on a printed day neither. */
const aboard = cfr('91.203');
const manual = cfr('91.9(b)');
const licence = cfr('91.203; radio licence outside the country of registry', 'from-memory');

const sources: Readonly<Record<Paper['kind'], SourceRef>> = {
  registration: aboard,
  'airworthiness-certificate': aboard,
  'flight-manual': manual,
  'operating-limitations': manual,
  'radio-licence': licence,
};

/**
 * A paper that somebody recorded is judged. Papers that nobody recorded are asked for and cost nothing: they lie in the
 * aircraft, where its pilot finds them, and the shop has seen few of them.
 */
export const documentsInForce = defineRule(
  {
    id: 'documents-in-force',
    topic: 'inspections',
    asks: 'Registration, airworthiness certificate and flight manual or operating limitations are aboard and in force.',
    binds: 'Every aircraft, for the papers that are recorded; a radio licence only advises.',
    sources: [aboard, manual, licence],
    messages: {
      'in-force': '{paper}: aboard and in force.',
      missing: '{paper}: not aboard, or out of force since {expires}.',
      unclear: '{paper}: whether it is aboard and in force is not recorded.',
    },
    establishes: [],
  },
  (facts) => {
    const { papers, aircraft } = facts.dossier.configuration;
    const limited = aircraft.certificate === 'experimental' || aircraft.certificate === 'light-sport';
    const asked: readonly Paper['kind'][] = [
      'registration',
      'airworthiness-certificate',
      limited ? 'operating-limitations' : 'flight-manual',
    ];
    const without = asked.filter((kind) => !papers.some((each) => each.kind === kind));
    return [...papers.map((each) => recorded(facts, each)), ...(without.length > 0 ? [unrecorded(without)] : [])];
  },
);

function recorded(facts: Facts, paper: Paper): Draft {
  const source = sources[paper.kind];
  const path = `configuration.papers.${paper.id}`;
  const clause = allOf(
    'aboard-and-in-force',
    [fact(paper.aboard, 'aboard', `${path}.aboard`, { source }), force(facts, paper, path)],
    'cannot-tell',
  );
  const effects: readonly Effect[] =
    paper.kind === 'radio-licence' ? advice : [{ stops: 'capability', capability: 'fly' }];
  return {
    subject: paper.id,
    clause,
    messages: { met: 'in-force', 'not-met': 'missing', 'cannot-tell': 'unclear', 'not-applicable': 'in-force' },
    data: { paper: joined([paper.kind]), expires: paper.expires },
    effects,
    due: dueOn(facts, paper.kind, paper.expires),
    remedies: [
      { kind: 'do', change: 'paper.set', subject: paper.id, facts: [] },
      ...findOut(clause, 'paper.set', paper.id),
    ],
  };
}

/** Manuals, limitations and a standard airworthiness certificate do not end by a date (21.181, from memory); the others do. */
function force(facts: Facts, { kind, expires }: Paper, path: string): Clause {
  const source = sources[kind];
  const { certificate } = facts.dossier.configuration.aircraft;
  const endless =
    kind === 'flight-manual' ||
    kind === 'operating-limitations' ||
    (kind === 'airworthiness-certificate' && certificate === 'standard');
  if (endless) return met('no-end-by-date', { source });
  return expires === null
    ? unknown('in-force', [`${path}.expires`], { source })
    : within('in-force', { before: endOfDay(facts, expires) }, { source });
}

/** One statement for all of them: they are looked for in one visit. */
function unrecorded(kinds: readonly Paper['kind'][]): Draft {
  const clause = allOf(
    'recorded',
    kinds.map((kind) => unknown(kind, ['configuration.papers'], { source: sources[kind] })),
    'met',
  );
  return {
    subject: 'papers',
    clause,
    messages: { met: 'in-force', 'not-met': 'missing', 'cannot-tell': 'unclear', 'not-applicable': 'in-force' },
    data: { paper: joined(kinds), expires: null },
    effects: [{ stops: 'nothing', kind: 'record' }],
    remedies: findOut(clause, 'paper.set', 'papers'),
  };
}
