import { gunzipSync } from 'node:zlib';
import {
  apply,
  blankDossier,
  correctableKinds,
  correctingKinds,
  correctionsAmong,
  dayOf,
  differencesOf,
  knownNow,
} from '@tallywing/rules';
import type { Dossier, Written } from '@tallywing/rules';
import { AircraftData, dossierOf, typeIdsOf } from '../aircraft/aircraft.data.js';
import type { AircraftRow } from '../aircraft/aircraft.data.js';
import type { Shown } from '../aircraft/judge.js';
import { ruleOf, splitKey, subjectName } from '../aircraft/words.js';
import { instantOf } from '../common/clock.js';
import type { Clock } from '../common/clock.js';
import { connectionOf, readPage } from '../common/connection.js';
import { AppError, badInput } from '../common/errors.js';
import type { Connection, Database } from '../database/database.js';
import { authorise } from '../identity/access.js';
import type { Actor } from '../identity/access.js';
import { certificateOf } from '../people/certificate.js';
import { answersNow, compareWithToday, findingsShown } from './compare.js';
import { changeOf, HistoryData } from './history.data.js';
import type { EntryRow, KeptRow, LogRow } from './history.data.js';
import { namesWithin } from './names.js';

const MINUTE = 60_000;

/** An entry, and the page it came with: what needs the record replayed is worked out once for the page. */
export type EntryNode = ReturnType<typeof entryNode>;

export interface Page {
  readonly aircraft: AircraftRow;
  readonly rows: readonly EntryRow[];
  changed?: ReturnType<HistoryService['changedOn']>;
  effects?: ReturnType<HistoryService['effectsOf']>;
}

export interface LookBackAsk {
  readonly at?: string | null;
  readonly entry?: number | null;
  readonly knowledge?: 'then' | 'now' | null;
}

/** The past of one aircraft: its entries, what each did, and the record as it stood. It reads, and writes nothing. */
export class HistoryService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
  ) {}

  /** Newest first; a page goes on with older entries. */
  async history(
    actor: Actor | null,
    aircraft: AircraftRow,
    ask: { readonly first?: number | null; readonly after?: string | null; readonly from?: number | null },
  ) {
    authorise(actor, 'aircraft.history');
    const page = readPage(ask.first, ask.after, ['number']);
    const before = page.after !== null ? Number(page.after[0]) : ask.from == null ? null : ask.from + 1;
    return await this.read(actor, aircraft, async (data) => {
      const rows = await data.entriesBefore(before, page.first + 1);
      const corrects = correctionsAmong(await data.correctable(correctableKinds, correctingKinds));
      const later = await data.laterChangesOf([...new Set(rows.map((row) => row.member_id))]);
      const shared: Page = { aircraft, rows };
      return connectionOf(
        page,
        rows,
        aircraft.revision,
        (row) => [String(row.seq)],
        (row) => entryNode(row, corrects, later, shared),
      );
    });
  }

  /** What each entry of a page changed, and the names of what it speaks of, from the records before and after it. */
  changed(actor: Actor | null, { page, number }: EntryNode) {
    page.changed ??= this.changedOn(actor, page);
    return page.changed.then((found) => found.get(number) ?? { differences: [], names: {} });
  }

  effect(actor: Actor | null, { page, number }: EntryNode) {
    page.effects ??= this.effectsOf(actor, page);
    return page.effects.then((found) => found.get(number) ?? null);
  }

  /** What was shown when an entry was made, as it was shown then: not what today's rules would say. */
  async shown(actor: Actor | null, aircraft: AircraftRow, entry: number) {
    authorise(actor, 'aircraft.history');
    const kept = await this.read(actor, aircraft, (data) => data.shownWith(entry));
    return kept === null ? null : { entry: kept.revision, at: instantOf(kept.created_at), body: unpacked(kept) };
  }

  /** @throws AppError BAD_INPUT for a moment to come, NOT_FOUND for an entry that is not there */
  async asItStood(actor: Actor | null, aircraft: AircraftRow, ask: LookBackAsk) {
    authorise(actor, 'aircraft.history');
    const now = instantOf(this.clock.now());
    if (ask.at != null && ask.at > now)
      throw badInput('at', 'This moment has not come yet.', 'Choose a moment up to now.');
    if (ask.entry != null && (ask.entry < 1 || ask.entry > aircraft.revision))
      throw new AppError({ code: 'NOT_FOUND', what: 'entry of this aircraft', field: 'entry' });
    return await this.read(actor, aircraft, async (data, aircraftData) => {
      const all = (await data.log(aircraft.revision)).map(writtenOf);
      const chosen = ask.entry == null ? undefined : all[ask.entry - 1];
      const at = chosen?.writtenAt ?? ask.at?.slice(0, 16).concat('Z') ?? now;
      // Work is recorded as a whole: nobody ever saw the record between two entries of it.
      const by = chosen
        ? all.filter(({ number, together }) => number <= chosen.number || together === chosen.together)
        : all.filter(({ writtenAt }) => writtenAt <= at);
      const known = knownNow(all, at, aircraft.configuration.aircraft.base.zone);
      const knowledge = ask.knowledge ?? 'then';
      const counted = knowledge === 'now' ? known.entries : by;
      if (counted.length === 0) return null;
      const dossier = replayed(aircraft.id, counted);
      const catalogue = await aircraftData.catalogueFor(typeIdsOf(dossier));
      const profiles = await aircraftData.profiles();
      const entry = by.at(-1)?.number ?? 0;
      const kept = chosen
        ? await data.shownWith(chosen.number)
        : await data.shownBefore(new Date(Date.parse(at) + MINUTE));
      const told = kept === null ? null : unpacked(kept);
      const judged = told === null ? dossier : replayed(aircraft.id, all.slice(0, told.of.revision));
      return {
        at,
        knowledge,
        entry,
        entries: counted.length,
        later: known.entries.flatMap(({ number }) => (number > entry ? [number] : [])),
        undated: knowledge === 'now' ? known.undated : 0,
        dossier,
        today: answersNow(dossier, catalogue, at, profiles),
        shown:
          told === null ? null : compareWithToday(told, judged, await aircraftData.catalogueFor(typeIdsOf(judged))),
      };
    });
  }

  private async changedOn(actor: Actor | null, { aircraft, rows }: Page) {
    authorise(actor, 'aircraft.history');
    return await this.read(actor, aircraft, async (data) => {
      const wanted = new Set(rows.map(({ seq }) => seq));
      const operators = Object.fromEntries((await data.operatorNames()).map(({ id, name }) => [id, name]));
      const found = new Map<number, Changed>();
      let before = blankDossier(aircraft.id);
      for (const row of await data.log(Math.max(0, ...wanted))) {
        const after = apply(before, changeOf(row));
        if (wanted.has(row.seq)) {
          const differences = differencesOf(before, after);
          found.set(row.seq, {
            differences,
            names: namesWithin([row.body, differences], before, after, operators),
          });
        }
        before = after;
      }
      return found;
    });
  }

  /** What the work said when it was recorded; its findings in the words kept with what was shown before and after it. */
  private async effectsOf(actor: Actor | null, { aircraft, rows }: Page) {
    authorise(actor, 'aircraft.history');
    return await this.read(actor, aircraft, async (data) => {
      const works = rows.flatMap(({ seq, answer }) => (answer !== null && answer.lastEntry === seq ? [answer] : []));
      const names = await data.profileNames();
      const stirred = works.filter(({ opened, closed }) => opened.length + closed.length > 0);
      const kept = await data.lastShown(stirred.flatMap((work) => [work.firstEntry - 1, work.lastEntry]));
      // Names for what was kept without them; a thing no longer on the aircraft has none.
      const dossier = dossierOf(aircraft);
      const shown = new Map(kept.map((row) => [row.revision, unpacked(row)]));
      const textsOf = (entry: number) => {
        const told = shown.get(entry);
        return new Map(told ? findingsShown(told, dossier).map((each) => [each.key, each]) : []);
      };
      return new Map(
        works.map((work) => {
          const after = textsOf(work.lastEntry);
          const before = textsOf(work.firstEntry - 1);
          return [
            work.lastEntry,
            {
              flights: work.verdicts.flatMap(({ profileId, was, is }) => {
                const flight = names.get(profileId);
                return flight === undefined ? [] : [{ flight, was, is }];
              }),
              opened: work.opened.map((key) => after.get(key) ?? unworded(key, dossier)),
              closed: work.closed.map((key) => before.get(key) ?? unworded(key, dossier)),
              rules: shown.get(work.lastEntry)?.of.rules ?? null,
            },
          ] as const;
        }),
      );
    });
  }

  private async read<T>(
    actor: Actor,
    aircraft: AircraftRow,
    work: (data: HistoryData, aircraftData: AircraftData) => Promise<T>,
  ): Promise<T> {
    return await this.database.withOrganisation(actor, (connection: Connection) =>
      work(
        new HistoryData(connection, actor.organisationId, aircraft.id),
        new AircraftData(connection, actor.organisationId),
      ),
    );
  }
}

