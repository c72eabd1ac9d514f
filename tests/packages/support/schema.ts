import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { validateXML } from 'xmllint-wasm';

/** A schema file: its name, and what it says. */
export interface Schema {
  readonly fileName: string;
  readonly contents: string;
}

/** A schema file of the project's, by its path from the root. */
export const schema = (path: string): Schema => ({
  fileName: path.split('/').at(-1) ?? path,
  contents: readFileSync(fileURLToPath(new URL(`../../../${path}`, import.meta.url)), 'utf8'),
});

/**
 * What a validator says against each document; nothing for a valid one. It is started once for all of them.
 * @param schemas the main one first, then those that it takes in
 */
export async function troubles(
  documents: readonly string[],
  [main, ...others]: readonly Schema[],
): Promise<string[][]> {
  if (!main) throw new Error('expected a schema');
  const xml = documents.map((contents, k) => ({ fileName: `${k}.xml`, contents }));
  const { valid, errors } = await validateXML({ xml, schema: [main], preload: others });
  const found = xml.map(({ fileName }) =>
    errors.filter(({ loc }) => loc?.fileName === fileName).map(({ message }) => message),
  );
  if (!valid && found.flat().length === 0) throw new Error(errors.map(({ message }) => message).join('\n'));
  return found;
}
