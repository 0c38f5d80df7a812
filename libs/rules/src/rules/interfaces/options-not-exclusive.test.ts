import { typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import { optionsNotExclusive } from './options-not-exclusive.js';

const at = '2026-03-02T14:00Z';
const excluded = typeOf({
  id: 'mx',
  functions: ['gnss', 'active-traffic', 'correlated-traffic'],
  limitations: [
    {
      kind: 'not-both',
      functions: ['active-traffic'],
      beyond: ['correlated-traffic'],
      document: 'Installation manual mx',
      paragraph: '5.1',
    },
  ],
});
const unit = (...options: { name: string; value: string }[]) =>
  dossierOf({ configuration: { units: [unitOf({ id: 'm', typeId: 'mx', options })] } });
const active = (value: string) => ({ name: 'active-traffic', value });
const correlated = (value: string) => ({ name: 'correlated-traffic', value });

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
]);
