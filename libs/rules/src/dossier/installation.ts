import { z } from 'zod';
import type { Read } from '../catalogue/read.js';
import { functionCode } from '../catalogue/type.js';
import { id, note, place, shortText } from '../catalogue/words.js';
import { civilDate, documentRef, performed, statement } from './common.js';

/** A hole in the panel, seen from the pilot's eye. Inches; right and below are positive. */
export const opening = z
  .object({
    id,
    place,
    widthIn: z.number().positive().nullable(),
    heightIn: z.number().positive().nullable(),
    depthIn: z.number().positive().nullable(),
    rightOfEyeIn: z.number().nullable(),
    belowEyeIn: z.number().nullable(),
    eyeDistanceIn: z.number().positive().nullable(),
  })
  .meta({ id: 'Opening' });
export type Opening = Read<typeof opening>;

/** What an installation approval lets the unit be used for. */
export const grant = z
  .enum([
    'vfr-only',
    'com',
    'nav-vor',
    'nav-gnss',
    'altitude-reporting',
    'ads-b-out',
    'approach-vor',
    'approach-loc',
    'approach-ils',
    'approach-lnav',
    'approach-lp',
    'approach-lnav-vnav',
    'approach-lpv',
  ])
  .meta({ id: 'Grant' });
export type Grant = Read<typeof grant>;

export const installationApproval = z
  .object({
    basis: z
      .enum(['type-certificate', 'stc', 'stc-model-list', 'field-approval', 'minor-alteration', 'as-found'])
      .meta({ id: 'ApprovalBasis' }),
    document: documentRef,
    /** Date of the approved data; must not be later than the release of the work. */
    approvedOn: civilDate.nullable(),
    releasedOn: civilDate.nullable(),
    /** 91.403(d): written permission of the STC holder. Null: not seen. */
    permission: z.boolean().nullable(),
    /** Exact model found on the list revision in force. Null: not looked up. */
    modelListed: z.boolean().nullable(),
    /** Null: the papers do not say. */
    grants: z.array(grant).nullable(),
    /** `as-found`: the named person who accepted the installation at intake. */
    acceptedBy: statement.nullable(),
  })
  .meta({ id: 'InstallationApproval' });
export type InstallationApproval = Read<typeof installationApproval>;

/** Pounds that a mount with its unit bears in each direction, by test or by calculation. */
export const mountStrength = z
  .object({
    forwardLb: z.number().positive().nullable(),
    upLb: z.number().positive().nullable(),
    sideLb: z.number().positive().nullable(),
    downLb: z.number().positive().nullable(),
    document: documentRef,
  })
  .meta({ id: 'MountStrength' });

/** Colour of a light of the unit and what it says. */
export const light = z
  .object({
    use: z.enum(['warning', 'caution', 'safe-operation', 'other']).meta({ id: 'LightUse' }),
    colour: z.enum(['red', 'amber', 'green', 'white', 'blue', 'other']).meta({ id: 'LightColour' }),
  })
  .meta({ id: 'AnnunciatorLight' });

/** How a unit is built in, as somebody saw it. */
export const asBuilt = z
  .object({
    /** Air led to it: none, from outside, or from a fan on the ground too. */
    air: z.enum(['none', 'ram-air', 'blower']).nullable().meta({ id: 'CoolingAir' }),
    airwaysClear: z.boolean().nullable(),
    /** Torn loose in a sudden stop it could strike an occupant. */
    couldStrike: z.boolean().nullable(),
    bears: mountStrength.nullable(),
    lights: z.array(light).nullable(),
  })
  .meta({ id: 'AsBuilt' });
export type AsBuilt = Read<typeof asBuilt>;

export const unit = z
  .object({
    id,
    name: shortText,
    /** Catalogue version; null: not catalogued, `functions` then says what it does. */
    typeId: z.string().min(1).max(120).nullable(),
    functions: z.array(functionCode),
    serial: shortText.nullable(),
    openingId: id.nullable(),
    place: place.nullable(),
    software: shortText.nullable(),
    /** Distance from the centre of the pilot's view and angle, if measured. */
    offsetIn: z.number().min(0).nullable(),
    options: z.array(z.object({ name: shortText, value: shortText })),
    approval: installationApproval.nullable(),
    manufactured: civilDate.nullable(),
    fitted: performed.nullable(),
    deactivated: z
      .object({ since: performed, placarded: z.boolean().nullable(), recorded: z.boolean().nullable() })
      .nullable(),
    massLb: z.number().positive().nullable(),
    armIn: z.number().nullable(),
    asBuilt: asBuilt.nullable(),
    notes: note.nullable(),
  })
  .meta({ id: 'InstalledUnit' });

/** A unit that was taken out: its short name stays that of its serial number, and its entries with it. */
export const takenOut = z.object({ id, serial: shortText.nullable() }).meta({ id: 'TakenOut' });

export type InstalledUnit = Read<typeof unit>;

export const link = z
  .object({
    id,
    fromUnit: id,
    fromPort: shortText,
    toUnit: id,
    toPort: shortText,
    /** Recorded cover for this joint apart from the catalogue's pair list. */
    cover: z
      .object({
        by: z.enum(['installation-approval', 'as-found']).meta({ id: 'LinkCover' }),
        document: documentRef.nullable(),
        acceptedBy: statement.nullable(),
      })
      .nullable(),
    fitted: performed.nullable(),
  })
  .meta({ id: 'Link' });
export type Link = Read<typeof link>;

