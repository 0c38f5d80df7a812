import { describe, expect, it } from 'vitest';
import { approvalOf, linkOf, mechanic, recordOf, unitOf } from '../../testing/builders.js';
import { added, after, catalogueOf } from '../../testing/changes.js';
import type { Change, ChangeOf } from './changes.js';
import { admit, apply } from './changes.js';

const on = (date: string) => ({ date, at: null });
const install = (id: string): Change => ({
  kind: 'unit.install',
  version: 1,
  unit: unitOf({ id, functions: ['audio'] }),
  performed: on('2026-03-02'),
  touched: [],
  mass: null,
});
const base = after([added, install('a'), install('b')]);
const refusals = (change: Change, dossier = base) => admit(dossier, catalogueOf(), change);
const and = (...changes: readonly Change[]) => after(changes, catalogueOf(), base);

it('an entry that is corrected opens again what it answered, and nothing else', () => {
  const work = (touched: 'electrical' | 'behind-panel'): Change => ({
    kind: 'work.done',
    version: 1,
    what: 'Wiring',
    unitId: null,
    touched: [touched],
    performed: on('2026-03-10'),
  });
  const entry = (kind: 'compass-swing' | 'controls-check', date: string) => recordOf({ kind, on: date, id: kind });
  const add = (record: ReturnType<typeof entry>): Change => ({ kind: 'record.add', version: 1, record });
  const dossier = and(
    work('electrical'),
    work('behind-panel'),
    add(entry('compass-swing', '2026-03-11')),
    add(entry('controls-check', '2026-03-11')),
    { kind: 'record.correct', version: 1, record: entry('compass-swing', '2026-03-09'), reason: 'Misread' },
  );
  const closedBy = (what: string) => dossier.status.obligations.find((each) => each.what === what)?.closedBy;
  expect(closedBy('compass-swing')).toBeNull();
  expect(closedBy('controls-check')).toBe('controls-check');
});

describe('databases', () => {
  const load = (
    slot: 'this' | 'next',
    part: Partial<ChangeOf<'database.load'>['load']> = {},
  ): ChangeOf<'database.load'> => ({
    kind: 'database.load',
    version: 1,
    load: {
      unitId: 'a',
      database: 'navigation',
      slot,
      cycle: '2603',
      effective: null,
      expires: null,
      loaded: on('2026-03-12'),
      fromFlightDeck: true,
      coverage: null,
      notices: [],
      ...part,
    },
  });
  const keys = (dossier: typeof base) =>
    dossier.status.loads.map(({ unitId, database, slot }) => `${unitId} ${database} ${slot}`);

  it('stand in one order, whatever that of loading', () => {
    const dossier = and(
      load('this', { unitId: 'b' }),
      load('this'),
      load('next'),
      load('this', { database: 'terrain' }),
    );
    expect(keys(dossier)).toEqual(['a navigation next', 'a navigation this', 'a terrain this', 'b navigation this']);
  });

  it('are dropped one by one', () => {
    const drop: Change = { kind: 'database.drop', version: 1, unitId: 'a', database: 'navigation', slot: 'next' };
    expect(keys(and(load('this'), load('next'), load('this', { unitId: 'b' }), drop))).toEqual([
      'a navigation this',
      'b navigation this',
    ]);
  });

  it('loaded otherwise than from the flight deck leave a release owed because of that', () => {
    const { obligations } = and(load('this', { fromFlightDeck: false })).status;
    expect(obligations.find(({ since }) => since.date === '2026-03-12')).toMatchObject({
      what: 'release-entry',
      subject: 'a',
      becauseOf: 'database.load',
    });
  });
});

