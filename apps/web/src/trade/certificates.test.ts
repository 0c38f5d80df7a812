import { agencyKind, rating } from '@tallywing/rules';
import { expect, test } from 'vitest';
import { certificateWords, codeOf, kindOptions, ratingOptions } from './certificates.js';

test('every kind and every rating of the rules can be chosen, and the spelling leads back', () => {
  expect(kindOptions.map(({ id }) => codeOf(id))).toEqual(agencyKind.options);
  const offered = new Set(kindOptions.flatMap(({ id }) => ratingOptions(id, []).map((each) => each.id)));
  expect([...offered].map(codeOf).sort()).toEqual([...rating.options].sort());
  for (const kind of ['MECHANIC', 'REPAIRMAN', 'REPAIR_STATION', 'PILOT'] as const)
    expect(ratingOptions(kind, []).length, kind).toBeLessThan(rating.options.length);
  const narrow = (['MECHANIC', 'REPAIRMAN', 'REPAIR_STATION', 'PILOT'] as const).flatMap((kind) =>
    ratingOptions(kind, []).map(({ id }) => codeOf(id)),
  );
  expect(narrow.sort()).toEqual([...rating.options].sort());
});

test('a rating that is held stays in sight where it is unusual', () => {
  expect(ratingOptions('PILOT', ['AIRFRAME']).map(({ id }) => id)).toEqual([
    'PRIVATE_PILOT',
    'SPORT_PILOT',
    'AIRFRAME',
  ]);
});

test('what is not recorded is said, and is not "none"', () => {
  expect(certificateWords({ kind: 'MECHANIC', number: 'TW-1', ratings: ['AIRFRAME', 'POWERPLANT'] })).toBe(
    'Mechanic TW-1: airframe, powerplant',
  );
  expect(certificateWords({ kind: 'REPAIR_STATION', number: null, ratings: null })).toBe(
    'Repair station (number not recorded): ratings not recorded',
  );
  expect(certificateWords({ kind: 'PILOT', number: 'P', ratings: [] })).toBe('Pilot P: no ratings');
});
