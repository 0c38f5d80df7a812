import { expect, it } from 'vitest';
import { planAll } from './testing.js';
import { reportOf, reportText, Tally } from './report.js';

it('says in aligned text which rows are bad, what to do, and what the board would say', () => {
  const text = 'registration,make,model,kind,base\nTW-1A,Corvane,Four,airplane,Field\nTW-2A,,Four,airplane,Field\n';
  const plan = planAll([{ name: 'fleet.csv', bytes: new TextEncoder().encode(text) }], {
    now: '2026-11-25T14:00Z',
    aircraft: new Map(),
    aircraftIds: new Set(),
    operators: [],
    bases: [{ id: 'field', name: 'Field', zone: 'UTC' }],
    types: [],
    supersededTypes: new Set(),
  });
  const tally = new Tally();
  tally.add(plan.aircraft);
  const report = reportOf(plan, tally, [{ profileId: 'p', profile: 'Local', yes: 0, no: 11, cannotTell: 1 }]);
  expect(reportText('checked', report, { step: 'checking', done: 1, total: 1 }))
    .toBe(`file       kind      rows  good  bad  nothing new
fleet.csv  aircraft     2     1    1            0

Aircraft: 1 new, 0 changed, 0 with nothing new; 1 entries in all.

Bad rows:
  fleet.csv:3  make: This cell is empty. Every row needs it: text.

The board would say now, of these aircraft:
flight profile  yes  no  cannot tell
Local             0  11            1

1 row is bad. Nothing was loaded.`);
});
