import { describe, expect, it } from 'vitest';
import { approvalOf, linkOf, mechanic, recordOf, typeOf, unitOf } from '../../testing/builders.js';
import { added, after, catalogueOf, plainAircraft } from '../../testing/changes.js';
import { dossier as dossierSchema } from '../dossier/dossier.js';
import type { Change } from './changes.js';
import { admit, apply, blankDossier, changeDefinitions, changeSchema, parseChange, replay } from './changes.js';
import type { RefusalCode } from './refusal.js';
import { refusalTexts } from './refusal.js';

const now = '2026-06-01T12:00Z';
const on = (date: string, at: string | null = null) => ({ date, at });
const navigator = typeOf({
  id: 'nx5',
  functions: ['gnss'],
  ports: [
    {
      name: 'P1',
      signal: 'lateral-deviation',
      direction: 'out',
      standard: 'analog',
      speed: null,
      requiredFor: ['gnss'],
    },
  ],
});
const altimeter = typeOf({ id: 'alt9', functions: ['altimeter'] });
const catalogue = catalogueOf(navigator, altimeter);
const everyHours = (meter: string) => ({
  parts: [{ kind: 'hours' as const, count: 10_000, meter, tolerance: null }],
  combine: 'first' as const,
  countFrom: 'done' as const,
  toleranceFor: 'none' as const,
});
const once = {
  id: 'd1',
  number: '2026-01-01',
  subject: 'aircraft',
  partNumber: null,
  serial: null,
  state: 'complied' as const,
  reason: null,
  method: 'Paragraph (a)',
  recurs: false,
  interval: null,
  nextDue: null,
  recordId: null,
};
const hoses = {
  id: 'hoses',
  name: 'Fuel hoses',
  serial: 'H-4',
  subject: 'hoses',
  mandatory: true,
  document: null,
  life: { parts: everyHours('tach').parts, combine: 'first' as const, from: null, meters: [] },
  retireBy: null,
};
const install = (part: Partial<Extract<Change, { kind: 'unit.install' }>> = {}): Change => ({
  kind: 'unit.install',
  version: 1,
  unit: unitOf({ id: 'gps1', typeId: 'nx5' }),
  performed: on('2026-03-02'),
  touched: ['gnss'],
  mass: null,
  ...part,
});
const cdi: Change = install({ unit: unitOf({ id: 'cdi1', functions: ['lateral-deviation'] }), touched: [] });
const tach: Change = {
  kind: 'meter.define',
  version: 1,
  definition: { id: 'tach', name: 'Tachometer', kind: 'tachometer', perFlightHour: 900, offset: 0 },
  standsForTimeInService: true,
};
const read = (dial: number, asOf: string): Change => ({
  kind: 'meter.read',
  version: 1,
  meter: 'tach',
  dial,
  asOf,
  by: 'J. Orrell',
});

const encoder = install({
  unit: unitOf({ id: 'enc1', functions: ['altitude-reporting'] }),
  touched: ['altitude-chain'],
});
const transponder = install({
  unit: unitOf({ id: 'xp1', functions: ['transponder', 'ads-b-out-1090'] }),
  touched: ['transponder', 'ads-b'],
});
type Touched = Extract<Change, { kind: 'work.done' }>['touched'];
const join = (touched: Touched, date = '2026-04-02', part: object = {}): Change => ({
  kind: 'link.connect',
  version: 1,
  link: { ...linkOf('gps1', 'P1', 'cdi1', 'lateral-deviation'), ...part },
  performed: on(date),
  touched,
});
const altitude = {
  kind: 'link.connect' as const,
  version: 1 as const,
  link: linkOf('enc1', 'altitude-gray', 'xp1', 'altitude-gray'),
  performed: on('2026-04-02'),
  touched: ['altitude-chain' as const],
};
const amend = (serial: string | null, sameUnit: boolean | null = null): Change => ({
  kind: 'unit.amend',
  version: 1,
  unit: unitOf({ id: 'gps1', typeId: 'nx5', serial }),
  sameUnit,
  reason: 'Read off the plate',
});
const out: Change = {
  kind: 'unit.remove',
  version: 1,
  unitId: 'gps1',
  performed: on('2026-04-02'),
  reason: 'sold',
  touched: ['gnss'],
  mass: null,
};
const asFound = (asOf: string) => ({ by: 'as-found' as const, document: null, acceptedBy: { asOf, by: 'R. Tamsin' } });
const numberedAs = (serial: string | null) =>
  after([added, install({ unit: unitOf({ id: 'gps1', typeId: 'nx5', serial }) }), cdi], catalogue);
