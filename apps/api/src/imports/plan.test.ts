import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { defectKey, readingContent, readingKey, recordContent, recordKey } from './keys.js';
import type { KnownFleet } from './testing.js';
import { planAll } from './testing.js';

const samples = fileURLToPath(new URL('../../samples', import.meta.url));
const nothing: KnownFleet = {
  now: '2026-11-25T14:00Z',
  aircraft: new Map(),
  aircraftIds: new Set(),
  operators: [],
  bases: [{ id: 'field', name: 'Field', zone: 'America/Chicago' }],
  types: [],
  supersededTypes: new Set(),
};

function sample(folder: string) {
  return readdirSync(`${samples}/${folder}`)
    .filter((name) => name.endsWith('.csv'))
    .map((name) => ({ name, bytes: readFileSync(`${samples}/${folder}/${name}`) }));
}

function files(texts: Readonly<Record<string, string>>) {
  return Object.entries(texts).map(([name, text]) => ({ name, bytes: new TextEncoder().encode(text) }));
}

/** What would be stored after the load: heads in the dossier, keys of everything in the history. */
function stored(plan: ReturnType<typeof planAll>): KnownFleet {
  return {
    ...nothing,
    operators: plan.newOperators,
    bases: plan.aircraft.map(({ dossier }) => dossier.configuration.aircraft.base),
    types: plan.newTypes,
    aircraftIds: new Set(plan.aircraft.map(({ aircraftId }) => aircraftId)),
    aircraft: new Map(
      plan.aircraft.map(({ registration, dossier, changes }) => [
        registration,
        {
          dossier,
          hashAt: null,
          recorded: new Map(
            changes.flatMap((change): [string, string][] => {
              if (change.kind === 'record.add') {
                const { kind, subjects, done } = change.record;
                return [[recordKey(kind, subjects, done.date), recordContent(change.record)]];
              }
              if (change.kind === 'meter.read')
                return [[readingKey(change.meter, change.asOf), readingContent(change.dial)]];
              return change.kind === 'defect.raise'
                ? [[defectKey(change.defect.subject, change.defect.raised.date), '']]
                : [];
            }),
          ),
        },
      ]),
    ),
  };
}

const aircraft = 'registration,make,model,kind,base\nTW-1A,Corvane,Four,airplane,Field\n';
const meters = 'registration,meter,dial,read_at,read_by,meter_kind,time_in_service\n';

describe('the clean sample', () => {
  const plan = planAll(sample('clean'), nothing);

  it('has not one bad row among at least forty aircraft', () => {
    expect(plan.bad).toEqual([]);
    expect(plan.aircraft.length).toBeGreaterThanOrEqual(40);
    expect(plan.files.every(({ kind, rows, good }) => kind !== null && rows > 0 && good === rows)).toBe(true);
  });

  it('sent again changes nothing', () => {
    const again = planAll(sample('clean'), stored(plan));
    expect(again.bad).toEqual([]);
    expect(again.aircraft.flatMap(({ changes }) => changes)).toEqual([]);
    expect(again.newOperators).toEqual([]);
    expect(again.newTypes).toEqual([]);
  });
});

describe('the messy sample', () => {
  it('has each bad row named at its line and column, and no other', () => {
    const expected = JSON.parse(readFileSync(`${samples}/messy/expected.json`, 'utf8')) as {
      file: string;
      line: number;
      column: string;
    }[];
    const plan = planAll(sample('messy'), nothing);
    const place = ({ file, line, column }: { file: string; line: number | null; column: string | null }) =>
      `${file}:${line} ${column}`;
    expect(plan.bad.map(place).sort()).toEqual(expected.map(place).sort());
    expect(expected.length).toBeGreaterThan(20);
    for (const { reason, wayOut } of plan.bad) expect(reason.length * wayOut.length).toBeGreaterThan(0);
  });
});

