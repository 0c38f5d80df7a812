import { z } from 'zod';
import type { Read } from '../catalogue/read.js';
import { id, shortText } from '../catalogue/words.js';
import { civilDate, documentRef, statement } from './common.js';

/** The airworthiness certificate's kind is kept apart from its category: 91.205 binds standard certificates, 91.319 and 91.327 the others. */
export const certificateKind = z
  .enum(['standard', 'experimental', 'light-sport', 'restricted', 'limited', 'primary', 'provisional'])
  .meta({ id: 'CertificateKind' });

export const aircraft = z
  .object({
    registration: z.string().regex(/^[A-Z0-9][A-Z0-9-]{1,9}$/, 'use 2 to 10 capital letters, digits and dashes'),
    serial: shortText.nullable(),
    make: shortText,
    model: shortText,
    kind: z.enum(['airplane', 'helicopter', 'glider', 'balloon', 'other']).meta({ id: 'AircraftKind' }),
    certificate: certificateKind.nullable(),
    category: z
      .enum(['normal', 'utility', 'acrobatic', 'commuter', 'transport'])
      .nullable()
      .meta({ id: 'AircraftCategory' }),
    /** For example "CAR 3" or "part 23, amendment 23-62". */
    basis: z
      .object({
        code: z.enum(['car-3', 'part-23', 'part-27', 'consensus', 'none']).meta({ id: 'BasisCode' }),
        amendment: z.int().min(0).max(99).nullable(),
      })
      .nullable(),
    manufactured: civilDate.nullable(),
    engine: z
      .enum(['reciprocating', 'turboprop', 'turbojet', 'turboshaft', 'electric', 'none'])
      .nullable()
      .meta({ id: 'EngineKind' }),
    engineCount: z.int().min(0).max(8).nullable(),
    engineDrivenElectrical: z.boolean().nullable(),
    maxWeightLb: z.number().positive().nullable(),
    seats: z.int().min(1).max(60).nullable(),
    retractableGear: z.boolean().nullable(),
    liquidCooled: z.boolean().nullable(),
    altitudeEngine: z.boolean().nullable(),
    maxOperatingAltitudeFt: z.int().positive().max(60_000).nullable(),
    /** Where it lives; the zone ends its calendar months (our reading: no rule names a zone). */
    base: z.object({ id, name: shortText, zone: z.string() }),
    operatorId: id.nullable(),
    /**
     * What replaces the annual and 100-hour inspections: progressive 91.409(d), selected 91.409(e), or approved under part 125 or 135
     * with this registration listed 91.409(c).
     */
    program: z
      .object({
        kind: z.enum(['annual', 'progressive', 'selected-program', 'approved-program']).meta({ id: 'ProgramKind' }),
        document: documentRef.nullable(),
      })
      .nullable(),
    /** Operations that this operator does not want judged. */
    notWanted: z.array(z.string()),
  })
  .meta({ id: 'AircraftFacts' });
export type Aircraft = Read<typeof aircraft>;

/** What the manual, placard, kinds-of-operation list or operating limitations allow (91.9, 91.319(d), 91.327(d)). */
export const authority = z
  .object({
    dayVfr: z.boolean().nullable(),
    nightVfr: z.boolean().nullable(),
    ifr: z.boolean().nullable(),
    /** Carriage of persons or instruction for hire, as the certificate and limitations allow. */
    hire: z.boolean().nullable(),
    document: documentRef,
    /** Interval in the operating limitations of an experimental aircraft; null: not recorded, no default. */
    conditionInspectionMonths: z.int().min(1).max(60).nullable(),
  })
  .meta({ id: 'OperatingAuthority' });
export type Authority = Read<typeof authority>;

/** Items that 91.205(b) to (e) ask for. */
export const equipmentItem = z
  .enum([
    'airspeed-indicator',
    'altimeter',
    'magnetic-direction-indicator',
    'tachometer',
    'oil-pressure',
    'oil-temperature',
    'coolant-temperature',
    'manifold-pressure',
    'fuel-quantity',
    'gear-position',
    'anticollision-lights',
    'flotation-gear',
    'pyrotechnic-device',
    'safety-belts',
    'shoulder-harness',
    'position-lights',
    'landing-light',
    'electrical-source',
    'spare-fuses',
    'rate-of-turn',
    'third-attitude',
    'slip-skid',
    'sensitive-altimeter',
    'clock',
    'generator',
    'pitch-and-bank',
    'direction-gyro',
    'dme-or-rnav',
  ])
  .meta({ id: 'EquipmentItem' });
export type EquipmentItem = Read<typeof equipmentItem>;

/** State of one 91.205 item. An item that is not listed is not recorded: cannot-tell. */
export const equipmentState = z
  .object({
    item: equipmentItem,
    state: z.enum(['fitted', 'absent', 'not-required']).meta({ id: 'EquipmentStateCode' }),
    unitId: id.nullable(),
    seen: statement.nullable(),
  })
  .meta({ id: 'EquipmentState' });
export type EquipmentState = Read<typeof equipmentState>;
