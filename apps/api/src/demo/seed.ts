import { RecordService } from '../aircraft/record.service.js';
import { Clock } from '../common/clock.js';
import type { Metrics } from '../common/metrics.js';
import type { Database } from '../database/database.js';
import type { Actor } from '../identity/access.js';
import { hashPassword } from '../identity/passwords.js';
import { demoAccounts } from './accounts.js';
import { bases } from './airframes.js';
import { demoTypeList } from './catalogue/all.js';
import { Days } from './days.js';
import { DemoData } from './demo.data.js';
import { secondFleet, shopFleet } from './fleet.js';
import type { Lived, Spec } from './life.js';
import { INTAKE_DAYS, live } from './life.js';
import { startingProfiles } from '../house/starting-profiles.js';

interface House {
  readonly organisationId: string;
  readonly operators: readonly { readonly id: string; readonly name: string }[];
  readonly fleet: readonly Spec[];
}

export const houses: readonly House[] = [
  {
    organisationId: 'wendle',
    operators: [
      { id: 'saltmarsh', name: 'Saltmarsh Flight School' },
      { id: 'coldbrook', name: 'Coldbrook Flying Club' },
      { id: 'ferrant', name: 'Ferrant Mesa owners' },
    ],
    fleet: shopFleet,
  },
  { organisationId: 'nethercray', operators: [{ id: 'cray-hire', name: 'Cray Hire' }], fleet: secondFleet },
];

/** Days before today on which the shop wrote things down; the last is yesterday. */
const writingDays = [INTAKE_DAYS, 14, 1] as const;

/**
 * Fills an empty database with the demo, through the service that records everybody's work, day by day as a shop would
 * have written it down. A start that was cut short is taken up again by the next one.
 * @returns how many aircraft the demo has when this call added any, else null
 */
export async function seedDemo(
  { database, metrics }: { readonly database: Database; readonly metrics: Metrics },
  now: Date,
  say: (line: string) => void = () => undefined,
): Promise<number | null> {
  const data = new DemoData(database);
  const present = await data.organisations();
  const marks = new Map(await Promise.all(present.map(async (id) => [id, await data.mark(id)] as const)));
  // Somebody works here already: their database is not ours to fill.
  if ([...marks.values()].some((mark) => mark === null)) return null;
  const unfinished = houses.filter(({ organisationId }) => !marks.get(organisationId)?.complete);
  if (unfinished.length === 0) return null;
  say('filling the demo, once');
  const passwordHashes = await hashedPasswords();
  let aircraft = 0;
  for (const house of unfinished) {
    const { organisationId } = house;
    const day = marks.get(organisationId)?.day ?? now.toISOString().slice(0, 10);
    if (!marks.has(organisationId)) await data.open(recordsOf(house, passwordHashes), day);
    await recordFleet(house, day, database, metrics);
    await data.close(organisationId, day);
    aircraft += house.fleet.length;
  }
  return aircraft;
}

async function recordFleet(house: House, day: string, database: Database, metrics: Metrics): Promise<void> {
  const days = new Days(day);
  const fleet = house.fleet.map((spec) => live(spec, days));
  const actor = technicianOf(house.organisationId);
  let written = '';
  for (const ago of writingDays) {
    const until = ago === writingDays.at(-1) ? day : days.ago(ago);
    const records = new RecordService(database, new FixedClock(`${days.ago(ago)}T22:30:00Z`), metrics);
    const requests = fleet.flatMap((each) => requestOf(each, written, until));
    if (requests.length > 0) await records.commitInOneTransaction(actor, requests);
    written = until;
  }
}

/** What was written down after one day, up to another. The key makes a repeated start harmless. */
function requestOf({ aircraftId, entries }: Lived, after: string, until: string) {
  const changes = entries.filter(({ on }) => on > after && on <= until).map(({ change }) => change);
  if (changes.length === 0) return [];
  const expectedRevision = entries.filter(({ on }) => on <= after).length;
  return [{ aircraftId, expectedRevision, key: `demo:${aircraftId}:${until}`, changes }];
}

function technicianOf(organisationId: string): Actor {
  const account =
    demoAccounts.find((each) => each.organisationId === organisationId && each.role === 'technician') ??
    demoAccounts.find((each) => each.organisationId === organisationId && each.role === 'manager');
  if (!account) throw new Error(`The demo has nobody to write things down at ${organisationId}.`);
  return { organisationId, memberId: memberIdOf(account.email), name: account.name, role: account.role };
}

function recordsOf(house: House, passwordHashes: ReadonlyMap<string, string>) {
  const accounts = demoAccounts.filter(({ organisationId }) => organisationId === house.organisationId);
  const used = new Set(house.fleet.map(({ base }) => base));
  return {
    organisationId: house.organisationId,
    name: accounts[0]?.organisation ?? house.organisationId,
    operators: house.operators,
    bases: [...used].map((key) => bases[key]),
    profiles: startingProfiles,
    types: demoTypeList,
    members: accounts.map(({ email, name, role, operatorId, certificate, password }) => ({
      id: memberIdOf(email),
      email,
      name,
      passwordHash: passwordHashes.get(password) ?? '',
      role,
      operatorId,
      certificate,
    })),
  };
}

async function hashedPasswords(): Promise<ReadonlyMap<string, string>> {
  const different = [...new Set(demoAccounts.map(({ password }) => password))];
  return new Map(await Promise.all(different.map(async (each) => [each, await hashPassword(each)] as const)));
}

function memberIdOf(email: string): string {
  return email.slice(0, email.indexOf('@'));
}

class FixedClock extends Clock {
  constructor(private readonly moment: string) {
    super();
  }
  override now(): Date {
    return new Date(this.moment);
  }
}
