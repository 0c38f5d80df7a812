import { aircraftFileFormat, aircraftFileVersion } from '@tallywing/rules';
import type { AuditNotes } from '../audit/notes.js';
import type { Clock } from '../common/clock.js';
import { AppError } from '../common/errors.js';
import { authorise } from '../identity/access.js';
import type { Actor } from '../identity/access.js';
import type { TransferData } from './transfer.data.js';

/** A file on its way out: its name, and its text part by part, so that a whole house is never held at once. */
export interface OutgoingFile {
  readonly name: string;
  readonly parts: AsyncIterable<string>;
}

/** Aircraft with their whole history as files of the documented form. */
export class TransferService {
  constructor(
    private readonly data: TransferData,
    private readonly clock: Clock,
    private readonly notes: AuditNotes,
  ) {}

  /** @throws AppError NOT_FOUND where it does not exist for this person */
  async aircraft(actor: Actor | null, id: string): Promise<OutgoingFile> {
    authorise(actor, 'export.aircraft');
    const found = await this.data.aircraft(actor, id);
    if (!found) throw new AppError({ code: 'NOT_FOUND', what: 'aircraft' });
    await this.notes.note(actor, 'export', { what: found.registration, aircraft: 1 });
    return { name: `${found.registration.toLowerCase()}.json`, parts: this.write(actor, [id]) };
  }

  /** @throws AppError NOT_FOUND where the house has no aircraft yet */
  async house(actor: Actor | null): Promise<OutgoingFile> {
    authorise(actor, 'export.house');
    const ids = await this.data.ids(actor);
    if (ids.length === 0) throw new AppError({ code: 'NOT_FOUND', what: 'aircraft' });
    await this.notes.note(actor, 'export', { what: 'all aircraft', aircraft: ids.length });
    return { name: `${actor.organisationId}.json`, parts: this.write(actor, ids) };
  }

  /** Aircraft first, then what their entries name: whatever comes in meanwhile is named too. */
  private async *write(actor: Actor, ids: readonly string[]): AsyncGenerator<string> {
    const operators = new Set<string>();
    const types = new Set<string>();
    const head = {
      format: aircraftFileFormat,
      version: aircraftFileVersion,
      exportedAt: this.clock.now().toISOString(),
      house: await this.data.houseName(actor),
    };
    yield `${JSON.stringify(head, null, 1).slice(0, -2)},\n "aircraft": [`;
    let first = true;
    for (const id of ids) {
      const aircraft = await this.data.aircraft(actor, id);
      if (!aircraft) continue;
      for (const { change } of aircraft.entries) noteNames(change, operators, types);
      yield `${first ? '' : ','}\n${JSON.stringify(aircraft)}`;
      first = false;
    }
    yield `\n ],\n "operators": ${JSON.stringify(await this.data.operators(actor, [...operators]))}`;
    yield `,\n "types": ${JSON.stringify(await this.data.types(actor, [...types]))}\n}\n`;
  }
}

function noteNames(change: object, operators: Set<string>, types: Set<string>): void {
  const { aircraft, unit } = change as { aircraft?: { operatorId?: unknown }; unit?: { typeId?: unknown } };
  if (typeof aircraft?.operatorId === 'string') operators.add(aircraft.operatorId);
  if (typeof unit?.typeId === 'string') types.add(unit.typeId);
}