describe('planning', () => {
  it('finds kinds by their header, whatever the file is called and in whatever order they come', () => {
    const plan = planAll(
      files({ 'b.csv': `${meters}TW-1A,tach,100.0,2026-11-01,A,tachometer,yes\n`, 'a.csv': aircraft }),
      nothing,
    );
    expect(plan.files.map(({ kind }) => kind)).toEqual(['meters', 'aircraft']);
    expect(plan.bad).toEqual([]);
    expect(plan.aircraft[0]?.dossier.meters.readings['tach']?.value).toBe(10_000);
  });

  it('names a file that fits no kind, and what it lacks', () => {
    expect(planAll(files({ 'x.csv': 'colour,taste\nred,sweet\n' }), nothing).bad).toMatchObject([
      { file: 'x.csv', line: 1, reason: 'None of the columns is known, so the kind of file cannot be told.' },
    ]);
    expect(
      planAll(files({ 'x.csv': 'registration,make,model,kind\nTW-1A,C,F,airplane\n' }), nothing).bad,
    ).toMatchObject([{ reason: 'This looks like a file of aircraft, but these columns are missing: base.' }]);
  });

  it('takes readings in order of time, and names the one that runs backwards', () => {
    const rows = [
      'TW-1A,tach,120.0,2026-11-10,A,tachometer,yes',
      'TW-1A,tach,100.0,2026-11-01,A,tachometer,yes',
      'TW-1A,tach,110.0,2026-11-20,A,tachometer,yes',
    ];
    const plan = planAll(files({ 'a.csv': aircraft, 'm.csv': `${meters}${rows.join('\n')}\n` }), nothing);
    expect(plan.bad).toMatchObject([{ file: 'm.csv', line: 4, column: 'dial', value: '110.0' }]);
    expect(plan.bad[0]?.reason).toBe('The meter tach already stood at 120; 110 would run backwards.');
  });

  it('points rows of an aircraft that could not be taken to the row that must be mended first', () => {
    const plan = planAll(
      files({
        'a.csv': aircraft.replace('Field', 'Elsewhere'),
        'm.csv': `${meters}TW-1A,tach,1,2026-11-01,A,tachometer,yes\n`,
      }),
      nothing,
    );
    expect(plan.bad.map(({ column, reason }) => [column, reason])).toEqual([
      ['base', 'There is no base Elsewhere.'],
      ['registration', 'The row of TW-1A in the file of aircraft could not be taken.'],
    ]);
    expect(plan.aircraft).toEqual([]);
  });

  it('takes a row all or not at all', () => {
    const bad =
      'registration,make,model,kind,base,empty_weight_lb,empty_arm_in,mass_revised_on\nTW-1A,Corvane,Four,airplane,Field,1500,38,2030-01-01\n';
    const plan = planAll(files({ 'a.csv': bad }), nothing);
    expect(plan.bad).toMatchObject([{ column: 'mass_revised_on', reason: '2030-01-01 has not come yet.' }]);
    expect(plan.aircraft).toEqual([]);
  });

  it('amends an aircraft by what the file states, and leaves alone what it leaves empty', () => {
    const first = planAll(
      files({ 'a.csv': aircraft.replace('base\n', 'base,seats\n').replace('Field\n', 'Field,4\n') }),
      nothing,
    );
    const again = planAll(
      files({ 'a.csv': aircraft.replace('base\n', 'base,serial,seats\n').replace('Field\n', 'Field,X-9,\n') }),
      stored(first),
    );
    expect(again.aircraft[0]).toMatchObject({ revision: first.aircraft[0]?.dossier.revision });
    expect(again.aircraft[0]?.changes.map(({ kind }) => kind)).toEqual(['aircraft.amend']);
    expect(again.aircraft[0]?.dossier.configuration.aircraft).toMatchObject({ seats: 4, serial: 'X-9' });
  });

  const typesHead = 'family,maker,type_name,part_number,manual,manual_revision,type_functions,details\n';

  it('remarks on a type that is an older version of what the catalogue has, and takes it no further', () => {
    const sent = files({ 'types.csv': `${typesHead}nv1,Quillon,NV 1,Q-1,NV 1 manual,A,com,\n` });
    const [old] = planAll(sent, nothing).newTypes;
    if (!old) throw new Error('the type was not taken');
    const plan = planAll(sent, { ...nothing, types: [old], supersededTypes: new Set([old.id]) });
    expect(plan.newTypes).toEqual([]);
    expect(plan.bad).toEqual([]);
    expect(plan.remarks).toMatchObject([{ line: 2, text: expect.stringContaining('older version of Quillon NV 1') }]);
    expect(planAll(sent, { ...nothing, types: [old] }).remarks).toEqual([]);
  });

  it('holds a type to what its fields say of each other', () => {
    const details =
      '"{""pairs"":[{""family"":""x"",""signals"":[],""software"":null,""document"":""M"",""revision"":""A""}]}"';
    const { bad, newTypes } = planAll(
      files({ 'types.csv': `${typesHead}nv1,Quillon,NV 1,Q-1,NV 1 manual,A,com,${details}\n` }),
      nothing,
    );
    expect(newTypes).toEqual([]);
    expect(bad).toMatchObject([{ line: 2, column: 'details', reason: expect.stringContaining('pairs.0.signals') }]);
  });

  it('does not take back an entry that was superseded', () => {
    const records = (outcome: string) =>
      `registration,record,done_on,outcome\nTW-1A,compass-swing,2026-01-05,${outcome}\n`;
    const first = planAll(files({ 'a.csv': aircraft, 'r.csv': records('passed') }), nothing);
    const known = stored(first);
    const plane = known.aircraft.get('TW-1A');
    if (!plane) throw new Error('not stored');
    const emptied = { ...plane, dossier: { ...plane.dossier, status: { ...plane.dossier.status, records: [] } } };
    const later = { ...known, aircraft: new Map([['TW-1A', emptied]]) };
    const again = planAll(files({ 'r.csv': records('passed') }), later);
    expect(again).toMatchObject({ bad: [], remarks: [], aircraft: [{ changes: [] }] });
    const otherwise = planAll(files({ 'r.csv': records('failed') }), later);
    expect(otherwise).toMatchObject({ bad: [], aircraft: [{ changes: [] }] });
    expect(otherwise.remarks).toMatchObject([{ line: 2, text: expect.stringContaining('recorded otherwise') }]);
  });
});

