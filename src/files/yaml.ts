import { parseDocument } from 'yaml';
import { FileError, quote } from './error.ts';
import { lineColumn, placeAt } from './place.ts';

/**
 * Data out of YAML text.
 * @throws FileError with the line and column where the text breaks
 */
export function parseYaml(text: string, file: string): unknown {
  try {
    const document = parseDocument(text, { prettyErrors: false });
    const [error] = document.errors;
    if (!error) return document.toJS({ reviver: refuseProto });
    const [offset] = error.pos;
    const line = text.slice(offset).split('\n')[0] ?? '';
    const said = error.message.split('\n')[0] ?? '';
    throw new FileError({
      file,
      place: lineColumn(text, offset),
      expected: `YAML (${said})`,
      found: quote(line),
    });
  } catch (error) {
    if (error instanceof FileError) throw error;
    // Too deep, or too many aliases of aliases.
    throw new FileError({
      file,
      place: placeAt([]),
      expected: 'YAML that can be read',
      found: quote(String(error)),
    });
  }
}

/** The validator would pass over a key of this name instead of refusing it. */
function refuseProto(key: unknown, value: unknown): unknown {
  if (key === '__proto__') throw new Error('no key is called __proto__');
  return value;
}
