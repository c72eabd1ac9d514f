import { readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import type { Wire } from '../../src/engine/model/wiring.ts';
import { applyMistake } from '../../src/files/mistake.ts';
import { systemPages } from '../../src/files/site/systems.ts';
import { seeNoViolation } from './support/axe.ts';
import { dragWire } from './support/board.ts';
import { type Opening, openPage } from './support/browser.ts';
import { LAPTOP, PHONE } from './support/job.ts';
import { keyWire } from './support/keys.ts';
import { pastTheSides, sidewaysScroll, smallTargets } from './support/measure.ts';

const LAYOUT = 'two-two-ports';
const layout = () => {
  const found = systemPages().find(({ spec }) => spec.id === LAYOUT);
  if (!found?.references[0]) throw new Error(`There is no layout ${LAYOUT}.`);
  return { ...found, reference: found.references[0] };
};

async function openBench(opening: Omit<Opening, 'path'> & { hash?: string } = {}): Promise<Page> {
  const { hash = '', ...rest } = opening;
  const page = await openPage({ ...LAPTOP, ...rest, path: `/bench/${hash}` });
  await page.locator('.bench[data-ready]').waitFor();
  return page;
}
const press = (page: Page, name: string | RegExp) =>
  page.getByRole('button', { name, exact: typeof name === 'string' }).click();

async function start(page: Page, from: string, wired?: string, name?: string): Promise<void> {
  await page.getByRole('combobox', { name: 'Start from' }).selectOption({ label: from });
  if (wired) await page.getByRole('combobox', { name: 'Wiring', exact: true }).selectOption({ label: wired });
  if (name) await page.locator('form').getByLabel('Name').fill(name);
  await press(page, 'Start');
  await page.getByRole('region', { name: 'The wiring' }).waitFor();
}
/** What a part does now, as the panel says. */
const doing = (page: Page, part: string) =>
  page
    .getByRole('region', { name: 'What it does' })
    .locator('dl div')
    .filter({ hasText: part })
    .locator('dd');
const flip = (page: Page, input: string) => page.locator(`[data-input="${input}"]`).click();

/** A boiler that a room thermostat calls, from the strip. */
const circuit: readonly Wire[] = [
  ['spur/L', 'strip/1'],
  ['boiler/L', 'strip/1'],
  ['room-thermostat/COM', 'strip/1'],
  ['room-thermostat/CALL', 'strip/2'],
  ['boiler/SL', 'strip/2'],
  ['spur/N', 'strip/3'],
  ['boiler/N', 'strip/3'],
];

/** A free bench with the parts of the circuit, taken from the shelf. */
async function withParts(opening: Parameters<typeof openBench>[0] = {}): Promise<Page> {
  const page = await openBench(opening);
  await start(page, 'an empty strip');
  for (const kind of ['Boiler', 'Room thermostat'])
    await page.getByRole('button', { name: kind, exact: true }).click();
  return page;
}
const wireAll = async (page: Page, wires = circuit) => {
  for (const wire of wires) await dragWire(page, wire);
};
const count = (page: Page) => page.locator('.wire').count();

test('From an empty strip, parts off the shelf wired with the keyboard make the boiler fire', async () => {
  const page = await openBench({ reducedMotion: true });
  await start(page, 'an empty strip');
  for (const kind of ['Boiler', 'Room thermostat']) {
    await page.getByRole('button', { name: kind, exact: true }).focus();
    await page.keyboard.press('Enter');
    // The new part waits for its name.
    expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe(
      `Name of ${kind}`,
    );
  }
  await page.locator('svg [tabindex="0"][data-terminal]').focus();
  for (const wire of circuit) await keyWire(page, wire);
  expect(await doing(page, 'Boiler').textContent()).toBe('off');
  await flip(page, 'supply');
  expect(await doing(page, 'Boiler').textContent()).toBe('off');
  await flip(page, 'room-thermostat-call');
  expect(await doing(page, 'Boiler').textContent()).toBe('firing');
  await page.getByText('Table of states').click();
  // Two switches, nothing that moves: four states, in one of which the boiler fires.
  expect(await page.getByText('4 states in which it can rest').isVisible()).toBe(true);
  expect(await page.getByRole('cell', { name: 'fires', exact: true }).count()).toBe(1);
});

test('A part taken off goes with its wires, and undo brings both back', async () => {
  const page = await withParts();
  await wireAll(page);
  await press(page, 'Take off Boiler');
  expect(await count(page)).toBe(circuit.length - 3);
  await press(page, 'Undo');
  expect(await count(page)).toBe(circuit.length);
  expect(await page.getByRole('button', { name: 'Take off Fused spur' }).isDisabled()).toBe(true);
});

test('A reload brings every bench back, the names too, and opens the last one', async () => {
  const page = await withParts();
  await wireAll(page, circuit.slice(0, 3));
  await page.getByRole('textbox', { name: 'Name', exact: true }).fill('Back of the boiler');
  await page.keyboard.press('Enter');
  await page.getByLabel('Name of Room thermostat').fill('Hall');
  await page.keyboard.press('Enter');
  await press(page, 'New bench');
  await start(page, 'an empty strip', undefined, 'Second');
  await page
    .getByRole('combobox', { name: 'Bench', exact: true })
    .selectOption({ label: 'Back of the boiler' });
  await page.reload();
  await page.locator('.bench[data-ready]').waitFor();
  expect(await page.getByRole('textbox', { name: 'Name', exact: true }).inputValue()).toBe(
    'Back of the boiler',
  );
  expect(await page.getByLabel('Name of Hall').inputValue()).toBe('Hall');
  expect(await count(page)).toBe(3);
  expect(
    await page.getByRole('combobox', { name: 'Bench', exact: true }).locator('option').allTextContents(),
  ).toEqual(['Back of the boiler', 'Second']);
});

test('A deleted bench can be brought back', async () => {
  const page = await openBench();
  await start(page, 'an empty strip', undefined, 'Only one');
  await press(page, 'Delete');
  await page.getByText('“Only one” is deleted.').waitFor();
  expect(await page.getByRole('heading', { name: 'A new bench' }).isVisible()).toBe(true);
  await press(page, 'Bring back “Only one”');
  expect(await page.getByRole('textbox', { name: 'Name', exact: true }).inputValue()).toBe('Only one');
});

test('Where the browser keeps nothing the page says so, and goes on with the bench', async () => {
  const page = await withParts({
    prepare: (context) =>
      context.addInitScript(() => {
        Object.defineProperty(window, 'localStorage', {
          get() {
            throw new DOMException('no', 'SecurityError');
          },
        });
      }),
  });
  await wireAll(page, circuit.slice(0, 2));
  expect(await page.getByText('This browser keeps nothing').isVisible()).toBe(true);
  expect(await count(page)).toBe(2);
});

test('What is exported comes back by import as a bench beside the others', async () => {
  const page = await withParts();
  await wireAll(page);
  const [download] = await Promise.all([page.waitForEvent('download'), press(page, 'Export')]);
  expect(download.suggestedFilename()).toBe('my-bench.bench.json');
  const path = join(tmpdir(), `switched-live-export-${process.pid}.json`);
  await download.saveAs(path);
  const written = JSON.parse(readFileSync(path, 'utf8'));
  expect(written).toMatchObject({ bench: 1, name: 'My bench' });
  expect(written.wires).toHaveLength(circuit.length);
  await press(page, 'Delete');
  await start(page, 'an empty strip', undefined, 'Another');
  await page.locator('input[type="file"]').setInputFiles(path);
  await page.getByText('“My bench” is imported').waitFor();
  expect(await count(page)).toBe(circuit.length);
  expect(await page.getByRole('combobox', { name: 'Bench', exact: true }).locator('option').count()).toBe(2);
});

test('A damaged file is refused with the place and what belongs there, and the bench stays', async () => {
  const page = await withParts();
  const path = join(tmpdir(), `switched-live-${process.pid}.json`);
  const refuse = async (text: string, says: string) => {
    writeFileSync(path, text);
    await page.locator('input[type="file"]').setInputFiles(path);
    await page.getByRole('alert').filter({ hasText: says }).waitFor();
  };
  await refuse('{"bench": 1,', 'line 1, column 13');
  const strip = { kind: 'strip', name: 'Strip' };
  const bench = {
    bench: 1,
    name: 'x',
    parts: { spur: { kind: 'fused-spur', name: 'Spur' }, strip },
    wires: [],
  };
  await refuse(
    JSON.stringify({ ...bench, wires: [['spur/L', 'strip/99']] }),
    'wires[0][1]: expected a terminal of strip',
  );
  await refuse(
    JSON.stringify({ ...bench, parts: { strip: { ...strip, kind: 'stripe' } } }),
    'did you mean "strip"?',
  );
  expect(await page.getByLabel('Name of Boiler').isVisible()).toBe(true);
});

test('A link carries parts, names and wires to a browser that has never seen the bench', async () => {
  const page = await withParts();
  await wireAll(page);
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
  await press(page, 'Link');
  await page.getByText('Link copied').waitFor();
  const { hash } = new URL(await page.evaluate(() => navigator.clipboard.readText()));
  const other = await openBench({ hash });
  await other.getByText('came by link').waitFor();
  expect(await count(other)).toBe(circuit.length);
  expect(await other.getByLabel('Name of Room thermostat').isVisible()).toBe(true);
});

test('A layout comes with its wiring, its pipes, its judge and its layers; a part more makes it free', async () => {
  const { spec, reference } = layout();
  const page = await openBench();
  await start(page, spec.title, reference.title);
  expect(await page.getByRole('img', { name: 'Where the heat goes' }).isVisible()).toBe(true);
  await press(page, 'Judge my wiring');
  await page.getByRole('heading', { name: 'Accepted' }).waitFor();
  await page.getByText('Layers of protection').click();
  await page.getByRole('heading', { name: 'Fail something' }).waitFor();
  await press(page, 'Pump');
  await page.getByText('this is a free bench now').waitFor();
  expect(await page.getByRole('button', { name: 'Judge my wiring' }).count()).toBe(0);
  await press(page, 'Undo');
  await page.getByRole('button', { name: 'Judge my wiring' }).waitFor();
});

/** A bench file with the parts and wires of a wiring, renumbered: the strip upside down and two ways longer. */
function asFound(wires: readonly Wire[]): string {
  const { spec } = layout();
  const ways = Number(spec.parts.strip?.options?.ways);
  const ids = Object.keys(spec.parts).filter((id) => wires.flat().some((end) => end.startsWith(`${id}/`)));
  const own = new Map(ids.map((id, k) => [id, id === 'strip' ? 'strip' : `found-${k}`]));
  const rename = (end: string) => {
    const [id = '', name = ''] = end.split('/');
    return `${own.get(id)}/${id === 'strip' ? ways + 3 - Number(name) : name}`;
  };
  const parts = Object.fromEntries(
    ids.map((id, k) => [
      own.get(id),
      id === 'strip'
        ? { kind: 'strip', name: 'Strip', options: { ways: ways + 2 } }
        : { kind: spec.parts[id]?.kind, name: `Found ${k}` },
    ]),
  );
  return JSON.stringify({
    bench: 1,
    name: 'As found',
    parts,
    wires: wires.map(([a, b]) => [rename(b), rename(a)]),
  });
}
async function openFound(wires: readonly Wire[]): Promise<Page> {
  const page = await openBench();
  const path = join(tmpdir(), `switched-live-found-${process.pid}.json`);
  writeFileSync(path, asFound(wires));
  await start(page, 'an empty strip');
  await page.locator('input[type="file"]').setInputFiles(path);
  await page.getByText('“As found” is imported').waitFor();
  await press(page, 'Which layout is this?');
  return page;
}

test('A right wiring with its strip renumbered and its parts renamed is known again', async () => {
  const { spec, reference } = layout();
  const page = await openFound(reference.wires);
  const says = page.locator('.answer');
  await says.waitFor();
  expect(await says.textContent()).toContain(`It behaves like ${spec.title}`);
  expect(await says.textContent()).toContain(reference.title);
});

test('A wrong wiring is nearest to its own layout, with the danger first and the settings where it misbehaves', async () => {
  const { spec, references, mistakes } = layout();
  const mistake = mistakes.find(({ id }) => id === 'heating-valve-brown-and-grey-swapped');
  if (!mistake) throw new Error('The mistake has gone from the library.');
  const page = await openFound(applyMistake(references, mistake));
  const says = page.locator('.answer');
  await says.waitFor();
  expect(await says.textContent()).toContain(`The nearest is ${spec.title}`);
  expect(await page.locator('.findings li').count()).toBeGreaterThan(0);
  expect(
    await page.getByRole('region', { name: 'Where it misbehaves' }).getByRole('row').count(),
  ).toBeGreaterThan(1);
});

test('The wiring list gives from, core and terminal, and a blue core used as line is to be sleeved brown', async () => {
  const page = await withParts();
  await wireAll(page);
  await page.locator('[data-part="room-thermostat"]').getByText('Cores').click();
  await page.getByLabel('Core of Room thermostat CALL').selectOption('blue');
  const rows = page.getByRole('region', { name: 'Wiring list' }).getByRole('row');
  expect(await rows.count()).toBe(circuit.length + 1);
  const cells = await rows.filter({ hasText: 'CALL' }).getByRole('cell').allTextContents();
  expect(cells.map((text) => text.trim())).toEqual([
    'Room thermostat',
    'CALL',
    'blue: sleeve brown',
    'Strip',
    '2',
  ]);
  // A blue neutral stays blue.
  expect(
    await rows.filter({ hasText: 'Fused spur' }).filter({ hasText: 'blue' }).textContent(),
  ).not.toContain('sleeve');
});

test('On a phone the circuit is wired by touch in the strip view', async () => {
  const page = await openBench({ ...PHONE });
  await start(page, 'an empty strip');
  for (const kind of ['Boiler', 'Room thermostat'])
    await page.getByRole('button', { name: kind, exact: true }).tap();
  for (const [lead, joint] of circuit) {
    const part = lead.startsWith('spur')
      ? 'Fused spur'
      : lead.startsWith('boiler')
        ? 'Boiler'
        : 'Room thermostat';
    const button = page.getByRole('group', { name: 'Parts' }).getByRole('button', { name: part });
    if ((await button.getAttribute('aria-pressed')) !== 'true') await button.tap();
    await page.locator(`.tray [data-terminal="${lead}"]`).tap();
    await page.locator(`.joint[data-terminal="${joint}"]`).tap();
  }
  await page.locator('[data-input="supply"]').tap();
  await page.locator('[data-input="room-thermostat-call"]').tap();
  expect(await doing(page, 'Boiler').textContent()).toBe('firing');
});

test.each([
  ['a laptop', LAPTOP],
  ['a tablet', { width: 768, height: 1024, touch: true }],
  ['a phone', PHONE],
])(
  'On %s nothing hangs over the side, targets are big enough, and axe finds nothing in either theme',
  async (_, size) => {
    const { spec, references, mistakes } = layout();
    const page = await openBench({ ...size, reducedMotion: true });
    await seeNoViolation(page, 'nothing kept');
    await start(page, spec.title, references[0]?.title);
    await page.getByText('Table of states').click();
    await press(page, 'Which layout is this?');
    await page.locator('.answer').waitFor();
    expect(mistakes.length).toBeGreaterThan(0);
    await seeNoViolation(page, 'a layout');
    expect(await sidewaysScroll(page)).toBe(0);
    expect(await pastTheSides(page)).toEqual([]);
    expect(await smallTargets(page)).toEqual([]);
  },
);
