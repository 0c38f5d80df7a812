import type { Change, ChangeOf } from '../../libs/rules/src/index.js';
import { inspector, recordOf } from '../../libs/rules/testing/builders.js';
import { trainer } from '../../libs/rules/testing/trainer.js';

/** Two invented shops with people of every role. */
export const password = 'lantern-and-rivet';
const person = (email: string, name: string, role: string, operatorId: string | null = null) => ({
  id: email.split('@')[0],
  email,
  name,
  role,
  operatorId,
  password,
});

export const founding = {
  first: {
    organisation: { id: 'shop-one', name: 'Shop One' },
    manager: person('manager@one.example', 'Manager One', 'manager'),
    people: [
      person('technician@one.example', 'Technician One', 'technician'),
      person('second@one.example', 'Second Technician', 'technician'),
      person('dispatcher@one.example', 'Dispatcher One', 'dispatcher'),
      person('north@one.example', 'Dispatcher North', 'dispatcher', 'north'),
      person('auditor@one.example', 'Auditor One', 'auditor'),
    ],
    operators: [
      { id: 'north', name: 'North Flyers' },
      { id: 'south', name: 'South Flyers' },
    ],
  },
  second: {
    organisation: { id: 'shop-two', name: 'Shop Two' },
    manager: person('manager@two.example', 'Manager Two', 'manager'),
    people: [person('technician@two.example', 'Technician Two', 'technician')],
  },
};

type Added = ChangeOf<'aircraft.add'>;

export function add(registration: string, facts: Partial<Added['aircraft']> = {}): Added {
  return {
    kind: 'aircraft.add',
    version: 1,
    aircraft: { ...blank, registration, ...facts },
  } as Added;
}

const blank = {
  registration: 'TW-00T',
  serial: 'T-1',
  make: 'Fennick',
  model: 'Lark 2',
  kind: 'airplane',
  certificate: 'standard',
  category: 'normal',
  basis: { code: 'car-3', amendment: null },
  manufactured: '1974-05-20',
  engine: 'reciprocating',
  engineCount: 1,
  engineDrivenElectrical: true,
  maxWeightLb: 2400,
  seats: 4,
  retractableGear: false,
  liquidCooled: false,
  altitudeEngine: false,
  maxOperatingAltitudeFt: null,
  base: { id: 'field', name: 'Test field', zone: 'America/Chicago' },
  operatorId: null,
  program: null,
  notWanted: [],
} as const;

export const defineMeter = (id = 'tach'): Change => ({
  kind: 'meter.define',
  version: 1,
  definition: { id, name: 'Tachometer', kind: 'tachometer', perFlightHour: 1000, offset: 0 },
  standsForTimeInService: true,
});

export const readMeter = (dial: number, asOf: string, meter = 'tach'): Change => ({
  kind: 'meter.read',
  version: 1,
  meter,
  dial,
  asOf,
  by: 'Hangar log',
});

/** Civil day and minute before now, for entries that must not lie in the future. */
export function daysAgo(days: number): string {
  return new Date(Date.now() - days * 86_400_000).toISOString().slice(0, 10);
}

export function hold(id: string, from: string, until: string | null): Change {
  return {
    kind: 'hold.place',
    version: 1,
    hold: { id, reason: 'Waiting for a part', by: 'Hangar log', from, until },
  };
}

/** What a single-seat airplane (no emergency transmitter asked, 91.207(f)) needs for private flight under VFR by day and night. */
export function flyable(): readonly Change[] {
  const { authority, equipment } = trainer().configuration;
  const { completeness } = trainer().status;
  if (authority === null) throw new Error('the trainer has no authority');
  return [
    // The entry of its inspection gives the total time in service.
    defineMeter(),
    { kind: 'authority.set', version: 1, authority },
    {
      kind: 'equipment.state',
      version: 1,
      items: equipment.map((each) => ({ ...each, unitId: null, seen: { asOf: daysAgo(9), by: 'Hangar log' } })),
    },
    {
      kind: 'completeness.state',
      version: 1,
      lists: completeness.map(({ list }) => ({ list, stated: { asOf: daysAgo(9), by: 'Hangar log' } })),
    },
    {
      kind: 'record.add',
      version: 1,
      record: recordOf({
        kind: 'annual-inspection',
        on: daysAgo(30),
        outcome: 'approved',
        agency: inspector,
        meters: [{ meter: 'tach', value: 90_000 }],
      }),
    },
  ];
}
