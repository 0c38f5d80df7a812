import { approvalOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import { depthBehindPanel } from './depth-behind-panel.js';

const at = '2026-03-02T14:00Z';
const type = (id: string, depthIn: number | null) =>
  typeOf({ id, functions: ['gnss'], bezel: { widthIn: 6.25, heightIn: 2, depthIn } });
const types = [type('fits', 11), type('deep', 11.01), type('silent', null)];
const panel = (unit: Partial<Parameters<typeof unitOf>[0]>, depthIn: number | null = 11) =>
  dossierOf({
    configuration: {
      openings: [
        {
          id: 'stack',
          place: 'centre-stack',
          widthIn: null,
          heightIn: null,
          depthIn,
          rightOfEyeIn: null,
          belowEyeIn: null,
          eyeDistanceIn: null,
        },
      ],
      units: [unitOf({ id: 'gps1', openingId: 'stack', place: 'centre-stack', ...unit })],
    },
  });
const found = approvalOf({ basis: 'as-found', acceptedBy: { asOf: '2024-05-01', by: 'J. Orrell' } });

testRule(depthBehindPanel, [
  {
    name: 'as deep as the free space',
    dossier: panel({ typeId: 'fits' }),
    types,
    at,
    expect: 'met',
    message: 'clear',
    data: { depthIn: 11, freeIn: 11 },
  },
  {
    name: 'a hundredth deeper',
    dossier: panel({ typeId: 'deep' }),
    types,
    at,
    expect: 'not-met',
    message: 'too-deep',
  },
  { name: 'manual silent', dossier: panel({ typeId: 'silent' }), types, at, expect: 'cannot-tell', message: 'unclear' },
  {
    name: 'in the opening, though its manual gives it no face',
    dossier: panel({ typeId: 'box' }),
    types: [...types, typeOf({ id: 'box', functions: ['gnss'] })],
    at,
    expect: 'cannot-tell',
    data: { depthIn: null },
  },
  { name: 'free space not measured', dossier: panel({ typeId: 'fits' }, null), types, at, expect: 'cannot-tell' },
  { name: 'not catalogued', dossier: panel({ functions: ['com'] }), at, expect: 'cannot-tell' },
  {
    name: 'not catalogued, accepted as found',
    dossier: panel({ functions: ['com'], approval: found }),
    at,
    expect: 'met',
  },
  {
    name: 'panel unit, opening not recorded',
    dossier: panel({ typeId: 'fits', openingId: null }),
    types,
    at,
    expect: 'cannot-tell',
  },
  { name: 'remote', dossier: panel({ typeId: 'fits', openingId: null, place: 'remote' }), types, at, expect: 'none' },
  {
    name: 'a box without a face, in no opening',
    dossier: panel({ typeId: 'box', openingId: null, place: null }),
    types: [...types, typeOf({ id: 'box', functions: ['gnss'] })],
    at,
    expect: 'none',
  },
]);
