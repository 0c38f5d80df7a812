import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { defectKey, readingKey, recordKey } from './keys.js';
import type { Known, Plan } from './plan.js';
import { planImport } from './plan.js';

const samples = fileURLToPath(new URL('../../samples', import.meta.url));
const nothing: Known = {
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
function stored(plan: Plan): Known {
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
          recorded: new Set(
            changes.flatMap((change) => {
              if (change.kind === 'record.add')
                return [recordKey(change.record.kind, change.record.subjects, change.record.done.date)];
              if (change.kind === 'meter.read') return [readingKey(change.meter, change.asOf)];
              return change.kind === 'defect.raise'
                ? [defectKey(change.defect.subject, change.defect.raised.date)]
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
  const plan = planImport(sample('clean'), nothing);

  it('has not one bad row among at least forty aircraft', () => {
    expect(plan.bad).toEqual([]);
    expect(plan.aircraft.length).toBeGreaterThanOrEqual(40);
    expect(plan.files.every(({ kind, rows, good }) => kind !== null && rows > 0 && good === rows)).toBe(true);
  });

  it('sent again changes nothing', () => {
    const again = planImport(sample('clean'), stored(plan));
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
    const plan = planImport(sample('messy'), nothing);
    const place = ({ file, line, column }: { file: string; line: number | null; column: string | null }) =>
      `${file}:${line} ${column}`;
    expect(plan.bad.map(place).sort()).toEqual(expected.map(place).sort());
    expect(expected.length).toBeGreaterThan(20);
    for (const { reason, wayOut } of plan.bad) expect(reason.length * wayOut.length).toBeGreaterThan(0);
  });
});

describe('planning', () => {
  it('finds kinds by their header, whatever the file is called and in whatever order they come', () => {
    const plan = planImport(
      files({ 'b.csv': `${meters}TW-1A,tach,100.0,2026-11-01,A,tachometer,yes\n`, 'a.csv': aircraft }),
      nothing,
    );
    expect(plan.files.map(({ kind }) => kind)).toEqual(['meters', 'aircraft']);
    expect(plan.bad).toEqual([]);
    expect(plan.aircraft[0]?.dossier.meters.readings['tach']?.value).toBe(10_000);
  });

  it('names a file that fits no kind, and what it lacks', () => {
    expect(planImport(files({ 'x.csv': 'colour,taste\nred,sweet\n' }), nothing).bad).toMatchObject([
      { file: 'x.csv', line: 1, reason: 'None of the columns is known, so the kind of file cannot be told.' },
    ]);
    expect(
      planImport(files({ 'x.csv': 'registration,make,model,kind\nTW-1A,C,F,airplane\n' }), nothing).bad,
    ).toMatchObject([{ reason: 'This looks like a file of aircraft, but these columns are missing: base.' }]);
  });

  it('takes readings in order of time, and names the one that runs backwards', () => {
    const rows = [
      'TW-1A,tach,120.0,2026-11-10,A,tachometer,yes',
      'TW-1A,tach,100.0,2026-11-01,A,tachometer,yes',
      'TW-1A,tach,110.0,2026-11-20,A,tachometer,yes',
    ];
    const plan = planImport(files({ 'a.csv': aircraft, 'm.csv': `${meters}${rows.join('\n')}\n` }), nothing);
    expect(plan.bad).toMatchObject([{ file: 'm.csv', line: 4, column: 'dial', value: '110.0' }]);
    expect(plan.bad[0]?.reason).toBe('The meter tach already stood at 120; 110 would run backwards.');
  });

  it('points rows of an aircraft that could not be taken to the row that must be mended first', () => {
    const plan = planImport(
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
    const plan = planImport(files({ 'a.csv': bad }), nothing);
    expect(plan.bad).toMatchObject([{ column: 'mass_revised_on', reason: '2030-01-01 has not come yet.' }]);
    expect(plan.aircraft).toEqual([]);
  });

  it('amends an aircraft by what the file states, and leaves alone what it leaves empty', () => {
    const first = planImport(
      files({ 'a.csv': aircraft.replace('base\n', 'base,seats\n').replace('Field\n', 'Field,4\n') }),
      nothing,
    );
    const again = planImport(
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
    const [old] = planImport(sent, nothing).newTypes;
    if (!old) throw new Error('the type was not taken');
    const plan = planImport(sent, { ...nothing, types: [old], supersededTypes: new Set([old.id]) });
    expect(plan.newTypes).toEqual([]);
    expect(plan.bad).toEqual([]);
    expect(plan.remarks).toMatchObject([{ line: 2, text: expect.stringContaining('older version of Quillon NV 1') }]);
    expect(planImport(sent, { ...nothing, types: [old] }).remarks).toEqual([]);
  });

  it('holds a type to what its fields say of each other', () => {
    const details =
      '"{""pairs"":[{""family"":""x"",""signals"":[],""software"":null,""document"":""M"",""revision"":""A""}]}"';
    const { bad, newTypes } = planImport(
      files({ 'types.csv': `${typesHead}nv1,Quillon,NV 1,Q-1,NV 1 manual,A,com,${details}\n` }),
      nothing,
    );
    expect(newTypes).toEqual([]);
    expect(bad).toMatchObject([{ line: 2, column: 'details', reason: expect.stringContaining('pairs.0.signals') }]);
  });

  it('refuses an entry that is recorded with other content, and does not take back a superseded one', () => {
    const records = (outcome: string) =>
      `registration,record,done_on,outcome\nTW-1A,compass-swing,2026-01-05,${outcome}\n`;
    const first = planImport(files({ 'a.csv': aircraft, 'r.csv': records('passed') }), nothing);
    expect(planImport(files({ 'r.csv': records('failed') }), stored(first)).bad).toMatchObject([
      { line: 2, reason: 'This entry is already recorded with other content.' },
    ]);
    const known = stored(first);
    const plane = known.aircraft.get('TW-1A');
    if (!plane) throw new Error('not stored');
    const emptied = { ...plane, dossier: { ...plane.dossier, status: { ...plane.dossier.status, records: [] } } };
    const later = planImport(files({ 'r.csv': records('passed') }), {
      ...known,
      aircraft: new Map([['TW-1A', emptied]]),
    });
    expect(later.aircraft.flatMap(({ changes }) => changes)).toEqual([]);
    expect(later.bad).toEqual([]);
  });
});
