import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openPage } from './support/browser.ts';

/* Lessons are for reading, and reading needs no script. Three lessons of different parts, found by what they hold. */
const folder = process.env.SITE_FOLDER ?? 'dist';
const ask = 'data-objective=';
const worked = 'class="worked';
const lessons = globSync('lessons/*/index.html', { cwd: folder })
  .sort()
  .filter((file) => {
    const text = readFileSync(join(folder, file), 'utf8');
    return text.includes(ask) && text.includes(worked);
  })
  .map((file) => `/${file.replace('index.html', '')}`);
