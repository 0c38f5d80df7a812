import { z } from 'zod';
import type { Policy } from './policy.js';
import type { Read } from './read.js';
import { id as idText, place, shortText } from './words.js';

/**
 * An equipment type as its installation manual describes it. Types are immutable versions: a revision is a new id.
 * Where the manual is silent the field is null, and the rules answer cannot-tell.
 */

/** What a unit can do by itself. The trade's words. */
export const functionCode = z
  .enum([
    'com',
    'vor-receiver',
    'loc-receiver',
    'gs-receiver',
    'gnss',
    'lateral-deviation',
    'vertical-deviation',
    'integrity-annunciation',
    'approach-annunciation',
    'source-annunciation',
    'source-selector',
    'transponder',
    'altitude-reporting',
    'ads-b-out-1090',
    'ads-b-out-uat',
    'altimeter',
    'elt',
    'audio',
    'autopilot',
    'attitude',
    'direction',
    'traffic-display',
    'active-traffic',
    'correlated-traffic',
    'portable-display',
    'dme',
    'other',
  ])
  .meta({ id: 'FunctionCode' });
export type FunctionCode = Read<typeof functionCode>;

export const signalCode = z
  .enum([
    'lateral-deviation',
    'vertical-deviation',
    'integrity-flag',
    'approach-status',
    'source-status',
    'altitude-gray',
    'altitude-serial',
    'position',
    'heading',
    'traffic',
    'audio',
    'power',
    'control',
    'data',
  ])
  .meta({ id: 'SignalCode' });
export type SignalCode = Read<typeof signalCode>;

export const port = z
  .object({
    name: z
      .string()
      .regex(
        /^[A-Za-z0-9][A-Za-z0-9 ._+-]{0,39}$/,
        'use 1 to 40 letters, digits, spaces and . _ + -, a letter or digit first',
      ),
    signal: signalCode,
    direction: z.enum(['in', 'out', 'both']).meta({ id: 'PortDirection' }),
    standard: z
      .enum(['arinc-429', 'rs-232', 'rs-422', 'analog', 'discrete', 'gray-code', 'audio', 'power'])
      .meta({ id: 'PortStandard' }),
    /** Bits per second; null where the standard has no speed. */
    speed: z.int().positive().nullable(),
    /** Functions that need this port joined; empty: never required. */
    requiredFor: z.array(functionCode),
  })
  .meta({ id: 'Port' });
export type Port = Read<typeof port>;

/** TSO authorisation with the class marked on the unit, for example TSO C146 with class "Gamma-3" or TSO C129 with class "A1". */
export const authorisation = z
  .object({
    tso: z.string().regex(/^C\d+[a-z]?$/, 'write the number as C146d, without the letters TSO'),
    class: z.string().max(200).nullable(),
  })
  .meta({ id: 'Authorisation' });

/** A pair whose joining the manual approves: this type's software (null: any) with another family. */
export const approvedPair = z
  .object({
    family: z.string().max(80),
    signals: z.array(signalCode),
    software: z.string().max(200).nullable(),
    document: shortText,
    revision: shortText,
  })
  .meta({ id: 'ApprovedPair' });

/** A limitation of the manual. Rules interpret it over the graph of units and links. */
export const limitation = z
  .object({
    kind: z.enum(['no-link', 'no-chain', 'not-both', 'not-a-substitute', 'requires']).meta({ id: 'LimitationKind' }),
    /**
     * `no-link`: functions of the other unit that must not be joined, over any wire that can carry something of them. `no-chain`: first neighbour's functions. `not-a-substitute`: functions
     * that the unit has and that replace no required instrument. `not-both`, `requires`: the option or function that binds.
     */
    functions: z.array(functionCode),
    /** `no-chain`: functions further along. `not-both`: what must be off meanwhile. `requires`: what a unit joined to it must do. */
    beyond: z.array(functionCode),
    /** `requires`: where that unit sits; empty: anywhere. */
    places: z.array(place),
    /** `not-both`: true where what must be off is meant of other units. */
    elsewhere: z.boolean(),
    document: shortText,
    paragraph: shortText,
  })
  .meta({ id: 'Limitation' });
export type Limitation = Read<typeof limitation>;

/** What the manual says about where the unit must be seen. Angles from the pilot's normal line of sight, inches at the panel. */
export const viewLimit = z
  .object({
    approvedPlaces: z.array(place),
    maxHorizontalDeg: z.number().min(0).max(90).nullable(),
    maxOffsetIn: z.number().min(0).max(60).nullable(),
    document: shortText,
  })
  .meta({ id: 'ViewLimit' });

/** How the unit sheds its heat, and how many inches the manual keeps free around its intakes and exhaust. */
export const cooling = z
  .object({
    by: z.enum(['still-air', 'own-fan', 'outside-air']).meta({ id: 'CoolingKind' }),
    clearanceIn: z.number().positive().nullable(),
    document: shortText,
  })
  .meta({ id: 'Cooling' });

export const databaseKind = z
  .enum(['navigation', 'terrain', 'obstacle', 'chart', 'other'])
  .meta({ id: 'DatabaseKind' });
export type DatabaseKind = Read<typeof databaseKind>;

export const equipmentType = z
  .object({
    /** Content address of this version; the catalogue store computes it. */
    id: z.string().min(1).max(120),
    /** Stays the same over the versions of one product. */
    family: idText,
    maker: shortText,
    name: shortText,
    partNumber: shortText,
    document: shortText,
    revision: shortText,
    functions: z.array(functionCode).min(1),
    authorisations: z.array(authorisation),
    /** Null for remote units. Width and height of the part that passes the opening; depth with connectors, behind the panel. */
    bezel: z
      .object({
        widthIn: z.number().positive(),
        heightIn: z.number().positive(),
        depthIn: z.number().positive().nullable(),
      })
      .nullable(),
    massLb: z.number().positive().nullable(),
    /** Amperes; 0 where it draws nothing. Null: the manual does not state it, so it may draw. */
    drawA: z
      .object({ at14V: z.number().nonnegative().nullable(), at28V: z.number().nonnegative().nullable() })
      .nullable(),
    /** Volts between which its manual lets it be fed; null: nobody read it up. */
    supplyV: z.object({ least: z.number().positive(), most: z.number().positive() }).nullable(),
    cooling: cooling.nullable(),
    ports: z.array(port),
    databases: z.array(z.object({ kind: databaseKind, holdsNext: z.boolean() })),
    view: viewLimit.nullable(),
    pairs: z.array(approvedPair),
    limitations: z.array(limitation),
  })
  .meta({ id: 'EquipmentType' });
export type EquipmentType = Read<typeof equipmentType>;

/** By its manual: every current that it states is 0 A. A manual that states none says nothing of the kind. */
export function drawsNothing({ drawA }: EquipmentType): boolean {
  if (drawA === null) return false;
  const stated = [drawA.at14V, drawA.at28V].filter((each) => each !== null);
  return stated.length > 0 && stated.every((each) => each === 0);
}

/** The slice of the catalogue that an aircraft uses. `version` changes whenever any entry of the slice does. */
export interface Catalogue {
  readonly version: string;
  readonly types: Readonly<Record<string, EquipmentType>>;
  /** Ids of types whose place another version of the family has taken; left out where there are none. */
  readonly superseded?: readonly string[];
  /** Every version of what the house has set for its aircraft; left out where it has set nothing. */
  readonly policies?: readonly Policy[];
}
