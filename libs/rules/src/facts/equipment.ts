import type { Sourced, SourceRef } from './source.js';

function equipmentRule(paragraph: string): SourceRef {
  return { document: '14 CFR 91.205', paragraph, edition: 'Sept 2026', status: 'verified' };
}

/** A condition under which an item is asked for. Several conditions on one item must all hold. */
export type EquipmentCondition =
  | 'oil-pressure-system'
  | 'liquid-cooled'
  | 'air-cooled'
  | 'altitude-engine'
  | 'retractable-gear'
  | 'small-airplane-part-23-after-1996-03-11'
  | 'us-registered'
  | 'for-hire'
  | 'over-water-beyond-glide'
  | 'not-part-121'
  | 'occupant-aged-two'
  | 'made-after-1978-07-18-front-seats'
  | 'made-after-1986-12-12-all-seats'
  | 'rotorcraft-made-after-1992-09-16'
  | 'elt-required'
  | 'protected-by-fuses'
  | 'no-third-attitude-system'
  | 'vor-required';

export interface EquipmentNeed {
  readonly item: string;
  readonly per: 'aircraft' | 'engine' | 'tank' | 'occupant' | 'seat';
  readonly when: readonly EquipmentCondition[];
  readonly source: SourceRef;
}

/** 91.205(b): by day under visual rules. Binds standard certificates only. */
export const dayItems: readonly EquipmentNeed[] = [
  need('airspeed-indicator', '(b)(1)'),
  need('altimeter', '(b)(2)'),
  need('magnetic-direction-indicator', '(b)(3)'),
  need('tachometer', '(b)(4)', [], 'engine'),
  need('oil-pressure', '(b)(5)', ['oil-pressure-system'], 'engine'),
  need('coolant-temperature', '(b)(6)', ['liquid-cooled'], 'engine'),
  need('oil-temperature', '(b)(7)', ['air-cooled'], 'engine'),
  need('manifold-pressure', '(b)(8)', ['altitude-engine'], 'engine'),
  need('fuel-quantity', '(b)(9)', [], 'tank'),
  need('gear-position', '(b)(10)', ['retractable-gear']),
  need('anticollision-lights', '(b)(11)', ['small-airplane-part-23-after-1996-03-11']),
  need('flotation-gear', '(b)(12)', ['for-hire', 'over-water-beyond-glide'], 'occupant'),
  need('pyrotechnic-device', '(b)(12)', ['for-hire', 'over-water-beyond-glide', 'not-part-121']),
  need('safety-belts', '(b)(13)', ['occupant-aged-two'], 'occupant'),
  need('shoulder-harness', '(b)(14)', ['made-after-1978-07-18-front-seats'], 'seat'),
  need('elt', '(b)(15)', ['elt-required']),
  need('shoulder-harness', '(b)(14), second sentence', ['made-after-1986-12-12-all-seats'], 'seat'),
  need('shoulder-harness', '(b)(17)', ['rotorcraft-made-after-1992-09-16'], 'seat'),
];

/** 91.205(c): by night, on top of the day's. */
export const nightItems: readonly EquipmentNeed[] = [
  need('position-lights', '(c)(2)'),
  need('anticollision-lights', '(c)(3)', ['us-registered']),
  need('landing-light', '(c)(4)', ['for-hire']),
  need('electrical-source', '(c)(5)'),
  need('spare-fuses', '(c)(6)', ['protected-by-fuses']),
];

/** Spare fuses by night where no whole set is carried: so many of each kind. */
export const nightSparesOfEach: Sourced<number> = { value: 3, source: equipmentRule('(c)(6)') };

/** 91.205(d): under instrument rules, on top of the day's, and of the night's when dark. (d)(2) is judged by capability. */
export const instrumentItems: readonly EquipmentNeed[] = [
  need('rate-of-turn', '(d)(3)', ['no-third-attitude-system']),
  need('slip-skid', '(d)(4)'),
  need('sensitive-altimeter', '(d)(5)'),
  need('clock', '(d)(6)'),
  need('generator', '(d)(7)'),
  need('pitch-and-bank', '(d)(8)'),
  need('direction-gyro', '(d)(9)'),
];

/** 91.205(e): at or above 24,000 ft where VOR is the navigation that (d)(2) asks for. */
export const highAltitudeItems: readonly EquipmentNeed[] = [need('dme-or-rnav', '(e)', ['vor-required'])];
export const highAltitudeFromFt: Sourced<number> = { value: 24000, source: equipmentRule('(e)') };

function need(
  item: string,
  paragraph: string,
  when: readonly EquipmentCondition[] = [],
  per: EquipmentNeed['per'] = 'aircraft',
): EquipmentNeed {
  return { item, per, when, source: equipmentRule(paragraph) };
}
