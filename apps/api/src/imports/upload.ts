import { basename } from 'node:path';
import busboy from 'busboy';
import type { Request } from 'express';
import { AppError, badInput } from '../common/errors.js';
import type { UploadedFile } from './csv.js';
import { importModes } from './report.js';
import type { ImportMode } from './report.js';

const MEGABYTE = 1_048_576;
export const uploadLimits = { files: 30, fileBytes: 8 * MEGABYTE, allBytes: 32 * MEGABYTE } as const;

/**
 * Reads a multipart/form-data request: any number of files and the field `mode`.
 * @throws AppError BAD_INPUT, TOO_LARGE
 */
export async function readUpload(
  request: Request,
): Promise<{ readonly mode: ImportMode; readonly files: readonly UploadedFile[] }> {
  if (!/^multipart\/form-data\b/i.test(request.headers['content-type'] ?? ''))
    throw badInput('files', 'Files come as multipart/form-data.', 'Send each file as a part with its name.');
  const files: UploadedFile[] = [];
  let mode = 'dry-run';
  let bytes = 0;
  await new Promise<void>((done, fail) => {
    const reader = busboy({
      headers: request.headers,
      defParamCharset: 'utf8',
      limits: { files: uploadLimits.files, fileSize: uploadLimits.fileBytes, fields: 4, fieldSize: 100 },
    });
    const refuse = (error: AppError) => {
      request.unpipe(reader);
      request.resume();
      fail(error);
    };
    const tooLarge = () => {
      refuse(
        new AppError({
          code: 'TOO_LARGE',
          limit: `${uploadLimits.files} files of ${uploadLimits.fileBytes / MEGABYTE} MB, ${uploadLimits.allBytes / MEGABYTE} MB in all`,
        }),
      );
    };
    reader.on('field', (name, value) => {
      if (name === 'mode') mode = value;
    });
    reader.on('file', (_field, stream, { filename }) => {
      const chunks: Buffer[] = [];
      stream.on('data', (chunk: Buffer) => {
        bytes += chunk.length;
        chunks.push(chunk);
        if (bytes > uploadLimits.allBytes) tooLarge();
      });
      stream.on('limit', tooLarge);
      stream.on('end', () => files.push({ name: basename(filename || 'file.csv'), bytes: Buffer.concat(chunks) }));
    });
    reader.on('filesLimit', tooLarge);
    reader.on('error', () => {
      refuse(badInput('files', 'The upload is broken.', 'Send it again.'));
    });
    reader.on('close', done);
    request.on('aborted', () => {
      fail(badInput('files', 'The upload was cut off.', 'Send it again.'));
    });
    request.pipe(reader);
  });
  const found = importModes.find((each) => each === mode);
  if (found === undefined) throw badInput('mode', `There is no mode ${mode}.`, `Use ${importModes.join(' or ')}.`);
  if (files.length === 0) throw badInput('files', 'No file was sent.', 'Send at least one CSV file.');
  const twice = files.find(({ name }, at) => files.findIndex((each) => each.name === name) !== at);
  if (twice) throw badInput('files', `Two files are called ${twice.name}.`, 'Give each a name of its own.');
  return { mode: found, files };
}
