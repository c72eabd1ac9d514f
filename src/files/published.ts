import * as z from 'zod/mini';
import { attemptSchema } from './attempt.ts';
import { backupSchema } from './backup.ts';
import { benchSchema } from './bench.ts';
import { calloutSchema } from './callout.ts';
import { courseworkSchema } from './coursework-schema.ts';
import { doubleFaultsSchema } from './double-faults.ts';
import { jobSchema } from './job.ts';
import { quizSchema } from './quiz.ts';
import { resultSchema } from './result.ts';
import { stageSchema } from './stage.ts';
import { systemSchema } from './system-schema.ts';

const schemas = new Map<string, z.core.$ZodType>([
  ['system', systemSchema],
  ['job', jobSchema],
  ['attempt', attemptSchema],
  ['bench', benchSchema],
  ['quiz', quizSchema],
  ['backup', backupSchema],
  ['callout', calloutSchema],
  ['double-faults', doubleFaultsSchema],
  ['coursework', courseworkSchema],
  ['result', resultSchema],
  ['stage', stageSchema],
]);

/** Names of the file formats whose JSON Schema is published. */
export const formatNames = (): string[] => [...schemas.keys()];

/** The JSON Schema (draft 2020-12) of a file format, made from the schema that its parser uses. Throws for another name. */
export function publishedSchema(format: string): object {
  const schema = schemas.get(format);
  if (!schema) throw new Error(`no file format "${format}"`);
  // As written, before defaults are filled in.
  return z.toJSONSchema(schema, { io: 'input' });
}
