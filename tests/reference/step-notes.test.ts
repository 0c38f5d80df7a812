import { describe, expect, test } from 'vitest';
import type { Aircraft } from '../../libs/rules/src/dossier/aircraft.js';
import { recordKind } from '../../libs/rules/src/dossier/status.js';
import { changeDefinitions } from '../../libs/rules/src/changes/changes.js';
import { notesOn } from '../../libs/rules/src/assess/step-notes.js';

/** Published figures that no record has a field for: said to whoever records the work they belong to, each with its source. */
const said = (change: string, entry: string | null = null, basis: Aircraft['basis'] = null) =>
  notesOn(change, entry, basis).map(({ text }) => text);

describe('notes on a piece of work', () => {
  test.each([
    ['elt-inspection', 'AIM', '6-2-4', 'verified', ['first 5 minutes', '3 sweeps', 'never in flight', '406 MHz']],
    [
      'bonding-check',
      'AC 43.13-1B',
      '11-187c',
      'verified',
      ['more than 3 sq in', 'longer than 3 in', 'within 24 hours'],
    ],
    ['controls-check', 'AC 43.13-1B', '11-96a, 11-158', 'verified', ['every 24 in', 'more than 12 in apart']],
    ['altimeter-test', 'AIM', '7-2-3', 'verified', ['75 ft or more off']],
    ['ads-b-report', '14 CFR 91.227', '(c), (e)', 'verified', ['NIC 7', 'NACp 8', 'NACv 1', 'SIL 3', 'SDA 2']],
  ] as const)('entry of %s', (entry, document, paragraph, status, figures) => {
    const text = said('record.add', entry).join(' ');
    for (const figure of figures) expect(text).toContain(figure);
    expect(notesOn('record.add', entry, null)[0]?.source).toMatchObject({ document, paragraph, status });
  });

  test('AC 43.13-1B 11-66: main wires 2 %, 0.28 and 0.56 V; 0.005 ohm back', () => {
    expect(said('electrical.set')[0]).toMatch(/lose 2 % .* 0\.28 V of 14 V, 0\.56 V of 28 V.* 20 A lose 0\.1 V/);
  });

  test('14 CFR 23.1351(g) before amendment 23-64: five minutes under visual rules without normal power', () => {
    const note = notesOn('electrical.set', null, null)[1];
    expect(note?.text).toContain('at least 5 minutes');
    expect(note?.source).toMatchObject({ document: '14 CFR 23.1351', paragraph: '(g)', status: 'verified' });
  });

  test('holes of round instruments (from memory): 3 1/8 and 2 1/4 in', () => {
    expect(said('opening.set')[0]).toContain(`${3 + 1 / 8} in or ${2 + 1 / 4} in`);
  });

  test('AC 43.13-1B 10-15: oil is no part of the empty weight under CAR 3, and part of it under part 23', () => {
    expect(said('mass.revise', null, { code: 'car-3', amendment: null })[0]).toMatch(
      /is without oil; .*7\.5 lb a gallon/,
    );
    expect(said('mass.revise', null, { code: 'part-23', amendment: 40 })[0]).toMatch(/is with all its oil; .*7\.5 lb/);
    for (const basis of [null, { code: 'part-27', amendment: 0 } as const])
      expect(said('mass.revise', null, basis)[0]).toMatch(/Under CAR 3 .* without oil, under part 23 with all of it/);
  });

  test('AC 43.13-2A chapter 1: old and new load on one support together', () => {
    const [note] = notesOn('unit.install', null, null);
    expect(note?.text).toMatch(/old and the new together/);
    expect(note?.source).toMatchObject({ document: 'AC 43.13-2A', status: 'secondary' });
  });

  test('every other work has none, and a correction of an entry has none', () => {
    const topics = [...recordKind.options.map((each) => ['record.add', each] as const)];
    const noted = topics.filter(([change, entry]) => said(change, entry).length > 0).map(([, entry]) => entry);
    expect(noted.sort()).toEqual([
      'ads-b-report',
      'altimeter-test',
      'bonding-check',
      'controls-check',
      'elt-inspection',
    ]);
    const kinds = [...new Set(changeDefinitions.map(({ kind }) => kind))].filter((kind) => said(kind).length > 0);
    expect(kinds.sort()).toEqual(['electrical.set', 'mass.revise', 'opening.set', 'unit.install']);
    expect(said('record.correct', 'elt-inspection')).toEqual([]);
  });

  test('each is whole sentences', () => {
    for (const entry of ['elt-inspection', 'bonding-check', 'controls-check', 'altimeter-test', 'ads-b-report'])
      for (const text of said('record.add', entry)) expect(text).toMatch(/^[A-Z].*\.$/);
  });
});
