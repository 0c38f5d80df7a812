import { ruleBook } from '@tallywing/rules';
import { ruleOf } from '../aircraft/words.js';
import type { Clock } from '../common/clock.js';
import type { Database } from '../database/database.js';
import { readMoment } from '../fleet/ask.js';
import { openByRule } from '../fleet/findings.data.js';
import { authorise } from '../identity/access.js';
import type { Actor } from '../identity/access.js';
import { workedOf } from './worked.js';

/** The rules in force, and how often each bites now in the fleet that the person may see. */
export class RulesService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
  ) {}

  async ruleBook(actor: Actor | null) {
    authorise(actor, 'rules.read');
    const open = await this.openNow(actor);
    return ruleBook.map((rule) => ({ ...rule, open: open.get(rule.id) ?? 0 }));
  }

  async rule(actor: Actor | null, id: string) {
    authorise(actor, 'rules.read');
    const rule = ruleOf(id);
    if (!rule) return null;
    const open = await this.openNow(actor);
    return { entry: { ...rule, open: open.get(id) ?? 0 }, ...workedOf(rule) };
  }

  private async openNow(actor: Actor): Promise<Map<string, number>> {
    const moment = readMoment(this.clock, null, 0);
    return await this.database.withOrganisation(actor, (connection) => openByRule(connection, actor, moment));
  }
}
