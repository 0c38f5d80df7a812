import { openJoins } from '../graph/joins.js';
import type { Catalogue, EquipmentType, FunctionCode } from '../catalogue/type.js';
import type { Change } from '../changes/changes.js';
import type { Dossier } from '../dossier/dossier.js';
import type { InstalledUnit } from '../dossier/installation.js';
import type { RecordKind } from '../dossier/status.js';
import { recordKind } from '../dossier/status.js';
import type { Facts } from '../graph/facts.js';
import type { Instant } from '../time/instant.js';
import type { Capability } from '../verdict/capability.js';
import type { FlightConditions } from '../verdict/conditions.js';
import type { Remedy } from '../verdict/result.js';
import type { Assumption } from './deeds.js';
import { entry, fit, grantsOf, load, performedAt, supplementFor } from './deeds.js';
import type { Job } from './labour.js';

/** Something that a shop can do, as changes to record. */
export interface Action {
  /** The same deed has the same name in every state. */
  readonly id: string;
  readonly job: Job;
  /** Units, static systems, links, records it is about; empty for the aircraft. */
  readonly subjects: readonly string[];
  /** Kind of change that a person would record; null: a fact to find out. */
  readonly change: string | null;
  readonly changes: readonly Change[];
  /** Paths of facts taken to turn out well. */
  readonly supposes: readonly string[];
  readonly assumes: readonly Assumption[];
}

/** Where an action is thought of. */
export interface Situation {
  readonly dossier: Dossier;
  readonly catalogue: Catalogue;
  readonly facts: Facts;
  /** Minute at which it would be done; later than all that the record holds of that day. */
  readonly at: Instant;
  readonly flight: FlightConditions;
}

/** What can be done about one remedy; empty where the remedy is not work of a shop, such as a change of the type certificate. */
export function actionsFor(remedy: Remedy, situation: Situation): readonly Action[] {
  if (remedy.kind === 'find-out') return [];
  const make = makers[remedy.change];
  return make ? make(remedy.subject, situation) : [];
}

type Maker = (subject: string, situation: Situation) => readonly Action[];

