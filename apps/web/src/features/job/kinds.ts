import type { Catalogue, Dossier } from '@tallywing/rules';
import { codeWords, touchedBy } from '@tallywing/rules';

/** What a person can record, in the order of the bench. */
export interface KindForm {
  readonly kind: string;
  readonly title: string;
  /** Paths that are shown at once; the rest is under "More". Everything else that must be given is shown at once too. */
  readonly first: readonly string[];
  /** Paths that the form fills in itself. */
  readonly hidden?: readonly string[];
  readonly start?: (given: Start) => Readonly<Record<string, unknown>>;
}

export interface Start {
  readonly dossier: Dossier;
  readonly catalogue: Catalogue;
  /** Civil date at the base. */
  readonly today: string;
  /** UTC minute. */
  readonly now: string;
  /** UTC minute of the latest work in the plan; null where it holds none. */
  readonly workedAt: string | null;
  /** Who is recording. */
  readonly by: string;
}

/** With the time of day: two jobs of one day have no order without it, and a test counts only after the work it is for. */
const done = ({ today, now }: Start) => ({ date: today, at: now });
/** An entry made beside the work of this plan is of a later minute than that work. */
const doneAfter = ({ today, now, workedAt }: Start) => ({
  date: today,
  at: workedAt !== null && workedAt >= now ? minuteAfter(workedAt) : now,
});
const statement = ({ today, by }: Start) => ({ asOf: today, by });

