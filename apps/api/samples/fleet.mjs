// A fleet as rows of the files that docs/import-format.md describes.
import { types } from './catalogue.mjs';
import { dayBefore, monthsBefore, randomFrom } from './random.mjs';
import { altimeter, correspondence, staticLeak, transponder, vor } from './readings.mjs';

const airframes = [
  { make: 'Corvane', model: 'Four', weight: 2450, seats: 4, altitude: 14000, panel: 'ifr' },
  { make: 'Corvane', model: 'Two', weight: 1670, seats: 2, altitude: 12500, panel: 'vfr' },
  { make: 'Larrowby', model: 'Strutter', weight: 2200, seats: 4, altitude: 13000, panel: 'ils' },
  { make: 'Corvane', model: 'Four R', weight: 2750, seats: 4, altitude: 17000, panel: 'ifr' },
];
const bases = [
  ['Orrin Vale', 'America/Chicago'],
  ['Tidewell', 'America/New_York'],
  ['Caddis Flat', 'America/Denver'],
];
const operators = ['Orrin Vale Flying Centre', 'Tidewell Club', 'Caddis Flat owners'];
const inspectors = ['Wenna Tarrant', 'Osric Lund'];

const panels = {
  ifr: [
    'gps1:SN 40 navigator',
    'nav1:SR 12 nav/com',
    'cdi1:SI 3 course indicator',
    'cdi2:SI 3 course indicator',
    'atc1:ST 8 transponder',
    'enc1:SE 1 encoder',
    'alt1:SA 20 altimeter',
    'elt1:SL 4 emergency transmitter',
  ],
  ils: [
    'nav1:SR 12 nav/com',
    'cdi1:SI 3 course indicator',
    'atc1:ST 8 transponder',
    'pos1:SP 1 position source',
    'enc1:SE 1 encoder',
    'alt1:SA 20 altimeter',
    'elt1:SL 4 emergency transmitter',
  ],
  vfr: [
    'com1:SC 5 com',
    'atc1:ST 8 transponder',
    'pos1:SP 1 position source',
    'enc1:SE 1 encoder',
    'alt1:SA 20 altimeter',
    'elt1:SL 4 emergency transmitter',
  ],
};
const joints = {
  ifr: [
    'gps1 LAT OUT>cdi1 LAT IN',
    'gps1 VERT OUT>cdi1 VERT IN',
    'gps1 POS OUT>atc1 POS IN',
    'nav1 LAT OUT>cdi2 LAT IN',
    'nav1 VERT OUT>cdi2 VERT IN',
    'enc1 SER OUT>atc1 ALT IN',
  ],
  ils: [
    'nav1 LAT OUT>cdi1 LAT IN',
    'nav1 VERT OUT>cdi1 VERT IN',
    'pos1 POS OUT>atc1 POS IN',
    'enc1 SER OUT>atc1 ALT IN',
  ],
  vfr: ['pos1 POS OUT>atc1 POS IN', 'enc1 SER OUT>atc1 ALT IN'],
};
const antennas = {
  ifr: [
    'ant-com com nav1',
    'ant-nav vor-loc nav1',
    'ant-gs glide-slope nav1',
    'ant-gnss gnss-sbas gps1',
    'ant-atc transponder atc1',
    'ant-elt elt elt1',
  ],
  ils: [
    'ant-com com nav1',
    'ant-nav vor-loc nav1',
    'ant-gs glide-slope nav1',
    'ant-pos gnss-sbas pos1',
    'ant-atc transponder atc1',
    'ant-elt elt elt1',
  ],
  vfr: ['ant-com com com1', 'ant-pos gnss-sbas pos1', 'ant-atc transponder atc1', 'ant-elt elt elt1'],
};
const radioGrants = 'com nav-vor approach-vor approach-loc approach-ils';
const gnssGrants = 'nav-gnss approach-lnav approach-lp approach-lnav-vnav approach-lpv';
const grants = {
  gps1: gnssGrants,
  nav1: radioGrants,
  com1: 'com',
  cdi1: `nav-vor approach-vor approach-loc approach-ils ${gnssGrants}`,
  cdi2: `nav-vor approach-vor approach-loc approach-ils ${gnssGrants}`,
  atc1: 'altitude-reporting ads-b-out',
  pos1: 'ads-b-out',
  enc1: 'altitude-reporting',
};
const items = {
  fitted: [
    'airspeed-indicator',
    'altimeter',
    'magnetic-direction-indicator',
    'tachometer',
    'oil-pressure',
    'oil-temperature',
    'fuel-quantity',
    'anticollision-lights',
    'safety-belts',
    'shoulder-harness',
    'position-lights',
    'landing-light',
    'electrical-source',
    'spare-fuses',
    'rate-of-turn',
    'slip-skid',
    'sensitive-altimeter',
    'clock',
    'generator',
    'pitch-and-bank',
    'direction-gyro',
  ],
  'not-required': ['gear-position', 'coolant-temperature', 'manifold-pressure'],
  absent: ['flotation-gear', 'pyrotechnic-device', 'third-attitude', 'dme-or-rnav'],
};
const station = {
  by: 'Wendle Avionics',
  kind: 'repair-station',
  certificate: 'TW-RS-031',
  ratings: 'radio-1 radio-2 radio-3 instrument-1 station-airframe',
};
const inspector = (name) => ({
  by: name,
  kind: 'mechanic',
  certificate: 'TW-M-0500',
  ratings: 'airframe powerplant inspection-authorization',
});
const pilot = { by: 'Ansel Brook', kind: 'pilot', certificate: 'TW-P-2210', ratings: 'private-pilot' };

