import type { EquipmentType, FunctionCode } from '../../catalogue/type.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, met } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import { maker, practice } from '../cite.js';
import { capabilitiesOf, lostThrough } from '../effects.js';
import { noJoint } from '../no-joint.js';
import { defineRule } from '../rule.js';

const general = practice('a manual names the ports that a function needs');

/** One statement a unit and function, so that an open port costs what needs it and no more. */
export const requiredPortsJoined = defineRule(
  {
    id: 'required-ports-joined',
    topic: 'interfaces',
    asks: 'Every port that the manual requires for a function of the unit is joined.',
    binds: 'Catalogued units whose manual requires ports for a function they have.',
    sources: [general],
    messages: {
      joined: 'All ports that {unit} needs ({function}) are joined.',
      open: '{port} of {unit} is joined to nothing, and {function} needs it.',
      unclear: 'Whether {port} of {unit} is joined cannot be told: nobody stated the list of joints complete.',
    },
    establishes: [],
  },
  (facts) =>
    [...facts.units.values()].flatMap((each) => {
      const { type } = each;
      if (type === null) return [];
      return type.functions.flatMap((code) => {
        const ports = type.ports.filter((port) => port.requiredFor.includes(code));
        if (ports.length === 0) return [];
        const open = ports.find((port) => !isJoined(facts, each, port.name)) ?? null;
        return [
          {
            subject: `${each.id}:${code}`,
            clause: allOf(
              'required-ports',
              ports.map((port) => portClause(facts, each, type, port.name)),
              'cannot-tell',
            ),
            messages: { met: 'joined', 'not-met': 'open', 'cannot-tell': 'unclear', 'not-applicable': 'joined' },
            data: { unit: each.unit.name, function: code, port: open?.name ?? null },
            effects: lostThrough(each.id, costs(facts, each, code)),
            remedies: [{ kind: 'do' as const, change: 'link.connect', subject: each.id, facts: [] }],
          },
        ];
      });
    }),
);

/** A function that gives no capability by itself, such as showing deviation, costs whatever passes the unit. */
function costs(facts: Facts, each: UnitFacts, code: FunctionCode) {
  const own = capabilitiesOf(code);
  return own.length > 0 ? own : facts.capabilitiesThrough(each.id);
}

function isJoined(facts: Facts, each: UnitFacts, port: string): boolean {
  return facts.links.some(
    (link) =>
      (link.fromUnit === each.id && link.fromPort === port) || (link.toUnit === each.id && link.toPort === port),
  );
}

function portClause(facts: Facts, each: UnitFacts, type: EquipmentType, port: string): Clause {
  const source = maker(type.document, `port ${port}`);
  if (isJoined(facts, each, port)) return met(`port-joined`, { source });
  return noJoint(facts, 'port-joined', source);
}
