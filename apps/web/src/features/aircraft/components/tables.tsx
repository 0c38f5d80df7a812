import { codeWords, dateWords } from '@tallywing/rules';
import type { Dossier } from '@tallywing/rules';
import { clockNow } from '../../../trade/time.js';
import { dueWords, effectWords, oldReadingWords, subjectWords } from '../../../trade/words.js';
import { remedyWords } from '../../../trade/remedies.js';
import type { Names } from '@tallywing/rules';
import { StatusMark } from '../../../ui/status-mark.js';
import { DataTable, type Column } from '../../../ui/table.js';
import type { AircraftAnswer } from '../query.js';
import { ReasonOf } from './reason-of.js';

interface Asked {
  readonly at: string | null;
  readonly hoursAhead: number | null;
}
type Finding = AircraftAnswer['findings'][number];
type Due = AircraftAnswer['due'][number];
type Unit = Dossier['configuration']['units'][number];
type Link = Dossier['configuration']['links'][number];

export function FindingsTable({
  aircraft,
  asked,
  when,
  names,
}: {
  aircraft: AircraftAnswer;
  asked: Asked;
  when: (instant: string) => string;
  names: Names;
}) {
  const columns: readonly Column<Finding>[] = [
    {
      key: 'effect',
      head: 'Effect',
      sort: (finding) => gravity.indexOf(finding.effect),
      cell: (finding) => effectWords(finding.effect.toLowerCase().replace(/_/g, '-')),
    },
    {
      key: 'outcome',
      head: 'Judged',
      cell: (finding) => (
        <StatusMark status={finding.outcome === 'NOT_MET' ? 'no' : 'cannot-tell'} word={codeWords(finding.outcome)} />
      ),
    },
    {
      key: 'text',
      head: 'Finding',
      rowHead: true,
      cell: (finding) => (
        <ReasonOf aircraft={aircraft} resultKey={finding.key} text={finding.text} profile={null} asked={asked} />
      ),
    },
    { key: 'subject', head: 'Of', sort: subjectWords, cell: subjectWords },
    { key: 'opens', head: 'Open since', sort: (finding) => finding.opensAt, cell: (finding) => when(finding.opensAt) },
    {
      key: 'do',
      head: 'What to do',
      cell: (finding) =>
        finding.remedies.map((remedy) => <div key={remedy.change + remedy.kind}>{remedyWords(remedy, names)}</div>),
    },
  ];
  return (
    <DataTable
      caption="Open findings"
      captionHidden
      columns={columns}
      rows={aircraft.findings}
      rowKey={(finding) => finding.id}
      empty="No finding is open at this moment."
    />
  );
}

const gravity = ['STOPS_AIRCRAFT', 'STOPS_OPERATION', 'STOPS_RELEASE', 'RECORD', 'ADVICE'];

export function DueTable({
  due,
  meterName,
  when,
}: {
  due: readonly Due[];
  meterName: (id: string) => string;
  when: (instant: string) => string;
}) {
  const columns: readonly Column<Due>[] = [
    {
      key: 'what',
      head: 'What',
      rowHead: true,
      sort: dueWords,
      cell: dueWords,
    },
    {
      key: 'day',
      head: 'Last good day',
      sort: (item) => item.lastGoodDay ?? item.lapses,
      cell: (item) => dayWords(item, when),
    },
    { key: 'hours', head: 'Hours', sort: (item) => item.hoursLeft, cell: (item) => hoursOf(item, meterName) },
    { key: 'expected', head: 'Expected', sort: (item) => item.expected, cell: (item) => expectedWords(item, when) },
    { key: 'effect', head: 'If it lapses', cell: (item) => effectWords(item.effect.toLowerCase().replace(/_/g, '-')) },
  ];
  return (
    <DataTable
      caption="Due list"
      captionHidden
      columns={columns}
      rows={due}
      rowKey={(item) => item.id}
      sorted={{ key: 'expected', down: false }}
      empty="Nothing falls due by what is recorded."
    />
  );
}

function dayWords(item: Due, when: (instant: string) => string): string {
  if (item.lastGoodDay) return dateWords(item.lastGoodDay);
  return item.lapses ? `until ${when(item.lapses)}` : '';
}

function hoursOf(item: Due, meterName: (id: string) => string): string {
  if (item.at == null) return '';
  const left = item.hoursLeft == null ? 'left: cannot tell' : `${item.hoursLeft} h left`;
  return `at ${item.at} h on ${meterName(item.meter ?? '')}, ${left}${oldReadingWords(item, clockNow())}`;
}