/** @returns rows by kind of file, every one of them good */
export function fleetOf({ today, seed, from, count }) {
  const random = randomFrom(seed);
  const files = {
    types: [...types],
    aircraft: [],
    meters: [],
    units: [],
    links: [],
    antennas: [],
    supplements: [],
    equipment: [],
    directives: [],
    records: [],
    loads: [],
    defects: [],
  };
  for (let n = 0; n < count; n += 1)
    addAircraft(files, { random, today, registration: `TW-${from + n}${'ABCDEFGH'[n % 8]}`, n });
  return files;
}

function addAircraft(files, { random, today, registration, n }) {
  const frame = airframes[n % airframes.length];
  const [base, zone] = bases[n % bases.length];
  const made = `${random.between(1985, 2014)}-0${random.between(1, 9)}-1${random.between(0, 9)}`;
  const fitted = `${random.between(2019, 2023)}-0${random.between(1, 9)}-1${random.between(0, 9)}`;
  const after = dayBefore(fitted, -1);
  const hours = random.between(150_000, 900_000);
  const month = random.between(1500, 7000);
  const who = random.pick(inspectors);
  files.aircraft.push({
    registration,
    make: frame.make,
    model: frame.model,
    kind: 'airplane',
    base,
    base_zone: zone,
    operator: operators[n % operators.length],
    serial: `${frame.model.replaceAll(' ', '')}-${1000 + n}`,
    certificate: 'standard',
    category: 'normal',
    basis: 'part-23',
    basis_amendment: 45,
    manufactured: made,
    engine: 'reciprocating',
    engine_count: 1,
    engine_driven_electrical: 'yes',
    max_weight_lb: frame.weight,
    seats: frame.seats,
    retractable_gear: 'no',
    liquid_cooled: 'no',
    altitude_engine: 'no',
    max_altitude_ft: frame.altitude,
    authority_document: 'Flight manual, kinds of operation',
    day_vfr: 'yes',
    night_vfr: 'yes',
    ifr: frame.panel === 'vfr' ? 'no' : 'yes',
    hire: 'yes',
    static_systems: 'static1',
    hours_per_month: (month / 100).toFixed(2),
    reading_good_days: 31,
    empty_weight_lb: Math.round(frame.weight * 0.61),
    empty_arm_in: 38.6,
    mac_in: 58.2,
    mass_revised_on: after,
    weighed: 'no',
    equipment_list_on: after,
    complete_lists: 'equipment links directives defects recurring life-limits placards',
    complete_as_of: dayBefore(today, 20),
    complete_by: who,
  });
  addMeters(files, { random, today, registration, hours, month, who });
  addPanel(files, { registration, panel: frame.panel, fitted, random, made });
  for (const [state, list] of Object.entries(items))
    for (const item of list)
      files.equipment.push({
        registration,
        item,
        state,
        unit: item === 'altimeter' || item === 'sensitive-altimeter' ? 'alt1' : '',
        seen_on: dayBefore(today, 20),
        seen_by: who,
      });

  const directive = {
    registration,
    subject: '',
    reason: '',
    method: '',
    complied_on: '',
    evidence: '',
    outcome: '',
    book: '',
    page: '',
    signed_by: '',
    signer_kind: '',
    signer_certificate: '',
    signer_ratings: '',
    next_date: '',
  };
  const signer = inspector(who);
  files.directives.push(
    {
      ...directive,
      directive: 'TW-19-04',
      directive_state: 'complied',
      method: 'Inspection by paragraph (c)',
      complied_on: dayBefore(today, random.between(30, 300)),
      evidence: 'entry-seen',
      outcome: 'passed',
      book: 'Aircraft log 2',
      page: '41',
      signed_by: signer.by,
      signer_kind: signer.kind,
      signer_certificate: signer.certificate,
      signer_ratings: signer.ratings,
      next_date: dayBefore(today, -random.between(40, 300)),
    },
    {
      ...directive,
      directive: 'TW-23-02',
      directive_state: 'not-applicable',
      reason: 'Spinner of another part number',
    },
  );
  addRecords(files, { random, today, registration, panel: frame.panel, after, hours, month, who });
  if (n % 9 === 4)
    files.defects.push({
      registration,
      defect: 'wear',
      subject: 'aircraft',
      raised_on: dayBefore(today, random.between(3, 40)),
      description: 'Trim of the left door comes off, "again"',
      decided_by: who,
      decider_kind: 'mechanic',
      decider_certificate: 'TW-M-0500',
      decider_ratings: 'airframe powerplant inspection-authorization',
    });
}

