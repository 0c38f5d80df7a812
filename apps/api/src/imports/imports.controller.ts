import { Controller, Get, HttpCode, Inject, Param, Post, Req, Res } from '@nestjs/common';
import type { Request, Response } from 'express';
import { instantOf } from '../common/clock.js';
import { authorise } from '../identity/access.js';
import type { ImportRow } from './imports.data.js';
import { ImportsService } from './imports.service.js';
import { readUpload } from './upload.js';

@Controller('imports')
export class ImportsController {
  constructor(@Inject(ImportsService) private readonly imports: ImportsService) {}

  /** Takes the files and answers at once; the import goes on by itself and is asked about by its address. */
  @Post()
  @HttpCode(202)
  async begin(@Req() request: Request, @Res({ passthrough: true }) response: Response): Promise<{ id: string }> {
    const actor = request.signedIn?.actor ?? null;
    // Before a byte of the files is read: who may not import sends none.
    authorise(actor, 'import.check');
    const { id } = await this.imports.start(actor, await readUpload(request));
    response.setHeader('location', `/imports/${id}`);
    return { id };
  }

  @Get(':id')
  async show(@Param('id') id: string, @Req() request: Request) {
    return plain(await this.imports.find(request.signedIn?.actor ?? null, id));
  }
}

function plain({ id, mode, state, progress, report, by, at }: ImportRow) {
  return { id, mode, state, progress, report, by, at: instantOf(at) };
}
