import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { durationOf } from '../../src/ui/stage/webm.ts';
import { made, openStage, WHY, why } from './support/stage.ts';

test('A step is kept as an SVG that stands alone and carries its caption', async () => {
  const page = await openStage(WHY, { theme: 'dark' });
  await page.keyboard.press('4');
  await page.getByRole('button', { name: 'Pictures and video' }).click();
  const { name, bytes } = await made(page, 'SVG');
  expect(name).toBe('why-the-two-port-04.svg');
  const svg = bytes.toString('utf8');
  expect(svg).not.toMatch(/var\(|light-dark\(|class=|style=|href=|url\(http/);
  const read = await page.evaluate((text) => {
    const document = new DOMParser().parseFromString(text, 'image/svg+xml');
    const root = document.documentElement;
    return {
      broken: document.querySelector('parsererror')?.textContent ?? '',
      size: [root.getAttribute('width'), root.getAttribute('height')],
      fonts: [
        ...new Set([...document.querySelectorAll('text')].map((one) => one.getAttribute('font-family'))),
      ],
      words: [...document.querySelectorAll('text')].map((one) => one.textContent?.trim()).join(' '),
      description: root.querySelector('desc')?.textContent,
    };
  }, svg);
  expect(read.broken).toBe('');
  expect(read.size).toEqual(['1920', '1080']);
  for (const font of read.fonts) expect(font).toContain('sans-serif');
  expect(read.words).toContain(why.steps[3]?.says);
  expect(read.words).toContain('Two-port valve');
  expect(read.words).toContain('Cylinder calling');
  expect(read.description).toBe(why.steps[3]?.says);
});

/** The size of a PNG by its header (ISO/IEC 15948, 11.2.2), and how many colours a grid of its points has. */
async function lookAt(
  page: Page,
  bytes: Buffer,
): Promise<{ size: number[]; colours: number; caption: number }> {
  const size = [bytes.readUInt32BE(16), bytes.readUInt32BE(20)];
  const seen = await page.evaluate(async (text) => {
    const file = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
    const image = await createImageBitmap(new Blob([file], { type: 'image/png' }));
    const canvas = new OffscreenCanvas(960, 540);
    const context = canvas.getContext('2d') as OffscreenCanvasRenderingContext2D;
    context.drawImage(image, 0, 0, 960, 540);
    const { data } = context.getImageData(0, 0, 960, 540);
    const at = (x: number, y: number) => data.slice(4 * (960 * y + x), 4 * (960 * y + x) + 3).join(' ');
    const grid = new Set<string>();
    for (let x = 0; x < 960; x += 3) for (let y = 0; y < 540; y += 3) grid.add(at(x, y));
    let caption = 0;
    for (let x = 100; x < 860; x++) if (at(x, 500) !== at(5, 535)) caption++;
    return { colours: grid.size, caption };
  }, bytes.toString('base64'));
  return { size, ...seen };
}

test.each([
  ['1920 × 1080', [1920, 1080]],
  ['3840 × 2160', [3840, 2160]],
] as const)('A step is kept as a PNG of %s, with drawing and caption on it', async (label, size) => {
  const page = await openStage(WHY);
  await page.keyboard.press('4');
  await page.getByRole('button', { name: 'Pictures and video' }).click();
  await page.getByLabel('PNG size').selectOption({ label });
  const { bytes } = await made(page, 'PNG');
  const seen = await lookAt(page, bytes);
  expect(seen.size).toEqual(size);
  expect(seen.colours).toBeGreaterThan(40);
  expect(seen.caption).toBeGreaterThan(20);
});

test('All steps are kept as a zip file of pictures, one for each, none like another', async () => {
  const page = await openStage(WHY);
  await page.getByRole('button', { name: 'Pictures and video' }).click();
  const { bytes } = await made(page, 'SVG, zipped');
  const files = Object.entries(unzipSync(bytes));
  expect(files.map(([name]) => name)).toEqual(why.steps.map((_, k) => `why-the-two-port-0${k + 1}.svg`));
  files.forEach(([, file], k) => {
    expect(new TextDecoder().decode(file)).toContain(`<desc>${why.steps[k]?.says}</desc>`);
  });
  expect(new Set(files.map(([, file]) => Buffer.from(file).toString('base64'))).size).toBe(files.length);
});

test('The walk is kept as a WebM that a browser plays, as long as its steps', async () => {
  const page = await openStage(WHY);
  await page.getByRole('button', { name: 'Pictures and video' }).click();
  await page.getByLabel('Seconds for each step').fill('1');
  const { name, bytes } = await made(page, 'Record WebM');
  expect(name).toBe('why-the-two-port.webm');
  // EBML header (RFC 8794, 11.2.1) with the document type webm.
  expect(bytes.subarray(0, 4).toString('hex')).toBe('1a45dfa3');
  expect(bytes.subarray(0, 64).includes('webm')).toBe(true);
  const stated = durationOf(bytes) ?? 0;
  expect(stated / 1000).toBeGreaterThan(why.steps.length - 0.5);
  expect(stated / 1000).toBeLessThan(why.steps.length + 4);
  // A page without the site's policy, so that it may play what it is given.
  const plain = await page.context().newPage();
  const played = await plain.evaluate(async (text) => {
    const data = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
    const video = document.createElement('video');
    video.muted = true;
    video.src = URL.createObjectURL(new Blob([data], { type: 'video/webm' }));
    await new Promise((done, fail) => {
      video.onloadeddata = done;
      video.onerror = () => fail(new Error(video.error?.message));
    });
    const { duration, videoWidth, videoHeight } = video;
    video.currentTime = 1e6;
    await new Promise((done) => {
      video.onseeked = done;
    });
    return { duration, end: video.currentTime, size: [videoWidth, videoHeight] };
  }, bytes.toString('base64'));
  expect(played.size).toEqual([1920, 1080]);
  expect(played.duration).toBeCloseTo(stated / 1000, 0);
  expect(played.end).toBeGreaterThan(why.steps.length - 2);
}, 150_000);

test('A recording is stopped by whoever wants to', async () => {
  const page = await openStage(WHY);
  await page.getByRole('button', { name: 'Pictures and video' }).click();
  await page.getByRole('button', { name: 'Record WebM' }).click();
  await page.getByRole('button', { name: 'Stop' }).click();
  await page.getByText(/^Stopped\./).waitFor();
});