interface Changed {
  readonly differences: ReturnType<typeof differencesOf>;
  readonly names: Readonly<Record<string, string>>;
}

function entryNode(
  row: EntryRow,
  corrects: ReadonlyMap<number, number>,
  later: Awaited<ReturnType<HistoryData['laterChangesOf']>>,
  page: Page,
) {
  const day = dayOf(changeOf(row));
  // The first later change that names a field says what it was until then.
  const asItWas = (field: string, now: unknown): unknown => {
    const change = later.find(
      (each) => each.member_id === row.member_id && each.at > row.recorded_at && field in each.before,
    );
    return change ? change.before[field] : now;
  };
  return {
    number: row.seq,
    kind: row.kind,
    recordedAt: instantOf(row.recorded_at),
    by: String(asItWas('name', row.member_name) ?? row.member_id),
    certificate: certificateOf(asItWas('certificate', row.certificate)),
    day: day?.date ?? null,
    dayAt: day?.at ?? null,
    job: row.job_title,
    takenInFrom: row.files,
    firstTogether: row.first_together,
    lastTogether: row.last_together,
    corrects: corrects.get(row.seq) ?? null,
    correctedBy: [...corrects].flatMap(([by, target]) => (target === row.seq ? [by] : [])),
    body: row.body,
    page,
  };
}

function writtenOf(row: LogRow): Written {
  return {
    number: row.seq,
    together: row.commit_key,
    writtenAt: instantOf(row.recorded_at),
    change: changeOf(row),
  };
}

function replayed(aircraftId: string, entries: readonly Written[]): Dossier {
  return entries.reduce((dossier, { change }) => apply(dossier, change), blankDossier(aircraftId));
}

function unpacked({ body }: KeptRow): Shown {
  return JSON.parse(gunzipSync(body).toString('utf8')) as Shown;
}

/** A finding whose words were not kept: what its rule asks. */
function unworded(key: string, dossier: Dossier) {
  const { ruleId, subject } = splitKey(key);
  return {
    key,
    ruleId,
    subject,
    subjectName: subjectName(dossier, subject),
    text: ruleOf(ruleId)?.asks ?? ruleId,
  };
}
