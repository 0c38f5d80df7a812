import { approvalOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { InstallationApproval } from '../../dossier/installation.js';
import type { DocumentPack, PackPart } from '../../dossier/upkeep.js';
import { documentPack } from './document-pack.js';

const signed = { asOf: '2026-02-10', by: 'R. Tamsin' };
const placed = (part: PackPart['part'], place: PackPart['place'] = 'in-records'): PackPart => ({
  part,
  place,
  on: '2026-02-10',
});
const whole = [
  placed('release-entry'),
  placed('alteration-form', 'sent'),
  placed('supplement', 'aboard'),
  placed('continued-airworthiness', 'with-owner'),
  placed('stc-permission', 'not-needed'),
];
const but = (...parts: readonly PackPart[]) => [
  ...whole.filter(({ part }) => !parts.some((each) => each.part === part)),
  ...parts,
];
const without = (...parts: readonly PackPart['part'][]) => whole.filter(({ part }) => !parts.includes(part));
const pack = (part: Partial<DocumentPack> = {}): DocumentPack => ({
  id: 'pack1',
  unitId: 'gps1',
  parts: whole,
  handOver: signed,
  ...part,
});
const owed = (closedBy: string | null) => ({
  id: 'release-entry:gps1',
  what: 'release-entry' as const,
  subject: 'gps1',
  since: { date: '2026-02-09', at: null },
  becauseOf: 'unit.install',
  touched: null,
  closedBy,
});
const of = (
  packs: readonly DocumentPack[],
  closedBy: string | null = 'r1',
  basis: InstallationApproval['basis'] | null = null,
) =>
  dossierOf({
    configuration: {
      units: [unitOf({ id: 'gps1', functions: ['gnss'], approval: basis === null ? null : approvalOf({ basis }) })],
      packs,
    },
    status: { obligations: [owed(closedBy)] },
  });
const named = ['release-entry', 'alteration-form', 'supplement', 'continued-airworthiness', 'stc-permission'] as const;
const at = '2026-03-01T12:00Z';

// Common practice.
testRule(documentPack, [
  { name: 'each part has a place and it is handed over', dossier: of([pack()]), at, expect: 'met', message: 'whole' },
  {
    name: 'one part missing',
    dossier: of([pack({ parts: but(placed('wiring-diagram', 'missing')) })]),
    at,
    expect: 'not-met',
    message: 'missing',
    data: { parts: 'wiring diagram' },
  },
  {
    name: 'nobody looked for one part',
    dossier: of([pack({ parts: but(placed('supplement', null)) })]),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'a pack that names no part, handed over',
    dossier: of([pack({ parts: [] })]),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  ...named.map((part) => ({
    name: `nothing said of the ${part.replaceAll('-', ' ')}`,
    dossier: of([pack({ parts: without(part) })]),
    at,
    expect: 'cannot-tell' as const,
  })),
  {
    name: 'none of it needed, and said so',
    dossier: of([pack({ parts: whole.map(({ part }) => placed(part, 'not-needed')) })]),
    at,
    expect: 'met',
  },
  {
    name: 'no part named, and one missing',
    dossier: of([pack({ parts: [placed('wiring-diagram', 'missing')] })]),
    at,
    expect: 'not-met',
  },
  {
    name: 'nothing said of a permission, where no STC is used',
    dossier: of([pack({ parts: without('stc-permission') })], 'r1', 'minor-alteration'),
    at,
    expect: 'met',
  },
  {
    name: 'nothing said of a permission, under an STC',
    dossier: of([pack({ parts: without('stc-permission') })], 'r1', 'stc'),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'nothing said of a permission, under an STC with a model list',
    dossier: of([pack({ parts: without('stc-permission') })], 'r1', 'stc-model-list'),
    at,
    expect: 'cannot-tell',
  },
  { name: 'not handed over', dossier: of([pack({ handOver: null })]), at, expect: 'cannot-tell' },
  { name: 'release owed, no pack', dossier: of([], null), at, subject: 'gps1', expect: 'cannot-tell' },
  { name: 'release owed, pack whole', dossier: of([pack()], null), at, subject: 'gps1', expect: 'met' },
  {
    name: 'release owed, the pack is that of another unit',
    dossier: of([pack({ id: 'pack2', unitId: 'com1' })], null),
    at,
    subject: 'gps1',
    expect: 'cannot-tell',
  },
  { name: 'released long ago, no pack', dossier: of([]), at, subject: 'gps1', expect: 'none' },
  {
    name: 'two parts missing, beside the pack of another unit',
    dossier: of([
      pack({ id: 'pack2', unitId: 'com1' }),
      pack({
        parts: but(placed('supplement', 'missing'), placed('wiring-diagram', 'missing')),
      }),
    ]),
    at,
    subject: 'gps1',
    expect: 'not-met',
    data: { parts: 'supplement, wiring diagram' },
  },
]);
