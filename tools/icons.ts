import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { chromiumFlags, findChromium } from '../tests/e2e/support/chromium.ts';

/*
  Renders the icons of the installed site from public/icon.svg. Run it when the drawing changes:
    node tools/icons.ts
*/

const folder = join(fileURLToPath(new URL('..', import.meta.url)), 'public');
const drawing = readFileSync(join(folder, 'icon.svg'), 'utf8');

/**
 * The drawing for a mask: ground to the edges, and all that matters inside the middle four fifths, where every mask
 * leaves it (W3C, Web Application Manifest, "maskable" icons: a circle of 40 % of the width is safe).
 */
const maskable = drawing
  .replace('viewBox="0 0 64 64"', 'viewBox="-9 -9 82 82"')
  .replace(/<rect [^>]*\/>/, '<rect x="-9" y="-9" width="82" height="82" fill="#2c3a3e" />')
  .replace('M19 64V43', 'M19 73V43')
  .replace('V0"', 'V-9"');

const browser = await chromium.launch({ executablePath: findChromium(), args: [...chromiumFlags] });
const page = await browser.newPage();
for (const [name, size, svg] of [
  ['icon-192.png', 192, drawing],
  ['icon-512.png', 512, drawing],
  ['icon-maskable.png', 512, maskable],
] as const) {
  await page.setViewportSize({ width: size, height: size });
  await page.setContent(
    `<body style="margin:0">${svg.replace('<svg', `<svg width="${size}" height="${size}"`)}`,
  );
  writeFileSync(join(folder, name), await page.screenshot({ omitBackground: true }));
}
await browser.close();
