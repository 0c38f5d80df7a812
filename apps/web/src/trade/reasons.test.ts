import { blankDossier, codeWords, type Dossier, type Explained, type Leaf } from '@tallywing/rules';
import { expect, test } from 'vitest';
import { evidenceNames, reasonOf, type ReasonContext } from './reasons.js';

const blank = blankDossier('a');
const dossier: Dossier = {
  ...blank,
  status: {
    ...blank.status,
    records: [
      {
        id: 'r1',
        kind: 'annual-inspection',
        subjects: ['aircraft'],
        done: { date: '2026-03-04', at: null },
        meters: [],
        outcome: null,
        enRoute: null,
        dueAt: null,
        evidence: 'reported',
        entry: { book: 'Airframe', page: '12' },
        agency: null,
        secondPerson: null,
        instrument: null,
        document: null,
        testedToFt: null,
        marked: null,
        place: null,
        expires: null,
        readings: null,
        note: null,
      },
    ],
  },
};
const context: ReasonContext = {
  when: (instant) => `<${instant}>`,
  meterName: (id) => `meter ${id}`,
  evidence: evidenceNames(dossier),
  names: {},
};

function leaf(part: Partial<Leaf>): Explained {
  return {
    outcome: 'met',
    clause: { is: 'leaf', label: 'annual-recorded', inside: 'met', outside: 'not-met', ...part },
    parts: [],
  };
}

test('a leaf names its fact, limit, entry, source and when it changes', () => {
  const source = { document: '14 CFR', paragraph: '91.409(a)', edition: '2026', status: 'verified' as const };
  const reason = reasonOf(
    leaf({
      before: '2027-04-01T06:00Z',
      atMost: { tach: 123450 },
      value: { amount: 1200.5, unit: 'h' },
      limit: { amount: 1234.5, unit: 'h' },
      evidence: ['r1', 'gone'],
      source,
    }),
    context,
    'x',
  );
  expect(reason).toEqual({
    id: 'x',
    outcome: 'met',
    title: 'Annual recorded',
    fact: '1,200.5 h',
    limit: '1,234.5 h',
    recorded: ['Annual inspection of 4 Mar 2026, Airframe page 12 (reported, entry not seen)', 'gone'],
    missing: undefined,
    source,
    changes: ['until <2027-04-01T06:00Z>', 'up to 1234.5 h on meter tach'],
    members: [],
  });
});

test('a clause that is the same on both sides never claims to change', () => {
  expect(reasonOf(leaf({ outside: 'met', before: '2027-04-01T06:00Z' }), context, 'x').changes).toEqual([]);
});

test('a group says how its members decide, and members keep their order', () => {
  const group: Explained = {
    outcome: 'cannot-tell',
    clause: { is: 'at-least', label: 'two-receivers', n: 2 },
    parts: [leaf({ label: 'a' }), leaf({ label: 'bound-by-91.409(a)' })],
  };
  const reason = reasonOf(group, context, 'g');
  expect(reason.asks).toBe('at least 2 of');
  expect(reason.members.map((member) => [member.id, member.title])).toEqual([
    ['g.0', 'A'],
    ['g.1', 'Bound by 91.409(a)'],
  ]);
});

test('paths and codes are shown as words', () => {
  expect(codeWords('elt-inspection')).toBe('ELT inspection');
  expect(codeWords('ADS_B_OUT')).toBe('ADS-B out');
});
