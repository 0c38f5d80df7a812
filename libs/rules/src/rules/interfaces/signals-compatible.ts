import { arinc429SpeedOf } from '../../calculations/arinc-429.js';
import { arinc429Receivers, arinc429Speeds } from '../../facts/data-bus.js';
import type { EquipmentType } from '../../catalogue/type.js';
import type { Link } from '../../dossier/installation.js';
import type { Facts } from '../../graph/facts.js';
import { allOf, anyOf, fact, met, notMet, unknown } from '../../verdict/build.js';
import type { Clause, Leaf } from '../../verdict/clause.js';
import { accepted } from '../as-found.js';
import { practice } from '../cite.js';
import { planAndRelease } from '../effects.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';

type Port = EquipmentType['ports'][number];

const source = practice('signal, direction, standard and speed agree at both ends; one transmitter a bus');
const oneTransmitter: readonly Port['standard'][] = ['arinc-429', 'rs-232', 'rs-422', 'analog'];

/** One statement a link. A joint that somebody accepted as found works as it is; a planned one must agree on paper. */
export const signalsCompatible = defineRule(
  {
    id: 'signals-compatible',
    topic: 'interfaces',
    asks: 'Signal, direction, standard and speed agree at both ends of a joint, a bus has one transmitter, and no transmitter drives more receivers than it may.',
    binds: 'Every joint between installed units.',
    sources: [source, arinc429Receivers.source, arinc429Speeds.source],
    messages: {
      agree: '{from} and {to} speak alike.',
      disagree: '{from} and {to} do not speak alike, or share a line that takes one transmitter.',
      unclear:
        'Whether {from} and {to} speak alike cannot be told: a port or its speed is not catalogued, or the speed is none that its standard has.',
    },
    establishes: [],
  },
  (facts) =>
    facts.links.map((link) => {
      const from = portOf(facts, link.fromUnit, link.fromPort);
      const to = portOf(facts, link.toUnit, link.toPort);
      return {
        subject: link.id,
        clause: anyOf('works-or-agrees', [asFound(link), agrees(facts, link, from, to)], 'cannot-tell'),
        messages: { met: 'agree', 'not-met': 'disagree', 'cannot-tell': 'unclear', 'not-applicable': 'agree' },
        data: { from: `${link.fromUnit} ${link.fromPort}`, to: `${link.toUnit} ${link.toPort}` },
        effects: planAndRelease,
        remedies: [
          from && to
            ? { kind: 'do' as const, change: 'link.disconnect', subject: link.id, facts: [] }
            : findOut('unit.amend', from ? link.toUnit : link.fromUnit, ...uncatalogued(link, from, to)),
        ],
      };
    }),
);

function portOf(facts: Facts, unitId: string, name: string): Port | null {
  return facts.units.get(unitId)?.type?.ports.find((each) => each.name === name) ?? null;
}

function asFound({ id, cover }: Link): Clause {
  return cover?.by === 'as-found'
    ? accepted(cover.acceptedBy, `configuration.links.${id}.cover.acceptedBy`)
    : notMet('accepted-as-found', { source });
}

function uncatalogued(link: Link, from: Port | null, to: Port | null): readonly string[] {
  return [
    ...(from ? [] : [`configuration.units.${link.fromUnit}.typeId`]),
    ...(to ? [] : [`configuration.units.${link.toUnit}.typeId`]),
  ];
}

function agrees(facts: Facts, link: Link, from: Port | null, to: Port | null): Clause {
  const others = facts.links.filter(
    (each) => each.id !== link.id && each.toUnit === link.toUnit && each.toPort === link.toPort,
  );
  const receivers = facts.links.filter((each) => each.fromUnit === link.fromUnit && each.fromPort === link.fromPort);
  const standard = from?.standard ?? to?.standard ?? null;
  const parts: Clause[] = [];
  if (from && to) {
    parts.push(
      fact(from.signal === to.signal, 'same-signal', '', { source }),
      fact(from.standard === to.standard, 'same-standard', '', { source }),
      ...(from.standard === to.standard ? [sameSpeed(link, from, to)] : []),
    );
  } else parts.push(unknown('both-ports-catalogued', uncatalogued(link, from, to), { source }));
  if (from) parts.push(fact(from.direction !== 'in', 'sends', '', { source }));
  if (to) parts.push(fact(to.direction !== 'out', 'receives', '', { source }));
  if (standard !== null && oneTransmitter.includes(standard))
    parts.push(fact(others.length === 0, 'one-transmitter', '', { source }));
  if (standard === 'arinc-429')
    parts.push(
      fact(receivers.length <= arinc429Receivers.value, 'receivers-of-bus', '', {
        source: arinc429Receivers.source,
        value: { amount: receivers.length, unit: 'receivers' },
        limit: { amount: arinc429Receivers.value, unit: 'receivers' },
      }),
    );
  return allOf('agree', parts, 'cannot-tell');
}

/**
 * Of two ports of one standard. A standard without speed has none at both ends; a speed stated at one end alone settles nothing. A receiver for either speed of a data
 * bus takes all that the standard calls that speed.
 */
function sameSpeed(link: Link, from: Port, to: Port): Leaf {
  const path = `catalogue.${link.fromUnit}.ports`;
  const alike = from.speed === to.speed;
  if (from.speed === null || to.speed === null) return fact(alike ? true : null, 'same-speed', path, { source });
  if (from.standard !== 'arinc-429') return fact(alike, 'same-speed', path, { source });
  const [sent, taken] = [arinc429SpeedOf(from.speed), arinc429SpeedOf(to.speed)];
  if (sent === null && alike) return fact(null, 'same-speed', path, { source: arinc429Speeds.source });
  return alike
    ? met('same-speed', { source })
    : fact(sent !== null && sent === taken, 'same-speed', path, { source: arinc429Speeds.source });
}