const makers: Readonly<Record<string, Maker>> = {
  'record.add': entryActions,
  'hold.lift': (holdId, { dossier, at }) =>
    dossier.status.holds
      .filter((each) => (each.id === holdId || holdId === 'aircraft') && (each.until === null || each.until > at))
      .map((each) =>
        action('lift-hold', [each.id], 'hold.lift', [
          { kind: 'hold.lift', version: 1, holdId: each.id, at, reason: 'what it was placed for is done' },
        ]),
      ),
  'database.load': (unitId, { dossier, at, facts }) =>
    (facts.units.get(unitId)?.type?.databases ?? [{ kind: 'navigation' as const }]).map((each) =>
      action('load-database', [unitId, each.kind], 'database.load', [load(dossier, at, unitId, each.kind)]),
    ),
  'link.connect': (unitId, situation) => [
    ...joinActions(unitId, situation),
    ...indicators(unitId, situation),
    ...feeders(unitId, situation),
  ],
  'link.disconnect': (subject, { dossier, at }) =>
    dossier.configuration.links
      .filter((each) => each.id === subject || `${each.fromUnit}>${each.toUnit}` === subject)
      .map((each) =>
        action('part-ports', [each.id], 'link.disconnect', [
          {
            kind: 'link.disconnect',
            version: 1,
            linkId: each.id,
            performed: performedAt(dossier, at),
            reason: 'prohibited or in the way',
            touched: [],
          },
        ]),
      ),
  'unit.install': (subject, situation) => {
    const unit = situation.dossier.configuration.units.find((each) => each.id === subject);
    return unit ? [...replacements(unit, situation), ...approvals(unit, situation)] : [];
  },
  'unit.deactivate': (unitId, { dossier, at }) => [
    action('deactivate-unit', [unitId], 'unit.deactivate', [
      {
        kind: 'unit.deactivate',
        version: 1,
        unitId,
        performed: performedAt(dossier, at),
        placarded: true,
        recorded: true,
      },
    ]),
  ],
  'unit.reactivate': (unitId, { dossier, at, facts }) => [
    action('reactivate-unit', [unitId], 'unit.reactivate', [
      {
        kind: 'unit.reactivate',
        version: 1,
        unitId,
        performed: performedAt(dossier, at),
        touched: facts.units.get(unitId)?.functions.has('gnss') ? ['gnss'] : [],
      },
    ]),
  ],
  'antenna.fit': antennaActions,
  'placard.fit': (unitId) => [
    action('fit-placard', [unitId], 'placard.fit', [
      {
        kind: 'placard.fit',
        version: 1,
        placard: { id: `new-placard-${unitId}`, kind: 'gnss-vfr-only', unitId, inView: true, text: 'VFR only' },
      },
    ]),
  ],
  'supplement.set': (unitId, { dossier }) => {
    const unit = dossier.configuration.units.find((each) => each.id === unitId);
    const old = dossier.configuration.supplements.find((each) => each.units.includes(unitId));
    if (!unit?.approval) return [];
    return [
      action(
        'file-supplement',
        [unitId],
        'supplement.set',
        [
          {
            kind: 'supplement.set',
            version: 1,
            supplement: {
              id: old?.id ?? `new-supplement-${unitId}`,
              units: old?.units ?? [unitId],
              document: old?.document ?? unit.approval.document,
              aboard: true,
              currentDataRequired: old?.currentDataRequired ?? true,
              grants: old?.grants ?? unit.approval.grants,
            },
          },
        ],
        ['data-and-parts-at-hand'],
      ),
    ];
  },
  'mass.revise': (_, { dossier, at }) => {
    const { mass } = dossier.configuration;
    const { date } = performedAt(dossier, at);
    return mass === null
      ? []
      : [
          action('revise-weight-record', [], 'mass.revise', [
            {
              kind: 'mass.revise',
              version: 1,
              mass: { ...mass, revisedOn: date, equipmentListRevisedOn: date, changesSince: [] },
            },
          ]),
        ];
  },
  adopt: (subject, { dossier, at, facts }) => {
    const { date } = performedAt(dossier, at);
    const unit = dossier.configuration.units.find((each) => each.id === subject);
    const by = { asOf: date, by: 'a named person' };
    return [
      action(
        'adopt-as-found',
        [subject],
        'adopt',
        [
          {
            kind: 'adopt',
            version: 1,
            units: unit ? [subject] : [],
            links: unit ? [] : [subject],
            by,
            approval: {
              basis: 'as-found',
              document: { title: 'Intake inspection', revision: null, date },
              approvedOn: date,
              releasedOn: date,
              permission: null,
              modelListed: null,
              grants: unit ? [...grantsOf([...(facts.units.get(subject)?.functions ?? [])])] : null,
              acceptedBy: by,
            },
          },
        ],
        ['accepted-as-found'],
      ),
    ];
  },
  'defect.close': (defectId, { dossier, at }) => [
    action(
      'repair-defect',
      [defectId],
      'defect.close',
      [
        {
          kind: 'defect.close',
          version: 1,
          defectId,
          how: 'repaired',
          by: {
            kind: 'mechanic',
            name: 'whoever may',
            certificate: 'whoever may',
            ratings: ['airframe', 'powerplant'],
          },
          on: performedAt(dossier, at).date,
          entry: 'to be made',
        },
      ],
      ['can-be-repaired'],
    ),
  ],
  'defect.defer': (defectId, { dossier, at }) => {
    const old = dossier.status.defects.find((each) => each.id === defectId)?.deferral ?? null;
    const { date } = performedAt(dossier, at);
    return [
      action(
        'defer-defect',
        [defectId],
        'defect.defer',
        [
          {
            kind: 'defect.defer',
            version: 1,
            defectId,
            deferral: {
              route: old?.route ?? '91.213(d)',
              notRequired: old?.notRequired ?? true,
              secured: true,
              placarded: true,
              recorded: true,
              noHazardBy: old?.noHazardBy ?? {
                kind: 'mechanic',
                name: 'whoever may',
                certificate: 'whoever may',
                ratings: ['airframe', 'powerplant'],
              },
              letterAboard: old?.letterAboard ?? null,
              on: old?.on ?? date,
              reinspectedOn: old === null ? null : date,
            },
          },
        ],
        ['may-be-deferred'],
      ),
    ];
  },
  'directive.set': (directiveId, { dossier, at, flight }) => {
    const directive = dossier.status.directives.find((each) => each.id === directiveId);
    if (!directive) return [];
    const done = entry(
      dossier,
      at,
      'directive-compliance',
      [directive.subject === directive.id ? 'aircraft' : directive.subject],
      flight.topFt ?? 0,
    );
    return [
      action(
        'directive-compliance',
        [directiveId],
        'directive.set',
        [
          done,
          {
            kind: 'directive.set',
            version: 1,
            directive: { ...directive, state: 'complied', nextDue: null, recordId: done.record.id },
          },
        ],
        ['passes-and-is-signed', 'not-due-again'],
      ),
    ];
  },
};

