import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

/**
 * The path of the Chromium to test with: `CHROMIUM` when it is set, else `chromium` on the PATH.
 * @throws when there is none
 */
export function findChromium(): string {
  const chosen = process.env.CHROMIUM;
  const folders = (process.env.PATH ?? '').split(delimiter);
  const found = (chosen ? [chosen] : folders.map((folder) => join(folder, 'chromium'))).find((path) => {
    try {
      accessSync(path, constants.X_OK);
      return true;
    } catch {
      return false;
    }
  });
  if (!found) throw new Error('There is no chromium on the PATH. Run tools/chromium.sh first.');
  return found;
}

/** No window, no calls home, and no way to any machine but this one. */
export const chromiumFlags: readonly string[] = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1',
];
