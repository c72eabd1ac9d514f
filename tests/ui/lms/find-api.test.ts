import { expect, test } from 'vitest';
import { findApi } from '../../../src/ui/lms/find-api.ts';

type Window = Record<string, unknown>;
const api = { LMSInitialize: () => 'true' };

/** Windows one in another, the first one outermost. */
function nested(...windows: Window[]): never {
  windows.forEach((window, k) => {
    window.parent ??= windows[k - 1] ?? window;
  });
  return windows.at(-1) as never;
}

test('it is found in the window itself, in one around it, and in the one that opened it', () => {
  expect(findApi(nested({ API: api }), 'API')).toBe(api);
  expect(findApi(nested({ API: api }, {}, {}), 'API')).toBe(api);
  const opener = nested({ API: api }, {});
  expect(findApi(nested({ opener }), 'API')).toBe(api);
  expect(findApi(nested({ opener }, {}), 'API')).toBe(api);
  expect(findApi(nested({}, {}), 'API')).toBeUndefined();
});

test('another site’s window on the way throws when it is read, and the search goes on above it', () => {
  const foreign = (): Window => {
    const window: Window = {};
    for (const name of ['API', 'opener'])
      Object.defineProperty(window, name, {
        get: () => {
          throw new DOMException('Blocked a frame', 'SecurityError');
        },
      });
    return window;
  };
  expect(findApi(nested({ API: api }, foreign(), {}), 'API')).toBe(api);
  expect(findApi(nested(foreign(), {}), 'API')).toBeUndefined();
});

test('windows without an end are given up', () => {
  const endless = (): Window =>
    new Proxy({}, { get: (_, name) => (name === 'parent' ? endless() : undefined) });
  expect(findApi(endless() as never, 'API')).toBeUndefined();
});
