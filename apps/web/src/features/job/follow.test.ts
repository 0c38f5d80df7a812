import { blankDossier, equipmentType, replay, type Catalogue, type Change, type EquipmentType } from '@tallywing/rules';
import { expect, test } from 'vitest';
import { stillOwed } from '../../trade/effect.js';
import { cycleNamed, entryFor, newStep, stepAbout, stepWith } from './follow.js';
import { valueAt, withValueAt } from '../../form/tree.js';
import { openJoins } from '@tallywing/rules';
import { judgeStep, limitWords, pointWords } from './judging.js';
import type { Start } from './kinds.js';
import { keepDraft, readDraft } from './draft.js';
import { planOf } from './plan.js';

function type(id: string, part: Partial<EquipmentType>): EquipmentType {
  return equipmentType.parse({
    id,
    family: id,
    maker: 'Ostrava Linnet',
    name: id.toUpperCase(),
    partNumber: `${id}-1`,
    document: 'Manual',
    revision: 'A',
    functions: ['other'],
    authorisations: [],
    bezel: null,
    massLb: null,
    drawA: null,
    supplyV: null,
    cooling: null,
    ports: [],
    databases: [],
    view: null,
    pairs: [],
    limitations: [],
    ...part,
  });
}
const port = (name: string, direction: 'in' | 'out', signal: EquipmentType['ports'][number]['signal']) =>
  ({ name, direction, signal, standard: 'analog', speed: null, requiredFor: [] }) as const;
const catalogue: Catalogue = {
  version: '1',
  types: {
    nav: type('nav', {
      functions: ['gnss'],
      ports: [port('LAT', 'out', 'lateral-deviation'), port('VERT', 'out', 'vertical-deviation')],
    }),
    cdi: type('cdi', { functions: ['lateral-deviation'], ports: [port('L', 'in', 'lateral-deviation')] }),
    xpdr: type('xpdr', { functions: ['transponder'] }),
    com: type('com', { functions: ['com'] }),
  },
};
const start: Start = {
  dossier: blankDossier('a'),
  catalogue,
  today: '2026-11-25',
  now: '2026-11-25T12:00Z',
  workedAt: null,
  by: 'A. Person',
};

function install(id: string, typeId: string): Change {
  const step = newStep('unit.install', start, { unit: { id, name: id, typeId } });
  return { kind: 'unit.install', version: 1, ...(step.value as object) } as Change;
}

test('a chosen type brings its name and what the work touches; what was ticked stays', () => {
  const step = stepWith(newStep('unit.install', start), 'unit.typeId', 'nav', start.dossier, catalogue);
  expect(valueAt(step.value, 'unit.name')).toBe('Ostrava Linnet NAV');
  expect(valueAt(step.value, 'touched')).toEqual(['behind-panel', 'gnss']);
  expect(valueAt(step.value, 'performed.date')).toBe('2026-11-25');
  expect(valueAt(step.value, 'unit.id')).toMatch(/^unit-/);
});

test('an entry beside work of the same minute is of the next one, so that the test counts as done after it', () => {
  const at = (workedAt: string | null) =>
    valueAt(newStep('record.add', { ...start, workedAt }).value, 'record.done.at');
  expect(at(null)).toBe('2026-11-25T12:00Z');
  expect(at('2026-11-25T11:00Z')).toBe('2026-11-25T12:00Z');
  expect(at('2026-11-25T12:00Z')).toBe('2026-11-25T12:01Z');
});

test('taking a unit out touches what the unit does', () => {
  const dossier = replay([install('x', 'xpdr')], 'a');
  const step = stepWith(newStep('unit.remove', { ...start, dossier }), 'unitId', 'x', dossier, catalogue);
  expect(valueAt(step.value, 'touched')).toEqual(['behind-panel', 'transponder']);
});

test('an entry gets the readings of its kind and no others', () => {
  const step = stepWith(newStep('record.add', start), 'record.kind', 'vor-check', start.dossier, catalogue);
  expect(valueAt(step.value, 'record.readings.vor.indicatedDeg')).toBeNull();
  expect(valueAt(step.value, 'record.readings.vor')).not.toBeNull();
  expect(valueAt(step.value, 'record.readings.altimeter')).toBeNull();
  expect(
    valueAt(stepWith(step, 'record.kind', 'annual-inspection', start.dossier, catalogue).value, 'record.readings'),
  ).toBeNull();
});

