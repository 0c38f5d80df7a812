import { apply, blankDossier, rulesVersion } from '@tallywing/rules';
import type { Change } from '@tallywing/rules';
import { contentHash } from '../common/canonical.js';
import type { Connection } from '../database/database.js';
import { AircraftData, dossierOf, typeIdsOf } from './aircraft.data.js';
import type { AircraftRow } from './aircraft.data.js';
import { differencesIn, writeDifferences } from './differences.data.js';
import type { Written } from './differences.data.js';
import { isStale } from '../fleet/board.data.js';
import { judge } from './judge.js';
import { isLaterVersion, stampOf } from './stamp.js';
import { noteEdges } from './notices.data.js';

/** What replaying the entries of one aircraft gave, beside what is stored. */
export interface Replayed {
  readonly aircraftId: string;
  readonly registration: string;
  readonly entries: number;
  /** The first entry whose dossier is not the one it had; null when all agree. */
  readonly firstDifference: {
    readonly entry: number;
    readonly kind: string;
    readonly stored: string;
    readonly replayed: string;
  } | null;
  /** The stored record itself is not what its last entry left. */
  readonly recordDiffers: boolean;
}

/** Replays every entry from the first and compares the hash after each. Writes nothing. */
export async function replayOne(connection: Connection, organisationId: string, row: AircraftRow): Promise<Replayed> {
  const data = new AircraftData(connection, organisationId);
  let dossier = blankDossier(row.id);
  let firstDifference: Replayed['firstDifference'] = null;
  let entries = 0;
  for (let after = 0; ;) {
    const page = await data.changesOf(row.id, after, 500);
    for (const entry of page) {
      dossier = apply(dossier, { kind: entry.kind, version: entry.version, ...entry.body } as unknown as Change);
      const replayed = contentHash(dossier);
      if (firstDifference === null && (replayed !== entry.dossier_hash_after || dossier.revision !== entry.seq)) {
        firstDifference = { entry: entry.seq, kind: entry.kind, stored: entry.dossier_hash_after, replayed };
      }
      entries += 1;
      after = entry.seq;
    }
    if (page.length < 500) break;
  }
  const recordDiffers =
    contentHash(dossierOf(row)) !== contentHash(dossier) || row.dossier_hash !== contentHash(dossier);
  return { aircraftId: row.id, registration: row.registration, entries, firstDifference, recordDiffers };
}

/** Read tables that are not what the record gives, by how many rows. */
export interface ReadTablesCompared {
  /** `waits`: judged with other rules, zones or flights, as a worker will mend. `newer`: by a later version of the program. */
  readonly state: 'compared' | 'waits' | 'newer';
  readonly differ: readonly { readonly table: string; readonly rows: number }[];
}

/** Judges the stored record as of the moment of its last judgement and compares with the read tables. Writes nothing. */
export async function compareReadTables(
  connection: Connection,
  organisationId: string,
  row: AircraftRow,
): Promise<ReadTablesCompared> {
  const data = new AircraftData(connection, organisationId);
  const profiles = await data.profiles();
  if (isLaterVersion(row.rules_version, rulesVersion)) return { state: 'newer', differ: [] };
  if (isStale(row, stampOf(profiles, await data.policies()))) return { state: 'waits', differ: [] };
  const dossier = dossierOf(row);
  const judged = judge(dossier, await data.catalogueFor(typeIdsOf(dossier)), profiles, row.judged_at);
  const found = await differencesIn(connection, organisationId, row.id, judged, row.judged_at);
  return {
    state: 'compared',
    differ: found.map(({ table, put, remove }) => ({ table: table.name, rows: Math.max(put.length, remove.length) })),
  };
}

/** Judges one aircraft anew from its stored record and brings its read tables and stamp up to date. The row must be locked. */
export async function judgeAgain(
  connection: Connection,
  organisationId: string,
  row: AircraftRow,
  now: Date,
): Promise<Written> {
  const data = new AircraftData(connection, organisationId);
  const dossier = dossierOf(row);
  const catalogue = await data.catalogueFor(typeIdsOf(dossier));
  const judged = judge(dossier, catalogue, await data.profiles(), now);
  await noteEdges(connection, organisationId, [row.id], now);
  await data.restamp(
    row.id,
    { ...judged.stamp, catalogue: catalogue.version, assessment: judged.shown.hash, windowsTo: judged.windowsTo },
    now,
  );
  await data.keepAssessment(row.id, row.revision, judged.shown, now);
  const written = await writeDifferences(connection, organisationId, row.id, judged, now);
  if (written.put + written.removed > 0) await data.addEvent('judged-again', row.id, now, { findings: judged.spans });
  return written;
}