describe('defects', () => {
  const raise = (id: string, subject: string): Change => ({
    kind: 'defect.raise',
    version: 1,
    defect: {
      id,
      kind: 'inoperative-item',
      subject,
      text: 'Dark',
      raised: on(id === 'd1' ? '2026-03-20' : '2026-03-10'),
      decidedBy: null,
      deferral: null,
    },
  });
  const two = and(raise('d1', 'a'), raise('d2', 'b'));
  const close = (part: Partial<ChangeOf<'defect.close'>> = {}): Change => ({
    kind: 'defect.close',
    version: 1,
    defectId: 'd2',
    how: 'repaired',
    by: mechanic,
    performed: on('2026-03-10'),
    touched: ['nothing'],
    entry: 'p. 4',
    ...part,
  });

  it('are deferred one by one', () => {
    const deferral = {
      route: 'mel',
      notRequired: null,
      secured: true,
      placarded: true,
      recorded: true,
      noHazardBy: null,
      letterAboard: true,
      on: '2026-03-21',
      reinspectedOn: null,
    } as const;
    const { defects } = apply(two, { kind: 'defect.defer', version: 1, defectId: 'd2', deferral }).status;
    expect(defects.map((each) => each.deferral)).toEqual([null, deferral]);
  });

  it('end on the day they were found or later, each by its own day, and are released with their own unit', () => {
    expect(refusals(close(), two)).toEqual([]);
    expect(refusals(close({ performed: on('2026-03-09') }), two)).toMatchObject([
      { code: 'dates-out-of-order', field: 'performed.date', data: { earlierDate: '2026-03-10' } },
    ]);
    const { obligations } = apply(two, close()).status;
    expect(obligations.filter(({ since }) => since.date === '2026-03-10').map(({ id }) => id)).toEqual([
      'release-entry:b',
    ]);
  });

  it('of the aircraft itself leave open what their repair touched, where nobody said it', () => {
    const general = and(raise('d3', 'aircraft'));
    const { obligations } = apply(general, close({ defectId: 'd3', touched: [] })).status;
    expect(obligations.filter(({ since }) => since.date === '2026-03-10').map(({ id }) => id)).toEqual([
      'release-entry:aircraft',
      'what-was-touched:aircraft',
    ]);
  });

  it('end with "nothing" said alone', () => {
    expect(refusals(close({ touched: ['nothing', 'gnss'] }), two)).toMatchObject([
      { code: 'touched-contradicts', field: 'touched' },
    ]);
  });
});

describe('a directive that is done once', () => {
  const directive = (part: Partial<ChangeOf<'directive.set'>['directive']>): Change => ({
    kind: 'directive.set',
    version: 1,
    directive: {
      id: 'ad1',
      number: 'TW-1',
      subject: 'aircraft',
      state: 'complied',
      reason: null,
      partNumber: null,
      serial: null,
      method: null,
      recurs: false,
      interval: null,
      nextDue: null,
      recordId: null,
      ...part,
    },
  });
  const nextDue = { by: 'date' as const, date: '2027-01-01', meter: null, at: null };

  it('has no next time once it is done, and says which it is', () => {
    expect(refusals(directive({}))).toEqual([]);
    expect(refusals(directive({ nextDue }))).toEqual([
      { code: 'once-yet-again', field: 'directive.recurs', data: { number: 'TW-1' } },
    ]);
  });

  it('has its first time while it is open', () => {
    expect(refusals(directive({ state: 'open', nextDue }))).toEqual([]);
    expect(refusals(directive({ state: 'open' }))).toEqual([]);
  });
});

it('a hold that ends later may be lifted before, and not from its end on', () => {
  const held = and({
    kind: 'hold.place',
    version: 1,
    hold: { id: 'h', reason: 'Panel open', by: 'Desk', from: '2026-03-01T00:00Z', until: '2026-03-05T12:00Z' },
  });
  const lift = (at: string) => refusals({ kind: 'hold.lift', version: 1, holdId: 'h', at, reason: 'Closed' }, held);
  expect(lift('2026-03-05T11:59Z')).toEqual([]);
  expect(lift('2026-03-05T12:00Z')).toMatchObject([{ code: 'hold-lifted', field: 'holdId' }]);
  expect(lift('2026-03-05T12:01Z')).toMatchObject([{ code: 'hold-lifted', field: 'holdId' }]);
});

it('a joint that an approval covers keeps it when joints are accepted as found', () => {
  const cover = { by: 'installation-approval' as const, document: approvalOf().document, acceptedBy: null };
  const link = (id: string, own: typeof cover | null): Change => ({
    kind: 'link.connect',
    version: 1,
    link: linkOf('a', id, 'b', id, { id, cover: own }),
    performed: on('2026-03-02'),
    touched: [],
  });
  const { links } = and(link('l1', cover), link('l2', null), {
    kind: 'adopt',
    version: 1,
    units: [],
    links: ['l1', 'l2'],
    by: { asOf: '2026-03-03', by: 'R. Tamsin' },
    approval: approvalOf(),
  }).configuration;
  expect(links.map((each) => each.cover?.by)).toEqual(['installation-approval', 'as-found']);
});
