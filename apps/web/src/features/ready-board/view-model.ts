import { statusOfAnswer } from '../../trade/verdict.js';
import { rowsByWeek } from '../../trade/due-chart.js';
import { effectWords } from '../../trade/words.js';
import type { ChartData, ChartSeries } from '../../ui/chart-data.js';
import type { Status } from '../../ui/status-words.js';
import { countWords, listWords } from '../../ui/words.js';
import type { Around, BoardAnswer } from './query.js';

export interface Cell {
  readonly profileId: string;
  readonly status: Status;
  /** For a no: what stops it, and how much more does. For a yes: by which means. */
  readonly says: string;
  /** When the answer changes; empty where nothing known ends it. */
  readonly until: string;
  /** Anything but a text that was read behind a yes. */
  readonly weak: string | null;
}

export interface Row {
  readonly id: string;
  readonly registration: string;
  readonly model: string;
  readonly operator: string;
  readonly base: string;
  readonly cells: readonly Cell[];
}

/** Up to so many columns a yes names its means too; past that the reason, one click away, does. */
const profilesWithRoom = 4;

/** Rows of the board. `until` says in words of the base's own calendar how long something holds. */
export function rowsOf(board: BoardAnswer, until: (instant: string, zone: string) => string): Row[] {
  const room = board.profiles.length <= profilesWithRoom;
  return board.edges.map(({ node }) => ({
    id: node.aircraft.id,
    registration: node.aircraft.registration,
    model: `${node.aircraft.make} ${node.aircraft.model}`,
    operator: node.aircraft.operator?.name ?? 'no operator',
    base: node.aircraft.base.name,
    cells: node.verdicts.map((verdict) => cellOf(verdict, room, (instant) => until(instant, node.aircraft.base.zone))),
  }));
}

type Answer = BoardAnswer['edges'][number]['node']['verdicts'][number];

function cellOf(verdict: Answer, room: boolean, until: (instant: string) => string): Cell {
  const status = statusOfAnswer(verdict);
  return {
    profileId: verdict.profile.id,
    status,
    says: status === 'yes' && !room ? '' : saysOf(verdict, status),
    until: untilOf(verdict, until),
    weak: weakOf(verdict, status),
  };
}

function saysOf(verdict: Answer, status: Status): string {
  if (status === 'judged-again') return 'Rules or profiles have changed';
  if (status === 'yes')
    return verdict.by.length === 0 ? '' : `by ${listWords(verdict.by.map((means) => means.split('>').join(' on ')))}`;
  const [first, ...more] = verdict.because.map((because) => because.text);
  if (!first) return '';
  return more.length === 0 ? first : `${first} (and ${more.length} more)`;
}

/** How long a yes holds and how far it reaches; for any other answer only when it becomes another one by itself. */
function untilOf(verdict: Answer, until: (instant: string) => string): string {
  if (verdict.ready !== 'YES')
    return verdict.changesAt ? `changes after ${until(verdict.changesAt).replace(/^(through|until) /, '')}` : '';
  const parts = [
    ...(verdict.changesAt ? [until(verdict.changesAt)] : []),
    ...(verdict.hoursLeft == null ? [] : [`${verdict.hoursLeft} h left`]),
    ...(verdict.topFt == null ? [] : [`to ${verdict.topFt.toLocaleString('en-US')} ft`]),
  ];
  return parts.join(', ');
}

function weakOf(verdict: Answer, status: Status): string | null {
  const weak = verdict.weakestSource?.toLowerCase().replace(/_/g, '-');
  return status === 'yes' && weak && weak !== 'verified' ? weak : null;
}

const verdictSeries: readonly ChartSeries[] = [
  { key: 'yes', name: 'Yes', colour: 'var(--yes)', pattern: 'solid' },
  { key: 'cannotTell', name: 'Cannot tell', colour: 'var(--cannot)', pattern: 'dots' },
  { key: 'no', name: 'No', colour: 'var(--no)', pattern: 'lines' },
  { key: 'judgingAgain', name: 'Being judged again', colour: 'var(--again)', pattern: 'hollow' },
];

