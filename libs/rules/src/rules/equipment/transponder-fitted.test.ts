import { approvalOf, mechanic, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { InstalledUnit } from '../../dossier/installation.js';
import type { Defect } from '../../dossier/status.js';
import { transponderFitted } from './transponder-fitted.js';

const at = '2026-03-02T14:00Z';
const typeFor = (tso: string | null) =>
  typeOf({ id: `x-${tso ?? 'none'}`, functions: ['transponder'], authorisations: tso ? [{ tso, class: null }] : [] });
const aircraft = (tso: string | null, part: Partial<InstalledUnit> = {}, defects: readonly Defect[] = []) => ({
  dossier: dossierOf({
    configuration: { units: [unitOf({ id: 'xp1', typeId: `x-${tso ?? 'none'}`, ...part })] },
    status: { defects },
  }),
  types: [typeFor(tso)],
  at,
  subject: 'xp1',
});
const defect = (kind: Defect['kind']): Defect => ({
  id: 'd1',
  kind,
  subject: 'xp1',
  text: 'No reply at any altitude.',
  raised: { date: '2026-03-01', at: null },
  decidedBy: mechanic,
  deferral: null,
});
const none = (complete: boolean) => ({
  dossier: dossierOf({
    status: {
      completeness: complete ? [{ list: 'equipment', stated: { asOf: '2025-09-10', by: 'R. Tamsin' } }] : [],
    },
  }),
  at,
  subject: 'aircraft',
});

// 14 CFR 91.215(a): TSO-C74b, C74c, or the appropriate class of C112.
testRule(transponderFitted, [
  { name: 'TSO-C74b', ...aircraft('C74b'), expect: 'met', message: 'fitted' },
  { name: 'TSO-C74c', ...aircraft('C74c'), expect: 'met' },
  { name: 'TSO-C112e', ...aircraft('C112e'), expect: 'met' },
  { name: 'TSO-C112 without letter', ...aircraft('C112'), expect: 'met' },
  { name: 'TSO-C74a: before the named letters', ...aircraft('C74a'), expect: 'not-met', message: 'other-standard' },
  { name: 'TSO-C74 without letter', ...aircraft('C74'), expect: 'not-met' },
  { name: 'catalogue silent, installation approved', ...aircraft(null, { approval: approvalOf() }), expect: 'met' },
  { name: 'catalogue silent, no approval recorded', ...aircraft(null), expect: 'cannot-tell', message: 'unclear' },
  {
    name: 'not catalogued',
    ...aircraft('C74c', { typeId: null, functions: ['transponder'] }),
    expect: 'cannot-tell',
  },
  {
    name: 'inoperative is not "not fitted"',
    ...aircraft('C112e', {}, [defect('inoperative-item')]),
    expect: 'not-met',
    message: 'inoperative',
  },
  {
    name: 'a portable one alone',
    dossier: dossierOf(none(true).dossier, {
      configuration: { units: [unitOf({ id: 'xp1', functions: ['transponder', 'portable-display'] })] },
    }),
    at,
    subject: 'aircraft',
    expect: 'not-met',
    message: 'none',
  },
  { name: 'wear only', ...aircraft('C112e', {}, [defect('wear')]), expect: 'met' },
  {
    name: 'deactivated is not "inoperative"',
    ...aircraft(
      'C112e',
      { deactivated: { since: { date: '2026-02-01', at: null }, placarded: true, recorded: true } },
      [defect('inoperative-item')],
    ),
    expect: 'not-met',
    message: 'deactivated',
  },
  { name: 'none, list complete', ...none(true), expect: 'not-met', message: 'none' },
  { name: 'none recorded', ...none(false), expect: 'cannot-tell', message: 'unrecorded' },
  { name: 'another number that begins alike', ...aircraft('C1121'), expect: 'cannot-tell' },
]);