function expectedWords(item: Due, when: (instant: string) => string): string {
  if (!item.expected) return '';
  return item.expected === item.projected ? `${when(item.expected)} (projected)` : when(item.expected);
}

export function UnitsTable({ dossier }: { dossier: Dossier }) {
  const columns: readonly Column<Unit>[] = [
    { key: 'name', head: 'Unit', rowHead: true, sort: (unit) => unit.name, cell: (unit) => unit.name },
    { key: 'serial', head: 'Serial', cell: (unit) => <span className="tw-mono">{unit.serial ?? 'not recorded'}</span> },
    {
      key: 'place',
      head: 'Place',
      sort: (unit) => unit.place,
      cell: (unit) => (unit.place ? codeWords(unit.place) : 'not recorded'),
    },
    { key: 'software', head: 'Software', cell: (unit) => unit.software ?? '' },
    { key: 'approval', head: 'Approved for', cell: approvalWords },
    {
      key: 'state',
      head: 'State',
      cell: (unit) => (unit.deactivated ? `deactivated ${dateWords(unit.deactivated.since.date)}` : 'in use'),
    },
  ];
  return (
    <DataTable
      caption="Units"
      columns={columns}
      rows={dossier.configuration.units}
      rowKey={(unit) => unit.id}
      empty="No unit is recorded."
    />
  );
}

function approvalWords(unit: Unit): string {
  if (!unit.approval) return 'no approval recorded';
  const { basis, grants } = unit.approval;
  return `${codeWords(basis)}: ${grants === null ? 'papers do not say' : grants.map(codeWords).join(', ') || 'nothing named'}`;
}

export function LinksTable({ dossier }: { dossier: Dossier }) {
  const name = (id: string) => dossier.configuration.units.find((unit) => unit.id === id)?.name ?? id;
  const columns: readonly Column<Link>[] = [
    {
      key: 'from',
      head: 'From',
      rowHead: true,
      sort: (link) => name(link.fromUnit),
      cell: (link) => `${name(link.fromUnit)}, ${link.fromPort}`,
    },
    {
      key: 'to',
      head: 'To',
      sort: (link) => name(link.toUnit),
      cell: (link) => `${name(link.toUnit)}, ${link.toPort}`,
    },
    {
      key: 'cover',
      head: 'Covered by',
      cell: (link) =>
        link.cover
          ? `${codeWords(link.cover.by)}${link.cover.document ? `, ${link.cover.document.title}` : ''}`
          : 'the approved pairs of the types, if any',
    },
  ];
  return (
    <DataTable
      caption="Joints"
      columns={columns}
      rows={dossier.configuration.links}
      rowKey={(link) => link.id}
      empty="No joint is recorded."
    />
  );
}

export function MetersTable({ meters, when }: { meters: AircraftAnswer['meters']; when: (instant: string) => string }) {
  const columns: readonly Column<AircraftAnswer['meters'][number]>[] = [
    {
      key: 'name',
      head: 'Meter',
      rowHead: true,
      cell: (meter) => (meter.timeInService ? `${meter.name} (stands for time in service)` : meter.name),
    },
    {
      key: 'hours',
      head: 'Reading',
      align: 'end',
      cell: (meter) => (meter.hours == null ? 'never read' : `${meter.hours} h`),
    },
    { key: 'asOf', head: 'Read', cell: (meter) => (meter.asOf ? when(meter.asOf) : '') },
  ];
  return (
    <DataTable
      caption="Meters"
      captionHidden
      columns={columns}
      rows={meters}
      rowKey={(meter) => meter.id}
      empty="No meter is defined."
    />
  );
}

export function DatabasesTable({
  databases,
  when,
}: {
  databases: AircraftAnswer['databases'];
  when: (instant: string) => string;
}) {
  const columns: readonly Column<AircraftAnswer['databases'][number]>[] = [
    { key: 'unit', head: 'Unit', rowHead: true, cell: (each) => each.unitName },
    {
      key: 'what',
      head: 'Database',
      cell: (each) => `${codeWords(each.database)}, ${each.slot === 'next' ? 'next cycle' : 'this cycle'}`,
    },
    { key: 'cycle', head: 'Cycle', cell: (each) => each.cycle ?? 'not recorded' },
    { key: 'from', head: 'Effective', cell: (each) => (each.effective ? when(each.effective) : '') },
    { key: 'to', head: 'Expires', cell: (each) => (each.expires ? when(each.expires) : '') },
  ];
  return (
    <DataTable
      caption="Databases"
      captionHidden
      columns={columns}
      rows={databases}
      rowKey={(each) => each.id}
      empty="No database is recorded as loaded."
    />
  );
}