export const groups: readonly { readonly title: string; readonly kinds: readonly KindForm[] }[] = [
  {
    title: 'Units and joints',
    kinds: [
      {
        kind: 'unit.install',
        title: 'Fit a unit',
        first: [
          'unit.typeId',
          'unit.name',
          'unit.serial',
          'unit.place',
          'unit.offsetIn',
          'unit.openingId',
          'unit.software',
          'unit.approval',
          'touched',
          'performed',
        ],
        hidden: ['unit.id', 'unit.fitted', 'unit.deactivated', 'unit.functions'],
        start: (given) => ({ performed: done(given), touched: ['behind-panel'] }),
      },
      {
        kind: 'unit.remove',
        title: 'Take a unit out',
        first: ['unitId', 'reason', 'touched', 'performed'],
        start: (given) => ({ performed: done(given), touched: ['behind-panel'] }),
      },
      {
        kind: 'link.connect',
        title: 'Join two ports',
        first: ['link.fromUnit', 'link.fromPort', 'link.toUnit', 'link.toPort', 'touched', 'performed'],
        hidden: ['link.id', 'link.fitted'],
        start: (given) => ({ performed: done(given), touched: ['behind-panel'] }),
      },
      {
        kind: 'link.disconnect',
        title: 'Part a joint',
        first: ['linkId', 'reason', 'touched', 'performed'],
        start: (given) => ({ performed: done(given), touched: ['behind-panel'] }),
      },
      {
        kind: 'antenna.fit',
        title: 'Fit an antenna',
        first: ['antenna.kind', 'antenna.units', 'antenna.approved', 'touched', 'performed'],
        hidden: ['antenna.id'],
        start: (given) => ({ performed: done(given) }),
      },
      {
        kind: 'antenna.remove',
        title: 'Take an antenna off',
        first: ['antennaId', 'reason', 'touched', 'performed'],
        start: (given) => ({ performed: done(given) }),
      },
      {
        kind: 'unit.amend',
        title: 'Complete what is known of a unit',
        first: ['unit.id', 'unit.typeId', 'unit.serial', 'sameUnit', 'reason'],
        hidden: ['unit.fitted', 'unit.deactivated'],
      },
      {
        kind: 'unit.deactivate',
        title: 'Deactivate a unit',
        first: ['unitId', 'placarded', 'recorded', 'performed'],
        start: (given) => ({ performed: done(given) }),
      },
      {
        kind: 'unit.reactivate',
        title: 'Reactivate a unit',
        first: ['unitId', 'touched', 'performed'],
        start: (given) => ({ performed: done(given) }),
      },
      {
        kind: 'work.done',
        title: 'Work that opened or touched something',
        first: ['what', 'touched', 'performed'],
        start: (given) => ({ performed: done(given) }),
      },
      {
        kind: 'touched.state',
        title: 'Say what work touched',
        first: ['obligationId', 'touched', 'by'],
        start: (given) => ({ by: statement(given) }),
      },
    ],
  },
  {
    title: 'Tests, entries, readings',
    kinds: [
      {
        kind: 'record.add',
        title: 'Record a test or an entry',
        first: [
          'record.kind',
          'record.subjects',
          'record.done',
          'record.outcome',
          'record.evidence',
          'record.entry',
          'record.agency',
          'record.instrument',
          'record.readings',
        ],
        hidden: ['record.id'],
        start: (given) => ({ record: { done: doneAfter(given), evidence: 'entry-seen' } }),
      },
      { kind: 'record.correct', title: 'Correct an entry', first: ['record.id', 'reason'] },
      {
        kind: 'meter.read',
        title: 'Read a meter',
        first: ['meter', 'dial', 'asOf', 'by'],
        start: ({ dossier, now, by }) => ({ meter: dossier.meters.timeInService ?? '', asOf: now, by }),
      },
      {
        kind: 'meter.replace',
        title: 'Replace a meter',
        first: ['meter', 'oldDial', 'newDial', 'at', 'by'],
        start: ({ now, by }) => ({ at: now, by }),
      },
      {
        kind: 'meter.correct',
        title: 'Correct a reading',
        first: ['meter', 'value', 'asOf', 'by', 'reason'],
        start: ({ now, by }) => ({ asOf: now, by }),
      },
      {
        kind: 'database.load',
        title: 'Load a database',
        first: [
          'load.unitId',
          'load.database',
          'load.slot',
          'load.cycle',
          'load.effective',
          'load.expires',
          'load.fromFlightDeck',
          'load.coverage',
          'load.notices',
          'load.loaded.date',
        ],
        start: (given) => ({ load: { database: 'navigation', slot: 'this', loaded: done(given) } }),
      },
      {
        kind: 'database.drop',
        title: 'Take a database off',
        first: ['unitId', 'database', 'slot'],
        start: () => ({ database: 'navigation', slot: 'this' }),
      },
    ],
  },
  {
    title: 'Defects and holds',
    kinds: [
      {
        kind: 'defect.raise',
        title: 'Report a defect',
        first: ['defect.subject', 'defect.kind', 'defect.text', 'defect.raised.date'],
        hidden: ['defect.id', 'defect.deferral'],
        start: (given) => ({ defect: { raised: done(given) } }),
      },
      {
        kind: 'defect.defer',
        title: 'Defer a defect',
        first: [
          'defectId',
          'deferral.route',
          'deferral.notRequired',
          'deferral.secured',
          'deferral.placarded',
          'deferral.recorded',
          'deferral.noHazardBy',
          'deferral.on',
        ],
        start: ({ today }) => ({ deferral: { on: today } }),
      },
      {
        kind: 'defect.close',
        title: 'Close a defect',
        first: ['defectId', 'how', 'touched', 'by', 'performed', 'entry'],
        start: (given) => ({ performed: done(given) }),
      },
      {
        kind: 'hold.place',
        title: 'Hold the aircraft',
        first: ['hold.reason', 'hold.by', 'hold.from', 'hold.until'],
        hidden: ['hold.id'],
        start: ({ now, by }) => ({ hold: { from: now, by } }),
      },
      { kind: 'hold.lift', title: 'Lift a hold', first: ['holdId', 'reason', 'at'], start: ({ now }) => ({ at: now }) },
    ],
  },
  {
    title: 'Papers',
    kinds: [
      {
        kind: 'supplement.set',
        title: 'Flight manual supplement',
        first: [
          'supplement.units',
          'supplement.document',
          'supplement.aboard',
          'supplement.currentDataRequired',
          'supplement.grants',
        ],
        hidden: ['supplement.id'],
      },
      {
        kind: 'placard.fit',
        title: 'Fit a placard',
        first: ['placard.kind', 'placard.unitId', 'placard.text', 'placard.inView'],
        hidden: ['placard.id'],
      },
      { kind: 'placard.remove', title: 'Take a placard off', first: ['placardId', 'reason'] },
      {
        kind: 'directive.set',
        title: 'Directive',
        first: [
          'directive.number',
          'directive.subject',
          'directive.state',
          'directive.reason',
          'directive.recurs',
          'directive.interval',
          'directive.nextDue',
        ],
        hidden: ['directive.id'],
      },
      {
        kind: 'adopt',
        title: 'Accept as found',
        first: ['units', 'links', 'by', 'approval.document', 'approval.grants'],
        hidden: ['approval.basis', 'approval.acceptedBy'],
        start: (given) => ({ by: statement(given), approval: { basis: 'as-found', acceptedBy: statement(given) } }),
      },
      { kind: 'paper.set', title: 'Paper aboard or on file', first: ['paper'], hidden: ['paper.id'] },
      { kind: 'pack.set', title: 'Document pack of an installation', first: ['pack'], hidden: ['pack.id'] },
      {
        kind: 'decision.record',
        title: 'Decision of a named person',
        first: ['decision'],
        hidden: ['decision.id'],
        start: ({ today }) => ({ decision: { on: today } }),
      },
      {
        kind: 'completeness.state',
        title: 'State that a list is complete',
        first: ['lists'],
        start: (given) => ({ lists: [{ list: 'equipment', stated: statement(given) }] }),
      },
    ],
  },
  {
    title: 'Limits and identity',
    kinds: [
      {
        kind: 'recurring.set',
        title: 'Recurring item',
        first: ['item.name', 'item.subject', 'item.parts'],
        hidden: ['item.id'],
      },
      { kind: 'recurring.end', title: 'End a recurring item', first: ['itemId', 'reason'] },
      {
        kind: 'life-limit.set',
        title: 'Life limit',
        first: ['limit.name', 'limit.subject', 'limit.life', 'limit.retireBy'],
        hidden: ['limit.id'],
      },
      { kind: 'life-limit.end', title: 'End a life limit', first: ['limitId', 'reason'] },
      { kind: 'identity.set', title: 'Transmitted identity', first: ['identity'] },
    ],
  },
  {
    title: 'Mass and electrics',
    kinds: [
      {
        kind: 'mass.note',
        title: 'Note a small change of weight',
        first: ['item'],
        start: ({ today }) => ({ item: { on: today } }),
      },
      {
        kind: 'mass.revise',
        title: 'New empty weight',
        first: [
          'mass.emptyWeightLb',
          'mass.emptyArmIn',
          'mass.revisedOn',
          'mass.weighed',
          'mass.equipmentListRevisedOn',
        ],
        hidden: ['mass.changesSince'],
        start: ({ today, dossier }) => ({
          mass: { ...dossier.configuration.mass, revisedOn: today, equipmentListRevisedOn: today, changesSince: [] },
        }),
      },
      {
        kind: 'electrical.set',
        title: 'Electrical system',
        first: ['electrical'],
        start: ({ dossier }) =>
          dossier.configuration.electrical ? { electrical: dossier.configuration.electrical } : {},
      },
      { kind: 'opening.set', title: 'Opening in the panel', first: ['opening'] },
    ],
  },
  {
    title: 'The aircraft itself',
    kinds: [
      {
        kind: 'aircraft.amend',
        title: 'Facts of the aircraft',
        first: ['aircraft.registration', 'reason', 'performed'],
        start: (given) => ({ aircraft: given.dossier.configuration.aircraft, performed: done(given) }),
      },
      {
        kind: 'authority.set',
        title: 'Kinds of operation allowed',
        first: ['authority'],
        start: ({ dossier }) => (dossier.configuration.authority ? { authority: dossier.configuration.authority } : {}),
      },
      { kind: 'equipment.state', title: 'Required equipment', first: ['items'] },
      { kind: 'static-system.set', title: 'Static system', first: ['system'] },
      { kind: 'meter.define', title: 'Define a meter', first: ['definition', 'standsForTimeInService'] },
      {
        kind: 'utilisation.set',
        title: 'Expected use',
        first: ['utilisation'],
        start: ({ dossier }) => ({ utilisation: dossier.meters.utilisation }),
      },
      { kind: 'aircraft.add', title: 'Add the aircraft', first: ['aircraft'] },
    ],
  },
];