describe('a row that says otherwise than what is recorded', () => {
  const units = (row: string) => `registration,unit,name,functions,fitted_on,serial,place\n${row}\n`;
  const radio = 'TW-1A,com1,Radio,com,2026-01-05,S-1,centre-stack';
  const records = (outcome: string, signer = '') =>
    `registration,record,done_on,outcome,signed_by,signer_kind\nTW-1A,compass-swing,2026-01-05,${outcome},${signer}\n`;
  const dial = (hours: string) => `${meters}TW-1A,tach,${hours},2026-11-01T10:00Z,A,tachometer,yes\n`;
  const first = planAll(
    files({ 'a.csv': aircraft, 'u.csv': units(radio), 'r.csv': records('passed', ','), 'm.csv': dial('100.0') }),
    nothing,
  );
  const known = stored(first);

  it.each([
    ['an outcome', 'r.csv', records('failed', ','), 'outcome', 'passed', 'failed', 'record.correct'],
    ['a reading', 'm.csv', dial('101.5'), 'dial', '100', '101.5', 'meter.correct'],
    ['a model', 'a.csv', aircraft.replace('Four', 'Five'), 'model', 'Four', 'Five', 'aircraft.amend'],
  ])('%s is shown, left alone until somebody decides, and taken if so', (_, name, text, field, was, is, kind) => {
    const sent = files({ [name]: text });
    const asked = planAll(sent, known);
    expect(asked).toMatchObject({ bad: [], differences: [{ file: name, line: 2, field, was, is, taken: null }] });
    expect(asked.aircraft.flatMap(({ changes }) => changes)).toEqual([]);
    for (const decision of ['keep', new Set(['other.csv:2'])] as const) {
      const kept = planAll(sent, known, decision);
      expect(kept.differences).toMatchObject([{ taken: false }]);
      expect(kept.aircraft.flatMap(({ changes }) => changes)).toEqual([]);
    }
    for (const decision of ['take', new Set([`${name}:2`])] as const) {
      const taken = planAll(sent, known, decision);
      expect(taken.aircraft.flatMap(({ changes }) => changes.map((each) => each.kind))).toEqual([kind]);
      const after = stored(taken);
      expect(planAll(sent, { ...after, aircraft: merged(known, after) }).differences).toEqual([]);
    }
  });

  it('another serial number is shown, and never taken from a file: it may be another unit', () => {
    const sent = files({ 'u.csv': units(radio.replace('S-1', 'S-2')) });
    expect(planAll(sent, known)).toMatchObject({
      bad: [],
      differences: [{ file: 'u.csv', line: 2, field: 'serial', was: 'S-1', is: 'S-2', taken: null }],
    });
    const taken = planAll(sent, known, 'take');
    expect(taken.aircraft.flatMap(({ changes }) => changes)).toEqual([]);
    expect(taken.bad).toMatchObject([{ file: 'u.csv', line: 2, column: 'serial' }]);
    expect(taken.bad[0]?.wayOut).toMatch(/take .* out and fit the other one/);
  });

  it('fills in what nobody recorded without asking', () => {
    const filled = planAll(files({ 'r.csv': records('passed', 'Wenna Tarrant,mechanic') }), known);
    expect(filled).toMatchObject({ bad: [], differences: [] });
    expect(filled.aircraft[0]?.changes).toMatchObject([
      { kind: 'record.correct', record: { outcome: 'passed', agency: { name: 'Wenna Tarrant', kind: 'mechanic' } } },
    ]);
    // The file without the signer takes nothing away again.
    const after = { ...known, aircraft: merged(known, stored(filled)) };
    const again = planAll(files({ 'r.csv': records('passed', ',') }), after);
    expect(again).toMatchObject({ differences: [], aircraft: [{ changes: [] }] });
  });

  it('knows a unit again by its serial number, whatever it is called', () => {
    const sent = files({
      'u.csv': units('TW-1A,radio,Radio,com,2026-01-05,s-1,centre-stack'),
      'r.csv': 'registration,record,done_on,subjects\nTW-1A,release-entry,2026-01-06,radio\n',
    });
    const plan = planAll(sent, known);
    expect(plan).toMatchObject({ bad: [], differences: [] });
    expect(plan.aircraft[0]?.dossier.configuration.units.map(({ id }) => id)).toEqual(['com1']);
    expect(plan.aircraft[0]?.changes).toMatchObject([{ kind: 'record.add', record: { subjects: ['com1'] } }]);
  });

  it('asks where only kind and place are alike', () => {
    const sent = files({ 'u.csv': units('TW-1A,radio,Radio,com,2026-01-05,,centre-stack') });
    const count = (decision: 'take' | 'keep') =>
      planAll(sent, known, decision).aircraft[0]?.dossier.configuration.units.length;
    expect(planAll(sent, known).differences).toMatchObject([{ field: 'unit', was: 'com1', taken: null }]);
    expect([count('keep'), count('take')]).toEqual([1, 2]);
    // Named beside the other, it is another one without a question.
    const both = files({ 'u.csv': `${units(radio)}TW-1A,com2,Radio,com,2026-01-05,,centre-stack\n` });
    expect(planAll(both, known)).toMatchObject({
      differences: [],
      aircraft: [{ changes: [{ kind: 'unit.install' }] }],
    });
  });
});