function addMeters(files, { random, today, registration, hours, month, who }) {
  const last = random.between(1, 6);
  for (const ago of [60 + last, 30 + last, last])
    files.meters.push({
      registration,
      meter: 'tach',
      dial: ((hours - Math.round(((ago - last) / 30) * month)) / 100).toFixed(2),
      read_at: `${dayBefore(today, ago)}T20:00Z`,
      read_by: who,
      meter_kind: 'tachometer',
      meter_name: 'Tachometer',
      time_in_service: 'yes',
      pace: 1,
    });
}

function addPanel(files, { registration, panel, fitted, random, made }) {
  for (const each of panels[panel]) {
    const [unit, type] = each.split(':');
    const remote = ['enc1', 'elt1', 'pos1'].includes(unit);
    files.units.push({
      registration,
      unit,
      name: '',
      type,
      functions: '',
      fitted_on: fitted,
      serial: `${unit.toUpperCase()}-${random.between(1000, 9999)}`,
      place: remote ? 'remote' : unit.startsWith('cdi') || unit === 'alt1' ? 'pilot-panel' : 'centre-stack',
      offset_in: remote ? '' : unit.startsWith('cdi') || unit === 'alt1' ? 5 : 11,
      software: '',
      manufactured: `${Math.max(Number(fitted.slice(0, 4)) - 1, Number(made.slice(0, 4)))}-06-30`,
      mass_lb: '',
      arm_in: remote ? 110 : 62,
      approval: unit === 'gps1' ? 'stc-model-list' : 'field-approval',
      approval_document:
        unit === 'gps1'
          ? 'Supplemental type certificate TW-0718 with model list'
          : 'Major alteration form with field approval',
      approval_revision: 'C',
      approved_on: dayBefore(fitted, 30),
      released_on: dayBefore(fitted, -1),
      permission: unit === 'gps1' ? 'yes' : '',
      model_listed: unit === 'gps1' ? 'yes' : '',
      grants: grants[unit] ?? '',
      notes: '',
    });
    if (unit === 'gps1')
      files.supplements.push({
        registration,
        supplement: 'afms-gps1',
        supplement_title: 'Flight manual supplement, SN 40',
        units: 'gps1',
        revision: '1',
        aboard: 'yes',
        current_data_required: 'yes',
        grants: gnssGrants,
      });
  }
  for (const each of joints[panel]) {
    const [from, to] = each.split('>');
    const end = (text) => [text.slice(0, text.indexOf(' ')), text.slice(text.indexOf(' ') + 1)];
    files.links.push({
      registration,
      from_unit: end(from)[0],
      from_port: end(from)[1],
      to_unit: end(to)[0],
      to_port: end(to)[1],
      fitted_on: fitted,
      cover: '',
      cover_document: '',
    });
  }
  for (const each of antennas[panel]) {
    const [antenna, antenna_kind, ...serves] = each.split(' ');
    files.antennas.push({
      registration,
      antenna,
      antenna_kind,
      serves: serves.join(' '),
      fitted_on: fitted,
      approved: 'yes',
    });
  }
}

