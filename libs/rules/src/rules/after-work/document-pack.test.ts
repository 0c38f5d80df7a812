import { unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { DocumentPack } from '../../dossier/upkeep.js';
import { documentPack } from './document-pack.js';

const signed = { asOf: '2026-02-10', by: 'R. Tamsin' };
const pack = (part: Partial<DocumentPack> = {}): DocumentPack => ({
  id: 'pack1',
  unitId: 'gps1',
  parts: [
    { part: 'supplement', place: 'aboard', on: '2026-02-10' },
    { part: 'wiring-diagram', place: 'in-records', on: '2026-02-10' },
    { part: 'stc-permission', place: 'not-needed', on: null },
  ],
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
const units = [unitOf({ id: 'gps1', functions: ['gnss'] })];
const of = (packs: readonly DocumentPack[], closedBy: string | null = 'r1') =>
  dossierOf({ configuration: { units, packs }, status: { obligations: [owed(closedBy)] } });
const at = '2026-03-01T12:00Z';

// Common practice.
testRule(documentPack, [
  { name: 'each part has a place and it is handed over', dossier: of([pack()]), at, expect: 'met', message: 'whole' },
  {
    name: 'one part missing',
    dossier: of([pack({ parts: [{ part: 'wiring-diagram', place: 'missing', on: null }] })]),
    at,
    expect: 'not-met',
    message: 'missing',
    data: { parts: 'wiring diagram' },
  },
  {
    name: 'nobody looked for one part',
    dossier: of([pack({ parts: [{ part: 'supplement', place: null, on: null }] })]),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
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
        parts: [
          { part: 'supplement', place: 'missing', on: null },
          { part: 'wiring-diagram', place: 'missing', on: null },
        ],
      }),
    ]),
    at,
    subject: 'gps1',
    expect: 'not-met',
    data: { parts: 'supplement, wiring diagram' },
  },
]);
