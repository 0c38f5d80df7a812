import { codeWords, lowerFirst } from '@tallywing/rules';
import type { Dossier } from '@tallywing/rules';
import { recordWords, sayer } from '../../../trade/entry-words.js';
import { unitWords } from '../../../trade/units.js';
import { hoursWords } from '../../../ui/words.js';

/** The record itself as it stood: what was fitted, what had been entered, what was open. */
export function RecordThen({ dossier, when }: { dossier: Dossier; when: (instant: string) => string }) {
  const { configuration, status, meters } = dossier;
  const named = [...configuration.units, ...configuration.staticSystems, ...status.recurring, ...status.lifeLimits];
  const say = sayer(Object.fromEntries(named.map(({ id, name }) => [id, name])), when);
  return (
    <div className="tw-look-back-part">
      <List
        title="Units"
        empty="No unit was recorded."
        lines={configuration.units.map((unit) => `${unitWords(unit)}${unit.deactivated ? ', deactivated' : ''}`)}
      />
      <List
        title="Entries of inspections and tests"
        empty="None was recorded."
        lines={status.records.map((record) => capital(recordWords(record, say)))}
      />
      <List
        title="Open defects"
        empty="None was recorded."
        lines={status.defects.map(
          ({ subject, text, deferral }) => `${capital(say.name(subject))}: “${text}”${deferral ? ', deferred' : ''}`,
        )}
      />
      <List
        title="Holds"
        empty="None."
        lines={status.holds.map(
          ({ reason, by, from, until }) =>
            `“${reason}”, by ${by}, from ${when(from)}${until === null ? '' : ` until ${when(until)}`}`,
        )}
      />
      <List
        title="Directives"
        empty="None was recorded."
        lines={status.directives.map(({ number, state }) => `${number}: ${lowerFirst(codeWords(state))}`)}
      />
      <List
        title="Meters"
        empty="No meter was defined."
        lines={meters.definitions.map(({ id, name }) => {
          const reading = meters.readings[id];
          return `${name}: ${reading ? `${hoursWords(reading.value)}, read ${when(reading.asOf)}` : 'never read'}`;
        })}
      />
      <List
        title="Databases"
        empty="None was loaded."
        lines={status.loads.map(
          ({ unitId, database, cycle, slot }) =>
            `${say.name(unitId)}: ${lowerFirst(codeWords(database))}${cycle ? `, cycle ${cycle}` : ''}${slot === 'next' ? ', the next one' : ''}`,
        )}
      />
    </div>
  );
}

function List({ title, lines, empty }: { title: string; lines: readonly string[]; empty: string }) {
  return (
    <section>
      <h3>
        {title} ({lines.length})
      </h3>
      {lines.length === 0 ? (
        <p className="tw-soft">{empty}</p>
      ) : (
        <ul>
          {lines.map((line, at) => (
            <li key={`${at} ${line}`}>{line}</li>
          ))}
        </ul>
      )}
    </section>
  );
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
