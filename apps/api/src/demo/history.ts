import { touchedBy, touchedByJoint } from '@tallywing/rules';
import type { Change, ChangeOf } from '@tallywing/rules';
import { asBuiltOf, placeOfAntenna } from './build.js';
import { demoTypes } from './catalogue/all.js';
import type { Days } from './days.js';
import type { Fitted, Panel } from './panels.js';
import { grantsOf } from './panels.js';
import { mechanic, station } from './people.js';
import { noReadings } from './readings.js';

type Record = ChangeOf<'record.add'>['record'];
type Unit = ChangeOf<'unit.install'>['unit'];
/** A change without its version, which the demo always writes as 1. */
type Draft = { [C in Change as C['kind']]: Omit<C, 'version'> }[Change['kind']];

const typesById = Object.fromEntries(Object.values(demoTypes).map((each) => [each.id, each]));

/** A change and the day on which the shop wrote it down. */
export interface Dated {
  readonly on: string;
  readonly change: Change;
}

/** The recorded life of one aircraft, written down as a shop would: what was found at intake, then what happened. */
export class History {
  readonly entries: Dated[] = [];
  private page = 11;

  constructor(
    readonly days: Days,
    /** The day on which the shop took the aircraft on; nothing is written down before it. */
    readonly intake: string,
  ) {}

  /** @param performed the day of the work; it was written down then, or at intake when it is older */
  add(draft: Draft, performed: string = this.intake): this {
    const on = performed > this.intake ? performed : this.intake;
    this.entries.push({ on, change: { ...draft, version: 1 } as Change });
    return this;
  }

  record(kind: Record['kind'], subjects: readonly string[], date: string, more: Partial<Record> = {}): this {
    this.page += 1;
    const record: Record = {
      id: `${kind}:${subjects[0]}:${date}`,
      kind,
      subjects: [...subjects],
      done: { date, at: `${date}T17:00Z` },
      meters: [],
      outcome: 'passed',
      enRoute: null,
      dueAt: null,
      evidence: 'entry-seen',
      entry: { book: 'Aircraft log 3', page: String(this.page) },
      agency: mechanic,
      secondPerson: null,
      instrument: null,
      document: null,
      testedToFt: null,
      marked: kind === 'altimeter-test' ? true : null,
      place: null,
      expires: null,
      readings: null,
      note: kind === 'release-entry' ? 'Fitted, joined and checked by the approved data named on the form.' : null,
      ...more,
    };
    return this.add({ kind: 'record.add', record }, date);
  }

  /** A bench or ramp test by the shop's own station, with its instrument in calibration. */
  test(
    kind: Record['kind'],
    subjects: readonly string[],
    date: string,
    readings: Partial<NonNullable<Record['readings']>>,
    more: Partial<Record> = {},
  ): this {
    return this.record(kind, subjects, date, {
      agency: station,
      instrument: { serial: 'WA-TS-07', calibratedUntil: this.days.ago(-200) },
      readings: { ...noReadings, ...readings },
      ...more,
    });
  }

  install(fitted: Fitted, date: string, more: Partial<Unit> = {}): this {
    const type = demoTypes[fitted.type];
    return this.add(
      {
        kind: 'unit.install',
        unit: {
          id: fitted.id,
          name: type.name,
          typeId: type.id,
          functions: [],
          serial: serialOf(fitted.id, date),
          openingId: fitted.opening,
          place: fitted.place,
          software: fitted.type === 'navigatorLpv' || fitted.type === 'navigatorAll' ? '3.1' : null,
          offsetIn: fitted.place === 'pilot-panel' ? 5.5 : fitted.place === 'centre-stack' ? 11 : null,
          options: fitted.options ?? [],
          approval: approvalOf(fitted, date),
          manufactured: yearBefore(date),
          fitted: null,
          deactivated: null,
          massLb: type.massLb,
          armIn: fitted.place === 'remote' ? 112 : 62,
          asBuilt: asBuiltOf(type, fitted, date),
          notes: null,
          ...more,
        },
        performed: { date, at: `${date}T15:00Z` },
        touched: [
          ...touchedBy(type.functions),
          ...(fitted.basis === 'type-certificate' ? [] : (['behind-panel', 'electrical'] as const)),
        ],
        mass: null,
      },
      date,
    );
  }

