import { linkOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { InstalledUnit, Link } from '../../dossier/installation.js';
import { altitudeSameSource } from './altitude-same-source.js';

const at = '2026-03-02T14:00Z';
const transponder = unitOf({ id: 'xp1', functions: ['transponder'] });
const uat = unitOf({ id: 'uat1', functions: ['ads-b-out-uat'] });
const encoder = unitOf({ id: 'enc1', functions: ['altitude-reporting'] });
const other = unitOf({ id: 'enc2', functions: ['altitude-reporting'] });
const altitude = (from: string, to: string) => linkOf(from, 'altitude-serial', to, 'altitude-serial');
const off = { since: { date: '2026-02-01', at: null }, placarded: true, recorded: true };
const case_ = (name: string, units: readonly InstalledUnit[], links: readonly Link[] = [], subject = 'uat1') => ({
  name,
  dossier: dossierOf({ configuration: { units, links } }),
  at,
  subject,
});

// 14 CFR 91.217(b)
testRule(altitudeSameSource, [
  {
    ...case_('one box does both', [unitOf({ id: 'box', functions: ['transponder', 'ads-b-out-1090'] })], [], 'box'),
    expect: 'met',
    message: 'same',
  },
  {
    ...case_('both from one encoder', [transponder, uat, encoder], [altitude('enc1', 'xp1'), altitude('enc1', 'uat1')]),
    expect: 'met',
  },
  {
    ...case_(
      'handed on by the transponder',
      [transponder, uat, encoder],
      [altitude('enc1', 'xp1'), altitude('xp1', 'uat1')],
    ),
    expect: 'met',
  },
  {
    ...case_('two encoders', [transponder, uat, encoder, other], [altitude('enc1', 'xp1'), altitude('enc2', 'uat1')]),
    expect: 'not-met',
    message: 'different',
  },
  {
    ...case_(
      'an encoder of its own',
      [transponder, encoder, unitOf({ id: 'uat1', functions: ['ads-b-out-uat', 'altitude-reporting'] })],
      [altitude('enc1', 'xp1')],
    ),
    expect: 'not-met',
  },
  {
    ...case_('its altitude joint is not recorded', [transponder, uat, encoder], [altitude('enc1', 'xp1')]),
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    ...case_(
      'the altitude joint of the transponder is not recorded, its own is',
      [transponder, uat, encoder],
      [altitude('enc1', 'uat1')],
    ),
    expect: 'cannot-tell',
  },
  {
    ...case_(
      'both from one encoder, on parallel wires to the transponder',
      [transponder, uat, encoder],
      [linkOf('enc1', 'altitude-gray', 'xp1', 'altitude-gray'), altitude('enc1', 'uat1')],
    ),
    expect: 'met',
  },
  {
    ...case_(
      'fed by two encoders',
      [transponder, uat, encoder, other],
      [altitude('enc1', 'xp1'), altitude('enc1', 'uat1'), altitude('enc2', 'uat1')],
    ),
    expect: 'cannot-tell',
  },
  {
    ...case_(
      'its source is deactivated',
      [transponder, uat, unitOf({ ...encoder, deactivated: off })],
      [altitude('enc1', 'xp1'), altitude('enc1', 'uat1')],
    ),
    expect: 'cannot-tell',
  },
  {
    ...case_('joints that lead in a circle', [transponder, uat], [altitude('xp1', 'uat1'), altitude('uat1', 'xp1')]),
    expect: 'cannot-tell',
  },
  { ...case_('no transponder', [uat]), expect: 'not-applicable', message: 'alone' },
  {
    ...case_('transponder deactivated', [uat, unitOf({ ...transponder, deactivated: off })]),
    expect: 'not-applicable',
  },
  { ...case_('no ADS-B Out', [transponder]), expect: 'none' },
]);
