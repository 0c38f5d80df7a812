import { linkOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { InstalledUnit, Link } from '../../dossier/installation.js';
import { transmitterFed } from './transmitter-fed.js';

const at = '2026-03-02T14:00Z';
const of = (units: readonly InstalledUnit[], links: readonly Link[] = [], stated = true) =>
  dossierOf({
    configuration: { units, links },
    status: { completeness: stated ? [{ list: 'links', stated: { asOf: '2026-02-01', by: 'R. Tamsin' } }] : [] },
  });
const transponder = unitOf({ id: 'xp', name: 'Transponder', functions: ['transponder'] });
const encoder = unitOf({ id: 'en', name: 'Encoder', functions: ['altitude-reporting'] });
const off = { deactivated: { since: { date: '2026-02-01', at: null }, placarded: true, recorded: true } };
const joint = linkOf('en', 'altitude-gray', 'xp', 'altitude-gray');
const box = unitOf({ id: 'ab', name: 'Box', functions: ['ads-b-out-uat'] });
const navigator = unitOf({ id: 'gps', name: 'Navigator', functions: ['gnss'] });
const altitude = { at, subject: 'xp:altitude' };
const position = { at, subject: 'ab:position' };

// 91.215(b): Mode C. 91.227(d): position among the elements sent.
testRule(transmitterFed, [
  {
    ...altitude,
    name: 'encoder joined',
    dossier: of([transponder, encoder], [joint]),
    expect: 'met',
    message: 'fed',
    data: { from: 'Encoder' },
  },
  {
    ...altitude,
    name: 'encoder joined, but deactivated',
    dossier: of([transponder, { ...encoder, ...off }], [joint]),
    expect: 'not-met',
    message: 'unfed',
  },
  {
    ...altitude,
    name: 'a second encoder in use',
    dossier: of(
      [transponder, { ...encoder, ...off }, unitOf({ id: 'en2', functions: ['altitude-reporting'] })],
      [joint, linkOf('en2', 'altitude-serial', 'xp', 'altitude-serial')],
    ),
    expect: 'met',
  },
  {
    ...altitude,
    name: 'a portable unit gives it',
    dossier: of([transponder, { ...encoder, functions: ['altitude-reporting', 'portable-display'] }], [joint]),
    expect: 'not-met',
    message: 'unfed',
  },
  {
    ...altitude,
    name: 'a portable transponder',
    dossier: of([{ ...transponder, functions: ['transponder', 'portable-display'] }, encoder], [joint]),
    expect: 'none',
  },
  {
    ...altitude,
    name: 'one box reports its own altitude',
    dossier: of([unitOf({ id: 'xp', functions: ['transponder', 'altitude-reporting'] })]),
    expect: 'met',
    message: 'own',
  },
  {
    ...altitude,
    name: 'nothing joined, joints stated complete',
    dossier: of([transponder, encoder]),
    expect: 'not-met',
  },
  {
    ...altitude,
    name: 'nothing joined, joints not stated complete',
    dossier: of([transponder, encoder], [], false),
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    ...altitude,
    name: 'a joint that names no signal',
    dossier: of([transponder, encoder], [linkOf('en', 'J1', 'xp', 'P1')]),
    expect: 'cannot-tell',
  },
  {
    ...altitude,
    name: 'joined by something else',
    dossier: of([transponder, navigator], [linkOf('gps', 'position', 'xp', 'position')]),
    expect: 'not-met',
  },
  {
    ...altitude,
    name: 'the encoder feeds another unit alone',
    dossier: of(
      [transponder, encoder, unitOf({ id: 'efis', functions: ['audio'] })],
      [linkOf('en', 'altitude-gray', 'efis', 'altitude-gray')],
    ),
    expect: 'not-met',
  },
  {
    ...altitude,
    name: 'what is deactivated and joined to another unit is no way out',
    dossier: of(
      [transponder, { ...encoder, ...off }, unitOf({ id: 'aud', functions: ['audio'] }), { ...navigator, ...off }],
      [joint, linkOf('gps', 'audio', 'aud', 'audio')],
    ),
    expect: 'not-met',
  },
  { ...altitude, name: 'a transponder out of use', dossier: of([{ ...transponder, ...off }]), expect: 'none' },
  {
    ...position,
    name: 'navigator joined',
    dossier: of([box, navigator], [linkOf('gps', 'position', 'ab', 'position')]),
    expect: 'met',
  },
  {
    ...position,
    name: 'navigator joined, but deactivated',
    dossier: of([box, { ...navigator, ...off }], [linkOf('gps', 'position', 'ab', 'position')]),
    expect: 'not-met',
  },
  {
    ...position,
    name: 'its manual gives it a receiver of its own',
    dossier: of([unitOf({ id: 'ab', typeId: 'ab1' })]),
    types: [typeOf({ id: 'ab1', functions: ['ads-b-out-1090', 'gnss'] })],
    expect: 'met',
  },
  { ...position, name: 'no position at all', dossier: of([box]), expect: 'not-met' },
]);
