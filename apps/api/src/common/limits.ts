import { GraphQLError, Kind } from 'graphql';
import type { ASTVisitor, FragmentDefinitionNode, SelectionSetNode, ValidationContext } from 'graphql';
import { badInput } from './errors.js';

export const limits = {
  /** Levels of selections. The deepest screen query stays well below. */
  depth: 16,
  /** Fields of one operation, fragments counted each time they are used. */
  fields: 1500,
  /** Times one root field may be asked in one operation under other names. */
  rootAliases: 12,
  /** Fields asked for under other names, anywhere in one operation. */
  aliases: 60,
  /** Words and signs of one request, read before anything else is known about it. */
  tokens: 10_000,
  body: '1mb',
  bodyBytes: 1_048_576,
  page: 500,
  /** Rows of a page of which nobody says how long it is to be. */
  usualPage: 100,
  /** Fields that an answer may come to hold, by `costOf`: the longest page of the board holds fewer. */
  cost: 120_000,
  /** One message over a web socket, and how many subscriptions and sockets people may have open at once. */
  socketMessageBytes: 16_384,
  subscriptionsPerSocket: 4,
  socketsPerSession: 24,
} as const;

/** Refuses operations that ask for much more than any screen does, before anything runs. */
export function boundedOperation(context: ValidationContext): ASTVisitor {
  return {
    OperationDefinition(node) {
      const counts: Counts = { fields: 0, aliases: 0, root: new Map() };
      const deepest = measure(node.selectionSet, 1, context, counts, new Set());
      const refuse = (what: string): void => {
        const told = badInput('query', `The operation ${what}.`, 'Ask for less at once, in several requests.');
        context.reportError(new GraphQLError(told.message, { nodes: node, originalError: told }));
      };
      if (deepest > limits.depth) refuse(`is nested more than ${limits.depth} levels`);
      if (counts.fields > limits.fields) refuse(`asks for more than ${limits.fields} fields`);
      if (counts.aliases > limits.aliases) refuse(`gives more than ${limits.aliases} fields another name`);
      for (const [field, times] of counts.root) {
        if (times > limits.rootAliases) refuse(`asks for ${field} more than ${limits.rootAliases} times`);
      }
    },
  };
}

interface Counts {
  fields: number;
  aliases: number;
  readonly root: Map<string, number>;
}

function measure(
  set: SelectionSetNode,
  depth: number,
  context: ValidationContext,
  counts: Counts,
  open: ReadonlySet<FragmentDefinitionNode>,
): number {
  let deepest = depth;
  for (const selection of set.selections) {
    // Enough is enough: counting a maliciously spread query must not itself take long.
    if (counts.fields > limits.fields || deepest > limits.depth) return deepest;
    if (selection.kind === Kind.FIELD) {
      counts.fields += 1;
      if (selection.alias) counts.aliases += 1;
      if (depth === 1) counts.root.set(selection.name.value, (counts.root.get(selection.name.value) ?? 0) + 1);
      if (selection.selectionSet)
        deepest = Math.max(deepest, measure(selection.selectionSet, depth + 1, context, counts, open));
    } else if (selection.kind === Kind.INLINE_FRAGMENT) {
      deepest = Math.max(deepest, measure(selection.selectionSet, depth, context, counts, open));
    } else {
      const fragment = context.getFragment(selection.name.value);
      // A fragment within itself is refused by the standard rules; here it only must not run for ever.
      if (fragment && !open.has(fragment)) {
        deepest = Math.max(
          deepest,
          measure(fragment.selectionSet, depth, context, counts, new Set([...open, fragment])),
        );
      }
    }
  }
  return deepest;
}