  join([from, fromPort, to, toPort, covered]: Panel['joints'][number], date: string): this {
    return this.add(
      {
        kind: 'link.connect',
        link: {
          id: linkId(from, fromPort, to, toPort),
          fromUnit: from,
          fromPort,
          toUnit: to,
          toPort,
          cover: covered
            ? {
                by: 'installation-approval',
                document: { title: `Interconnect drawing ${from}-${to}`, revision: 'A', date },
                acceptedBy: null,
              }
            : null,
          fitted: null,
        },
        performed: { date, at: `${date}T15:30Z` },
        touched: orNothing(touchedByJoint({ fromUnit: from, fromPort, toUnit: to, toPort }, this.units(), typesById)),
      },
      date,
    );
  }

  antenna([id, kind, units]: Panel['antennas'][number], date: string): this {
    return this.add(
      {
        kind: 'antenna.fit',
        antenna: { id, kind, units: [...units], approved: true, ...placeOfAntenna[kind] },
        performed: { date, at: `${date}T15:40Z` },
        touched: ['nothing'],
      },
      date,
    );
  }

  supplement(unitId: string, date: string, aboard: boolean | null = true): this {
    const grants = grantsOfUnit(this, unitId);
    return this.add(
      {
        kind: 'supplement.set',
        supplement: {
          id: `afms-${unitId}`,
          units: [unitId],
          document: { title: `Flight manual supplement for ${unitId}`, revision: '1', date },
          aboard,
          currentDataRequired: true,
          grants,
        },
      },
      date,
    );
  }

  load(
    unitId: string,
    cycle: { id: string; effective: string; expires: string },
    slot: 'this' | 'next',
    on: string,
  ): this {
    return this.add(
      {
        kind: 'database.load',
        load: {
          unitId,
          database: 'navigation',
          slot,
          cycle: cycle.id,
          effective: cycle.effective,
          expires: cycle.expires,
          loaded: { date: on, at: `${on}T14:00Z` },
          fromFlightDeck: true,
          coverage: null,
          notices: [],
        },
      },
      on,
    );
  }

  private units(): readonly Unit[] {
    return this.entries.flatMap(({ change }) => (change.kind === 'unit.install' ? [change.unit] : []));
  }

  typeId(type: keyof typeof demoTypes): string {
    return demoTypes[type].id;
  }

  /** In the order in which they were written down; what was written on one day keeps its order. */
  inOrder(): readonly Dated[] {
    return this.entries
      .map((entry, n) => ({ entry, n }))
      .sort((a, b) => (a.entry.on === b.entry.on ? a.n - b.n : a.entry.on < b.entry.on ? -1 : 1))
      .map(({ entry }) => entry);
  }
}

export function linkId(from: string, fromPort: string, to: string, toPort: string): string {
  return `${from}.${fromPort}>${to}.${toPort}`.replaceAll(' ', '-');
}

function grantsOfUnit(history: History, unitId: string) {
  for (const { change } of history.entries) {
    if (change.kind === 'unit.install' && change.unit.id === unitId) return change.unit.approval?.grants ?? null;
  }
  return null;
}

function approvalOf(fitted: Fitted, date: string): NonNullable<Unit['approval']> {
  const titles = {
    'type-certificate': 'Type design equipment list',
    stc: 'Supplemental type certificate TW-0711',
    'stc-model-list': 'Supplemental type certificate TW-0718 with model list',
    'field-approval': 'Major alteration form with field approval',
    'minor-alteration': 'Shop drawing, minor alteration',
    'as-found': 'Intake survey',
  } as const;
  return {
    basis: fitted.basis,
    document: { title: titles[fitted.basis], revision: 'B', date: yearBefore(date) },
    approvedOn: yearBefore(date),
    releasedOn: date,
    permission: fitted.basis === 'stc' || fitted.basis === 'stc-model-list' ? true : null,
    modelListed: fitted.basis === 'stc-model-list' ? true : null,
    grants: [...(grantsOf[fitted.type] ?? [])],
    acceptedBy: null,
  };
}

function yearBefore(date: string): string {
  return `${Number(date.slice(0, 4)) - 1}-${date.slice(5, 7)}-15`;
}

function serialOf(id: string, date: string): string {
  return `${id.toUpperCase()}-${date.slice(2, 4)}${date.slice(5, 7)}${date.slice(8, 10)}`;
}

/** The panel lay open for the units: what a joint touched beside what it carries was said with them. */
function orNothing(touched: ReturnType<typeof touchedByJoint>): ReturnType<typeof touchedByJoint> {
  return touched.length === 0 ? ['nothing'] : touched;
}