function entryActions(subject: string, situation: Situation): readonly Action[] {
  const [code, of = 'aircraft'] = subject.split(':');
  const kind = recordKind.options.find((each) => each === code);
  if (!kind) return [];
  const single = entryAction(kind, [of], situation);
  return suite.includes(kind) ? [single, ...altitudeSuite(situation)] : [single];
}

function entryAction(kind: RecordKind, subjects: readonly string[], { dossier, at, flight }: Situation): Action {
  return action(
    kind,
    subjects.filter((each) => each !== 'aircraft'),
    'record.add',
    [entry(dossier, at, kind, subjects, flight.topFt ?? 0)],
    [kind === 'data-verification' ? 'this-flight-only' : 'passes-and-is-signed'],
  );
}

const suite: readonly RecordKind[] = [
  'static-system-test',
  'static-leak-test',
  'altimeter-test',
  'altitude-reporting-test',
  'transponder-test',
  'altitude-correspondence-test',
];

/** All altitude tests in one visit: what shops sell, and cheaper than its parts. */
function altitudeSuite(situation: Situation): readonly Action[] {
  const { dossier, facts } = situation;
  const units = [...facts.units.values()].filter((each) => each.active);
  const having = (code: FunctionCode) => units.filter((each) => each.functions.has(code)).map((each) => each.id);
  const tests: readonly (readonly [RecordKind, readonly string[]])[] = [
    ['static-system-test', dossier.configuration.staticSystems.map((each) => each.id)],
    ['altimeter-test', having('altimeter')],
    ['altitude-reporting-test', having('altitude-reporting')],
    ['transponder-test', having('transponder')],
    ['altitude-correspondence-test', ['aircraft']],
  ];
  const made = tests.flatMap(([kind, subjects]) => subjects.map((each) => entryAction(kind, [each], situation)));
  return [
    action(
      'altitude-suite',
      [],
      'record.add',
      made.flatMap((each) => each.changes),
      ['passes-and-is-signed'],
    ),
  ];
}

/** All free ports of a unit with a partner, in one go: they lie behind the same tray. */
function joinActions(unitId: string, { dossier, catalogue, at }: Situation): readonly Action[] {
  const joins = openJoins(unitId, dossier, catalogue);
  if (joins.length === 0) return [];
  const performed = performedAt(dossier, at);
  return [
    action(
      'join-ports',
      [unitId],
      'link.connect',
      joins.map((each) => ({
        kind: 'link.connect' as const,
        version: 1 as const,
        link: {
          id: `${each.fromUnit}.${each.fromPort}-${each.toUnit}.${each.toPort}`.replace(/[^A-Za-z0-9.-]/g, '-'),
          ...each,
          cover: null,
          fitted: performed,
        },
        performed,
        touched: [],
      })),
      ['data-and-parts-at-hand'],
    ),
  ];
}

/** Another indicator, for a source that finds no free one to show itself on. */
function indicators(unitId: string, situation: Situation): readonly Action[] {
  const shown: readonly FunctionCode[] = ['gnss', 'vor-receiver', 'loc-receiver'];
  const functions = situation.facts.units.get(unitId)?.functions;
  return shown.some((code) => functions?.has(code))
    ? fittings(['lateral-deviation', 'vertical-deviation'], null, situation).filter(
        ({ job }) => job === 'fit-indicator',
      )
    : [];
}

