import type { EquipmentType } from '@tallywing/rules';
import { equipmentTypeId } from '../../aircraft/stamp.js';
import type { Body } from './body.js';
import { cabin } from './cabin.js';
import { flight } from './flight.js';
import { indicators } from './indicators.js';
import { navigators } from './navigators.js';
import { radios } from './radios.js';
import { surveillance } from './surveillance.js';

/**
 * The demo's equipment, invented from end to end: no such maker, product or manual exists. Sizes, masses and classes are
 * of the order that the trade meets. Every kind that the schema of equipment types knows is some type's.
 */
const bodies = { ...navigators, ...radios, ...indicators, ...surveillance, ...flight, ...cabin };

export type TypeKey = keyof typeof bodies;

export const demoTypes = Object.fromEntries(
  Object.entries(bodies as Readonly<Record<string, Body>>).map(([key, body]) => [
    key,
    { ...body, id: equipmentTypeId(body) },
  ]),
) as Readonly<Record<TypeKey, EquipmentType>>;

export const demoTypeList: readonly EquipmentType[] = Object.values(demoTypes);
