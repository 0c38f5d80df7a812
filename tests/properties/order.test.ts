import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Change } from '../../libs/rules/src/changes/changes.js';
import { admit, apply } from '../../libs/rules/src/changes/changes.js';
import { mechanic, recordOf } from '../../libs/rules/testing/builders.js';
import { trainer, trainerCatalogue } from '../../libs/rules/testing/trainer.js';

const base = trainer();
const stated = { asOf: '2026-03-10', by: 'R. Tamsin' };
const document = { title: 'Limitations', revision: 'A', date: null };
const performed = { date: '2026-03-12', at: '2026-03-12T15:00Z' };
const cdi2 = base.configuration.units.find((unit) => unit.id === 'cdi2');
const [feed] = base.configuration.links;
const [load] = base.status.loads;
if (!cdi2 || !feed || !load) throw new Error('The trainer has no second indicator, joint or load.');

const v = 1 as const;
/** No two of them touch the same thing. */
const apart: readonly Change[] = [
  {
    kind: 'record.add',
    version: v,
    record: recordOf({ kind: 'elt-inspection', on: '2026-03-11', subjects: ['elt1'], agency: mechanic }),
  },
  {
    kind: 'record.add',
    version: v,
    record: recordOf({ kind: 'altimeter-test', on: '2026-03-09', subjects: ['alt1'], agency: mechanic }),
  },
  { kind: 'record.add', version: v, record: recordOf({ kind: 'bonding-check', on: '2026-03-13', agency: mechanic }) },
  { kind: 'database.load', version: v, load: { ...load, slot: 'next', cycle: '2603', effective: null, expires: null } },
  {
    kind: 'hold.place',
    version: v,
    hold: { id: 'h1', reason: 'Panel open', by: 'J. Orrell', from: '2026-03-12T12:00Z', until: null },
  },
  {
    kind: 'placard.fit',
    version: v,
    placard: { id: 'p9', kind: 'other', unitId: null, inView: true, text: 'No smoking' },
  },
  { kind: 'completeness.state', version: v, lists: [{ list: 'placards', stated }] },
  {
    kind: 'defect.raise',
    version: v,
    defect: {
      id: 'd9',
      kind: 'wear',
      subject: 'nav1',
      text: 'Knob loose',
      raised: performed,
      decidedBy: null,
      deferral: null,
    },
  },
  { kind: 'unit.amend', version: v, unit: { ...cdi2, serial: 'C2-B' }, sameUnit: true, reason: 'Read off the plate' },
  { kind: 'link.disconnect', version: v, linkId: feed.id, performed, reason: 'Rewired', touched: [] },
  {
    kind: 'opening.set',
    version: v,
    opening: {
      id: 'o9',
      place: 'centre-stack',
      widthIn: 6.25,
      heightIn: 2,
      depthIn: 11,
      rightOfEyeIn: 9,
      belowEyeIn: 6,
      eyeDistanceIn: 27,
    },
  },
  {
    kind: 'life-limit.set',
    version: v,
    limit: {
      id: 'hose',
      name: 'Fuel hose',
      serial: null,
      subject: 'hose',
      mandatory: true,
      document,
      life: null,
      retireBy: { by: 'date', date: '2030-01-01', meter: null, at: null },
    },
  },
  {
    kind: 'recurring.set',
    version: v,
    item: {
      id: 'oil',
      name: 'Oil change',
      subject: 'oil',
      origin: 'own',
      document: null,
      parts: [{ kind: 'days', count: 120, meter: null, tolerance: null }],
      combine: 'first',
      countFrom: 'done',
      toleranceFor: 'none',
    },
  },
  { kind: 'work.done', version: v, what: 'Rear baffle refitted', unitId: null, touched: ['behind-panel'], performed },
  {
    kind: 'paper.set',
    version: v,
    paper: { id: 'reg', kind: 'registration', number: 'R-1', aboard: true, expires: '2029-01-31', seen: stated },
  },
];

const record = (changes: readonly Change[]) =>
  changes.reduce((dossier, change) => {
    expect(admit(dossier, trainerCatalogue, change, '2026-03-16T16:00Z')).toEqual([]);
    return apply(dossier, change);
  }, base);

it('changes that touch no common thing give one record in whatever order they are written down', () => {
  fc.assert(
    fc.property(
      fc.shuffledSubarray([...apart]),
      fc.infiniteStream(fc.double({ min: 0, max: 1, noNaN: true })),
      (some, dice) => {
        const other = some
          .map((change) => ({ change, at: dice.next().value as number }))
          .sort((a, b) => a.at - b.at)
          .map(({ change }) => change);
        expect(record(other)).toEqual(record(some));
      },
    ),
    { numRuns: 200 },
  );
});

it('each of them changes something', () => {
  for (const change of apart) expect({ ...record([change]), revision: 0 }).not.toEqual({ ...base, revision: 0 });
});
