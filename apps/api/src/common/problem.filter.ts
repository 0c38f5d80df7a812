import { Catch, HttpException } from '@nestjs/common';
import type { ArgumentsHost, ExceptionFilter } from '@nestjs/common';
import type { Response } from 'express';
import { answerProblem } from '../identity/request.js';
import { toProblem } from './errors.js';
import type { AppLog } from './logging.js';
import { correlationId } from './logging.js';

/** Errors of plain routes are answered here; those of GraphQL go on to its error formatter, which logs and words them. */
@Catch()
export class ProblemFilter implements ExceptionFilter {
  constructor(private readonly log: AppLog) {}

  catch(error: unknown, host: ArgumentsHost): unknown {
    if (host.getType<string>() === 'graphql') return error;
    const response = host.switchToHttp().getResponse<Response>();
    const missing = error instanceof HttpException && error.getStatus() === 404;
    answerProblem(
      response,
      missing ? { code: 'NOT_FOUND', what: 'address' } : toProblem(error, correlationId(), this.log),
    );
    return undefined;
  }
}
