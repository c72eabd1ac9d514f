/** `npm run check`: fails when a file of the course's content does not hold what it claims. */
import { checkContent } from './content-check.ts';
import { openLibrary } from './library.ts';
import { complain, print } from './output.ts';

const { systems, references, mistakes, jobs, troubles } = checkContent(openLibrary());
for (const { message } of troubles) complain(message);
const of = (count: number, what: string) => `${count} ${what}${count === 1 ? '' : 's'}`;
const looked = [of(systems, 'system'), of(references, 'reference'), of(mistakes, 'mistake'), of(jobs, 'job')];
await print(
  `content: ${looked.join(', ')}; ${troubles.length === 0 ? 'all sound' : of(troubles.length, 'trouble')}\n`,
);
process.exitCode = troubles.length === 0 ? 0 : 1;
