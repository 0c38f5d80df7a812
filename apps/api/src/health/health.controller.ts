import { Controller, Get, Inject, Res } from '@nestjs/common';
import type { Response } from 'express';
import { Metrics } from '../common/metrics.js';
import { HealthService } from './health.service.js';

@Controller()
export class HealthController {
  constructor(
    @Inject(HealthService) private readonly health: HealthService,
    @Inject(Metrics) private readonly metrics: Metrics,
  ) {}

  /** The process runs. Says nothing about the database: a restart would not mend that. */
  @Get('health/live')
  live(): { status: string } {
    return { status: 'live' };
  }

  /** Ready to answer: the database does, keeps organisations apart, has our tables, and room to write. */
  @Get('health/ready')
  async ready(@Res() response: Response): Promise<void> {
    const { because, remarks } = await this.health.readiness();
    const more = remarks.length > 0 ? { remarks } : {};
    if (because.length > 0) response.status(503).json({ status: 'not ready', because, ...more });
    else response.json({ status: 'ready', ...more });
  }

  @Get('metrics')
  async figures(@Res() response: Response): Promise<void> {
    response.type(this.metrics.registry.contentType).send(await this.health.figures());
  }
}
