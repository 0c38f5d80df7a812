import type { FlightConditions } from '@tallywing/rules';
import type { Profile } from '../aircraft/stamp.js';

const day: FlightConditions = {
  rules: 'vfr',
  light: 'day',
  purpose: 'private',
  airspace: [],
  topFt: 5000,
  localTrainingNm: null,
  overWaterBeyondGlide: false,
  crewOnly: false,
  errand: null,
  region: null,
  approaches: [],
};
const ifr: FlightConditions = { ...day, rules: 'ifr', airspace: ['controlled'], topFt: 9_000 };

/** Sensible columns for a house that has set none yet. */
export const startingProfiles: readonly Profile[] = [
  {
    id: 'vfr-lesson-local',
    name: 'VFR lesson, provided aircraft, within 25 NM, by day',
    conditions: { ...day, purpose: 'training-provided', localTrainingNm: 25 },
  },
  {
    id: 'vfr-cross-country',
    name: 'VFR cross-country, private, by day to 9,500 ft',
    conditions: { ...day, topFt: 9500 },
  },
  {
    id: 'vfr-class-c',
    name: 'VFR rental into class B or C, by day to 8,000 ft',
    conditions: { ...day, purpose: 'rental', airspace: ['controlled', 'class-b-c'], topFt: 8000 },
  },
  {
    id: 'vfr-night-rental',
    name: 'VFR rental by night to 6,500 ft',
    conditions: { ...day, purpose: 'rental', light: 'night', topFt: 6500 },
  },
  {
    id: 'ifr-rental',
    name: 'IFR rental, controlled airspace, to 9,000 ft',
    conditions: { ...ifr, purpose: 'rental' },
  },
  {
    id: 'ifr-rental-lnav',
    name: 'IFR rental with an LNAV approach',
    conditions: { ...ifr, purpose: 'rental', approaches: ['lnav'] },
  },
  {
    id: 'ifr-lesson-vor-loc',
    name: 'IFR lesson, provided aircraft, VOR or LOC',
    conditions: { ...ifr, purpose: 'training-provided', approaches: ['vor', 'loc'] },
  },
  {
    id: 'ifr-lesson-lpv-ils',
    name: 'IFR lesson, provided aircraft, controlled airspace, to 9,000 ft, LPV or ILS',
    conditions: { ...ifr, purpose: 'training-provided', approaches: ['lpv', 'ils'] },
  },
  {
    id: 'ferry-crew',
    name: 'VFR ferry, crew only, by day',
    conditions: { ...day, purpose: 'ferry', crewOnly: true, topFt: 9500 },
  },
];