const numbered = numberedAs('G1');
const taken = (serial: string | null) => after([out], catalogue, numberedAs(serial));
const sayWhat = (obligationId: string, touched: Touched): Change => ({
  kind: 'touched.state',
  version: 1,
  obligationId,
  touched,
  by: { asOf: '2026-05-01', by: 'R. Tamsin' },
});
const withDefect = (subject: string) =>
  after(
    [
      added,
      install(),
      {
        kind: 'defect.raise',
        version: 1,
        defect: {
          id: 'd1',
          kind: 'inoperative-item',
          subject,
          text: 'Display dark',
          raised: on('2026-03-10'),
          decidedBy: null,
          deferral: null,
        },
      },
    ],
    catalogue,
  );
const close = (
  how: Extract<Change, { kind: 'defect.close' }>['how'],
  touched: Touched,
  date = '2026-04-02',
): Change => ({
  kind: 'defect.close',
  version: 1,
  defectId: 'd1',
  how,
  by: mechanic,
  performed: on(date),
  touched,
  entry: 'p. 4',
});

describe('admit refuses, naming code and field', () => {
  const base = after([added, tach, read(10_000, '2026-05-01T10:00Z'), install(), cdi], catalogue);
  const cases: readonly [RefusalCode, string, Change, ReturnType<typeof blankDossier>?][] = [
    ['no-aircraft', '', install(), blankDossier('b')],
    ['aircraft-exists', 'aircraft', added],
    [
      'unknown-zone',
      'aircraft.base.zone',
      { ...added, aircraft: { ...plainAircraft, base: { id: 'm', name: 'Moon', zone: 'Moon/Sea' } } } as Change,
      blankDossier('b'),
    ],
    ['id-taken', 'unit.id', install()],
    ['unknown-type', 'unit.typeId', install({ unit: unitOf({ id: 'new', typeId: 'nothing' }) })],
    ['no-functions', 'unit.functions', install({ unit: unitOf({ id: 'new' }) })],
    [
      'functions-disagree',
      'unit.functions',
      install({ unit: unitOf({ id: 'new', typeId: 'nx5', functions: ['com'] }) }),
    ],
    ['unknown-opening', 'unit.openingId', install({ unit: unitOf({ id: 'new', typeId: 'nx5', openingId: 'hole' }) })],
    [
      'touch-missing',
      'touched',
      install({ unit: unitOf({ id: 'alt1', typeId: 'alt9' }), touched: ['altitude-chain'] }),
    ],
    [
      'in-the-future',
      'performed.date',
      install({ unit: unitOf({ id: 'new', typeId: 'nx5' }), performed: on('2026-06-03') }),
    ],
    [
      'before-manufacture',
      'performed.date',
      install({ unit: unitOf({ id: 'new', typeId: 'nx5' }), performed: on('1979-05-03') }),
    ],
    [
      'no-mass-record',
      'mass',
      install({
        unit: unitOf({ id: 'new', typeId: 'nx5' }),
        mass: { what: 'navigator', weightLb: 6, armIn: 12, on: '2026-03-02', listed: true },
      }),
    ],
    [
      'unknown-unit',
      'unitId',
      {
        kind: 'unit.remove',
        version: 1,
        unitId: 'none',
        performed: on('2026-03-02'),
        reason: 'sold',
        touched: [],
        mass: null,
      },
    ],
    [
      'same-unit',
      'link.toUnit',
      {
        kind: 'link.connect',
        version: 1,
        link: linkOf('gps1', 'P1', 'gps1', 'P1'),
        performed: on('2026-03-02'),
        touched: [],
      },
    ],
    [
      'unknown-port',
      'link.fromPort',
      {
        kind: 'link.connect',
        version: 1,
        link: linkOf('gps1', 'P9', 'cdi1', 'lateral-deviation'),
        performed: on('2026-03-02'),
        touched: [],
      },
    ],
    [
      'unknown-id',
      'linkId',
      {
        kind: 'link.disconnect',
        version: 1,
        linkId: 'none',
        performed: on('2026-03-02'),
        touched: [],
        reason: 'moved',
      },
    ],
    [
      'unknown-subject',
      'record.subjects.0',
      { kind: 'record.add', version: 1, record: recordOf({ kind: 'vor-check', on: '2026-03-02', subjects: ['nav9'] }) },
    ],
    [
      'unknown-meter',
      'meter',
      { kind: 'meter.read', version: 1, meter: 'hobbs', dial: 1, asOf: '2026-05-02T10:00Z', by: 'x' },
    ],
    ['hours-backwards', 'dial', read(9_999, '2026-05-02T10:00Z')],
    ['reading-older', 'asOf', read(10_001, '2026-04-30T10:00Z')],
    [
      'reason-missing',
      'directive.reason',
      {
        kind: 'directive.set',
        version: 1,
        directive: {
          id: 'd1',
          number: '2026-01-01',
          subject: 'aircraft',
          state: 'not-applicable',
          reason: null,
          method: null,
          partNumber: null,
          serial: null,
          recurs: false,
          interval: null,
          nextDue: null,
          recordId: null,
        },
      },
    ],
    [
      'once-yet-again',
      'directive.recurs',
      { kind: 'directive.set', version: 1, directive: { ...once, interval: everyHours('tach') } },
    ],
    [
      'once-yet-again',
      'directive.recurs',
      {
        kind: 'directive.set',
        version: 1,
        directive: { ...once, nextDue: { by: 'date', date: '2027-01-31', meter: null, at: null } },
      },
    ],
    [
      'unknown-meter',
      'directive.interval.parts.0.meter',
      { kind: 'directive.set', version: 1, directive: { ...once, recurs: true, interval: everyHours('hobbs') } },
    ],
    [
      'unknown-meter',
      'limit.life.parts.0.meter',
      {
        kind: 'life-limit.set',
        version: 1,
        limit: { ...hoses, life: { ...hoses.life, parts: everyHours('hobbs').parts } },
      },
    ],
    [
      'unknown-meter',
      'limit.life.meters.0.meter',
      {
        kind: 'life-limit.set',
        version: 1,
        limit: { ...hoses, life: { ...hoses.life, meters: [{ meter: 'hobbs', at: 1, used: 0 }] } },
      },
    ],
    [
      'touch-missing',
      'touched',
      {
        kind: 'link.connect',
        version: 1,
        link: linkOf('enc1', 'altitude-gray', 'xp1', 'altitude-gray'),
        performed: on('2026-04-02'),
        touched: ['behind-panel'],
      },
      after([added, encoder, transponder], catalogue),
    ],
    [
      'touch-missing',
      'touched',
      {
        kind: 'link.connect',
        version: 1,
        link: linkOf('gps1', 'position', 'xp1', 'position'),
        performed: on('2026-04-02'),
        touched: ['nothing'],
      },
      after([added, install(), transponder], catalogue),
    ],
    [
      'touch-missing',
      'touched',
      {
        kind: 'link.disconnect',
        version: 1,
        linkId: altitude.link.id,
        performed: on('2026-04-02'),
        touched: [],
        reason: 'moved',
      },
      after([added, encoder, transponder, altitude], catalogue),
    ],
    [
      'touched-contradicts',
      'touched',
      {
        kind: 'unit.reactivate',
        version: 1,
        unitId: 'gps1',
        performed: on('2026-04-02'),
        touched: ['nothing', 'gnss'],
      },
    ],
    [
      'touched-contradicts',
      'touched',
      install({ unit: unitOf({ id: 'new', typeId: 'nx5' }), touched: ['gnss', 'nothing'] }),
    ],
    [
      'touched-contradicts',
      'touched',
      {
        kind: 'work.done',
        version: 1,
        what: 'x',
        unitId: null,
        touched: ['nothing', 'ferrous'],
        performed: on('2026-04-02'),
      },
    ],
    ['another-serial', 'unit.serial', amend('G2'), numbered],
    ['another-serial', 'unit.serial', amend('G2', false), numbered],
    ['another-serial', 'unit.serial', amend(null), numbered],
    [
      'id-of-another-unit',
      'unit.id',
      install({ unit: unitOf({ id: 'gps1', typeId: 'nx5', serial: 'G2' }) }),
      taken('G1'),
    ],
    [
      'id-of-another-unit',
      'unit.id',
      install({ unit: unitOf({ id: 'gps1', typeId: 'nx5', serial: null }) }),
      taken('G1'),
    ],
    [
      'id-of-another-unit',
      'unit.id',
      install({ unit: unitOf({ id: 'gps1', typeId: 'nx5', serial: 'G1' }) }),
      taken(null),
    ],
    ['unknown-id', 'obligationId', sayWhat('release-entry:gps1', ['nothing'])],
    [
      'touched-contradicts',
      'touched',
      sayWhat('what-was-touched:gps1', ['nothing', 'gnss']),
      after([added, install(), cdi, join([])], catalogue),
    ],
    ['dates-out-of-order', 'performed.date', close('repaired', ['nothing'], '2026-03-09'), withDefect('gps1')],
    [
      'dates-out-of-order',
      'load.expires',
      {
        kind: 'database.load',
        version: 1,
        load: {
          unitId: 'gps1',
          database: 'navigation',
          slot: 'this',
          cycle: '2605',
          effective: '2026-05-14T09:01Z',
          expires: '2026-05-14T09:01Z',
          loaded: on('2026-05-14'),
          fromFlightDeck: true,
          coverage: null,
          notices: [],
        },
      },
    ],
  ];

  it.each(cases)('%s at "%s"', (code, field, change, dossier) => {
    expect(admit(dossier ?? base, catalogue, change, now)).toContainEqual(expect.objectContaining({ code, field }));
  });

  it('accepts the same hours again, and any later', () => {
    expect(admit(base, catalogue, read(10_000, '2026-05-01T10:00Z'), now)).toEqual([]);
    expect(admit(base, catalogue, read(10_001, '2026-05-02T10:00Z'), now)).toEqual([]);
  });

  it('takes a day that has begun anywhere on earth as present', () => {
    const late = install({ unit: unitOf({ id: 'new', typeId: 'nx5' }), performed: on('2026-06-02') });
    expect(admit(base, catalogue, late, '2026-06-01T09:59Z')).toContainEqual(
      expect.objectContaining({ code: 'in-the-future' }),
    );
    expect(admit(base, catalogue, late, '2026-06-01T10:00Z')).toEqual([]);
  });

  it('says every refusal in words with a way out', () => {
    for (const { says, wayOut } of Object.values(refusalTexts)) {
      expect(says).not.toBe('');
      expect(wayOut).toMatch(/\.$/);
    }
  });
});

