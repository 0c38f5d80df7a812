import type { EquipmentType, SignalCode } from '../../catalogue/type.js';
import type { Link } from '../../dossier/installation.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { anyOf, fact, met, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import { accepted } from '../as-found.js';
import { maker, practice } from '../cite.js';
import { lostThrough, planAndRelease } from '../effects.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';

const silent = practice('a joint that no manual and no approval names is approved by nobody');
/** Wires that carry no interface: every manual gives them for every aircraft. */
const plainWires: readonly SignalCode[] = ['power', 'audio'];

/** One statement a link. A silent catalogue approves nothing; the recorded approval of this installation or an adoption may. */
export const linkApproved = defineRule(
  {
    id: 'link-approved',
    topic: 'interfaces',
    asks: 'Each joint between units is on the list of either manual at its software, or covered by the approval of this installation, or was accepted as found.',
    binds: 'Every joint but power and audio wires.',
    sources: [silent],
    messages: {
      approved: '{from} may be joined to {to} ({signal}).',
      'not-approved': 'The manuals approve {from} with {to} ({signal}) at other software only.',
      unclear: 'Nothing recorded approves {from} with {to} ({signal}).',
    },
    establishes: [],
  },
  (facts) =>
    facts.links
      .filter((link) => !plainWires.some((each) => each === facts.signalOf(link)))
      .map((link) => {
        const listed = pairClauses(facts, link);
        const path = `configuration.links.${link.id}.cover`;
        return {
          subject: link.id,
          clause: anyOf(
            'approved-any-way',
            [
              ...listed,
              ...(link.cover === null ? [] : [coverClause(link.cover, path)]),
              ...(listed.length === 0 && link.cover === null
                ? [unknown('catalogue-silent', [path], { source: silent })]
                : []),
            ],
            'cannot-tell',
          ),
          messages: {
            met: 'approved',
            'not-met': 'not-approved',
            'cannot-tell': 'unclear',
            'not-applicable': 'approved',
          },
          data: { from: nameOf(facts, link.fromUnit), to: nameOf(facts, link.toUnit), signal: facts.signalOf(link) },
          effects: [...planAndRelease, ...lostThrough(link.id, facts.capabilitiesThrough(link.id))],
          remedies: [
            { kind: 'do' as const, change: 'adopt', subject: link.id, facts: [] },
            findOut('link.connect', link.id, path),
          ],
        };
      }),
);

/** Entries of both manuals that name the other family for this signal. */
function pairClauses(facts: Facts, link: Link): readonly Clause[] {
  const from = facts.units.get(link.fromUnit);
  const to = facts.units.get(link.toUnit);
  const signal = facts.signalOf(link);
  if (!from || !to || signal === null) return [];
  return [...pairsOf(from, to.type, signal), ...pairsOf(to, from.type, signal)];
}

function pairsOf(own: UnitFacts, other: EquipmentType | null, signal: SignalCode): readonly Clause[] {
  const entries =
    own.type?.pairs.filter((each) => each.family === other?.family && each.signals.includes(signal)) ?? [];
  return entries.map((entry) => {
    const source = maker(`${entry.document} ${entry.revision}`, 'list of approved interfaces');
    if (entry.software === null) return met('on-pair-list', { source });
    const same = own.unit.software === null ? null : own.unit.software === entry.software;
    return fact(same, 'on-pair-list-at-software', `configuration.units.${own.id}.software`, { source });
  });
}

function coverClause(cover: NonNullable<Link['cover']>, path: string): Clause {
  if (cover.by === 'as-found') return accepted(cover.acceptedBy, `${path}.acceptedBy`);
  return cover.document === null
    ? unknown('covered-by-installation-approval', [`${path}.document`], { source: silent })
    : met('covered-by-installation-approval', {
        source: maker(cover.document.title, cover.document.revision ?? 'revision not recorded'),
      });
}

function nameOf(facts: Facts, unitId: string): string {
  return facts.units.get(unitId)?.unit.name ?? unitId;
}
