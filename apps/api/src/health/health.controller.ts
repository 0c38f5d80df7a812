import { Controller, Get, Inject, Res } from '@nestjs/common';
import type { Response } from 'express';
import { Metrics } from '../common/metrics.js';
import { Database } from '../database/database.js';
import { probe } from '../database/probe.js';

@Controller()
export class HealthController {
  constructor(
    @Inject(Database) private readonly database: Database,
    @Inject(Metrics) private readonly metrics: Metrics,
  ) {}

  /** The process runs. Says nothing about the database: a restart would not mend that. */
  @Get('health/live')
  live(): { status: string } {
    return { status: 'live' };
  }

  /** Ready to answer: the database does, and keeps organisations apart. */
  @Get('health/ready')
  async ready(@Res() response: Response): Promise<void> {
    const wrong = await probe(this.database).catch(() => ['the database does not answer']);
    if (wrong.length > 0) response.status(503).json({ status: 'not ready', because: wrong });
    else response.json({ status: 'ready' });
  }

  @Get('metrics')
  async numbers(@Res() response: Response): Promise<void> {
    response.type(this.metrics.registry.contentType).send(await this.metrics.registry.metrics());
  }
}
