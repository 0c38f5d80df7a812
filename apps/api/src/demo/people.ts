import type { ChangeOf } from '@tallywing/rules';

type Agency = NonNullable<ChangeOf<'record.add'>['record']['agency']>;

/** Who signs in the demo. Invented, with certificate numbers that no authority issues. */
export const inspector: Agency = {
  kind: 'mechanic',
  name: 'Idris Corley',
  certificate: 'TW-M-0288',
  ratings: ['airframe', 'powerplant', 'inspection-authorization'],
};
export const mechanic: Agency = {
  kind: 'mechanic',
  name: 'Jory Pellam',
  certificate: 'TW-M-0417',
  ratings: ['airframe', 'powerplant'],
};
export const station: Agency = {
  kind: 'repair-station',
  name: 'Wendle Avionics',
  certificate: 'TW-RS-031',
  ratings: ['radio-1', 'radio-2', 'radio-3', 'instrument-1', 'instrument-2', 'station-airframe'],
};
export const repairman: Agency = {
  kind: 'repairman',
  name: 'Sunniva Holt',
  certificate: 'TW-R-0093',
  ratings: ['light-sport-maintenance'],
};
export const pilot: Agency = {
  kind: 'pilot',
  name: 'Ansel Brook',
  certificate: 'TW-P-2210',
  ratings: ['private-pilot'],
};
