import { parse } from 'yaml';
import type { z } from 'zod';

/**
 * YAML text read and checked against a schema.
 * @throws Error naming the file and every place that is wrong
 */
export function checked<T>(schema: z.ZodType<T>, yaml: string, file: string): T {
  let data: unknown;
  try {
    data = parse(yaml);
  } catch (error) {
    throw new Error(`${file}: not readable as YAML: ${(error as Error).message}`);
  }
  const result = schema.safeParse(data);
  if (result.success) return result.data;
  const wrong = result.error.issues.map(({ path, message }) => `${path.join('.') || 'file'}: ${message}`);
  throw new Error(`${file}: ${wrong.join('; ')}`);
}