describe('apply', () => {
  it('counts the revision, keeps lists in order and stays within the schema', () => {
    const dossier = after([added, install(), cdi], catalogue);
    expect(dossier.revision).toBe(3);
    expect(dossier.configuration.units.map((unit) => unit.id)).toEqual(['cdi1', 'gps1']);
    expect(dossierSchema.safeParse(dossier).success).toBe(true);
  });

  it('opens what the work calls for, once for each subject', () => {
    const { obligations } = after([added, install({ touched: ['gnss', 'behind-panel'] })], catalogue).status;
    expect(obligations.map((each) => each.id)).toEqual([
      'controls-check:aircraft',
      'gnss-function-check:gps1',
      'release-entry:gps1',
      'vhf-interference-check:gps1',
    ]);
  });

  it.each([
    ['written down in order', ['2026-03-02T09:00Z', '2026-03-02T15:00Z'], '2026-03-02T15:00Z'],
    ['the earlier written down later', ['2026-03-02T15:00Z', '2026-03-02T09:00Z'], '2026-03-02T15:00Z'],
    ['one without a time', ['2026-03-02T15:00Z', null], null],
    ['the first without a time', [null, '2026-03-02T15:00Z'], null],
    ['both at one time', ['2026-03-02T15:00Z', '2026-03-02T15:00Z'], '2026-03-02T15:00Z'],
    ['both without', [null, null], null],
  ] as const)('two pieces of work on one day owe a test since the later: %s', (_name, [first, second], at) => {
    const work = (id: string, time: string | null) =>
      install({
        unit: unitOf({ id, typeId: 'alt9' }),
        touched: ['static-system', 'altitude-chain'],
        performed: on('2026-03-02', time),
      });
    const { obligations } = after([added, work('alt1', first), work('alt2', second)], catalogue).status;
    expect(obligations.find((each) => each.what === 'static-leak-test')?.since).toEqual(on('2026-03-02', at));
  });

  it('older work that is written down later opens nothing that newer work has opened, answered or not', () => {
    const work = (id: string, date: string) =>
      install({
        unit: unitOf({ id, typeId: 'alt9' }),
        touched: ['static-system', 'altitude-chain'],
        performed: on(date),
      });
    const test: Change = {
      kind: 'record.add',
      version: 1,
      record: recordOf({ kind: 'static-leak-test', on: '2026-03-12' }),
    };
    const { obligations } = after(
      [added, work('alt1', '2026-03-10'), test, work('alt2', '2026-03-01')],
      catalogue,
    ).status;
    expect(obligations.find((each) => each.what === 'static-leak-test')).toMatchObject({
      since: on('2026-03-10'),
      closedBy: test.record.id,
    });
  });

  it('a unit that is taken out and not put back leaves its test owed', () => {
    const fit = install({ unit: unitOf({ id: 'alt1', typeId: 'alt9' }), touched: ['static-system', 'altitude-chain'] });
    const remove: Change = {
      kind: 'unit.remove',
      version: 1,
      unitId: 'alt1',
      performed: on('2026-04-01'),
      reason: 'Sent for overhaul',
      touched: ['static-system', 'altitude-chain'],
      mass: null,
    };
    const { obligations } = after([added, fit, remove], catalogue).status;
    expect(obligations.filter((each) => each.since.date === '2026-04-01').map((each) => each.what)).toEqual([
      'altitude-correspondence-test',
      'release-entry',
      'static-leak-test',
    ]);
  });

  it('answers an obligation with an entry of its kind and subject, not with an earlier one', () => {
    const work: Change = {
      kind: 'work.done',
      version: 1,
      what: 'Static line opened',
      unitId: null,
      touched: ['static-system'],
      performed: on('2026-03-02'),
    };
    const before = after([added, work], catalogue);
    const early = apply(before, {
      kind: 'record.add',
      version: 1,
      record: recordOf({ kind: 'static-leak-test', on: '2026-03-01' }),
    });
    const late = apply(before, {
      kind: 'record.add',
      version: 1,
      record: recordOf({ kind: 'static-leak-test', on: '2026-03-02' }),
    });
    const closedBy = (dossier: typeof before) =>
      dossier.status.obligations.find((each) => each.what === 'static-leak-test')?.closedBy;
    expect(closedBy(early)).toBeNull();
    expect(closedBy(late)).toBe('static-leak-test-2026-03-02');
    expect(closedBy(apply(late, { ...work, performed: on('2026-04-01') }))).toBeNull();
  });

  it('takes a unit out with its links, loads and obligations and opens the release of the aircraft', () => {
    const joined: Change = {
      kind: 'link.connect',
      version: 1,
      link: linkOf('gps1', 'P1', 'cdi1', 'lateral-deviation'),
      performed: on('2026-03-02'),
      touched: [],
    };
    const out: Change = {
      kind: 'unit.remove',
      version: 1,
      unitId: 'gps1',
      performed: on('2026-04-02'),
      reason: 'sold',
      touched: ['gnss'],
      mass: null,
    };
    const dossier = after([added, install(), cdi, joined, out], catalogue);
    expect(dossier.configuration.links).toEqual([]);
    expect(dossier.status.obligations.map((each) => each.id)).not.toContain('gnss-function-check:gps1');
    expect(dossier.status.obligations.map((each) => each.id)).toContain('release-entry:aircraft');
  });

  const since = (dossier: ReturnType<typeof after>, date: string) =>
    dossier.status.obligations.filter((each) => each.since.date === date).map((each) => each.id);

  it.each<[string, readonly Change[], readonly string[]]>([
    ['left open: it may be anything', [join([])], ['release-entry:gps1', 'what-was-touched:gps1']],
    ['nothing, by name', [join(['nothing'])], ['release-entry:gps1']],
    ['behind the panel', [join(['behind-panel'])], ['controls-check:aircraft', 'release-entry:gps1']],
    [
      'left open, of the day on which one of its units was fitted: part of that fitting',
      [
        install({
          unit: unitOf({ id: 'cdi9', functions: ['lateral-deviation'] }),
          touched: ['behind-panel'],
          performed: on('2026-04-02'),
        }),
        join([], '2026-04-02', { toUnit: 'cdi9' }),
      ],
      ['controls-check:aircraft', 'release-entry:cdi9'],
    ],
    ['accepted as found', [join([], '2026-04-02', { cover: asFound('2026-04-02') })], []],
    [
      'accepted as found the day before it was made: that is no finding',
      [join([], '2026-04-02', { cover: asFound('2026-04-01') })],
      ['release-entry:gps1', 'what-was-touched:gps1'],
    ],
    [
      'as found, by nobody',
      [join([], '2026-04-02', { cover: { ...asFound('2026-04-02'), acceptedBy: null } })],
      ['release-entry:gps1', 'what-was-touched:gps1'],
    ],
    [
      'accepted as found, yet something was touched',
      [join(['ferrous'], '2026-04-02', { cover: asFound('2026-04-02') })],
      ['compass-swing:aircraft', 'release-entry:gps1'],
    ],
  ])('a joint: %s', (_name, changes, ids) => {
    expect(since(after([added, install(), cdi, ...changes], catalogue), '2026-04-02')).toEqual(ids);
  });

  it('an altitude joined to a unit that reports none touches nothing for sure', () => {
    const tapped: Change = {
      kind: 'link.connect',
      version: 1,
      link: linkOf('enc1', 'altitude-gray', 'cdi1', 'altitude-gray'),
      performed: on('2026-04-02'),
      touched: ['nothing'],
    };
    expect(admit(after([added, encoder, cdi], catalogue), catalogue, tapped, now)).toEqual([]);
  });

  it.each<[string, Change, readonly string[]]>([
    [
      'parted, left open',
      {
        kind: 'link.disconnect',
        version: 1,
        linkId: 'gps1.P1-cdi1.lateral-deviation',
        performed: on('2026-04-05'),
        touched: [],
        reason: 'moved',
      },
      ['release-entry:gps1', 'what-was-touched:gps1'],
    ],
    [
      'an antenna for it, left open',
      {
        kind: 'antenna.fit',
        version: 1,
        antenna: { id: 'a1', kind: 'gnss', units: ['gps1'], approved: true, xIn: null, yIn: null },
        performed: on('2026-04-05'),
        touched: [],
      },
      ['release-entry:gps1', 'what-was-touched:gps1'],
    ],
    [
      'reactivated, left open',
      { kind: 'unit.reactivate', version: 1, unitId: 'gps1', performed: on('2026-04-05'), touched: [] },
      ['release-entry:gps1', 'what-was-touched:gps1'],
    ],
    [
      'reactivated by its breaker alone',
      { kind: 'unit.reactivate', version: 1, unitId: 'gps1', performed: on('2026-04-05'), touched: ['nothing'] },
      ['release-entry:gps1'],
    ],
  ])('a unit: %s', (_name, change, ids) => {
    const link = { ...linkOf('gps1', 'P1', 'cdi1', 'lateral-deviation'), id: 'gps1.P1-cdi1.lateral-deviation' };
    const joined: Change = { kind: 'link.connect', version: 1, link, performed: on('2026-03-02'), touched: [] };
    expect(since(after([added, install(), cdi, joined, change], catalogue), '2026-04-05')).toEqual(ids);
  });

  it('takes an antenna off as work', () => {
    const antenna = { id: 'a1', kind: 'gnss' as const, units: ['gps1'], approved: true, xIn: null, yIn: null };
    const fit: Change = { kind: 'antenna.fit', version: 1, antenna, performed: on('2026-03-02'), touched: [] };
    const off: Change = {
      kind: 'antenna.remove',
      version: 1,
      antennaId: 'a1',
      performed: on('2026-04-05'),
      touched: [],
      reason: 'moved',
    };
    const dossier = after([added, install(), fit, off], catalogue);
    expect(dossier.configuration.antennas).toEqual([]);
    expect(since(dossier, '2026-04-05')).toEqual(['release-entry:gps1', 'what-was-touched:gps1']);
  });

  it('opens what is said later of work that left it open, since that work, and counts an entry made meanwhile', () => {
    const check: Change = {
      kind: 'record.add',
      version: 1,
      record: recordOf({ kind: 'controls-check', on: '2026-04-03' }),
    };
    const open = after([added, install(), cdi, join([])], catalogue);
    const said = after([check, sayWhat('what-was-touched:gps1', ['behind-panel', 'gnss'])], catalogue, open);
    expect(since(said, '2026-04-02')).toEqual([
      'controls-check:aircraft',
      'gnss-function-check:gps1',
      'release-entry:gps1',
      'vhf-interference-check:gps1',
    ]);
    expect(said.status.obligations.find((each) => each.what === 'controls-check')?.closedBy).toBe(check.record.id);
    expect(since(after([sayWhat('what-was-touched:gps1', ['nothing'])], catalogue, open), '2026-04-02')).toEqual([
      'release-entry:gps1',
    ]);
  });

  it('what nobody said of a unit that goes and of the aircraft is owed once, since the later work', () => {
    const general = (date: string): Change => ({
      kind: 'antenna.fit',
      version: 1,
      antenna: { id: 'a1', kind: 'com', units: [], approved: null, xIn: null, yIn: null },
      performed: on(date),
      touched: [],
    });
    const unsaid = (date: string) =>
      after([added, install(), cdi, join([], '2026-04-01'), general(date), out], catalogue).status.obligations.filter(
        (each) => each.what === 'what-was-touched',
      );
    expect(unsaid('2026-03-20')).toMatchObject([{ subject: 'aircraft', since: on('2026-04-01') }]);
    expect(unsaid('2026-04-20')).toMatchObject([{ subject: 'aircraft', since: on('2026-04-20') }]);
  });

  it('keeps what nobody said of work on a unit when the unit goes', () => {
    const dossier = after([added, install(), cdi, join([], '2026-04-01'), out], catalogue);
    expect(dossier.status.obligations.find((each) => each.what === 'what-was-touched')).toMatchObject({
      id: 'what-was-touched:aircraft',
      subject: 'aircraft',
      since: on('2026-04-01'),
    });
  });

  it.each<[string, string, Change, readonly string[]]>([
    [
      'repaired',
      'gps1',
      close('repaired', ['gnss']),
      ['gnss-function-check:gps1', 'release-entry:gps1', 'vhf-interference-check:gps1'],
    ],
    [
      'repaired, what it touched left open',
      'gps1',
      close('repaired', []),
      ['release-entry:gps1', 'what-was-touched:gps1'],
    ],
    ['replaced', 'gps1', close('replaced', ['nothing']), ['release-entry:gps1']],
    ['removed', 'aircraft', close('removed', ['nothing']), ['release-entry:aircraft']],
    ['inspected, no fault found: no work', 'gps1', close('no-fault-found', []), []],
    [
      'inspected, no fault found, the static line opened for it',
      'gps1',
      close('no-fault-found', ['static-system']),
      ['static-leak-test:aircraft'],
    ],
  ])('a defect ends: %s', (_name, subject, change, ids) => {
    const dossier = after([change], catalogue, withDefect(subject));
    expect(dossier.status.defects).toEqual([]);
    expect(since(dossier, '2026-04-02')).toEqual(ids);
  });

  it.each([
    [true, []],
    [null, []],
    [false, ['release-entry:gps1']],
  ] as const)('data loaded from the flight deck: %s', (fromFlightDeck, ids) => {
    const load: Change = {
      kind: 'database.load',
      version: 1,
      load: {
        unitId: 'gps1',
        database: 'navigation',
        slot: 'this',
        cycle: '2604',
        effective: null,
        expires: null,
        loaded: on('2026-04-16'),
        fromFlightDeck,
        coverage: null,
        notices: [],
      },
    };
    expect(since(after([added, install(), load], catalogue), '2026-04-16')).toEqual(ids);
  });

  it('a mistyped serial number is corrected and the entries stay; the unit itself comes back under its own', () => {
    expect(admit(numbered, catalogue, amend('G7', true), now)).toEqual([]);
    expect(admit(numbered, catalogue, amend('G1'), now)).toEqual([]);
    expect(admit(numberedAs(null), catalogue, amend('G7'), now)).toEqual([]);
    const back = install({ unit: unitOf({ id: 'gps1', typeId: 'nx5', serial: 'G1' }), performed: on('2026-04-09') });
    const refitted = after([back], catalogue, taken('G1'));
    expect(taken('G1').configuration.takenOut).toEqual([{ id: 'gps1', serial: 'G1' }]);
    expect(refitted.configuration.takenOut).toEqual([]);
  });

  it('carries hours over a new dial', () => {
    const replaced: Change = {
      kind: 'meter.replace',
      version: 1,
      meter: 'tach',
      oldDial: 10_050,
      newDial: 0,
      at: '2026-05-02T10:00Z',
      by: 'J. Orrell',
    };
    const dossier = after([added, tach, read(10_000, '2026-05-01T10:00Z'), replaced, read(25, '2026-05-03T10:00Z')]);
    expect(dossier.meters.readings['tach']?.value).toBe(10_075);
  });

  it('keeps the four newest heads of a kind and subject by day, whatever the order of entry, and any that answers an obligation', () => {
    const days = ['2026-01-05', '2026-01-01', '2026-01-06', '2026-01-03', '2026-01-04', '2026-01-02'];
    const entries = days.map((day): Change => ({
      kind: 'record.add',
      version: 1,
      record: recordOf({ kind: 'compass-swing', on: day }),
    }));
    const kept = (changes: readonly Change[]) =>
      after([added, ...changes]).status.records.map((each) => each.done.date);
    expect(kept(entries)).toEqual(['2026-01-03', '2026-01-04', '2026-01-05', '2026-01-06']);
    const work: Change = {
      kind: 'work.done',
      version: 1,
      what: 'Wiring',
      unitId: null,
      touched: ['electrical'],
      performed: on('2026-01-01'),
    };
    const answered = after([added, work, ...entries.slice(0, 1)]);
    expect(answered.status.obligations.find((each) => each.what === 'compass-swing')?.closedBy).toBe(
      'compass-swing-2026-01-05',
    );
  });

  it('accepts as found only what has no approval of its own', () => {
    const own = approvalOf({ document: { title: 'STC papers', revision: '1', date: null } });
    const accept: Change = {
      kind: 'adopt',
      version: 1,
      units: ['gps1', 'cdi1'],
      links: [],
      by: { asOf: '2026-05-01', by: 'R. Tamsin' },
      approval: approvalOf(),
    };
    const dossier = after(
      [added, install({ unit: unitOf({ id: 'gps1', typeId: 'nx5', approval: own }) }), cdi, accept],
      catalogue,
    );
    expect(dossier.configuration.units.map((unit) => unit.approval?.basis)).toEqual(['as-found', 'field-approval']);
  });

  it('gives the same dossier on replay', () => {
    const changes = [added, tach, read(10_000, '2026-05-01T10:00Z'), install(), cdi];
    expect(replay(changes, 'test-aircraft')).toEqual(after(changes, catalogue));
    expect(replay(changes)).toEqual({ ...after(changes, catalogue), aircraftId: 'aircraft' });
  });

  it('refuses a kind that it does not know, and fails loudly where one is on record', () => {
    expect(admit(after([added]), catalogue, { kind: 'paint.wing', version: 2 } as never)).toEqual([
      { code: 'unknown-kind', field: 'kind', data: { kind: 'paint.wing', version: 2 } },
    ]);
    expect(() => apply(after([added]), { kind: 'paint.wing', version: 1 } as never)).toThrow(/older than the record/);
  });
});