/** Another unit that sends what a port of this one waits for, where nothing aboard does. */
function feeders(unitId: string, situation: Situation): readonly Action[] {
  const { dossier, catalogue, facts } = situation;
  const waiting = facts.units
    .get(unitId)
    ?.type?.ports.filter(
      (port) =>
        port.direction === 'in' &&
        port.requiredFor.length > 0 &&
        !dossier.configuration.links.some((link) => link.toUnit === unitId && link.toPort === port.name),
    );
  return currentTypes(catalogue)
    .filter((type) =>
      waiting?.some((port) =>
        type.ports.some(
          (other) => other.direction !== 'in' && other.signal === port.signal && other.standard === port.standard,
        ),
      ),
    )
    .map((type) => fitting(type, null, situation));
}

/** The unit stays; what is approved for it here grows to all that it can do, and the placard that limited it goes. */
function approvals(unit: InstalledUnit, { dossier, facts, at }: Situation): readonly Action[] {
  const grants = [...grantsOf([...(facts.units.get(unit.id)?.functions ?? [])])];
  const performed = performedAt(dossier, at);
  const document = { title: `Approval of ${unit.name} for all it can do`, revision: null, date: performed.date };
  const approval = {
    basis: 'field-approval' as const,
    document,
    approvedOn: performed.date,
    releasedOn: performed.date,
    permission: null,
    modelListed: null,
    grants,
    acceptedBy: null,
  };
  return [
    action(
      'approve-installation',
      [unit.id],
      'unit.amend',
      [
        { kind: 'unit.amend', version: 1, unit: { ...unit, approval }, reason: 'approval widened' },
        ...dossier.configuration.placards
          .filter((each) => each.unitId === unit.id && each.kind === 'gnss-vfr-only')
          .map((each): Change => ({
            kind: 'placard.remove',
            version: 1,
            placardId: each.id,
            reason: 'the limit it speaks of is gone',
          })),
        supplementFor(dossier, unit.id, document, grants),
      ],
      ['data-and-parts-at-hand'],
    ),
  ];
}

function antennaActions(subject: string, { dossier, facts, at }: Situation): readonly Action[] {
  const functions = facts.units.get(subject)?.functions ?? new Set();
  const kinds = [
    ...(functions.has('com') ? ['com' as const] : []),
    ...(functions.has('vor-receiver') || functions.has('loc-receiver') ? ['vor-loc' as const] : []),
    ...(functions.has('gs-receiver') ? ['glide-slope' as const] : []),
    ...(functions.has('gnss') ? ['gnss-sbas' as const] : []),
    ...(functions.has('transponder') ? ['transponder' as const] : []),
  ];
  return kinds.map((kind) =>
    action(
      'fit-antenna',
      [subject, kind],
      'antenna.fit',
      [
        {
          kind: 'antenna.fit',
          version: 1,
          antenna: {
            id: `new-antenna-${subject}-${kind}`,
            kind,
            units: [subject],
            approved: true,
            xIn: null,
            yIn: null,
          },
          performed: performedAt(dossier, at),
          touched: ['behind-panel'],
        },
      ],
      ['data-and-parts-at-hand'],
    ),
  );
}

/** Functions that a unit must have so that a means of the capability can exist. */
const serves: Partial<Record<Capability, readonly FunctionCode[]>> = {
  'two-way-radio': ['com'],
  'nav-vor': ['vor-receiver'],
  'approach-vor': ['vor-receiver'],
  'approach-loc': ['loc-receiver'],
  'approach-ils': ['loc-receiver', 'gs-receiver'],
  'nav-gnss': ['gnss'],
  'approach-lnav': ['gnss'],
  'approach-lp': ['gnss'],
  'approach-lnav-vnav': ['gnss'],
  'approach-lpv': ['gnss'],
  'altitude-reporting': ['transponder'],
};

