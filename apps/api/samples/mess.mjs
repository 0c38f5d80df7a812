// What real lists look like. Each bad row that is put in is noted with the line and column at which it must be named.
import { dayBefore, randomFrom } from './random.mjs';

const monthNames = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const styles = {
  aircraft: { delimiter: ';', bom: true, lineEnd: '\r\n' },
  units: { delimiter: ';', bom: false, lineEnd: '\r\n' },
  records: { delimiter: ',', bom: true, lineEnd: '\n' },
  meters: { delimiter: '\t', bom: false, lineEnd: '\r\n' },
};

export function withMess(fleet, { today, seed }) {
  const random = randomFrom(seed);
  const files = Object.entries(fleet).map(([kind, rows]) => ({
    kind,
    rows: rows.map((row) => ({ ...row })),
    style: { lineEnd: '\n', ...styles[kind] },
    marks: new Map(),
  }));
  const of = (kind) => files.find((file) => file.kind === kind);
  const untidy = (value) => `${random.pick(['', ' ', '  '])}${value}${random.pick(['', ' '])}`;

  // Untidy but good: letter case, blanks, other forms of dates, headers as people write them, blanks at the end.
  for (const row of of('aircraft').rows) {
    row.registration = untidy(random.below(3) === 0 ? row.registration.toLowerCase() : row.registration);
    row.kind = random.pick(['airplane', 'Airplane', 'AIRPLANE']);
    row.engine_driven_electrical = random.pick(['yes', 'Y', 'TRUE', '1']);
    row.manufactured = random.pick([row.manufactured, row.manufactured.replaceAll('-', '/'), named(row.manufactured)]);
    row.max_weight_lb = row.max_weight_lb.toLocaleString('en-US');
  }
  for (const row of of('records').rows) {
    row.record = random.pick([row.record, row.record.replaceAll('-', ' '), row.record.toUpperCase()]);
    row.registration = untidy(row.registration);
  }
  for (const row of of('units').rows) row.type = untidy(random.below(4) === 0 ? row.type.toUpperCase() : row.type);
  for (const row of of('meters').rows) row.dial = random.below(4) === 0 ? row.dial.replace('.', ',') : row.dial;
  of('aircraft').style.header = Object.keys(of('aircraft').rows[0]).map(heading).join(';') + ';;';

  const put = (kind, change, column, why, from = undefined) => {
    const file = of(kind);
    const row = { ...(from ?? random.pick(file.rows.filter((each) => !file.marks.has(each)))), ...change };
    file.rows.splice(random.between(1, file.rows.length), 0, row);
    file.marks.set(row, { column, why });
  };
  const fresh = {
    unit: 'extra1',
    type: 'SC 5 com',
    functions: '',
    approval: '',
    approval_document: '',
    grants: '',
    permission: '',
    model_listed: '',
    released_on: '',
    approved_on: '',
  };
  const somebody = of('aircraft').rows[7].registration.trim().toUpperCase();
  const other = of('aircraft').rows[12].registration.trim().toUpperCase();

  put('aircraft', { registration: 'TW-390X', manufactured: '2003-02-30' }, 'manufactured', 'a day that does not exist');
  put(
    'aircraft',
    { registration: 'TW-391X', base: 'Nowhere Strip', base_zone: '' },
    'base',
    'an unknown base without a zone',
  );
  put('aircraft', { registration: 'TW-392X', make: '' }, 'make', 'no maker');
  put('aircraft', { registration: 'TW-393X', certificate: 'normally' }, 'certificate', 'a word that is on no list');
  put('aircraft', { registration: 'T' }, 'registration', 'no registration at all');
  put('aircraft', { serial: 'ANOTHER-1' }, 'serial', 'the same aircraft twice, with another serial number');

  put('units', { ...fresh, registration: somebody, fitted_on: '' }, 'fitted_on', 'a missing date');
  put(
    'units',
    { ...fresh, registration: other, fitted_on: '13/14/2021' },
    'fitted_on',
    'a date that can be read in no way',
  );
  put(
    'units',
    { ...fresh, registration: somebody, unit: 'extra2', fitted_on: '03/07/2021' },
    'fitted_on',
    'a date that can be read both ways',
  );
  put('units', { ...fresh, registration: 'TW-999Z' }, 'registration', 'an unknown registration');
  put(
    'units',
    { ...fresh, registration: somebody, unit: 'extra4', fitted_on: dayBefore(today, -400) },
    'fitted_on',
    'a day to come',
  );
  put(
    'units',
    { ...fresh, registration: other, unit: 'extra5', fitted_on: '44561' },
    'fitted_on',
    "a spreadsheet's day number",
  );

  put(
    'meters',
    { registration: somebody, meter: 'tach', dial: '12.5', read_at: `${today}T05:00Z` },
    'dial',
    'hours that run backwards',
  );
  put(
    'meters',
    { registration: other, meter: 'tach', dial: '-4.0', read_at: `${dayBefore(today, 9)}T05:00Z` },
    'dial',
    'negative hours',
  );
  put(
    'meters',
    { registration: other, meter: 'tach', dial: '8,123,456.0', read_at: `${dayBefore(today, 8)}T05:00Z` },
    'dial',
    'more hours than any aircraft has',
  );
  put(
    'meters',
    { registration: somebody, meter: 'tach', dial: '1234:30', read_at: `${dayBefore(today, 8)}T05:00Z` },
    'dial',
    'hours and minutes',
  );
  put(
    'meters',
    { registration: somebody, meter: 'hobbs', dial: '100.0', read_at: `${dayBefore(today, 3)}T05:00Z`, meter_kind: '' },
    'meter_kind',
    'a meter that nobody described',
  );

  const record = { instrument: '', calibrated_until: '', readings: '', expires: '', hours: '' };
  put(
    'records',
    { ...record, registration: somebody, record: 'annual-inspection', done_on: '', done_at: '' },
    'done_on',
    'a missing date',
  );
  put(
    'records',
    { ...record, registration: somebody, record: 'vor-check', done_on: '2026-02-29', done_at: '' },
    'done_on',
    'a day that does not exist',
  );
  put(
    'records',
    {
      ...record,
      registration: other,
      record: 'transponder-test',
      done_on: dayBefore(today, -60),
      done_at: '',
      subjects: 'atc1',
    },
    'done_on',
    'a day to come',
  );
  put(
    'records',
    { ...record, registration: other, record: 'oil change', done_on: dayBefore(today, 6), done_at: '', subjects: '' },
    'record',
    'a kind of entry that this record does not keep',
  );
  put(
    'records',
    {
      ...record,
      registration: somebody,
      record: 'vor-check',
      done_on: dayBefore(today, 40),
      done_at: '',
      subjects: 'nav9',
    },
    'subjects',
    'an entry about a unit that is not fitted',
  );
  put(
    'records',
    { ...record, registration: 'TW-999Z', record: 'vor-check', done_on: dayBefore(today, 40), done_at: '' },
    'registration',
    'an unknown registration',
  );
  put(
    'records',
    {
      ...record,
      registration: other,
      record: 'vor-check',
      done_on: dayBefore(today, 41),
      done_at: '',
      subjects: 'nav1',
      readings: '{"vor":{"method":',
    },
    'readings',
    'readings that are cut off',
  );
  const twice = of('records').rows.find((each) => each.record === 'elt-inspection');
  put('records', { outcome: 'failed' }, 'outcome', 'the same entry twice, saying otherwise', twice);

  put('loads', { cycle: '26X1', slot: 'next' }, 'cycle', 'a number of no cycle');
  put(
    'links',
    { registration: somebody, from_port: 'LAT SIDEWAYS' },
    'from_port',
    'a port that the type does not have',
  );
  put(
    'directives',
    {
      registration: other,
      directive: 'TW-30-01',
      directive_state: 'not-applicable',
      reason: '',
      complied_on: '',
      next_date: '',
    },
    'reason',
    'not applicable without a reason',
  );

  // Good, though at first sight it is not: a repeated row, and types that nobody catalogued, of which somebody described one.
  const units = of('units').rows;
  units.push({ ...units.find((each) => !of('units').marks.has(each)) });
  units.push({
    ...fresh,
    registration: somebody,
    unit: 'tape1',
    type: 'Old Marrow tape player',
    functions: 'audio',
    fitted_on: '2 Mar 2020',
    manufactured: '',
    place: 'remote',
    offset_in: '',
  });

  units.push({
    ...fresh,
    registration: other,
    unit: 'extra3',
    type: 'Zephyrine 9000',
    fitted_on: dayBefore(today, 900),
    manufactured: '',
  });

  const expected = files.flatMap(({ kind, rows, marks }) =>
    // A repeated registration may come before the row that it repeats: the later of the two is named.
    rows.flatMap((row, at) => (marks.has(row) ? [{ file: `${kind}.csv`, line: at + 2, ...marks.get(row) }] : [])),
  );
  return { files, expected };
}

function heading(name) {
  const spaced = name.replaceAll('_', ' ');
  return spaced.charAt(0).toUpperCase() + spaced.slice(1);
}

function named(day) {
  const [year, month, date] = day.split('-');
  return `${Number(date)} ${monthNames[Number(month) - 1]} ${year}`;
}
