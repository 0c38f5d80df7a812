import { approvalOf, mechanic, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { FunctionCode } from '../../catalogue/type.js';
import type { InstalledUnit } from '../../dossier/installation.js';
import { adsBOutFitted } from './ads-b-out-fitted.js';

const at = '2026-03-02T14:00Z';
const below = { airspace: ['class-b-c'], topFt: 17_999 } as const;
const case_ = (
  tsos: readonly string[],
  functions: readonly FunctionCode[],
  part: Partial<InstalledUnit> = {},
  inoperative = false,
) => ({
  dossier: dossierOf({
    configuration: { units: [unitOf({ id: 'out1', typeId: 't', ...part })] },
    status: {
      defects: inoperative
        ? [
            {
              id: 'd1',
              kind: 'inoperative-item',
              subject: 'out1',
              text: 'Fails its self-test.',
              raised: { date: '2026-03-01', at: null },
              decidedBy: mechanic,
              deferral: null,
            },
          ]
        : [],
    },
  }),
  // As the label reads: 'C166b B1S', or without a class.
  types: [
    typeOf({
      id: 't',
      functions,
      authorisations: tsos.map((label) => {
        const [tso = '', ...mark] = label.split(' ');
        return { tso, class: mark.join(' ') || null };
      }),
    }),
  ],
  at,
  subject: 'out1',
  flight: below,
});
const es = (tso: string, part: Partial<InstalledUnit> = {}, mark = 'B1S') =>
  case_(['C112e', `${tso} ${mark}`.trim()], ['transponder', 'ads-b-out-1090'], part);
const uat = (tso: string, mark = 'B1S') => case_([`${tso} ${mark}`.trim()], ['ads-b-out-uat']);
const none = (complete: boolean) => ({
  dossier: dossierOf({
    status: {
      completeness: complete ? [{ list: 'equipment', stated: { asOf: '2025-09-10', by: 'R. Tamsin' } }] : [],
    },
  }),
  at,
  subject: 'aircraft',
});

// 14 CFR 91.225(a), (b): 1090 MHz by TSO-C166b or c anywhere; 978 MHz by C154c or d below 18,000 ft and outside class A.
testRule(adsBOutFitted, [
  { name: '1090 MHz, C166b', ...es('C166b'), expect: 'met', message: 'fitted' },
  { name: '1090 MHz, C166c', ...es('C166c'), expect: 'met' },
  {
    name: 'a portable one alone',
    dossier: dossierOf(none(true).dossier, {
      configuration: { units: [unitOf({ id: 'out1', functions: ['ads-b-out-uat', 'portable-display'] })] },
    }),
    at,
    subject: 'aircraft',
    expect: 'not-met',
    message: 'none',
  },
  { name: '1090 MHz, C166a', ...es('C166a'), expect: 'not-met', message: 'unfit' },
  { name: '1090 MHz in class A', ...es('C166b'), flight: { airspace: ['class-a'], topFt: 25_000 }, expect: 'met' },
  { name: '978 MHz, C154c, below 18,000 ft', ...uat('C154c'), expect: 'met' },
  { name: '1090 MHz, C166 without letter', ...es('C166'), expect: 'not-met' },
  { name: '978 MHz, C154b', ...uat('C154b'), expect: 'not-met' },
  {
    name: '978 MHz at 18,000 ft',
    ...uat('C154c'),
    flight: { airspace: ['class-b-c'], topFt: 18_000 },
    expect: 'not-met',
  },
  {
    name: '978 MHz at 18,001 ft',
    ...uat('C154c'),
    flight: { airspace: ['class-b-c'], topFt: 18_001 },
    expect: 'not-met',
  },
  {
    name: '978 MHz in class A, whatever the altitude given',
    ...uat('C154d'),
    flight: { airspace: ['class-a'], topFt: 10_000 },
    expect: 'not-met',
  },
  {
    name: 'both frequencies in class A',
    ...case_(['C166b A1', 'C154c A1H'], ['ads-b-out-1090', 'ads-b-out-uat']),
    flight: { airspace: ['class-a'], topFt: 25_000 },
    expect: 'met',
  },
  { name: 'catalogue silent', ...case_([], ['ads-b-out-1090']), expect: 'cannot-tell', message: 'unclear' },
  {
    name: 'catalogue speaks of the transponder only',
    ...case_(['C112e'], ['transponder', 'ads-b-out-1090']),
    expect: 'cannot-tell',
  },
  {
    name: 'catalogue silent, installation approved',
    ...case_([], ['ads-b-out-1090'], { approval: approvalOf() }),
    expect: 'met',
  },
  {
    name: 'inoperative',
    ...case_(['C166b'], ['ads-b-out-1090'], {}, true),
    expect: 'not-met',
    message: 'inoperative',
  },
  {
    name: 'deactivated',
    ...es('C166b', { deactivated: { since: { date: '2026-02-01', at: null }, placarded: true, recorded: true } }),
    expect: 'not-met',
    message: 'deactivated',
  },
  // 91.227(b): A1, A1S, A2, A3, B1 and B1S of the one, A1H, A1S, A2, A3, B1 and B1S of the other.
  { name: '1090 MHz, class A0', ...es('C166b', {}, 'A0'), expect: 'not-met', message: 'unfit' },
  { name: '1090 MHz, class A1', ...es('C166b', {}, 'A1'), expect: 'met' },
  { name: '1090 MHz, a class of the other standard', ...es('C166b', {}, 'A1H'), expect: 'not-met' },
  {
    name: '1090 MHz, class B0, whatever approval',
    ...es('C166b', { approval: approvalOf() }, 'B0'),
    expect: 'not-met',
  },
  { name: '978 MHz, class A1H', ...uat('C154c', 'A1H'), expect: 'met' },
  { name: '978 MHz, class A1L', ...uat('C154c', 'A1L'), expect: 'not-met' },
  { name: '978 MHz, class A1 of the other standard', ...uat('C154c', 'A1'), expect: 'not-met' },
  { name: 'class in words', ...es('C166b', {}, 'class b1s, no diversity'), expect: 'met' },
  { name: 'class not recorded', ...es('C166b', {}, ''), expect: 'cannot-tell', message: 'unclear' },
  { name: 'a mark that names no class', ...es('C166b', {}, 'see manual'), expect: 'cannot-tell' },
  {
    name: 'a class that no rule names under the one letter, none recorded under the other',
    ...case_(['C166b A0', 'C166c'], ['ads-b-out-1090']),
    expect: 'cannot-tell',
  },
  {
    name: 'of a type that no catalogue has',
    ...case_([], ['ads-b-out-1090'], { typeId: null, functions: ['ads-b-out-1090'] }),
    expect: 'cannot-tell',
    message: 'unclear',
  },
  { name: 'class not recorded, installation approved', ...es('C166b', { approval: approvalOf() }, ''), expect: 'met' },
  { name: 'none, list complete', ...none(true), expect: 'not-met', message: 'none' },
  { name: 'none recorded', ...none(false), expect: 'cannot-tell', message: 'unrecorded' },
  {
    name: '1090 MHz, another number that begins alike',
    ...case_(['C1661'], ['ads-b-out-1090']),
    expect: 'cannot-tell',
  },
]);
