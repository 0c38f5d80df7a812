import type { Sourced, SourceRef } from './source.js';

function practice(paragraph: string, status: SourceRef['status'] = 'verified'): SourceRef {
  return { document: 'AC 43.13-1B', paragraph, edition: 'change 1', status };
}

/** American wire gauge as a number: 24 is the thinnest here; 00, 000 and 0000 are -1, -2 and -3. */
export type Awg = number;

export interface WireRow {
  readonly awg: Awg;
  /** Current in a bundle, by temperature rating of the wire, under note 1 of the table. */
  readonly bundleA: { readonly c105: number; readonly c150: number; readonly c200: number };
  readonly ohmPer1000Ft: number;
  readonly circularMils: number;
}

/**
 * Table 11-9, copper, tin-plated, 20 C. Note 1: 70 C ambient, 33 or more wires for 24 to 10 and 9 for larger,
 * no more than 20 % of the harness capacity in use, 60,000 ft.
 */
export const wireTable: Sourced<readonly WireRow[]> = {
  source: practice('table 11-9'),
  value: [
    row(24, 2.5, 4, 5, 28.4, 475),
    row(22, 3, 5, 6, 16.2, 755),
    row(20, 4, 7, 9, 9.88, 1216),
    row(18, 6, 9, 12, 6.23, 1900),
    row(16, 7, 11, 14, 4.81, 2426),
    row(14, 10, 14, 18, 3.06, 3831),
    row(12, 13, 19, 25, 2.02, 5874),
    row(10, 17, 26, 32, 1.26, 9354),
    row(8, 38, 57, 71, 0.7, 16983),
    row(6, 50, 76, 97, 0.44, 26818),
    row(4, 68, 103, 133, 0.28, 42615),
    row(2, 95, 141, 179, 0.18, 66500),
    row(1, 113, 166, 210, 0.15, 81700),
    row(0, 128, 192, 243, 0.12, 104500),
    row(-1, 147, 222, 285, 0.09, 133000),
    row(-2, 172, 262, 335, 0.07, 166500),
    row(-3, 204, 310, 395, 0.06, 210900),
  ],
};

export interface ProtectorRow {
  readonly awg: Awg;
  /** Null: the chart lists none. */
  readonly breakerA: number | null;
  readonly fuseA: number | null;
}

/** Table 11-3, copper. A guide for ordinary installations; 11-48 and 11-49 give the exceptions. */
export const protectorTable: Sourced<readonly ProtectorRow[]> = {
  source: practice('table 11-3'),
  value: [
    { awg: 22, breakerA: 5, fuseA: 5 },
    { awg: 20, breakerA: 7.5, fuseA: 5 },
    { awg: 18, breakerA: 10, fuseA: 10 },
    { awg: 16, breakerA: 15, fuseA: 10 },
    { awg: 14, breakerA: 20, fuseA: 15 },
    { awg: 12, breakerA: 30, fuseA: 20 },
    { awg: 10, breakerA: 40, fuseA: 30 },
    { awg: 8, breakerA: 50, fuseA: 50 },
    { awg: 6, breakerA: 80, fuseA: 70 },
    { awg: 4, breakerA: 100, fuseA: 70 },
    { awg: 2, breakerA: 125, fuseA: 100 },
    { awg: 1, breakerA: null, fuseA: 150 },
    { awg: 0, breakerA: null, fuseA: 150 },
  ],
};

/** Table 11-6: drop from bus to the equipment's ground, by nominal voltage of the system. */
export const dropTable: readonly {
  readonly systemV: number;
  readonly continuous: Sourced<number>;
  readonly intermittent: Sourced<number>;
}[] = [drop(14, 0.5, 1), drop(28, 1, 2), drop(115, 4, 8), drop(200, 7, 14)];

/** Resistance grows with temperature as (234.5 + T) / 254.5 for copper, (238.1 + T) / 258.1 for aluminium; T in C. */
export const copperTemperature: Sourced<{ readonly zeroC: number; readonly at20C: number }> = {
  value: { zeroC: 234.5, at20C: 254.5 },
  source: practice('11-66c(4)'),
};
export const aluminiumTemperature: Sourced<{ readonly zeroC: number; readonly at20C: number }> = {
  value: { zeroC: 238.1, at20C: 258.1 },
  source: practice('11-66c(4)'),
};

/** Aluminium in the place of copper: so many gauge numbers larger for about the same resistance, and none thinner than this gauge. */
export const aluminiumInPlace: Sourced<{ readonly largerBy: number; readonly thinnest: Awg }> = {
  value: { largerBy: 2, thinnest: 8 },
  source: practice('11-66 and the notes of table 11-9'),
};

/** Share of the regulated voltage that the main power wires may lose between source and bus, at rated current or at the battery's five-minute rate. */
export const mainWiresShare: Sourced<number> = {
  value: 0.02,
  source: practice('11-66, as a handbook for mechanics repeats it', 'secondary'),
};

/** Resistance from the ground point of generator or battery to the ground of the equipment that is satisfactory. */
export const groundReturnOhm: Sourced<number> = {
  value: 0.005,
  source: practice('11-66, as a handbook for mechanics repeats it', 'secondary'),
};

/** Volts below which a light for low voltage trips, by nominal voltage of the system. The light is a choice, no duty. */
export const lowVoltageLightV: Sourced<Readonly<Record<14 | 28, number>>> = {
  value: { 14: 13, 28: 26 },
  source: practice('11-35b'),
};

/** Share of generator output that the continuous load may take without placard or monitoring. A rule of thumb, no analysis. */
export const continuousLoadShare: Sourced<number> = { value: 0.8, source: practice('11-35a') };

/** Battery minutes after loss of generation, by certificated maximum altitude; the 2011 amendment only. */
export const batteryMinutes: Sourced<{
  readonly upToFt: number;
  readonly minutes: number;
  readonly minutesAbove: number;
}> = {
  value: { upToFt: 25000, minutes: 30, minutesAbove: 60 },
  source: { document: '14 CFR 23.1353', paragraph: '(h)', edition: 'amendment 23-62 (2011)', status: 'verified' },
};

function row(awg: Awg, c105: number, c150: number, c200: number, ohmPer1000Ft: number, circularMils: number): WireRow {
  return { awg, bundleA: { c105, c150, c200 }, ohmPer1000Ft, circularMils };
}

function drop(systemV: number, continuous: number, intermittent: number): (typeof dropTable)[number] {
  return {
    systemV,
    continuous: { value: continuous, source: practice('table 11-6') },
    intermittent: { value: intermittent, source: practice('table 11-6', 'from-memory') },
  };
}
