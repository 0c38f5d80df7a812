import { GraphQLError, Kind } from 'graphql';
import type { ASTVisitor, FragmentDefinitionNode, SelectionSetNode, ValidationContext } from 'graphql';

export const limits = {
  /** Levels of selections. The deepest screen query stays well below. */
  depth: 16,
  /** Fields of one operation, fragments counted each time they are used. */
  fields: 1500,
  /** Times one root field may be asked in one operation under other names. */
  rootAliases: 12,
  body: '1mb',
  bodyBytes: 1_048_576,
  page: 500,
  /** One message over a web socket, and how many subscriptions and sockets people may have open at once. */
  socketMessageBytes: 16_384,
  subscriptionsPerSocket: 4,
  socketsPerSession: 24,
} as const;

/** Refuses operations that ask for much more than any screen does, before anything runs. */
export function boundedOperation(context: ValidationContext): ASTVisitor {
  return {
    OperationDefinition(node) {
      const counts = { fields: 0, root: new Map<string, number>() };
      const deepest = measure(node.selectionSet, 1, context, counts, new Set());
      const refuse = (what: string): void => {
        context.reportError(new GraphQLError(`The operation ${what}. Ask for less at once.`, { nodes: node }));
      };
      if (deepest > limits.depth) refuse(`is nested more than ${limits.depth} levels`);
      if (counts.fields > limits.fields) refuse(`asks for more than ${limits.fields} fields`);
      for (const [field, times] of counts.root) {
        if (times > limits.rootAliases) refuse(`asks for ${field} more than ${limits.rootAliases} times`);
      }
    },
  };
}

function measure(
  set: SelectionSetNode,
  depth: number,
  context: ValidationContext,
  counts: { fields: number; root: Map<string, number> },
  open: ReadonlySet<FragmentDefinitionNode>,
): number {
  let deepest = depth;
  for (const selection of set.selections) {
    // Enough is enough: counting a maliciously spread query must not itself take long.
    if (counts.fields > limits.fields || deepest > limits.depth) return deepest;
    if (selection.kind === Kind.FIELD) {
      counts.fields += 1;
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
