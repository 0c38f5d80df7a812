import type { DocumentPack, PackPart } from '../../dossier/upkeep.js';
import type { Facts } from '../../graph/facts.js';
import { allOf, fact, unknown } from '../../verdict/build.js';
import type { Draft } from '../../verdict/result.js';
import { practice } from '../cite.js';
import { findOut } from '../gaps.js';
import { releaseOwed } from '../release-owed.js';
import { defineRule } from '../rule.js';

const source = practice('every part of an installation’s documents has a known place, and the hand-over is signed');

const contents = practice(
  'form, supplement, instructions and entry of release; with an STC the permission to use it (91.403(d))',
);
/** What a pack says something of, be it that the part is not needed. */
const named: readonly PackPart['part'][] = [
  'release-entry',
  'alteration-form',
  'supplement',
  'continued-airworthiness',
];

/** The pack is one object whose parts each lie somewhere; the job is not closed while one of them does not. */
export const documentPack = defineRule(
  {
    id: 'document-pack',
    topic: 'after-work',
    asks: 'Each part of the documents of an installation has a place or is not needed, none is missing, and the hand-over is signed: the entry of release, the form, the supplement, the instructions for continued airworthiness, with an STC the permission to use it, and whatever else the pack names.',
    binds: 'Installations with a recorded pack, and those whose release is owed; it holds up the release.',
    sources: [source, contents],
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
            ...unnamed(facts, pack).map((part) => unknown(part, [`${path}.parts.${part}`], { source: contents })),
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

/** Parts of which the pack says nothing. Only a recorded approval that rests on no STC says that no permission is needed. */
function unnamed(facts: Facts, { unitId, parts }: DocumentPack): readonly PackPart['part'][] {
  const basis = facts.units.get(unitId)?.unit.approval?.basis ?? null;
  const byStc = basis === null || basis === 'stc' || basis === 'stc-model-list';
  const wanted = byStc ? [...named, 'stc-permission' as const] : named;
  return wanted.filter((each) => !parts.some(({ part }) => part === each));
}
