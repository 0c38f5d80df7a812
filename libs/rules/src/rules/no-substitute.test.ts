import { expect, it } from 'vitest';
import { limitationOf, typeOf, unitOf } from '../../testing/builders.js';
import type { Limitation } from '../catalogue/type.js';
import { noSubstitute } from './no-substitute.js';

const by = (...limitations: readonly Limitation[]) =>
  noSubstitute(
    {
      id: 'u',
      unit: unitOf({ id: 'u' }),
      type: typeOf({ id: 'u', functions: ['altimeter', 'attitude'], limitations }),
      functions: new Set(['altimeter', 'attitude']),
      active: true,
    },
    'altimeter',
  );
const says = (kind: Limitation['kind'], code: 'altimeter' | 'attitude', paragraph: string) =>
  limitationOf({ kind, functions: [code], paragraph });

it('stands in for nothing only by that word of the manual, for that function', () => {
  expect(by()).toBeNull();
  expect(by(says('not-a-substitute', 'attitude', '1.1'))).toBeNull();
  expect(by(says('requires', 'altimeter', '1.2'))).toBeNull();
  expect(by(says('requires', 'altimeter', '1.2'), says('not-a-substitute', 'altimeter', '1.3'))).toMatchObject({
    paragraph: '1.3',
  });
});
