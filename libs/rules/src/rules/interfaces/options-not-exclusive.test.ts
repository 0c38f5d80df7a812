import { limitationOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import { optionsNotExclusive } from './options-not-exclusive.js';

const at = '2026-03-02T14:00Z';
const excluded = typeOf({
  id: 'mx',
  functions: ['gnss', 'active-traffic', 'correlated-traffic'],
  limitations: [
    limitationOf({
      kind: 'not-both',
      functions: ['active-traffic'],
      beyond: ['correlated-traffic'],
      document: 'Installation manual mx',
    }),
  ],
});
const unit = (...options: { name: string; value: string }[]) =>
  dossierOf({ configuration: { units: [unitOf({ id: 'm', typeId: 'mx', options })] } });
const active = (value: string) => ({ name: 'active-traffic', value });
const correlated = (value: string) => ({ name: 'correlated-traffic', value });

// Set up as a traffic display, this unit excludes correlated traffic on another.
const across = [
  typeOf({
    id: 'dx',
    functions: ['traffic-display'],
    limitations: [
      limitationOf({
        kind: 'not-both',
        functions: ['traffic-display'],
        beyond: ['correlated-traffic'],
        elsewhere: true,
      }),
    ],
  }),
  typeOf({ id: 'cx', functions: ['correlated-traffic'] }),
];
const shown = (value: string) => ({ name: 'traffic-display', value });
const two = (
  own: { name: string; value: string },
  other?: { name: string; value: string },
  ...more: ReturnType<typeof unitOf>[]
) =>
  dossierOf({
    configuration: {
      units: [
        unitOf({ id: 'm', typeId: 'dx', options: [own] }),
        unitOf({ id: 'n', typeId: 'cx', options: other ? [other] : [] }),
        ...more,
      ],
    },
  });

testRule(optionsNotExclusive, [
  {
    name: 'one on, one off',
    dossier: unit(active('on'), correlated('off')),
    types: [excluded],
    at,
    expect: 'met',
    message: 'kept',
  },
  { name: 'both off', dossier: unit(active('off'), correlated('Disabled')), types: [excluded], at, expect: 'met' },
  {
    name: 'both on',
    dossier: unit(active('on'), correlated('on')),
    types: [excluded],
    at,
    expect: 'not-met',
    message: 'both',
    data: { document: 'Installation manual mx' },
  },
  {
    name: 'one on, the other not recorded',
    dossier: unit(active('on')),
    types: [excluded],
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  { name: 'one off, the other not recorded', dossier: unit(active('off')), types: [excluded], at, expect: 'met' },
  {
    name: 'the unit does not have the other function',
    dossier: unit(active('on')),
    types: [typeOf({ ...excluded, functions: ['active-traffic'] })],
    at,
    expect: 'met',
  },
  {
    name: 'no such limitation',
    dossier: unit(active('on')),
    types: [typeOf({ ...excluded, limitations: [] })],
    at,
    expect: 'none',
  },
  {
    name: 'another unit shows what must be off while this one is set up so',
    dossier: two(shown('on'), correlated('on')),
    types: across,
    at,
    subject: 'm',
    expect: 'not-met',
  },
  {
    name: 'off in the other unit',
    dossier: two(shown('on'), correlated('off')),
    types: across,
    at,
    subject: 'm',
    expect: 'met',
  },
  {
    name: 'this one not set up so',
    dossier: two(shown('off'), correlated('on')),
    types: across,
    at,
    subject: 'm',
    expect: 'met',
  },
  {
    name: 'not recorded of the other unit',
    dossier: two(shown('on')),
    types: across,
    at,
    subject: 'm',
    expect: 'cannot-tell',
  },
  {
    name: 'of the other unit nothing is known',
    dossier: two(shown('on'), correlated('off'), unitOf({ id: 'x' })),
    types: across,
    at,
    subject: 'm',
    expect: 'cannot-tell',
  },
  {
    name: 'no other unit has it',
    dossier: dossierOf({ configuration: { units: [unitOf({ id: 'm', typeId: 'dx', options: [shown('on')] })] } }),
    types: across,
    at,
    expect: 'met',
  },
  {
    name: 'what must be off in other units may be on in this one',
    dossier: dossierOf({
      configuration: { units: [unitOf({ id: 'm', typeId: 'dx', options: [shown('on'), correlated('on')] })] },
    }),
    types: [typeOf({ ...across[0]!, functions: ['traffic-display', 'correlated-traffic'] })],
    at,
    expect: 'met',
  },
  {
    name: 'one is off, written with blanks around it',
    dossier: unit(active(' Off '), correlated('on')),
    types: [excluded],
    at,
    expect: 'met',
  },
  {
    name: 'the other unit is switched off for good',
    dossier: dossierOf({
      configuration: {
        units: [
          unitOf({ id: 'm', typeId: 'dx', options: [shown('on')] }),
          unitOf({
            id: 'n',
            typeId: 'cx',
            options: [correlated('on')],
            deactivated: { since: { date: '2025-05-05', at: null }, placarded: true, recorded: true },
          }),
        ],
      },
    }),
    types: across,
    at,
    expect: 'met',
  },
  {
    name: 'a limitation of another kind excludes no option',
    dossier: unit(active('on'), correlated('on')),
    types: [
      typeOf({
        id: 'mx',
        functions: ['active-traffic', 'correlated-traffic'],
        limitations: [
          limitationOf({ kind: 'requires', functions: ['active-traffic'], beyond: ['correlated-traffic'] }),
        ],
      }),
    ],
    at,
    expect: 'none',
  },
]);
