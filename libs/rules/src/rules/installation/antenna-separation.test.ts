import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Antenna } from '../../dossier/installation.js';
import { antennaSeparation } from './antenna-separation.js';

const at = '2026-03-02T14:00Z';
const antenna = (id: string, kind: Antenna['kind'], xIn: number | null, yIn: number | null = 0): Antenna => ({
  id,
  kind,
  units: [],
  approved: null,
  xIn,
  yIn,
});
const gnss = antenna('gnss', 'gnss-sbas', 60);
const aircraft = (...antennas: Antenna[]) => dossierOf({ configuration: { antennas } });

// Working rule of 3 ft (36 in), from memory.
testRule(antennaSeparation, [
  {
    name: '36 in',
    dossier: aircraft(gnss, antenna('com', 'com', 96)),
    at,
    expect: 'met',
    message: 'apart',
    data: { distanceIn: 36 },
  },
  {
    name: 'a tenth less',
    dossier: aircraft(gnss, antenna('com', 'com', 95.9)),
    at,
    expect: 'not-met',
    message: 'near',
    data: { distanceIn: 35.9 },
  },
  { name: 'a tenth more, ahead', dossier: aircraft(gnss, antenna('com', 'com', 23.9)), at, expect: 'met' },
  {
    name: 'across and along together',
    dossier: aircraft(antenna('gnss', 'gnss', 60, -10), antenna('com', 'com', 90, 10)),
    at,
    expect: 'met',
    data: { distanceIn: 36.1 },
  },
  {
    name: 'the nearer of two',
    dossier: aircraft(gnss, antenna('com', 'com', 120), antenna('com2', 'com', 80)),
    at,
    expect: 'not-met',
    data: { distanceIn: 20 },
  },
  {
    name: 'place of the other antenna not recorded',
    dossier: aircraft(gnss, antenna('com', 'com', 120), antenna('com2', 'com', null)),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'own place not recorded',
    dossier: aircraft(antenna('gnss', 'gnss', 60, null), antenna('com', 'com', 120)),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'a place that no aircraft has',
    dossier: aircraft(gnss, antenna('com', 'com', 99_999)),
    at,
    expect: 'cannot-tell',
  },
  { name: 'nothing transmits', dossier: aircraft(gnss, antenna('nav', 'vor-loc', 60)), at, expect: 'none' },
]);
