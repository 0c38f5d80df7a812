import { useQuery } from '@apollo/client/react';
import { useMemo, useRef, useState } from 'react';
import { useHouse, zoneOf } from '../../app/house.js';
import { ListBody } from '../../app/list-body.js';
import { NoAircraftYet } from '../../app/no-aircraft-yet.js';
import { useSession } from '../../app/session.js';
import { useMinute } from '../../app/use-minute.js';
import { useParamsState } from '../../app/use-params-state.js';
import { instantAt } from '../../trade/time.js';
import { Button } from '../../ui/button.js';
import { DateTimeField } from '../../ui/date-time-field.js';
import { FilterBar, Pick } from '../../ui/filter-bar.js';
import { Trouble } from '../../ui/states.js';
import { countWords } from '../../ui/words.js';
import { MeterTable } from './components/meter-table.js';
import { PasteBox } from './components/paste-box.js';
import { Report } from './components/report.js';
import { WorkSheet } from './components/work-sheet.js';
import { MeterSheetQuery } from './query.js';
import { ageOf, batchesOf, linesOf, type Batch, type Line } from './sheet.js';
import { useSheet } from './use-sheet.js';
import './meters.css';

/** The morning sheet: every meter with its last reading, and a place for the new one. */
export function MetersScreen() {
  const { viewer } = useSession();
  const house = useHouse();
  const [asked, ask] = useParamsState(['operator', 'base', 'age']);
  const [work, setWork] = useState<Line | null>(null);
  const [readAt, setReadAt] = useState('');
  const now = useMinute();
  const zone = zoneOf(house, asked.base);
  const asOf = readAt === '' ? now : (instantAt(readAt, zone) ?? now);
  const filter = { operatorId: asked.operator || null, baseId: asked.base || null };
  const { data, previousData, loading, error, fetchMore, refetch } = useQuery(MeterSheetQuery, {
    variables: { filter },
  });
  const answer = (data ?? previousData)?.meterSheet;
  const rows = useMemo(() => answer?.edges.map((edge) => edge.node) ?? [], [answer]);
  const sheet = useSheet(viewer.id);
  const batches = batchesOf(rows, sheet.entries, asOf, now, viewer.name);
  const all = linesOf(rows);
  // A line with something typed stays in sight, however old its last reading is.
  const lines = asked.age === '' ? all : all.filter((line) => wantsReading(line, now) || line.key in sheet.entries);
  const table = useRef<HTMLDivElement>(null);

  async function record() {
    await sheet.save(batches);
    table.current?.querySelector<HTMLElement>('[data-open="true"] input')?.focus();
  }

  return (
    <div className="tw-stack">
      <h1>Meters</h1>
      <FilterBar label="Which meters, and when they were read">
        <Pick
          label="Operator"
          value={asked.operator}
          onPick={(next) => ask({ operator: next })}
          options={house.operators}
        />
        <Pick label="Base" value={asked.base} onPick={(next) => ask({ base: next })} options={house.bases} />
        <Pick
          label="Last reading"
          value={asked.age}
          onPick={(next) => ask({ age: next })}
          options={[{ id: 'wanted', name: 'too old, or never read' }]}
          all="any age"
        />
        <DateTimeField label="Read at (empty: now)" value={readAt} zone={zone} onChange={setReadAt} />
      </FilterBar>
      {!sheet.kept && (
        <Trouble
          title="This device does not keep what you type."
          wayOut="Its storage is full or switched off: record the readings before you leave this page."
        />
      )}
      <ListBody
        what="the meters"
        answer={answer}
        loading={loading}
        error={error}
        onRetry={() => void refetch()}
        onMore={(after) => fetchMore({ variables: { after } })}
      >
        {({ totalCount, pageInfo }) =>
          totalCount === 0 && !Object.values(asked).some(Boolean) ? (
            <NoAircraftYet />
          ) : (
            <div className="tw-stack" ref={table}>
              {totalCount > 0 && <p className="tw-soft">{summaryOf(totalCount, all, now)}</p>}
              <PasteBox
                rows={rows}
                whole={!pageInfo.hasNextPage && filter.operatorId === null && filter.baseId === null}
                entries={sheet.entries}
                now={now}
                onFill={sheet.replace}
              />
              <Report reports={sheet.reports} />
              {work && (
                <WorkSheet
                  key={work.key}
                  row={rows.find(({ aircraft }) => aircraft.id === work.row.aircraft.id) ?? work.row}
                  meter={all.find(({ key }) => key === work.key)?.meter ?? null}
                  now={now}
                  by={viewer.name}
                  onClose={() => setWork(null)}
                />
              )}
              <MeterTable
                lines={lines}
                entries={sheet.entries}
                reports={sheet.reports}
                asOf={asOf}
                now={now}
                by={viewer.name}
                onType={sheet.type}
                onWork={setWork}
                onLast={() => table.current?.querySelector<HTMLElement>('.tw-meters-foot button')?.focus()}
              />
              <div className="tw-meters-foot tw-no-print">
                <Button
                  look="main"
                  busy={sheet.saving !== null}
                  disabled={batches.length === 0}
                  onClick={() => void record()}
                >
                  Record the readings
                </Button>
                <span role="status">{footWords(sheet.saving, batches, rows.length)}</span>
              </div>
            </div>
          )
        }
      </ListBody>
    </div>
  );
}

function summaryOf(aircraft: number, lines: readonly Line[], now: string): string {
  const ages = lines.flatMap(({ meter }) => (meter ? [ageOf(meter, now).state] : []));
  const count = (state: string) => ages.filter((each) => each === state).length;
  const parts = [
    `${countWords(ages.length, 'meter')} on ${countWords(aircraft, 'aircraft', 'aircraft')}`,
    `${count('old')} read too long ago`,
    `${count('behind')} not read with the others`,
    `${count('never')} never read`,
  ];
  return `${parts.filter((part) => !part.startsWith('0 ')).join('; ')}.`;
}

/** Its limits in hours count for nothing until it is read, or will not for long. */
function wantsReading({ meter }: Line, now: string): boolean {
  return meter === null || ageOf(meter, now).state !== 'good';
}

function footWords(saving: { done: number; total: number } | null, batches: readonly Batch[], shown: number): string {
  if (saving) return `Recording: ${saving.done} of ${countWords(saving.total, 'aircraft', 'aircraft')} done.`;
  if (shown === 0 || batches.length === 0) return 'Nothing typed yet. Enter leads to the next aircraft.';
  const readings = batches.reduce((sum, batch) => sum + batch.keys.length, 0);
  const waiting = batches.filter((batch) => batch.open.length > 0).length;
  const typed = `${countWords(readings, 'reading')} on ${countWords(batches.length, 'aircraft', 'aircraft')}`;
  return waiting === 0 ? `${typed}.` : `${typed}; ${countWords(waiting, 'aircraft waits', 'aircraft wait')} for you.`;
}