describe('a type that the catalogue does not have', () => {
  const units = 'registration,unit,type,fitted_on\nTW-1A,box,Zephyrine 9000,2026-01-05\n';
  const first = planAll(files({ 'a.csv': aircraft, 'u.csv': units }), nothing);

  it('makes an uncatalogued unit, named in the report', () => {
    expect(first).toMatchObject({ bad: [], uncatalogued: [{ type: 'Zephyrine 9000', units: 1 }] });
    expect(first.aircraft[0]?.dossier.configuration.units).toMatchObject([
      { id: 'box', name: 'Zephyrine 9000', typeId: null, functions: ['other'] },
    ]);
  });

  it('is tied to the type by the same file, once the type is there', () => {
    const types =
      'family,maker,type_name,part_number,manual,manual_revision,type_functions\nz9,Quillon,Zephyrine 9000,Z-9,Z manual,A,com\n';
    const again = planAll(files({ 'u.csv': units, 't.csv': types }), stored(first));
    expect(again).toMatchObject({ bad: [], differences: [], uncatalogued: [] });
    expect(again.aircraft[0]?.changes).toMatchObject([
      { kind: 'unit.amend', unit: { id: 'box', typeId: again.newTypes[0]?.id, functions: [] } },
    ]);
  });
});

/** The aircraft of the first, with what the second has of them in their place. */
function merged(known: KnownFleet, later: KnownFleet): KnownFleet['aircraft'] {
  const all = new Map(known.aircraft);
  for (const [name, each] of later.aircraft)
    all.set(name, { ...each, recorded: new Map([...(known.aircraft.get(name)?.recorded ?? []), ...each.recorded]) });
  return all;
}
