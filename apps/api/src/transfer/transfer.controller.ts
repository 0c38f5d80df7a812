import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { Controller, Get, Inject, Param, Req, Res } from '@nestjs/common';
import { aircraftFileSchema } from '@tallywing/rules';
import type { Request, Response } from 'express';
import { AppLog, correlationId } from '../common/logging.js';
import { authorise } from '../identity/access.js';
import type { OutgoingFile } from './transfer.service.js';
import { TransferService } from './transfer.service.js';

@Controller('exports')
export class TransferController {
  constructor(
    @Inject(TransferService) private readonly transfer: TransferService,
    @Inject(AppLog) private readonly log: AppLog,
  ) {}

  /** The form of the files, as docs/aircraft-records.schema.json. */
  @Get('schema')
  schema(@Req() request: Request) {
    authorise(request.signedIn?.actor ?? null, 'rules.read');
    return aircraftFileSchema();
  }

  @Get('house')
  async house(@Req() request: Request, @Res() response: Response): Promise<void> {
    await this.send(await this.transfer.house(request.signedIn?.actor ?? null), response);
  }

  @Get('aircraft/:id')
  async aircraft(@Param('id') id: string, @Req() request: Request, @Res() response: Response): Promise<void> {
    await this.send(await this.transfer.aircraft(request.signedIn?.actor ?? null, id), response);
  }

  private async send({ name, parts }: OutgoingFile, response: Response): Promise<void> {
    response.setHeader('content-type', 'application/json; charset=utf-8');
    response.setHeader('content-disposition', `attachment; filename="${name}"`);
    response.setHeader('cache-control', 'no-store');
    try {
      await pipeline(Readable.from(parts), response);
    } catch (error) {
      // The answer has begun: all that is left is to break it off, so that nobody takes half a file for a whole one.
      this.log.failure(correlationId(), error);
      response.destroy();
    }
  }
}