describe('parseChange', () => {
  it('reads back every change it is given as JSON', () => {
    for (const change of [added, tach, install(), cdi]) {
      const parsed = parseChange(JSON.parse(JSON.stringify(change)));
      expect(parsed).toEqual({ ok: true, change });
    }
  });

  it.each([
    ['no kind', {}, 'unknown-kind', 'kind'],
    ['a version to come', { ...tach, version: 2 }, 'unknown-kind', 'kind'],
    ['negative hours', read(-1, '2026-05-01T10:00Z'), 'malformed', 'dial'],
    ['a day that does not exist', install({ performed: on('2026-02-29') }), 'malformed', 'performed.date'],
    ['a field too many', { ...tach, colour: 'red' }, 'malformed', ''],
    [
      'text for a number',
      { ...tach, definition: { id: 'tach', name: 'T', kind: 'tachometer', perFlightHour: 'fast', offset: 0 } },
      'malformed',
      'definition.perFlightHour',
    ],
    ['nothing', null, 'unknown-kind', 'kind'],
  ])('%s', (_name, value, code, field) => {
    const parsed = parseChange(value);
    expect(parsed.ok ? [] : parsed.refusals).toContainEqual(expect.objectContaining({ code, field }));
  });

  it.each([
    ['nothing at all', undefined, { kind: '', version: 1 }],
    ['a text', 'tach', { kind: '', version: 1 }],
    ['a number for its kind', { kind: 7, version: 1 }, { kind: '', version: 1 }],
    ['a kind to come', { kind: 'paint.wing', version: 3 }, { kind: 'paint.wing', version: 3 }],
  ])('says which kind and version it does not know: %s', (_name, value, data) => {
    expect(parseChange(value)).toEqual({ ok: false, refusals: [{ code: 'unknown-kind', field: 'kind', data }] });
  });

  it('names the field that cannot be read, or the kind where it is the whole', () => {
    const problems = (value: unknown) => {
      const parsed = parseChange(value);
      return parsed.ok ? [] : parsed.refusals.map(({ field, data }) => [field, data['field']]);
    };
    expect(problems(install({ performed: on('2026-02-29') }))).toEqual([['performed.date', 'performed.date']]);
    expect(problems({ ...tach, colour: 'red' })).toEqual([['', 'meter.define']]);
    const unread = parseChange({ ...tach, colour: 'red' });
    expect(unread.ok ? '' : unread.refusals[0]?.data['problem']).toMatch(/colour/);
  });

  it('has the schema of each kind, and none for what does not exist', () => {
    expect(Object.keys(changeSchema('hold.lift')?.shape ?? {})).toEqual(['holdId', 'at', 'reason']);
    expect(changeSchema('hold.lift', 2)).toBeUndefined();
    expect(changeSchema('paint.wing')).toBeUndefined();
  });

  it('lists each kind once', () => {
    const kinds = changeDefinitions.map((each) => `${each.kind}@${each.version}`);
    expect(new Set(kinds).size).toBe(kinds.length);
  });
});
