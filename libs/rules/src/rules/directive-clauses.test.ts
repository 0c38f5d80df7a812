import { expect, it } from 'vitest';
import { mechanic, recordOf, timeInService, typeOf, unitOf } from '../../testing/builders.js';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import type { Directive } from '../dossier/status.js';
import { factsOf } from '../graph/facts.js';
import { directiveFound } from './directive-clauses.js';
import { asked } from './gaps.js';

const done = (on: string) =>
  recordOf({ kind: 'directive-compliance', id: `done-${on}`, on, subjects: ['dir1'], agency: mechanic });
const records = [done('2025-03-10'), done('2025-09-10')];

function found(part: Partial<Directive>) {
  const directive: Directive = {
    id: 'dir1',
    number: '2019-03-07',
    subject: 'gps1',
    state: 'complied',
    reason: null,
    method: 'Paragraph (g)(1)',
    partNumber: null,
    serial: null,
    recurs: true,
    interval: null,
    nextDue: null,
    recordId: 'done-2025-09-10',
    ...part,
  };
  const dossier = dossierOf({
    configuration: { units: [unitOf({ id: 'gps1', typeId: 'nx', serial: 'G-1' })] },
    status: { directives: [directive], records },
    meters: timeInService,
  });
  const { clause, due, next } = directiveFound(
    factsOf(dossier, catalogueOf(typeOf({ id: 'nx', functions: ['gnss'], partNumber: 'QW-5' }))),
    directive,
  );
  const doubts = asked(clause).flatMap(({ label, inside }) => (inside === 'cannot-tell' ? [label] : []));
  return { doubts, due: due.map((each) => each.lastGoodDay ?? each.at), next };
}
const monthly: Partial<Directive> = {
  interval: {
    parts: [{ kind: 'calendar-months', count: 12, meter: null, tolerance: null }],
    combine: 'first',
    countFrom: 'done',
    toleranceFor: 'none',
  },
};
const point: Partial<Directive> = { nextDue: { by: 'date', date: '2026-06-01', meter: null, at: null } };

it.each<[string, Partial<Directive>, readonly string[]]>([
  ['the part fitted', { partNumber: 'QW-5', serial: 'G-1' }, []],
  ['another part', { partNumber: 'QW-6' }, ['of-the-part-fitted']],
  ['another serial number', { serial: 'G-2' }, ['of-the-part-fitted']],
])('looked up for %s', (_, part, doubts) => {
  expect(found({ ...point, ...part }).doubts).toEqual(doubts);
});

// A point is stated with an entry: with a newer one the interval counts on, and the point is past.
it.each<[string, Partial<Directive>, readonly unknown[], string | null]>([
  ['open, before further flight', { state: 'open' }, [], null],
  ['open, with a first point', { state: 'open', ...point }, ['2026-06-01'], '2026-06-01'],
  ['a point alone', point, ['2026-06-01'], '2026-06-01'],
  ['an interval alone', monthly, ['2026-09-30'], '2026-09-30'],
  ['both of the newest entry', { ...monthly, ...point }, ['2026-09-30', '2026-06-01'], '2026-09-30 or 2026-06-01'],
  ['the point of an older entry', { ...monthly, ...point, recordId: 'done-2025-03-10' }, ['2026-09-30'], '2026-09-30'],
])('falls due: %s', (_, part, due, next) => {
  expect(found(part)).toMatchObject({ due, next });
});
