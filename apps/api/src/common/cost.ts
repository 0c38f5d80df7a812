import { HeaderMap } from '@apollo/server';
import type { ApolloServerPlugin } from '@apollo/server';
import { getNamedType, getNullableType, GraphQLError, isListType, isObjectType, Kind } from 'graphql';
import type {
  DocumentNode,
  FieldNode,
  FragmentDefinitionNode,
  GraphQLObjectType,
  GraphQLSchema,
  SelectionSetNode,
} from 'graphql';
import { badInput } from './errors.js';
import { limits } from './limits.js';

/** What a list without a page holds, where nobody can know before asking. */
const FEW = 5;

/** Fields behind which whole aircraft are judged, or searched through: in fields of an answer that take as long. */
const weights: Readonly<Record<string, number>> = {
  'Aircraft.wayBack': 4000,
  'Aircraft.line': 200,
  'Aircraft.reason': 200,
  'Aircraft.findOut': 400,
  'Aircraft.shown': 400,
  'Query.previewType': 20_000,
  'Query.movingTo': 20_000,
};

/** Refuses an operation whose answer would be longer than any screen's, before anything runs. */
export const boundedAnswer: ApolloServerPlugin = {
  requestDidStart: () =>
    Promise.resolve({
      didResolveOperation: ({ schema, document, operation, request }) => {
        const type = operation && schema.getRootType(operation.operation);
        const asked = { schema, fragments: fragmentsOf(document), variables: request.variables ?? {} };
        if (!operation || !type || costOf(operation.selectionSet, type, asked) <= limits.cost) return Promise.resolve();
        const told = badInput(
          'query',
          `The answer could hold more than ${limits.cost} fields.`,
          'Ask for a shorter page (first) or fewer fields, and go on from endCursor.',
        );
        throw new GraphQLError(told.message, {
          nodes: operation,
          originalError: told,
          extensions: { code: 'GRAPHQL_VALIDATION_FAILED', http: { status: 400, headers: new HeaderMap() } },
        });
      },
    }),
};

export interface Asked {
  readonly schema: GraphQLSchema;
  readonly fragments: ReadonlyMap<string, FragmentDefinitionNode>;
  readonly variables: Readonly<Record<string, unknown>>;
}

/** How many fields the answer may come to hold, pages taken as long as asked for; stops counting beyond the limit. */
export function costOf(set: SelectionSetNode, type: GraphQLObjectType, asked: Asked): number {
  let cost = 0;
  for (const selection of set.selections) {
    if (cost > limits.cost) return cost;
    if (selection.kind === Kind.FIELD) cost += costOfField(selection, type, asked);
    else if (selection.kind === Kind.INLINE_FRAGMENT) cost += costOf(selection.selectionSet, type, asked);
    else {
      const fragment = asked.fragments.get(selection.name.value);
      if (fragment) cost += costOf(fragment.selectionSet, type, asked);
    }
  }
  return cost;
}

function costOfField(node: FieldNode, type: GraphQLObjectType, asked: Asked): number {
  const field = type.getFields()[node.name.value];
  const own = weights[`${type.name}.${node.name.value}`] ?? 1;
  const inner = field && getNamedType(field.type);
  if (!field || !isObjectType(inner) || !node.selectionSet) return own;
  const paged = field.args.some(({ name }) => name === 'first');
  const rows = paged ? pageOf(node, asked) : isListType(getNullableType(field.type)) && !isEdges(inner) ? FEW : 1;
  return own + rows * costOf(node.selectionSet, inner, asked);
}

/** The edges of a page are as many as the page itself counts. */
const isEdges = (type: GraphQLObjectType): boolean => type.name.endsWith('Edge');

function pageOf(node: FieldNode, { variables }: Asked): number {
  const given = node.arguments?.find(({ name }) => name.value === 'first')?.value;
  const first =
    given?.kind === Kind.INT ? Number(given.value) : given?.kind === Kind.VARIABLE ? variables[given.name.value] : null;
  return typeof first === 'number' && first >= 0 ? Math.min(first, limits.page) : limits.usualPage;
}

export function fragmentsOf({ definitions }: DocumentNode): ReadonlyMap<string, FragmentDefinitionNode> {
  const fragments = definitions.filter((each) => each.kind === Kind.FRAGMENT_DEFINITION);
  return new Map(fragments.map((fragment) => [fragment.name.value, fragment]));
}
