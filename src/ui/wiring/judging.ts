/** What only judging needs: a page fetches it when the judge is first asked. */

import { makeJudge } from '../../engine/grade/judge.ts';
import type { Judging } from '../../engine/grade/judge-for.ts';
import { isWide } from '../../engine/grade/size.ts';
import type { System } from '../../engine/model/system.ts';
import { allRules } from '../../engine/rules/index.ts';

/** The judge of a system. Few systems need the one for many states, so that is fetched only for them. */
export async function judgeOf(system: System): Promise<Judging> {
  if (!isWide(system)) return makeJudge(system);
  const { makeWideJudge } = await import('../../engine/grade/wide-judge.ts');
  return makeWideJudge(system);
}

/** Titles of the rules that a judged wiring is held against. */
export const provedTitles = allRules
  .filter(({ severity }) => severity !== 'advice')
  .map(({ title }) => title);