const byKind = new Map(groups.flatMap((group) => group.kinds.map((form) => [form.kind, form] as const)));

/** A kind without words of its own here gets a plain form with every field. */
export function formOf(kind: string): KindForm {
  return byKind.get(kind) ?? { kind, title: codeWords(kind.replace('.', ' ')), first: [''] };
}

/** The groups to choose from, with what the core has and no group names at the end. */
export function groupsOf(kinds: readonly string[]): typeof groups {
  const others = kinds.filter((kind) => !byKind.has(kind)).map(formOf);
  return others.length === 0 ? groups : [...groups, { title: 'Other', kinds: others }];
}

/** Ids that the form makes up, so that nobody has to. */
const freshPaths: Readonly<Record<string, string>> = {
  'unit.install': 'unit.id',
  'link.connect': 'link.id',
  'antenna.fit': 'antenna.id',
  'placard.fit': 'placard.id',
  'supplement.set': 'supplement.id',
  'record.add': 'record.id',
  'defect.raise': 'defect.id',
  'hold.place': 'hold.id',
  'directive.set': 'directive.id',
  'recurring.set': 'item.id',
  'life-limit.set': 'limit.id',
  'paper.set': 'paper.id',
  'pack.set': 'pack.id',
  'decision.record': 'decision.id',
};

export function freshPathOf(kind: string): string | undefined {
  return freshPaths[kind];
}

/** What the work on a unit touches at least, beyond what is ticked already. */
export function touchedWith(
  touched: readonly string[],
  typeId: string | null,
  given: Pick<Start, 'catalogue'>,
): string[] {
  const type = typeId === null ? undefined : given.catalogue.types[typeId];
  return [...new Set([...touched, ...touchedBy(type?.functions ?? [])])];
}

function minuteAfter(instant: string): string {
  return `${new Date(Date.parse(instant) + 60_000).toISOString().slice(0, 16)}Z`;
}
