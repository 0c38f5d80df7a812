import { randomUUID } from 'node:crypto';
import { inShort, messageOf, policyAt } from '@tallywing/rules';
import type { Catalogue, Dossier } from '@tallywing/rules';
import type { Clock } from '../common/clock.js';
import { instantOf } from '../common/clock.js';
import { AppError, badInput } from '../common/errors.js';
import type { Database } from '../database/database.js';
import { authorise, mayDo } from '../identity/access.js';
import type { Actor } from '../identity/access.js';
import { AircraftData, dossierOf, typeIdsOf } from './aircraft.data.js';
import type { AircraftRow } from './aircraft.data.js';
import { checkedReason } from './holds.service.js';
import type { RecordService } from './record.service.js';
import type { Profile } from './stamp.js';
import { splitKey, wordsIn } from './words.js';

const LONGEST_DAYS = 366;
const DAY = 86_400_000;

interface GiveSaySo {
  readonly aircraftId: string;
  readonly key: string;
  readonly results: readonly string[];
  readonly reason: string;
  readonly until: string;
}

interface EndSaySo {
  readonly aircraftId: string;
  readonly key: string;
  readonly saySoId: string;
  readonly reason: string;
}

/** Who answers for a flight that rests on a source which the house doubts. */
export class SaySoService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly records: RecordService,
  ) {}

  async give(actor: Actor | null, input: GiveSaySo): Promise<string> {
    authorise(actor, 'source.say-so');
    const reason = checkedReason(input.reason, 'input.reason');
    const until = this.checkedEnd(input.until);
    const { aircraftId, key } = input;
    const results = [...new Set(input.results)];
    if (results.length === 0)
      throw badInput('input.results', 'A say-so is about something.', 'Name at least one result.');
    await this.records.act(actor, 'source.say-so', {
      aircraftId,
      key,
      content: { results, reason, until },
      changes: async ({ before, data, now }) => {
        const dossier = dossierOf(before);
        const catalogue = await data.catalogueFor(typeIdsOf(dossier));
        const from = instantOf(now);
        const asked = new Set(wantedOf(dossier, catalogue, await data.profiles(), from).map(({ result }) => result));
        const other = results.findIndex((result) => !asked.has(result));
        if (other >= 0)
          throw badInput(`input.results.${other}`, 'This wants no say-so now.', 'Look again at what wants one.');
        if (!mayGive(actor, dossier, catalogue, from))
          throw new AppError({ code: 'FORBIDDEN', action: 'source.say-so' });
        return results.map((result) => {
          const { ruleId: rule, subject } = splitKey(result);
          const id = `say-so-${randomUUID().slice(0, 13)}`;
          return { kind: 'say-so.give', version: 1, sayso: { id, rule, subject, by: actor.name, reason, from, until } };
        });
      },
    });
    return aircraftId;
  }

  async end(actor: Actor | null, input: EndSaySo): Promise<string> {
    authorise(actor, 'source.say-so');
    const reason = checkedReason(input.reason, 'input.reason');
    const { aircraftId, key, saySoId } = input;
    await this.records.act(actor, 'source.say-so', {
      aircraftId,
      key,
      content: { saySoId, reason },
      changes: ({ now }) => [{ kind: 'say-so.end', version: 1, saysoId: saySoId, at: instantOf(now), reason }],
    });
    return aircraftId;
  }

  async of(actor: Actor | null, row: AircraftRow) {
    authorise(actor, 'aircraft.read');
    const now = instantOf(this.clock.now());
    return [...(dossierOf(row).status.sayings ?? [])]
      .sort((a, b) => (a.from < b.from ? 1 : -1))
      .map(({ id, rule, subject, by, reason, from, until }) => ({
        id,
        result: `${rule}|${subject}`,
        by,
        reason,
        from,
        until,
        open: from <= now && now < until,
      }));
  }

  async wanted(actor: Actor | null, row: AircraftRow) {
    authorise(actor, 'aircraft.read');
    const dossier = dossierOf(row);
    const { catalogue, profiles } = await this.database.withOrganisation(actor, async (connection) => {
      const data = new AircraftData(connection, actor.organisationId);
      return { catalogue: await data.catalogueFor(typeIdsOf(dossier)), profiles: await data.profiles() };
    });
    const now = instantOf(this.clock.now());
    const may = mayGive(actor, dossier, catalogue, now);
    return wantedOf(dossier, catalogue, profiles, now).map((each) => ({ ...each, mayGive: may }));
  }

  private checkedEnd(until: string): string {
    const now = this.clock.now();
    const last = instantOf(new Date(now.getTime() + LONGEST_DAYS * DAY));
    if (until > instantOf(now) && until <= last) return until;
    throw badInput('input.until', 'A say-so ends after now and within a year.', 'Choose a day within that time.');
  }
}

function mayGive(actor: Actor, dossier: Dossier, catalogue: Catalogue, now: string): boolean {
  const { zone } = dossier.configuration.aircraft.base;
  const policy = policyAt(catalogue.policies, 'weak-source', now, zone);
  return mayDo(actor, 'source.say-so') && (policy?.body.by.includes(actor.role) ?? false);
}

/** Of the flights that the house asks about. */
function wantedOf(dossier: Dossier, catalogue: Catalogue, profiles: readonly Profile[], now: string) {
  if (catalogue.policies === undefined) return [];
  const { open } = inShort(
    dossier,
    catalogue,
    now,
    profiles.map(({ conditions }) => conditions),
  );
  const lost = new Set(open.map(({ key }) => key));
  const words = wordsIn(dossier);
  return open.flatMap((each) => {
    const { ruleId, outcome, data } = each;
    return ruleId === 'source-say-so' && outcome === 'cannot-tell' && !lost.has(String(data['result']))
      ? [{ result: String(data['result']), status: String(data['status']), text: messageOf(each, words) }]
      : [];
  });
}
