import type { DocumentPack } from '../../dossier/upkeep.js';
import type { Facts } from '../../graph/facts.js';
import { allOf, fact, unknown } from '../../verdict/build.js';
import type { Draft } from '../../verdict/result.js';
import { practice } from '../cite.js';
import { findOut } from '../gaps.js';
import { releaseOwed } from '../release-owed.js';
import { defineRule } from '../rule.js';

const source = practice('every part of an installation’s documents has a known place, and the hand-over is signed');

/** The pack is one object whose parts each lie somewhere; the job is not closed while one of them does not. */
export const documentPack = defineRule(
  {
    id: 'document-pack',
    topic: 'after-work',
    asks: 'Each part of the documents of an installation has a place, none is missing, and the hand-over is signed.',
    binds: 'Installations with a recorded pack, and those whose release is owed; it holds up the release.',
    sources: [source],
    messages: {
      whole: '{unit}: every document has its place, handed over.',
      missing: '{unit}: missing from its documents: {parts}.',
      unclear: '{unit}: where its documents are, or whether they were handed over, is not recorded.',
    },
    establishes: [],
  },
  (facts) => {
    const { packs } = facts.dossier.configuration;
    const without = releaseOwed(facts).filter((id) => !packs.some((each) => each.unitId === id));
    return [
      ...packs.map((each) => statement(facts, each.unitId, each)),
      ...without.map((id) => statement(facts, id, null)),
    ];
  },
);

function statement(facts: Facts, unitId: string, pack: DocumentPack | null): Draft {
  const path = pack === null ? 'configuration.packs' : `configuration.packs.${pack.id}`;
  const clause =
    pack === null
      ? unknown('pack-recorded', [path], { source })
      : allOf(
          'pack-whole',
          [
            ...pack.parts.map(({ part, place }) =>
              fact(place === null ? null : place !== 'missing', part, `${path}.parts.${part}`, { source }),
            ),
            fact(pack.handOver === null ? null : true, 'hand-over-signed', `${path}.handOver`, { source }),
          ],
          'cannot-tell',
        );
  const missing = pack?.parts.filter(({ place }) => place === 'missing').map(({ part }) => part.replaceAll('-', ' '));
  return {
    subject: unitId,
    clause,
    messages: { met: 'whole', 'not-met': 'missing', 'cannot-tell': 'unclear', 'not-applicable': 'whole' },
    data: { unit: facts.units.get(unitId)?.unit.name ?? unitId, parts: missing?.join(', ') ?? null },
    effects: [{ stops: 'release' }],
    remedies: [{ kind: 'do', change: 'pack.set', subject: unitId, facts: [] }, ...findOut(clause, 'pack.set', unitId)],
  };
}
