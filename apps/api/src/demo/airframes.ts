import type { ChangeOf } from '@tallywing/rules';

export type Aircraft = ChangeOf<'aircraft.add'>['aircraft'];

/** Makers and models that do not exist. */
const standard = {
  kind: 'airplane',
  certificate: 'standard',
  category: 'normal',
  basis: { code: 'part-23', amendment: 45 },
  engine: 'reciprocating',
  engineCount: 1,
  engineDrivenElectrical: true,
  seats: 4,
  retractableGear: false,
  liquidCooled: false,
  altitudeEngine: false,
} as const;

export const airframes = {
  two: {
    ...standard,
    make: 'Corvane',
    model: 'Two',
    category: 'utility',
    basis: { code: 'car-3', amendment: null },
    seats: 2,
    maxWeightLb: 1670,
    maxOperatingAltitudeFt: 12_500,
  },
  four: { ...standard, make: 'Corvane', model: 'Four', maxWeightLb: 2450, maxOperatingAltitudeFt: 14_000 },
  fourR: {
    ...standard,
    make: 'Corvane',
    model: 'Four R',
    maxWeightLb: 2750,
    maxOperatingAltitudeFt: 17_000,
    retractableGear: true,
    altitudeEngine: true,
  },
  twin: {
    ...standard,
    make: 'Larrowby',
    model: 'Twinspan',
    maxWeightLb: 3900,
    maxOperatingAltitudeFt: 18_000,
    engineCount: 2,
    retractableGear: true,
    altitudeEngine: true,
    seats: 6,
  },
  old: {
    ...standard,
    make: 'Larrowby',
    model: 'Strutter',
    basis: { code: 'car-3', amendment: null },
    maxWeightLb: 2200,
    maxOperatingAltitudeFt: 13_000,
  },
  kit: {
    ...standard,
    make: 'Ashmoor',
    model: 'Kitwright',
    certificate: 'experimental',
    category: null,
    basis: { code: 'none', amendment: null },
    seats: 2,
    maxWeightLb: 1500,
    maxOperatingAltitudeFt: 15_000,
  },
  light: {
    ...standard,
    make: 'Ashmoor',
    model: 'Lissom',
    certificate: 'light-sport',
    category: null,
    basis: { code: 'consensus', amendment: null },
    seats: 2,
    maxWeightLb: 1320,
    maxOperatingAltitudeFt: 10_000,
    liquidCooled: true,
  },
} as const satisfies Readonly<Record<string, Partial<Aircraft>>>;
export type AirframeKey = keyof typeof airframes;

export const bases = {
  saltmarsh: { id: 'saltmarsh-field', name: 'Saltmarsh Field', zone: 'America/Chicago' },
  coldbrook: { id: 'coldbrook', name: 'Coldbrook', zone: 'America/New_York' },
  ferrant: { id: 'ferrant-mesa', name: 'Ferrant Mesa', zone: 'America/Phoenix' },
  kettle: { id: 'kettle-bay', name: 'Kettle Bay', zone: 'Pacific/Honolulu' },
  nethercray: { id: 'nether-cray', name: 'Nether Cray', zone: 'America/Anchorage' },
} as const satisfies Readonly<Record<string, Aircraft['base']>>;
export type BaseKey = keyof typeof bases;
