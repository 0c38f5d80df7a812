import { unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { itemsOf } from '../../../testing/equipment.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { EquipmentState } from '../../dossier/aircraft.js';
import type { InstalledUnit } from '../../dossier/installation.js';
import { highAltitudeEquipment } from './high-altitude-equipment.js';

const at = '2026-03-02T14:00Z';
const aircraft = (equipment: readonly EquipmentState[], units: readonly InstalledUnit[] = []) =>
  dossierOf({ configuration: { aircraft: { certificate: 'standard', engine: 'turboprop' }, equipment, units } });
const none = aircraft(itemsOf(['dme-or-rnav'], { state: 'absent' }));
const noGnss = { 'nav-gnss': 'not-met' } as const;

// 14 CFR 91.205(e): "at or above FL 240"
testRule(highAltitudeEquipment, [
  {
    name: 'one foot below 24,000 ft, nothing fitted',
    dossier: none,
    at,
    flight: { topFt: 23_999 },
    capabilities: noGnss,
    expect: 'not-applicable',
    message: 'excepted',
  },
  {
    name: 'at 24,000 ft, nothing fitted',
    dossier: none,
    at,
    flight: { topFt: 24_000 },
    capabilities: noGnss,
    expect: 'not-met',
    message: 'absent',
    data: { absent: 'DME or RNAV' },
  },
  {
    name: 'one foot above 24,000 ft, DME fitted',
    dossier: aircraft(itemsOf(['dme-or-rnav'])),
    at,
    flight: { topFt: 24_001 },
    capabilities: noGnss,
    expect: 'met',
    message: 'fitted',
  },
  {
    name: 'GNSS navigation holds: VOR is not needed',
    dossier: none,
    at,
    flight: { topFt: 25_000 },
    capabilities: { 'nav-gnss': 'met' },
    expect: 'met',
  },
  {
    name: 'whether GNSS navigation holds cannot be told',
    dossier: none,
    at,
    flight: { topFt: 25_000 },
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'item not recorded',
    dossier: aircraft([]),
    at,
    flight: { topFt: 25_000 },
    capabilities: noGnss,
    expect: 'cannot-tell',
  },
  {
    name: 'DME deactivated',
    dossier: aircraft(itemsOf(['dme-or-rnav']), [
      unitOf({
        id: 'dme1',
        functions: ['dme'],
        deactivated: { since: { date: '2026-02-01', at: null }, placarded: true, recorded: true },
      }),
    ]),
    at,
    flight: { topFt: 25_000 },
    capabilities: noGnss,
    expect: 'not-met',
  },
]);
