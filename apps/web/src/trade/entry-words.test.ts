import { changeDefinitions, type ChangeKind, type ChangeOf } from '@tallywing/rules';
import { expect, test } from 'vitest';
import { entryWords, reasonIn, wordedKinds } from './entry-words.js';

/** Every id of these begins so: none may be read on a screen. */
const names: Readonly<Record<string, string>> = {
  'id-gps': 'QN 52 navigator',
  'id-cdi': 'Course indicator',
  'id-link': 'QN 52 navigator P1 to Course indicator J2',
  'id-ant': 'GNSS antenna',
  'id-placard': '“GPS not approved for IFR”',
  'id-static': 'Main static',
  'id-defect': '“Display dark”',
  'id-hold': '“Waiting for a part”',
  'id-item': 'Strobe overhaul',
  'id-limit': 'Vacuum pump',
  'id-directive': '2031-04-02',
  'id-tach': 'Tachometer',
};
const at = '2026-03-09T14:05Z';
const day = '2026-03-09';
const done = { date: day, at: null };
const agency = { kind: 'mechanic', name: 'R. Fell', certificate: null, ratings: null } as const;
const stated = { asOf: day, by: 'R. Fell' };
const document = { title: 'Maker’s manual', revision: null, date: null };
const approval = {
  basis: 'as-found',
  document,
  approvedOn: null,
  releasedOn: null,
  permission: null,
  modelListed: null,
  grants: null,
  acceptedBy: null,
} as const;
const unit = {
  id: 'id-gps',
  name: 'QN 52 navigator',
  typeId: 'id-type@1',
  serial: 'S-9',
  place: 'centre-stack',
} as const;
const record = {
  id: 'id-record',
  kind: 'transponder-test',
  subjects: ['id-gps'],
  done,
  outcome: 'passed',
  entry: { book: 'Log 2', page: '14' },
  agency,
} as const;
const aircraft = { registration: 'TW-01Q', make: 'Testbed', model: 'One' };

type Sample<K extends ChangeKind> = DeepPart<Omit<ChangeOf<K>, 'kind' | 'version'>>;
type DeepPart<T> = T extends readonly (infer E)[]
  ? readonly DeepPart<E>[]
  : T extends object
    ? { [K in keyof T]?: DeepPart<T[K]> }
    : T;