export function readinessChart(board: BoardAnswer): ChartData {
  const rows = board.counts.map(({ profile, yes, no, cannotTell, judgingAgain }) => ({
    key: profile.id,
    label: profile.name,
    values: { yes, no, cannotTell, judgingAgain },
  }));
  const best = [...rows].sort((a, b) => b.values.yes - a.values.yes);
  const [most, fewest] = [best[0], best[best.length - 1]];
  return {
    title: 'Ready aircraft by flight profile',
    summary:
      most && fewest
        ? `Of ${board.totalCount} aircraft: ${most.values.yes} for ${most.label}, down to ${fewest.values.yes} for ${fewest.label}.`
        : 'No flight profile is set.',
    rowsName: 'Flight profile',
    series: verdictSeries,
    rows,
  };
}

/* In the order of gravity, the gravest at the foot of the stack. */
const effectSeries: readonly ChartSeries[] = [
  { key: 'STOPS_AIRCRAFT', name: effectWords('stops-aircraft'), colour: 'var(--no)', pattern: 'solid' },
  { key: 'STOPS_OPERATION', name: effectWords('stops-operation'), colour: 'var(--series-6)', pattern: 'lines' },
  { key: 'STOPS_RELEASE', name: effectWords('stops-release'), colour: 'var(--series-2)', pattern: 'cross' },
  { key: 'RECORD', name: effectWords('record'), colour: 'var(--series-1)', pattern: 'dots' },
  { key: 'ADVICE', name: effectWords('advice'), colour: 'var(--series-5)', pattern: 'hollow' },
];

export function findingsChart(around: Around): ChartData {
  const weeks = rowsByWeek(around.openFindings, (each) => [each.effect, each.open]);
  const ahead = new Set(around.openFindings.filter((each) => each.ahead).map((each) => each.week));
  const rows = weeks.map((week) => ({ ...week, label: ahead.has(week.key) ? `${week.label} (ahead)` : week.label }));
  return {
    title: 'Open findings over time',
    summary: 'At the end of each week: past weeks as judged then, coming weeks as judged now if nothing is done.',
    rowsName: 'Week of',
    series: effectSeries,
    rows,
  };
}

/** One sentence: what changed since the last working day. */
export function newsOf(changes: Around['changesSince'], when: (instant: string) => string): string {
  const since = `Since ${when(changes.since)}: `;
  const gained = changes.verdicts.filter((each) => each.is === 'YES' && each.was !== 'YES');
  const lost = changes.verdicts.filter((each) => each.was === 'YES' && each.is !== 'YES');
  const lapsed = [...changes.lapsed, ...changes.byTime.filter((each) => each.text !== null || each.was === 'YES')];
  const returned = changes.byTime.filter((each) => each.is === 'YES');
  const parts = [
    ...(changes.recorded === 0
      ? []
      : [
          `work recorded ${countWords(changes.recorded, 'time')} on ${countWords(changes.aircraft.length, 'aircraft', 'aircraft')}`,
        ]),
    ...(gained.length === 0 ? [] : [`ready for more: ${registrations(gained)}`]),
    ...(lost.length === 0 ? [] : [`ready for less: ${registrations(lost)}`]),
    ...(lapsed.length === 0 ? [] : [`lapsed by the calendar: ${registrations(lapsed)}`]),
    ...(returned.length === 0 ? [] : [`ready for more by the calendar: ${registrations(returned)}`]),
  ];
  return parts.length === 0 ? `${since}nothing recorded and nothing lapsed.` : `${since}${parts.join('; ')}.`;
}

function registrations(entries: readonly { readonly aircraft: { readonly registration: string } }[]): string {
  return few([...new Set(entries.map((each) => each.aircraft.registration))]);
}

function few(items: readonly string[]): string {
  return items.length <= 4 ? listWords(items) : `${items.slice(0, 3).join(', ')} and ${items.length - 3} more`;
}