test('the tested altitude brings the rows of the tables, and a row already read keeps its reading', () => {
  let step = stepWith(newStep('record.add', start), 'record.kind', 'altimeter-test', start.dossier, catalogue);
  const at = 'record.readings.altimeter';
  step = { ...step, value: withValueAt(step.value, `${at}.scaleError`, [{ atFt: 1000, indicatedFt: 1015 }]) };
  step = stepWith(step, `${at}.testedToFt`, 2000, start.dossier, catalogue);
  const rows = valueAt(step.value, `${at}.scaleError`) as { atFt: number; indicatedFt: number | null }[];
  expect(rows.map((row) => row.atFt)).toEqual([-1000, 0, 500, 1000, 1500, 2000]);
  expect(rows.find((row) => row.atFt === 1000)?.indicatedFt).toBe(1015);
});

test('readings are judged while they are typed: half a row is not recorded, a bad one is not met', () => {
  let step = stepWith(newStep('record.add', start), 'record.kind', 'altimeter-test', start.dossier, catalogue);
  step = stepWith(step, 'record.readings.altimeter.testedToFt', 1000, start.dossier, catalogue);
  const point = (value: unknown) =>
    judgeStep(value)?.points.find((each) => each.what === 'scale-error' && each.at === 1000);
  expect(point(step.value)?.outcome).toBe('cannot-tell');
  const good = stepWith(step, 'record.readings.altimeter.scaleError.3.indicatedFt', 1020, start.dossier, catalogue);
  expect(point(good.value)?.outcome).toBe('met');
  const bad = stepWith(step, 'record.readings.altimeter.scaleError.3.indicatedFt', 1021, start.dossier, catalogue);
  expect(point(bad.value)?.outcome).toBe('not-met');
  const typing = stepWith(step, 'record.readings.altimeter.scaleError.3.indicatedFt', '10x', start.dossier, catalogue);
  expect(point(typing.value)?.outcome).toBe('cannot-tell');
  const found = point(good.value);
  expect(found && [pointWords(found), limitWords(found)]).toEqual(['Scale error at 1,000', 'at most 20 ft']);
});

test('a database comes with the cycle of the day and its times', () => {
  const value = newStep('database.load', start).value;
  expect(valueAt(value, 'load.cycle')).toBe('2611');
  expect(valueAt(value, 'load.effective')).toBe('2026-10-29T09:01Z');
  expect(valueAt(value, 'load.expires')).toBe('2026-11-26T09:01Z');
});

test('every cycle of ten years is found by its number, and a number that no cycle has is not', () => {
  for (let day = Date.UTC(2020, 0, 2); day < Date.UTC(2030, 0, 1); day += 28 * 86_400_000) {
    const effective = new Date(day).toISOString().slice(0, 10);
    const first = new Date(Date.UTC(Number(effective.slice(0, 4)), 0, 1)).getTime();
    const id = `${effective.slice(2, 4)}${String(Math.floor((day - first) / (28 * 86_400_000)) + 1).padStart(2, '0')}`;
    expect(cycleNamed(id)?.effective, id).toBe(effective);
  }
  expect(cycleNamed('2699')).toBeNull();
  expect(cycleNamed('26')).toBeNull();
});

test('free ports of one signal are proposed, each input once', () => {
  const dossier = replay([install('n1', 'nav'), install('c1', 'cdi'), install('n2', 'nav')], 'a');
  expect(openJoins('n1', dossier, catalogue)).toEqual([{ fromUnit: 'n1', fromPort: 'LAT', toUnit: 'c1', toPort: 'L' }]);
  const joined = { fromUnit: 'n2', fromPort: 'LAT', toUnit: 'c1', toPort: 'L' };
  const step = newStep('link.connect', start, { link: joined });
  const taken = replay(
    [
      install('n1', 'nav'),
      install('c1', 'cdi'),
      install('n2', 'nav'),
      { kind: 'link.connect', version: 1, ...(step.value as object) } as Change,
    ],
    'a',
  );
  expect(openJoins('n1', taken, catalogue)).toEqual([]);
});

