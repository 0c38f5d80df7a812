import { Catch, HttpException } from '@nestjs/common';
import type { ArgumentsHost, ExceptionFilter } from '@nestjs/common';
import type { Request, Response } from 'express';
import type { AuditNotes } from '../audit/notes.js';
import { answerProblem } from '../identity/request.js';
import { toProblem } from './errors.js';
import type { Problem } from './errors.js';
import type { AppLog } from './logging.js';
import { correlationId } from './logging.js';

/** Errors of plain routes are answered here; those of GraphQL go on to its error formatter, which logs and words them. */
@Catch()
export class ProblemFilter implements ExceptionFilter {
  constructor(
    private readonly log: AppLog,
    private readonly notes: Pick<AuditNotes, 'refused'>,
  ) {}

  catch(error: unknown, host: ArgumentsHost): unknown {
    if (host.getType<string>() === 'graphql') return error;
    const response = host.switchToHttp().getResponse<Response>();
    const request = host.switchToHttp().getRequest<Request>();
    const missing = error instanceof HttpException && error.getStatus() === 404;
    const problem: Problem = missing
      ? { code: 'NOT_FOUND', what: 'address' }
      : toProblem(error, correlationId(), this.log);
    if (problem.code === 'FORBIDDEN' && request.signedIn)
      this.notes.refused(request.signedIn.actor, problem.action, `${request.method} ${request.path}`);
    answerProblem(response, problem);
    return undefined;
  }
}