export const antenna = z
  .object({
    id,
    kind: z
      .enum(['com', 'vor-loc', 'glide-slope', 'gnss', 'gnss-sbas', 'transponder', 'uat', 'marker', 'elt', 'combined'])
      .meta({ id: 'AntennaKind' }),
    units: z.array(id),
    approved: z.boolean().nullable(),
    xIn: z.number().nullable(),
    yIn: z.number().nullable(),
  })
  .meta({ id: 'Antenna' });
export type Antenna = Read<typeof antenna>;

export const placard = z
  .object({
    id,
    kind: z
      .enum(['gnss-vfr-only', 'elt-removed', 'inoperative', 'kinds-of-operation', 'compass', 'loading', 'other'])
      .meta({ id: 'PlacardKind' }),
    unitId: id.nullable(),
    inView: z.boolean().nullable(),
    text: shortText,
  })
  .meta({ id: 'Placard' });
export type Placard = Read<typeof placard>;

/** Flight manual supplement of one installation. */
export const supplement = z
  .object({
    id,
    units: z.array(id),
    document: documentRef,
    aboard: z.boolean().nullable(),
    /** True: navigation data must be current, no verification. False: verified expired data may serve. Null: not read. */
    currentDataRequired: z.boolean().nullable(),
    grants: z.array(grant).nullable(),
  })
  .meta({ id: 'Supplement' });
export type Supplement = Read<typeof supplement>;

/** Conditions of a load analysis. */
export const loadCondition = z
  .enum(['ground', 'taxi', 'take-off', 'cruise', 'landing', 'battery-only'])
  .meta({ id: 'LoadCondition' });
export type LoadCondition = Read<typeof loadCondition>;

/** How the current that a wire may carry is known: by table 11-9 because its note 1 fits, or by the factors read off the curves. */
export const ampacity = z
  .object({
    by: z.enum(['table', 'curves']).meta({ id: 'AmpacityBasis' }),
    freeAirA: z.number().positive().max(1000).nullable(),
    bundleFactor: z.number().positive().max(1).nullable(),
    altitudeFactor: z.number().positive().max(1).nullable(),
  })
  .meta({ id: 'Ampacity' });

export const circuit = z
  .object({
    id,
    name: shortText,
    protector: z.enum(['breaker', 'fuse', 'none']).meta({ id: 'ProtectorKind' }),
    ratingA: z.number().positive().nullable(),
    /** American wire gauge; 2/0, 3/0 and 4/0 are -1, -2 and -3. */
    wireAwg: z.int().min(-3, 'wire is no larger than 4/0').max(24).nullable(),
    /** With the ground wire if one is run. */
    wireLengthFt: z.number().positive().nullable(),
    /** Temperature rating of the wire, C. */
    wireRating: z.enum(['c105', 'c150', 'c200']).nullable().meta({ id: 'WireRating' }),
    ampacity: ampacity.nullable(),
    loadA: z.number().positive().max(1000).nullable(),
    intermittent: z.boolean().nullable(),
    /** Conditions in which it is switched on; null: nobody analysed it. */
    usedIn: z.array(loadCondition).nullable(),
    singleWireInOpenAir: z.boolean().nullable(),
    units: z.array(id),
    essential: z.boolean().nullable(),
    /** Circuits behind this protector. */
    circuitsGuarded: z.int().min(1).max(20).nullable(),
  })
  .meta({ id: 'Circuit' });
export type Circuit = Read<typeof circuit>;

export const electrical = z
  .object({
    busV: z.number().positive().nullable(),
    alternatorA: z.number().positive().nullable(),
    batteryAh: z.number().positive().nullable(),
    /** Share of its rated capacity that the analysis counts on. */
    batteryShare: z.number().positive().max(1).nullable(),
    /** What keeps the continuous load in bounds beside the rule of thumb. */
    loadWatch: z.enum(['none', 'placard', 'monitoring']).nullable().meta({ id: 'LoadWatch' }),
    circuits: z.array(circuit),
  })
  .meta({ id: 'ElectricalSystem' });
export type Electrical = Read<typeof electrical>;

/** Empty-weight record with the small changes since it was last revised. Pounds and inches; removed items have negative weight. */
export const massChange = z
  .object({
    what: shortText,
    weightLb: z.number(),
    armIn: z.number().nullable(),
    on: civilDate,
    listed: z.boolean().nullable(),
  })
  .meta({ id: 'MassChange' });
export type MassChange = Read<typeof massChange>;
/** Limits of the loaded centre at one weight; between two weights they run straight. */
export const envelopePoint = z
  .object({ weightLb: z.number().positive(), forwardIn: z.number(), aftIn: z.number() })
  .meta({ id: 'EnvelopePoint' });
/** A seat, tank, compartment or the oil: what is always in it, and the most that may be. */
export const station = z
  .object({ name: shortText, armIn: z.number(), leastLb: z.number().min(0), mostLb: z.number().min(0) })
  .meta({ id: 'LoadingStation' });
export type Station = Read<typeof station>;
export const envelope = z
  .object({
    points: z.array(envelopePoint).min(1).max(12),
    stations: z.array(station).max(20),
    /** Leading edge of the mean chord aft of the datum. */
    leadingEdgeIn: z.number().nullable(),
    document: documentRef,
  })
  .meta({ id: 'LoadingEnvelope' });
export type Envelope = Read<typeof envelope>;

export const mass = z
  .object({
    emptyWeightLb: z.number().positive(),
    emptyArmIn: z.number(),
    revisedOn: civilDate,
    weighed: z.boolean(),
    macIn: z.number().positive().nullable(),
    envelope: envelope.nullable(),
    equipmentListRevisedOn: civilDate.nullable(),
    changesSince: z.array(massChange),
  })
  .meta({ id: 'MassRecord' });
export type Mass = Read<typeof mass>;
