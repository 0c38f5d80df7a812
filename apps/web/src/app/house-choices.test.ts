import { changeSchema } from '@tallywing/rules';
import { expect, test } from 'vitest';
import { choicesOf } from './house-choices.js';

const choices: Parameters<typeof choicesOf>[0] = {
  testSets: [{ serial: 'TS-1', name: 'Ramp tester', calibratedUntil: '2027-01-31' }],
  agencies: [
    { kind: 'REPAIR_STATION', name: 'Outside Avionics', certificate: 'RS-9', ratings: ['RADIO_1', 'INSTRUMENT_1'] },
    { kind: 'PILOT', name: 'Ansel Brook', certificate: null, ratings: null },
  ],
};

/** What an entry takes in a field, by the rules' own schema. */
const record = changeSchema('record.add')?.shape['record'] as unknown as {
  readonly shape: Readonly<Record<string, { safeParse(value: unknown): { readonly success: boolean } }>>;
};

test('a choice fills in what the rules read', () => {
  expect(choicesOf(choices, 'testSets')).toEqual([
    {
      words: 'Ramp tester, serial TS-1, calibrated through 31 Jan 2027',
      value: { serial: 'TS-1', calibratedUntil: '2027-01-31' },
    },
  ]);
  expect(choicesOf(choices, 'agencies').map(({ value }) => value)).toEqual([
    { kind: 'repair-station', name: 'Outside Avionics', certificate: 'RS-9', ratings: ['radio-1', 'instrument-1'] },
    { kind: 'pilot', name: 'Ansel Brook', certificate: null, ratings: null },
  ]);
});

test.each([
  ['instrument', 'testSets'],
  ['agency', 'agencies'],
] as const)('%s takes what is offered', (field, asks) => {
  for (const { value } of choicesOf(choices, asks)) expect(record.shape[field]?.safeParse(value).success).toBe(true);
  expect(record.shape[field]?.safeParse({ serial: 1, kind: 'REPAIR_STATION' }).success).toBe(false);
});
