import { rules } from '../rules/registry.js';
import type { RuleMeta } from '../rules/rule.js';

/** Every rule in force: what it asks, whom it binds, its words and sources. */
export const ruleBook: readonly RuleMeta[] = rules.map((rule) => rule.meta);
