import { approvalOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Opening } from '../../dossier/installation.js';
import { fitsTheOpening } from './fits-the-opening.js';

const at = '2026-03-02T14:00Z';
const opening = (part: Partial<Opening> = {}): Opening => ({
  id: 'stack',
  place: 'centre-stack',
  widthIn: 6.25,
  heightIn: 4,
  depthIn: null,
  rightOfEyeIn: null,
  belowEyeIn: null,
  eyeDistanceIn: null,
  ...part,
});
const type = (id: string, widthIn: number, heightIn: number) =>
  typeOf({ id, functions: ['com'], bezel: { widthIn, heightIn, depthIn: 10 } });
const types = [type('slim', 6.25, 1.6), type('tall', 6.25, 2.4), type('taller', 6.25, 2.41), type('wide', 6.26, 1)];
const inStack = (id: string, typeId: string | null, part: Partial<Parameters<typeof unitOf>[0]> = {}) =>
  unitOf({
    id,
    typeId,
    openingId: 'stack',
    place: 'centre-stack',
    ...(typeId === null ? { functions: ['com'] } : {}),
    ...part,
  });
const found = (name: string | null) =>
  approvalOf({ basis: 'as-found', acceptedBy: name === null ? null : { asOf: '2024-05-01', by: name } });
const panel = (units: ReturnType<typeof unitOf>[], part: Partial<Opening> = {}) =>
  dossierOf({ configuration: { openings: [opening(part)], units } });

// Heights of 1.6 and 2.4 in fill an opening of 4 in to the last hundredth.
testRule(fitsTheOpening, [
  {
    name: 'fills it exactly',
    dossier: panel([inStack('a', 'slim'), inStack('b', 'tall')]),
    types,
    at,
    expect: 'met',
    message: 'fits',
    data: { heightIn: 4, openIn: 4 },
  },
  {
    name: 'a hundredth too high together',
    dossier: panel([inStack('a', 'slim'), inStack('b', 'taller')]),
    types,
    at,
    expect: 'not-met',
    message: 'too-large',
  },
  { name: 'a hundredth too wide', dossier: panel([inStack('a', 'wide')]), types, at, expect: 'not-met' },
  {
    name: 'a unit of unknown size',
    dossier: panel([inStack('a', 'slim'), inStack('b', null)]),
    types,
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'too high whatever the unknown one measures',
    dossier: panel([inStack('a', 'tall'), inStack('b', 'tall'), inStack('c', null)]),
    types,
    at,
    expect: 'not-met',
  },
  {
    name: 'height of the opening unknown',
    dossier: panel([inStack('a', 'slim')], { heightIn: null }),
    types,
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'width of the opening unknown',
    dossier: panel([inStack('a', 'slim')], { widthIn: null }),
    types,
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'a unit of the same place whose opening nobody recorded',
    dossier: panel([inStack('a', 'slim'), inStack('b', 'slim', { openingId: null })]),
    types,
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'a box without a face, its place not recorded, is in no opening',
    dossier: panel([inStack('a', 'slim'), unitOf({ id: 'b', typeId: 'box' })]),
    types: [...types, typeOf({ id: 'box', functions: ['audio'] })],
    at,
    expect: 'met',
  },
  {
    name: 'said to be in the opening, though its manual gives it no face',
    dossier: panel([inStack('a', 'slim'), inStack('b', 'box')]),
    types: [...types, typeOf({ id: 'box', functions: ['audio'] })],
    at,
    expect: 'cannot-tell',
    data: { heightIn: 1.6 },
    // Without the opening it is a box somewhere else, as its manual says.
    states: ['configuration.units.1.openingId'],
  },
  {
    name: 'a remote unit is in no opening',
    dossier: panel([inStack('a', 'slim'), inStack('b', 'slim', { openingId: null, place: 'remote' })]),
    types,
    at,
    expect: 'met',
  },
  {
    name: 'sizes of old units unknown, but accepted as found',
    dossier: panel([
      inStack('a', null, { approval: found('J. Orrell') }),
      inStack('b', null, { approval: found('J. Orrell') }),
    ]),
    at,
    expect: 'met',
  },
  {
    name: 'accepted by nobody',
    dossier: panel([inStack('a', null, { approval: found(null) })]),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'a new unit beside one accepted as found is measured',
    dossier: panel([inStack('a', 'tall', { approval: found('J. Orrell') }), inStack('b', 'tall')]),
    types,
    at,
    expect: 'not-met',
  },
  { name: 'an empty opening', dossier: panel([]), at, expect: 'none' },
]);
