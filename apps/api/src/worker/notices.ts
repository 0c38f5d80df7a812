import { AircraftData } from '../aircraft/aircraft.data.js';
import { lookedUntil, lookUntil, noteEdges, withEdge } from '../aircraft/notices.data.js';
import type { WorkerParts } from './duties.js';

/**
 * Notes what the passing of time alone changed in a house since it was last looked at, and lets its boards know. How far it was
 * looked at moves in the same transaction as the notes, and one worker at a time is at it: each edge is noted once, however
 * late, and none is left out. A board is right without this, since it asks for a moment; it needs it to know when to ask.
 */
export async function noticeLapses({ database, clock }: WorkerParts, organisationId: string): Promise<void> {
  await database.withOrganisation({ organisationId }, async (connection) => {
    const to = clock.now();
    const from = await lookedUntil(connection, organisationId, to);
    if (from === null || from >= to) return;
    const aircraft = await withEdge(connection, organisationId, from, to);
    if (aircraft.length > 0) {
      // Work that is being recorded on one of them comes first, and notes what it puts an end to.
      await new AircraftData(connection, organisationId).lock(aircraft);
      await noteEdges(connection, organisationId, aircraft, to);
      connection.houseChanged();
    }
    await lookUntil(connection, organisationId, to);
  });
}