test('a draft survives; an older form of it is named and not lost; a full device is noticed', () => {
  const kept = new Map<string, string>();
  const storage = {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key),
  };
  const draft = {
    aircraftId: 'a',
    revision: 3,
    commitKey: 'k',
    steps: [{ key: '1', kind: 'meter.read', value: { dial: 1 } }],
  };
  expect(readDraft(storage, 'a')).toEqual({ state: 'none' });
  expect(keepDraft(storage, draft)).toBe(true);
  expect(readDraft(storage, 'a')).toEqual({ state: 'kept', draft });
  const [key, text] = [...kept][0] ?? ['', ''];
  kept.set(key, text.replace('"version":"1.', '"version":"0.'));
  expect(readDraft(storage, 'a').state).toBe('other-version');
  kept.set(key, '{');
  expect(readDraft(storage, 'a').state).toBe('other-version');
  expect(keepDraft(storage, { ...draft, steps: [] })).toBe(true);
  expect(kept.size).toBe(0);
  const full = () => {
    throw new Error('QuotaExceededError');
  };
  expect(keepDraft({ setItem: full, removeItem: full }, draft)).toBe(false);
});

test('an entry made from what is owed takes it off the list at once, before the plan is judged again', () => {
  const aircraft = {
    ...blankDossier('a').configuration.aircraft,
    registration: 'TW-07Q',
    make: 'Corvane',
    model: 'C2',
  };
  const dossier = replay([{ kind: 'aircraft.add', version: 1, aircraft }] as Change[], 'a');
  const work = newStep('work.done', { ...start, dossier }, { what: 'Static line opened', touched: ['static-system'] });
  const planned = planOf(dossier, catalogue, [work], start.now).after;
  const owed = planned.status.obligations.filter((each) => each.closedBy === null);
  const [first] = owed;
  if (!first) throw new Error('the work calls for nothing');
  const entry = entryFor(first, { ...start, dossier: planned, workedAt: start.now });
  const { after } = planOf(dossier, catalogue, [work, entry], start.now);
  expect(stillOwed(owed, planned)).toEqual(owed);
  expect(stillOwed(owed, after)).toEqual(owed.slice(1));
});

test('an interference check lists each transmitter on each frequency, and is judged as it is filled in', () => {
  const dossier = replay([install('com1', 'com'), install('x', 'xpdr')], 'a');
  const step = entryFor({ id: 'o1', what: 'vhf-interference-check', subject: 'gps1' }, { ...start, dossier });
  const points = valueAt(step.value, 'record.readings.interference.points') as readonly { frequencyMHz: number }[];
  expect(points.map((each) => each.frequencyMHz)).toEqual([121.15, 121.175, 121.2, 131.25, 131.275, 131.3]);
  expect(judgeStep(step.value)?.outcome).toBe('cannot-tell');
  const lost = withValueAt(step.value, 'record.readings.interference.points.0.navigationLost', true);
  expect(judgeStep(lost)?.outcome).toBe('not-met');
});

test('a step that another screen asks for begins with what it is about', () => {
  const fitted = { ...start, dossier: replay([install('nav1', 'nav')]) };
  const value = (kind: string, about: string) => stepAbout(kind, about, fitted)?.value;
  expect(value('record.add', 'transponder-test:nav1')).toMatchObject({
    record: { kind: 'transponder-test', subjects: ['nav1'] },
  });
  expect(value('record.add', 'annual-inspection')).toMatchObject({ record: { subjects: ['aircraft'] } });
  expect(value('unit.amend', 'nav1')).toMatchObject({ unit: { id: 'nav1', typeId: 'nav' } });
  expect(value('database.load', 'nav1')).toMatchObject({ load: { unitId: 'nav1' } });
  expect(value('equipment.state', 'clock,altimeter,no-such-item')).toMatchObject({
    items: [
      { item: 'clock', state: '', seen: { asOf: '2026-11-25', by: 'A. Person' } },
      { item: 'altimeter', state: '' },
    ],
  });
  expect(stepAbout('no.such', 'nav1', fitted)).toBeNull();
});
