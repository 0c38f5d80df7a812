import { basename } from 'node:path';
import busboy from 'busboy';
import type { Request } from 'express';
import { AppError, badInput } from '../common/errors.js';
import type { UploadedFile } from './csv.js';
import type { Decision } from './planner.js';
import { importModes } from './report.js';
import type { ImportMode } from './report.js';

const MEGABYTE = 1_048_576;
/** CSV is read row by row into memory several times its size; records of aircraft in JSON are let go as they are read. */
export const uploadLimits = {
  files: 30,
  fileBytes: 8 * MEGABYTE,
  jsonBytes: 64 * MEGABYTE,
  allBytes: 96 * MEGABYTE,
} as const;
const longestDecision = MEGABYTE;

/**
 * Reads a multipart/form-data request: any number of files, the field `mode`, and the field `differences`: take, keep, or a JSON list
 * of `file:line` whose word is taken.
 * @throws AppError BAD_INPUT, TOO_LARGE
 */
export async function readUpload(
  request: Request,
): Promise<{ readonly mode: ImportMode; readonly files: readonly UploadedFile[]; readonly decision: Decision }> {
  if (!/^multipart\/form-data\b/i.test(request.headers['content-type'] ?? ''))
    throw badInput('files', 'Files come as multipart/form-data.', 'Send each file as a part with its name.');
  const files: UploadedFile[] = [];
  let mode = 'dry-run';
  let differences = '';
  let bytes = 0;
  await new Promise<void>((done, fail) => {
    const reader = busboy({
      headers: request.headers,
      defParamCharset: 'utf8',
      limits: { files: uploadLimits.files, fileSize: uploadLimits.jsonBytes, fields: 4, fieldSize: longestDecision },
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
          limit: limitWords(),
        }),
      );
    };
    reader.on('field', (name, value) => {
      if (name === 'mode') mode = value;
      if (name === 'differences') differences = value;
    });
    reader.on('file', (_field, stream, { filename }) => {
      const chunks: Buffer[] = [];
      let own = 0;
      stream.on('data', (chunk: Buffer) => {
        bytes += chunk.length;
        own += chunk.length;
        chunks.push(chunk);
        if (own > largest(filename ?? '') || bytes > uploadLimits.allBytes) tooLarge();
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
  return { mode: found, files, decision: readDecision(differences) };
}

/** Null: within the limits. @param files names and sizes */
export function tooLargeTogether(files: readonly UploadedFile[]): AppError | null {
  const all = files.reduce((sum, { bytes }) => sum + bytes.length, 0);
  const one = files.find(({ name, bytes }) => bytes.length > largest(name));
  if (files.length <= uploadLimits.files && all <= uploadLimits.allBytes && !one) return null;
  return new AppError({ code: 'TOO_LARGE', limit: `${one ? `${one.name}: ` : ''}${limitWords()}` });
}

/** @throws AppError BAD_INPUT */
export function readDecision(text: string): Decision {
  if (text === '') return null;
  if (text === 'take' || text === 'keep') return text;
  try {
    const listed: unknown = JSON.parse(text);
    if (Array.isArray(listed) && listed.every((each) => typeof each === 'string')) return new Set(listed);
  } catch {
    // Falls through: told below.
  }
  throw badInput('differences', 'This is no decision about differences.', 'Use take, keep, or a list of file:line.');
}

function largest(name: string): number {
  return /\.json$/i.test(name) ? uploadLimits.jsonBytes : uploadLimits.fileBytes;
}

export function limitWords(): string {
  const { files, fileBytes, jsonBytes, allBytes } = uploadLimits;
  return `${files} files, ${fileBytes / MEGABYTE} MB each (JSON ${jsonBytes / MEGABYTE} MB), ${allBytes / MEGABYTE} MB in all`;
}
