import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Aircraft } from '../../dossier/aircraft.js';
import type { Purpose } from '../../verdict/conditions.js';
import { hirePermitted } from './hire-permitted.js';

const at = '2026-03-02T14:00Z';
const asked = (
  certificate: Aircraft['certificate'],
  purpose: Purpose,
  hire: boolean | null | 'no document' = 'no document',
) => ({
  name: `${certificate ?? 'certificate not recorded'}, ${purpose}, limitations: ${hire ?? 'silent'}`,
  dossier: dossierOf({
    configuration: {
      aircraft: { certificate },
      authority:
        hire === 'no document'
          ? null
          : {
              dayVfr: true,
              nightVfr: null,
              ifr: null,
              hire,
              document: { title: 'Operating limitations', revision: null, date: null },
              conditionInspectionMonths: null,
            },
    },
  }),
  at,
  flight: { purpose },
});

testRule(hirePermitted, [
  { ...asked('standard', 'carriage-for-hire'), expect: 'met', message: 'allowed' },
  { ...asked('standard', 'training-provided'), expect: 'met' },
  { ...asked('standard', 'private'), expect: 'not-applicable', message: 'not-for-hire' },
  { ...asked('standard', 'rental'), expect: 'not-applicable' },
  { ...asked('standard', 'ferry'), expect: 'not-applicable' },
  // 91.319(a)(2), (e), (g)
  { ...asked('experimental', 'carriage-for-hire', true), expect: 'not-met', message: 'forbidden' },
  { ...asked('experimental', 'training-provided', true), expect: 'met' },
  { ...asked('experimental', 'training-provided', false), expect: 'not-met' },
  { ...asked('experimental', 'training-provided', null), expect: 'cannot-tell', message: 'unclear' },
  { ...asked('experimental', 'tow-for-hire'), expect: 'cannot-tell' },
  { ...asked('experimental', 'training-own-aircraft'), expect: 'not-applicable' },
  // 91.319(f): renting out
  { ...asked('experimental', 'rental', null), subject: 'rental', expect: 'cannot-tell' },
  { ...asked('experimental', 'rental', false), subject: 'rental', expect: 'not-met' },
  { ...asked('experimental', 'rental', true), subject: 'rental', expect: 'met' },
  { ...asked('experimental', 'private', false), subject: 'rental', expect: 'not-applicable' },
  { ...asked(null, 'rental'), subject: 'rental', expect: 'cannot-tell' },
  { ...asked('standard', 'rental', false), subject: 'rental', expect: 'none' },
  // 91.327: towing and instruction are allowed, carriage is not
  { ...asked('light-sport', 'training-provided'), expect: 'met' },
  { ...asked('light-sport', 'tow-for-hire'), expect: 'met' },
  { ...asked('light-sport', 'carriage-for-hire', true), expect: 'not-met' },
  { ...asked('light-sport', 'aerial-work'), expect: 'cannot-tell' },
  { ...asked('light-sport', 'aerial-work', true), expect: 'met' },
  { ...asked('restricted', 'carriage-for-hire', true), expect: 'not-met' },
  { ...asked('restricted', 'aerial-work', true), expect: 'met' },
  { ...asked('primary', 'carriage-for-hire'), expect: 'not-met' },
  { ...asked('limited', 'carriage-for-hire'), expect: 'not-met' },
  { ...asked('provisional', 'carriage-for-hire'), expect: 'not-met' },
  { ...asked('primary', 'training-provided'), expect: 'cannot-tell' },
  { ...asked(null, 'carriage-for-hire'), expect: 'cannot-tell' },
  { ...asked(null, 'private'), expect: 'not-applicable' },
]);
