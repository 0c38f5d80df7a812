import type { EquipmentItem, EquipmentState } from '../src/dossier/aircraft.js';

/** Items of 91.205 as seen by a person; `part` changes one thing about all of them. */
export function itemsOf(items: readonly EquipmentItem[], part: Partial<EquipmentState> = {}): EquipmentState[] {
  return items.map((item) => ({
    item,
    state: 'fitted',
    unitId: null,
    seen: { asOf: '2025-09-10', by: 'R. Tamsin' },
    ...part,
  }));
}

/** What a simple trainer needs by day. */
export const dayItemsFitted: readonly EquipmentItem[] = [
  'airspeed-indicator',
  'altimeter',
  'magnetic-direction-indicator',
  'tachometer',
  'oil-pressure',
  'oil-temperature',
  'fuel-quantity',
  'safety-belts',
  'shoulder-harness',
];
export const nightItemsFitted: readonly EquipmentItem[] = [
  'position-lights',
  'anticollision-lights',
  'landing-light',
  'electrical-source',
  'spare-fuses',
];
export const instrumentItemsFitted: readonly EquipmentItem[] = [
  'rate-of-turn',
  'slip-skid',
  'sensitive-altimeter',
  'clock',
  'generator',
  'pitch-and-bank',
  'direction-gyro',
];
