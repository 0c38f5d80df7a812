import { openJoins } from '../graph/joins.js';
import { emptyWeightAfter } from '../calculations/mass.js';
import type { Catalogue, FunctionCode } from '../catalogue/type.js';
import type { Change } from '../changes/changes.js';
import { touchedBy, touchedByJoint } from '../changes/checks.js';
import type { Performed } from '../dossier/common.js';
import type { Dossier } from '../dossier/dossier.js';
import type { Mass } from '../dossier/installation.js';
import type { RecordKind, Touched } from '../dossier/status.js';
import { recordKind } from '../dossier/status.js';
import type { Facts } from '../graph/facts.js';
import { uncounted } from '../rules/mass-notes.js';
import type { CivilDate } from '../time/instant.js';
import type { Remedy } from '../verdict/result.js';
import type { Action, Situation } from './action.js';
import { action } from './action.js';
import { antennasFor, entry, grantsOf, load, mechanic, performedAt } from './deeds.js';
import { approvals, feeders, indicators, replacements } from './fittings.js';

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
  'link.disconnect': (subject, { dossier, catalogue, at }) =>
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
            touched: behindPanel(touchedByJoint(each, dossier.configuration.units, catalogue.types)),
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
        touched: [facts.units.get(unitId)?.functions.has('gnss') ? 'gnss' : 'nothing'],
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
  'mass.revise': (_, { dossier, at, facts }) => {
    const { mass } = dossier.configuration;
    return mass === null ? [] : [weightRevision(facts, mass, performedAt(dossier, at).date)];
  },
  'life-limit.end': (limitId) => [
    action(
      'replace-part',
      [limitId],
      'life-limit.end',
      [{ kind: 'life-limit.end', version: 1, limitId, reason: 'the part is replaced; its own limit is entered' }],
      ['data-and-parts-at-hand', 'not-due-again'],
    ),
  ],
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
  'defect.close': (defectId, { dossier, at, facts }) => [
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
          by: mechanic,
          performed: performedAt(dossier, at),
          touched: [...touchedByRepair(dossier.status.defects.find((each) => each.id === defectId)?.subject, facts)],
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
              noHazardBy: old?.noHazardBy ?? mechanic,
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
  'directive.set': (directiveId, { dossier, at, flight, facts }) => {
    const directive = dossier.status.directives.find((each) => each.id === directiveId);
    if (!directive) return [];
    const done = entry(dossier, at, 'directive-compliance', directiveId, flight.topFt);
    // How often it recurs nobody can suppose: without its interval it is good for the day of the flight.
    const day = { by: 'date', date: performedAt(dossier, at).date, meter: null, at: null } as const;
    const nextDue = directive.recurs === true && directive.interval === null ? day : null;
    const unit = facts.units.get(directive.subject);
    const on = unit ? { partNumber: unit.type?.partNumber ?? null, serial: unit.unit.serial } : {};
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
            directive: {
              ...directive,
              ...on,
              state: 'complied',
              recurs: directive.recurs ?? directive.interval !== null,
              method: directive.method ?? 'as the directive says',
              nextDue,
              recordId: done.record.id,
            },
          },
        ],
        ['passes-and-is-signed', 'not-due-again'],
      ),
    ];
  },
};

/** Joined on the day of its fitting a unit still stands open: what that touched was said with the unit. */
function touchedByJoining(
  join: Parameters<typeof touchedByJoint>[0],
  { date }: Performed,
  { configuration: { units } }: Dossier,
  { types }: Catalogue,
): Touched[] {
  const carried = touchedByJoint(join, units, types);
  const open = units.some(({ id, fitted }) => [join.fromUnit, join.toUnit].includes(id) && fitted?.date === date);
  return open ? carried : behindPanel(carried);
}

/** Ports are reached from behind. */
function behindPanel(touched: readonly Touched[]): Touched[] {
  return [...touched, 'behind-panel'];
}

/** A repair touches what the unit is part of; of anything else it is taken to touch nothing that wants a test. */
function touchedByRepair(subject: string | undefined, facts: Facts): readonly Touched[] {
  const unit = [...facts.units.values()].find(({ id }) => id === subject);
  const touched = unit ? touchedBy([...unit.functions]) : [];
  return touched.length === 0 ? ['nothing'] : touched;
}

/** By calculation where every change is on the record with its arm; else the aircraft is weighed, and what the scales will show is assumed to be as before. */
function weightRevision(facts: Facts, mass: Mass, date: CivilDate): Action {
  const items = mass.changesSince.flatMap(({ weightLb, armIn }) => (armIn === null ? [] : [{ weightLb, armIn }]));
  const calculated = items.length === mass.changesSince.length && uncounted(facts, mass).length === 0;
  const after = calculated
    ? emptyWeightAfter({ weightLb: mass.emptyWeightLb, armIn: mass.emptyArmIn }, items)
    : { weightLb: mass.emptyWeightLb, armIn: mass.emptyArmIn };
  return action(
    calculated ? 'revise-weight-record' : 'weigh',
    [],
    'mass.revise',
    [
      {
        kind: 'mass.revise',
        version: 1,
        mass: {
          ...mass,
          emptyWeightLb: after.weightLb,
          emptyArmIn: after.armIn,
          revisedOn: date,
          weighed: !calculated,
          equipmentListRevisedOn: date,
          changesSince: [],
        },
      },
    ],
    calculated ? [] : ['turns-out-well'],
  );
}

function entryActions(subject: string, situation: Situation): readonly Action[] {
  const [code, of = 'aircraft'] = subject.split(':');
  const kind = recordKind.options.find((each) => each === code);
  if (!kind) return [];
  const single = entryAction(kind, of, situation);
  return suite.includes(kind) ? [single, ...altitudeSuite(situation)] : [single];
}

function entryAction(kind: RecordKind, subject: string, { dossier, at, flight }: Situation): Action {
  return action(
    kind,
    subject === 'aircraft' ? [] : [subject],
    'record.add',
    [entry(dossier, at, kind, subject, flight.topFt ?? 0)],
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
  const made = tests.flatMap(([kind, subjects]) => subjects.map((each) => entryAction(kind, each, situation)));
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
        touched: touchedByJoining(each, performed, dossier, catalogue),
      })),
      ['data-and-parts-at-hand'],
    ),
  ];
}

function antennaActions(subject: string, { dossier, facts, at }: Situation): readonly Action[] {
  const kinds = antennasFor([...(facts.units.get(subject)?.functions ?? [])]);
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
