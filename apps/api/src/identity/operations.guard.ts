import { Injectable, RequestMethod } from '@nestjs/common';
import type { CanActivate, ExecutionContext } from '@nestjs/common';
import { METHOD_METADATA, PATH_METADATA } from '@nestjs/common/constants.js';
import { GqlExecutionContext } from '@nestjs/graphql';
import type { Request } from 'express';
import type { GraphQLResolveInfo } from 'graphql';
import { AppError } from '../common/errors.js';
import { authorise } from './access.js';
import type { Actor } from './access.js';
import { operations } from './operations.js';

/** Stands before every resolver of a root field and every route: what the table of operations does not name, nobody does. */
@Injectable()
export class OperationsGuard implements CanActivate {
  canActivate(context: ExecutionContext): boolean {
    const { name, actor } = context.getType<string>() === 'graphql' ? ofField(context) : ofRoute(context);
    const needed = operations[name];
    if (needed === undefined) throw new AppError({ code: 'FORBIDDEN', action: `${name}: no row in operations.ts` });
    if (needed !== 'anybody') authorise(actor, needed);
    return true;
  }
}

interface Asked {
  readonly name: string;
  readonly actor: Actor | null;
}

function ofField(context: ExecutionContext): Asked {
  const graphql = GqlExecutionContext.create(context);
  const { parentType, fieldName } = graphql.getInfo<GraphQLResolveInfo>();
  const { actor } = graphql.getContext<{ actor: Actor | null }>();
  return { name: `${parentType.name}.${fieldName}`, actor };
}

function ofRoute(context: ExecutionContext): Asked {
  const request = context.switchToHttp().getRequest<Request>();
  return {
    name: routeName(context.getClass(), context.getHandler()),
    actor: request.signedIn?.actor ?? null,
  };
}

/** `GET /imports/:id`, from what stands at the controller and its method. */
export function routeName(controller: object, handler: object): string {
  const method = RequestMethod[Reflect.getMetadata(METHOD_METADATA, handler) as RequestMethod];
  const path = [controller, handler]
    .map((place) => String(Reflect.getMetadata(PATH_METADATA, place) ?? ''))
    .flatMap((part) => part.split('/'))
    .filter((part) => part !== '');
  return `${method} /${path.join('/')}`;
}
