import { expect, it } from 'vitest';
import { inspector, recordOf, timeInService, totalTime } from '../../testing/builders.js';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import { findOut } from './find-out.js';

const moment = { instant: '2026-03-02T14:00Z' };
const annual = recordOf({
  kind: 'annual-inspection',
  on: '2026-01-31',
  outcome: 'approved',
  agency: inspector,
  meters: totalTime,
});

it('asks for the signer whose ratings would settle the annual, and says which result that settles', () => {
  const dossier = dossierOf({
    configuration: { aircraft: { certificate: 'standard' } },
    status: { records: [{ ...annual, agency: null }] },
    meters: timeInService,
  });
  const found = findOut(dossier, catalogueOf(), moment).find(
    (each) => each.fact === `status.records.${annual.id}.agency`,
  );
  expect(found?.settles).toContain('annual-inspection|aircraft');
});

it('does not ask for what is recorded', () => {
  const dossier = dossierOf({
    configuration: { aircraft: { certificate: 'standard' } },
    status: { records: [annual] },
    meters: timeInService,
  });
  expect(
    findOut(dossier, catalogueOf(), moment).some((each) => each.settles.includes('annual-inspection|aircraft')),
  ).toBe(false);
});

it('puts facts that open an operation before facts that only settle results, and the more settling first', () => {
  const found = findOut(dossierOf({}), catalogueOf(), moment);
  const ranks = found.map((each) => each.opens.length * 1000 + each.settles.length);
  expect(ranks).toEqual([...ranks].sort((a, b) => b - a));
});