/** Another unit that can give the capability: in the place of the one that should, else added. */
export function fittingsFor(capability: Capability, situation: Situation): readonly Action[] {
  const { dossier, facts } = situation;
  const functions =
    capability === 'ads-b-out'
      ? (['ads-b-out-1090'] as const)
      : capability === 'fly'
        ? (['elt'] as const)
        : serves[capability];
  if (!functions) return [];
  const having = (codes: readonly FunctionCode[]) =>
    dossier.configuration.units.find((each) => codes.every((code) => facts.units.get(each.id)?.functions.has(code)));
  // A transponder with ADS-B Out takes the place of the one without.
  const standing = having(functions) ?? (capability === 'ads-b-out' ? having(['transponder']) : undefined);
  return [...fittings(functions, standing ?? null, situation), ...(standing ? approvals(standing, situation) : [])];
}

function replacements(unit: InstalledUnit, situation: Situation): readonly Action[] {
  const own = [...(situation.facts.units.get(unit.id)?.functions ?? [])];
  const main = own.filter((code) => mainFunctions.includes(code));
  return fittings(main.length > 0 ? main : own, unit, situation);
}

/** What a unit is bought for; the rest comes with it. */
const mainFunctions: readonly FunctionCode[] = [
  'com',
  'vor-receiver',
  'loc-receiver',
  'gs-receiver',
  'gnss',
  'transponder',
  'ads-b-out-1090',
  'lateral-deviation',
  'vertical-deviation',
  'elt',
  'altimeter',
  'altitude-reporting',
];

function fittings(
  functions: readonly FunctionCode[],
  replaced: InstalledUnit | null,
  situation: Situation,
): readonly Action[] {
  return currentTypes(situation.catalogue)
    .filter((type) => functions.every((code) => type.functions.includes(code)) && type.id !== replaced?.typeId)
    .map((type) => fitting(type, replaced, situation));
}

function fitting(type: EquipmentType, replaced: InstalledUnit | null, { dossier, at }: Situation): Action {
  return action(
    jobOf(type, replaced !== null),
    [type.id, ...(replaced ? [replaced.id] : [])],
    'unit.install',
    fit(dossier, at, type, replaced),
    ['data-and-parts-at-hand', 'passes-and-is-signed'],
  );
}

/** The newest version of each family: the last by id of the ones that are not superseded. */
function currentTypes(catalogue: Catalogue): readonly EquipmentType[] {
  const newest = new Map<string, EquipmentType>();
  for (const type of Object.values(catalogue.types).sort((a, b) => (a.revision < b.revision ? -1 : 1)))
    newest.set(type.family, type);
  return [...newest.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
}

function jobOf(type: EquipmentType, replaces: boolean): Job {
  const has = (code: FunctionCode) => type.functions.includes(code);
  if (has('gnss')) return replaces ? 'replace-navigator' : 'fit-navigator';
  if (has('transponder')) return replaces ? 'replace-transponder' : 'fit-transponder';
  if (has('elt')) return 'fit-elt';
  if (has('com')) return 'fit-com';
  return has('lateral-deviation') ? 'fit-indicator' : 'fit-other';
}

/** One action for all facts that one result misses. */
export function findOutAction(key: string, paths: readonly string[]): Action {
  return {
    id: `find-out ${paths.join(' ')}`,
    job: 'find-out',
    subjects: [key],
    change: null,
    changes: [],
    supposes: paths,
    assumes: ['turns-out-well'],
  };
}

/** Readings that are too old to carry a limit in hours: read again, with the hours that the last reading showed. */
export function readMeters({ dossier, at }: Situation): Action {
  const { definitions, readings } = dossier.meters;
  return action(
    'read-meters',
    [],
    'meter.read',
    definitions.flatMap(({ id, offset }): Change[] => {
      const reading = readings[id];
      return reading && at >= reading.asOf
        ? [
            {
              kind: 'meter.read',
              version: 1,
              meter: id,
              dial: reading.value - offset,
              asOf: at,
              by: 'whoever reads it',
            },
          ]
        : [];
    }),
    ['not-due-again'],
  );
}

function action(
  job: Job,
  subjects: readonly string[],
  change: string,
  changes: readonly Change[],
  assumes: readonly Assumption[] = [],
): Action {
  return { id: [job, ...subjects].join(' '), job, subjects, change, changes, supposes: [], assumes };
}