/** One entry of each kind and what is said of it. The type asks for every kind of the closed list. */
const samples: { readonly [K in ChangeKind]: readonly [Sample<K>, string] } = {
  'aircraft.add': [{ aircraft }, 'Added the aircraft TW-01Q, Testbed One.'],
  'aircraft.amend': [{ aircraft, reason: 'Sold' }, 'Amended the facts of the aircraft, TW-01Q.'],
  'authority.set': [{ authority: { document } }, 'Stated the kinds of operation allowed, from Maker’s manual.'],
  'equipment.state': [
    {
      items: [
        { item: 'clock', state: 'fitted' },
        { item: 'generator', state: 'not-required' },
      ],
    },
    'Required equipment: clock fitted and generator not required.',
  ],
  'static-system.set': [
    { system: { id: 'id-static', name: 'Main static' } },
    'Described the static system Main static.',
  ],
  'work.done': [
    { what: 'Line resealed', unitId: null, touched: ['static-system', 'behind-panel'] },
    'Work: Line resealed; it touched static system and behind panel.',
  ],
  'touched.state': [
    { obligationId: 'what-was-touched:id-gps', touched: ['nothing'], by: stated },
    'Stated what work on QN 52 navigator touched: nothing, by R. Fell.',
  ],
  'unit.install': [{ unit }, 'Fitted QN 52 navigator, serial S-9, centre stack.'],
  'unit.remove': [{ unitId: 'id-gps', reason: 'Sold' }, 'Took out QN 52 navigator.'],
  'unit.amend': [{ unit, reason: 'Plate read' }, 'Completed what is known of QN 52 navigator.'],
  'unit.deactivate': [{ unitId: 'id-gps', placarded: true, recorded: null }, 'Deactivated QN 52 navigator, placarded.'],
  'unit.reactivate': [{ unitId: 'id-gps' }, 'Put QN 52 navigator back in use.'],
  'link.connect': [
    { link: { id: 'id-link', fromUnit: 'id-gps', fromPort: 'P1', toUnit: 'id-cdi', toPort: 'J2' } },
    'Joined QN 52 navigator P1 to Course indicator J2.',
  ],
  'link.disconnect': [{ linkId: 'id-link' }, 'Parted the joint QN 52 navigator P1 to Course indicator J2.'],
  'antenna.fit': [
    { antenna: { id: 'id-ant', kind: 'gnss', units: ['id-gps'] } },
    'Fitted an antenna, GNSS, for QN 52 navigator.',
  ],
  'antenna.remove': [{ antennaId: 'id-ant' }, 'Took off GNSS antenna.'],
  'placard.fit': [{ placard: { id: 'id-placard', text: 'Fly slowly' } }, 'Fitted the placard “Fly slowly”.'],
  'placard.remove': [{ placardId: 'id-placard' }, 'Took off the placard “GPS not approved for IFR”.'],
  'supplement.set': [
    { supplement: { id: 'id-supplement', units: ['id-gps'], document, aboard: true } },
    'Flight manual supplement Maker’s manual for QN 52 navigator, aboard.',
  ],
  'opening.set': [
    { opening: { id: 'id-opening', place: 'pilot-panel' } },
    'Described an opening in the panel, pilot panel.',
  ],
  'electrical.set': [
    { electrical: { circuits: [{ id: 'id-circuit' }] } },
    'Described the electrical system, 1 circuit.',
  ],
  'mass.revise': [
    { mass: { emptyWeightLb: 1650.5, emptyArmIn: 38.2, weighed: true } },
    'New empty weight 1650.5 lb at 38.2 in, weighed.',
  ],
  'mass.note': [{ item: { what: 'Radio out', weightLb: -4.2 } }, 'Noted a small change of weight: Radio out, -4.2 lb.'],
  'record.add': [
    { record },
    'Recorded transponder test of QN 52 navigator, done 9 Mar 2026, passed, by R. Fell, Log 2 page 14.',
  ],
  'record.correct': [
    { record: { ...record, subjects: ['aircraft'], outcome: null, agency: null, entry: null }, reason: 'Misread' },
    'Corrected an entry; it now says: transponder test, done 9 Mar 2026.',
  ],
  'database.load': [
    { load: { unitId: 'id-gps', database: 'navigation', slot: 'next', cycle: '2603' } },
    'Loaded navigation data, cycle 2603, in QN 52 navigator, as the next cycle.',
  ],
  'database.drop': [
    { unitId: 'id-gps', database: 'navigation', slot: 'this' },
    'Took navigation data off QN 52 navigator.',
  ],
  'defect.raise': [
    { defect: { id: 'id-defect', subject: 'clock', text: 'Stands still' } },
    'Reported a defect of the clock: “Stands still”.',
  ],
  'defect.defer': [
    { defectId: 'id-defect', deferral: { route: '91.213(d)' } },
    'Deferred the defect “Display dark” under 91.213(d).',
  ],
  'defect.close': [
    { defectId: 'id-defect', how: 'no-fault-found', by: agency, entry: 'Log 2 page 15' },
    'Closed the defect “Display dark”: no fault found, by R. Fell, Log 2 page 15.',
  ],
  'directive.set': [
    { directive: { id: 'id-directive', number: '2031-04-02', subject: 'id-gps', state: 'complied', method: 'Part B' } },
    'Directive 2031-04-02 on QN 52 navigator: complied with, Part B.',
  ],
  'hold.place': [
    { hold: { id: 'id-hold', reason: 'Waiting for a part', by: 'R. Fell', from: at } },
    'Placed a hold: “Waiting for a part”, by R. Fell, from 9 Mar 2026 14:05 UTC.',
  ],
  'hold.lift': [
    { holdId: 'id-hold', at, reason: 'Part came' },
    'Lifted the hold “Waiting for a part” at 9 Mar 2026 14:05 UTC.',
  ],
  'say-so.give': [
    {
      sayso: {
        id: 'id-sayso',
        rule: 'vor-check',
        subject: 'id-gps',
        by: 'R. Fell',
        reason: 'Read the text',
        from: at,
        until: at,
      },
    },
    'Answered for a doubted source, of QN 52 navigator: R. Fell, until 9 Mar 2026 14:05 UTC, “Read the text”.',
  ],
  'say-so.end': [
    { saysoId: 'id-sayso', at, reason: 'Found it' },
    'Ended an answer for a doubted source at 9 Mar 2026 14:05 UTC.',
  ],
  'completeness.state': [
    {
      lists: [
        { list: 'links', stated },
        { list: 'life-limits', stated },
      ],
    },
    'Stated complete by R. Fell: the joints and the life limits.',
  ],
  adopt: [
    { units: ['id-gps', 'id-cdi'], links: ['id-link'], by: stated, approval },
    'Accepted as found by R. Fell: QN 52 navigator and Course indicator and 1 joint.',
  ],
  'identity.set': [
    { identity: { id: 'id-gps', address: 'A0B1C2', flightId: null } },
    'Transmitted identity of QN 52 navigator: address A0B1C2.',
  ],
  'recurring.set': [
    { item: { id: 'id-item', name: 'Strobe overhaul', subject: 'id-item' } },
    'Recurring item Strobe overhaul.',
  ],
  'recurring.end': [{ itemId: 'id-item' }, 'Ended the recurring item Strobe overhaul.'],
  'life-limit.set': [
    { limit: { id: 'id-limit', name: 'Vacuum pump', subject: 'aircraft' } },
    'Life limit of Vacuum pump on the aircraft.',
  ],
  'life-limit.end': [{ limitId: 'id-limit' }, 'Ended the life limit of Vacuum pump.'],
  'paper.set': [
    { paper: { id: 'id-paper', kind: 'registration', number: 'R 12', aboard: false } },
    'Paper: registration R 12, not aboard.',
  ],
  'pack.set': [
    { pack: { id: 'id-pack', unitId: 'id-gps', parts: [{}, {}] } },
    'Document pack of QN 52 navigator, 2 documents.',
  ],
  'decision.record': [
    { decision: { id: 'id-decision', question: 'major-or-minor', subject: 'id-gps', answer: 'minor', by: agency } },
    'Decision of R. Fell on QN 52 navigator, major or minor: minor.',
  ],
  'meter.define': [
    { definition: { id: 'id-tach', name: 'Tachometer', kind: 'tachometer' }, standsForTimeInService: true },
    'Defined the meter Tachometer, tachometer; it stands for time in service.',
  ],
  'meter.read': [{ meter: 'id-tach', dial: 123_450, asOf: at }, 'Read Tachometer: 1234.5 h at 9 Mar 2026 14:05 UTC.'],
  'meter.replace': [
    { meter: 'id-tach', oldDial: 123_450, newDial: 0 },
    'Replaced Tachometer: the old dial showed 1234.5 h, the new one 0.0 h.',
  ],
  'meter.correct': [
    { meter: 'id-tach', value: 123_400, asOf: at, reason: 'Misread' },
    'Corrected the reading of Tachometer: 1234.0 h in all at 9 Mar 2026 14:05 UTC.',
  ],
  'utilisation.set': [
    { utilisation: { perMonth: 3000, readingGoodForDays: 10 } },
    'Expected use 30.0 h a month; a reading is good for 10 days.',
  ],
};

test('every kind of the closed list has words of its own', () => {
  const kinds = changeDefinitions.map(({ kind }) => kind).sort();
  expect([...wordedKinds].sort()).toEqual(kinds);
  expect(Object.keys(samples).sort()).toEqual(kinds);
});

test.each(Object.entries(samples))('%s', (kind, [body, words]) => {
  const said = entryWords({ kind, body, names });
  expect(said).toBe(words);
  expect(said).not.toMatch(/id-/);
});

test('what has no name is not shown by its id; a kind of a later version is named as far as it goes', () => {
  expect(entryWords({ kind: 'unit.remove', body: { unitId: 'id-gone' }, names: {} })).toBe(
    'Took out something that has no name here.',
  );
  expect(entryWords({ kind: 'engine.wash', body: {}, names: {} })).toBe('Engine wash.');
});

test('the reason stands beside it where one was given', () => {
  expect([reasonIn({ reason: 'Misread' }), reasonIn({ reason: '' }), reasonIn({})]).toEqual(['Misread', null, null]);
});
