import { approvalOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Opening } from '../../dossier/installation.js';
import { reachAndView } from './reach-and-view.js';

const at = '2026-03-02T14:00Z';
const bezel = { widthIn: 6.25, heightIn: 1.6, depthIn: 10 };
const types = [
  typeOf({ id: 'silent', functions: ['transponder'], bezel }),
  typeOf({
    id: 'told',
    functions: ['com'],
    bezel,
    view: {
      approvedPlaces: ['copilot-panel'],
      maxHorizontalDeg: null,
      maxOffsetIn: 14,
      document: 'Installation manual told',
    },
  }),
  typeOf({ id: 'box', functions: ['transponder'] }),
  typeOf({ id: 'needle', functions: ['lateral-deviation'], bezel }),
];
const opening = (part: Partial<Opening>): Opening => ({
  id: 'o1',
  place: 'centre-stack',
  widthIn: 6.3,
  heightIn: 10,
  depthIn: 12,
  rightOfEyeIn: 10,
  belowEyeIn: 6,
  eyeDistanceIn: 30,
  ...part,
});
const aircraft = (unit: Partial<ReturnType<typeof unitOf>>, part: Partial<Opening> = {}) =>
  dossierOf({
    configuration: {
      openings: [opening(part)],
      units: [unitOf({ id: 'u', typeId: 'silent', place: 'centre-stack', openingId: 'o1', ...unit })],
    },
  });

// AC 23.1311-1C 15.3: 35 degrees to the side; at 30 in that is 21.0 in.
testRule(reachAndView, [
  {
    name: '35 degrees to the side',
    dossier: aircraft({}, { rightOfEyeIn: 21 }),
    types,
    at,
    expect: 'met',
    message: 'at-hand',
  },
  {
    name: 'just beyond',
    dossier: aircraft({}, { rightOfEyeIn: 21.02 }),
    types,
    at,
    expect: 'not-met',
    message: 'away',
  },
  { name: 'straight ahead', dossier: aircraft({}, { rightOfEyeIn: 0 }), types, at, expect: 'met' },
  { name: 'too low for the cone', dossier: aircraft({}, { belowEyeIn: 22 }), types, at, expect: 'not-met' },
  {
    name: 'opening not measured',
    dossier: aircraft({}, { rightOfEyeIn: null }),
    types,
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  { name: 'opening not recorded', dossier: aircraft({ openingId: null }), types, at, expect: 'cannot-tell' },
  { name: 'place not recorded', dossier: aircraft({ place: null }), types, at, expect: 'cannot-tell' },
  {
    name: 'in front of the other seat, manual silent',
    dossier: aircraft({ place: 'copilot-panel' }),
    types,
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'a face that is mounted where nobody sits',
    dossier: aircraft({ place: 'remote' }),
    types,
    at,
    expect: 'not-met',
  },
  {
    name: 'in front of the other seat, where the manual approves it, 14 in off',
    dossier: aircraft({ typeId: 'told', place: 'copilot-panel', offsetIn: 14 }),
    types,
    at,
    expect: 'met',
  },
  {
    name: 'a tenth farther than the manual allows',
    dossier: aircraft({ typeId: 'told', place: 'copilot-panel', offsetIn: 14.1 }),
    types,
    at,
    expect: 'not-met',
  },
  {
    name: 'not where the manual approves it',
    dossier: aircraft({ typeId: 'told', place: 'pedestal', offsetIn: 3 }),
    types,
    at,
    expect: 'not-met',
  },
  {
    name: 'accepted as found',
    dossier: aircraft({
      openingId: null,
      approval: approvalOf({ basis: 'as-found', acceptedBy: { asOf: '2025-09-01', by: 'R. Tamsin' } }),
    }),
    types,
    at,
    expect: 'met',
  },
  { name: 'a box without a face', dossier: aircraft({ typeId: 'box', place: 'remote' }), types, at, expect: 'none' },
  {
    name: 'an uncatalogued unit somewhere in the tail',
    dossier: aircraft({ typeId: null, functions: ['transponder'], place: 'remote' }),
    types,
    at,
    expect: 'none',
  },
  {
    name: 'an uncatalogued unit in the panel',
    dossier: aircraft({ typeId: null, functions: ['transponder'] }),
    types,
    at,
    expect: 'met',
  },
  {
    name: 'what is held in the hand sits nowhere',
    dossier: aircraft({ typeId: null, functions: ['gnss', 'portable-display'] }),
    types,
    at,
    expect: 'none',
  },
  {
    name: 'a radio that annunciates too is judged with the annunciators',
    dossier: aircraft({ typeId: null, functions: ['com', 'source-annunciation'] }),
    types,
    at,
    expect: 'none',
  },
  {
    name: 'one of two openings',
    dossier: dossierOf(aircraft({ offsetIn: null }), {
      configuration: { openings: [opening({}), opening({ id: 'o2', place: 'pilot-panel' })] },
    }),
    types,
    at,
    expect: 'met',
  },
  {
    name: 'an indicator is judged by its own rule',
    dossier: aircraft({ typeId: 'needle' }),
    types,
    at,
    expect: 'none',
  },
]);