function addRecords(files, { random, today, registration, panel, after, hours, month, who }) {
  const add = (record, done_on, subjects, signer, more = {}) =>
    files.records.push({
      registration,
      record,
      done_on,
      done_at: `${done_on}T17:00Z`,
      subjects,
      hours: '',
      outcome: 'passed',
      evidence: 'entry-seen',
      book: 'Aircraft log 2',
      page: String(random.between(3, 180)),
      signed_by: signer.by,
      signer_kind: signer.kind,
      signer_certificate: signer.certificate,
      signer_ratings: signer.ratings,
      second_signature: '',
      instrument: '',
      calibrated_until: '',
      tested_to_ft: '',
      place: '',
      expires: '',
      readings: '',
      note: '',
      ...more,
    });
  const bench = (readings, more = {}) => ({
    instrument: 'WA-TS-07',
    calibrated_until: dayBefore(today, -150),
    readings: readings === null ? '' : JSON.stringify(readings),
    ...more,
  });
  const ia = inspector(who);
  const units = panels[panel].map((each) => each.split(':')[0]);
  add('release-entry', after, [...units, 'aircraft'].join(' '), station, { outcome: 'approved' });
  add('static-leak-test', after, 'static1 aircraft', station, bench(staticLeak()));
  add('altitude-correspondence-test', after, 'aircraft enc1 atc1', station, bench(correspondence()));
  add('ads-b-report', after, 'aircraft', station, bench(null));
  if (units.includes('gps1')) {
    add('gnss-function-check', after, 'gps1', station, bench(null));
    add('vhf-interference-check', after, 'gps1', station, bench(null));
  }
  const annual = random.between(1, 11);
  add('annual-inspection', monthsBefore(today, annual, 17), '', ia, {
    outcome: 'approved',
    hours: ((hours - 4000) / 100).toFixed(2),
  });
  const since = random.between(500, 9500);
  add('hundred-hour-inspection', dayBefore(today, Math.max(2, Math.round((since / month) * 30))), '', ia, {
    outcome: 'approved',
    hours: ((hours - since) / 100).toFixed(2),
  });
  add('elt-inspection', monthsBefore(today, annual, 17), 'elt1', ia);
  add('elt-battery', monthsBefore(today, 15, 12), 'elt1', ia, {
    expires: monthsBefore(today, -random.between(2, 30), 28),
  });
  const statics = monthsBefore(today, random.between(1, 23), 9);
  add('static-system-test', statics, 'static1', station, bench(staticLeak(), { tested_to_ft: 20000 }));
  add('altimeter-test', statics, 'alt1', station, bench(altimeter(), { tested_to_ft: 20000 }));
  add('altitude-reporting-test', statics, 'enc1 atc1', station, bench(correspondence(), { tested_to_ft: 20000 }));
  add('transponder-test', monthsBefore(today, random.between(1, 23), 9), 'atc1', station, bench(transponder()));
  if (units.includes('nav1'))
    add('vor-check', dayBefore(today, random.between(1, 28)), 'nav1', pilot, {
      place: 'Orrin Vale',
      readings: JSON.stringify(vor()),
    });
  if (units.includes('gps1')) {
    const cycle = cycleOn(today);
    files.loads.push({
      registration,
      unit: 'gps1',
      database: 'navigation',
      slot: 'this',
      cycle: cycle.id,
      loaded_on: cycle.effective,
      effective: `${cycle.effective}T09:01Z`,
      expires: `${cycle.next}T09:01Z`,
    });
  }
}

/** Cycles follow each other every 28 days; the first of a year is number 01 (anchor: cycle 2001 on 2 January 2020). */
function cycleOn(day) {
  const days = (date) =>
    Math.round((Date.parse(`${date}T00:00:00Z`) - Date.parse('2020-01-02T00:00:00Z')) / 86_400_000);
  const effective = dayBefore(day, days(day) % 28);
  const year = effective.slice(0, 4);
  const ofYear =
    Math.floor((Date.parse(`${effective}T00:00:00Z`) - Date.parse(`${year}-01-01T00:00:00Z`)) / 86_400_000 / 28) + 1;
  return { id: `${year.slice(2)}${String(ofYear).padStart(2, '0')}`, effective, next: dayBefore(effective, -28) };
}
