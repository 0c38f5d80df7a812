import type { FunctionCode, SignalCode } from '../../catalogue/type.js';
import type { SourceRef } from '../../facts/source.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { mayServe } from '../../graph/units.js';
import { met } from '../../verdict/build.js';
import type { Leaf } from '../../verdict/clause.js';
import type { Capability } from '../../verdict/capability.js';
import type { Draft } from '../../verdict/result.js';
import { cfr } from '../cite.js';
import { findOut } from '../gaps.js';
import { noJoint } from '../no-joint.js';
import { defineRule } from '../rule.js';

interface Feed {
  /** What the transmitter sends, as its subject and its message name it. */
  readonly what: 'altitude' | 'position';
  readonly of: readonly FunctionCode[];
  /** A box with this function feeds itself, and another with it may. */
  readonly own: FunctionCode;
  readonly signals: readonly SignalCode[];
  readonly capability: Capability;
  readonly source: SourceRef;
}

const feeds: readonly Feed[] = [
  {
    what: 'altitude',
    of: ['transponder'],
    own: 'altitude-reporting',
    signals: ['altitude-gray', 'altitude-serial'],
    capability: 'altitude-reporting',
    source: cfr('91.215(b)'),
  },
  {
    what: 'position',
    of: ['ads-b-out-1090', 'ads-b-out-uat'],
    own: 'gnss',
    signals: ['position'],
    capability: 'ads-b-out',
    source: cfr('91.227(d)'),
  },
];

/** Whether the feeding unit works is a matter of its own rules; here that there is one, and that it is in use. */
export const transmitterFed = defineRule(
  {
    id: 'transmitter-fed',
    topic: 'equipment',
    asks: 'A unit in use gives each transponder its pressure altitude and each ADS-B Out unit its position.',
    binds: 'Transponders where altitude reporting is needed, and ADS-B Out units.',
    sources: feeds.map(({ source }) => source),
    messages: {
      fed: '{unit} takes its {what} from {from}.',
      own: '{unit} has its own {what}.',
      unfed: 'Nothing in use gives {unit} its {what}.',
      unclear: 'What gives {unit} its {what} is not recorded.',
    },
    establishes: [],
  },
  (facts) =>
    feeds.flatMap((feed) =>
      [...facts.units.values()]
        .filter((each) => mayServe(each) && feed.of.some((code) => each.functions.has(code)))
        .map((each) => statement(facts, each, feed)),
    ),
);

function statement(facts: Facts, unit: UnitFacts, feed: Feed): Draft {
  const { from, clause } = fedBy(facts, unit, feed);
  return {
    subject: `${unit.id}:${feed.what}`,
    clause,
    messages: {
      met: from === unit ? 'own' : 'fed',
      'not-met': 'unfed',
      'cannot-tell': 'unclear',
      'not-applicable': 'fed',
    },
    data: { unit: unit.unit.name, what: feed.what, from: from?.unit.name ?? null },
    effects: [{ stops: 'capability', capability: feed.capability, through: unit.id }],
    remedies: [
      { kind: 'do', change: 'link.connect', subject: unit.id, facts: [] },
      ...facts.links
        .filter((link) => link.toUnit === unit.id)
        .flatMap((link) => facts.units.get(link.fromUnit) ?? [])
        .filter((each) => !each.active)
        .map((each) => ({ kind: 'do' as const, change: 'unit.reactivate', subject: each.id, facts: [] })),
      ...findOut(clause, 'completeness.state', 'links'),
    ],
  };
}

/** A joint whose ends name no signal may be the one: cannot-tell. None at all is certain only where the list of joints is stated complete. */
function fedBy(facts: Facts, unit: UnitFacts, feed: Feed): { readonly from: UnitFacts | null; readonly clause: Leaf } {
  const extra = { source: feed.source };
  const label = `${feed.what}-source`;
  if (unit.functions.has(feed.own)) return { from: unit, clause: met(label, extra) };
  const joined = facts.links.flatMap((link) => {
    const signal = facts.signalOf(link);
    const sender = facts.units.get(link.fromUnit);
    return link.toUnit === unit.id && sender && mayServe(sender) && (signal === null || feed.signals.includes(signal))
      ? [{ sender, signal }]
      : [];
  });
  const sure = joined.find(({ signal }) => signal !== null);
  if (sure) return { from: sure.sender, clause: met(label, extra) };
  const unclear = joined.length > 0 ? ['configuration.links'] : [];
  return { from: null, clause: noJoint(facts, label, feed.source, unclear) };
}
