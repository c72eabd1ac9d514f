import type { Reference } from '../../files/mistake.ts';

/** The right wirings of a job: asked for only once the learner's own has been accepted. */
export async function fetchReferences(address: string): Promise<readonly Reference[]> {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`The right wirings could not be fetched (${answer.status}).`);
  return (await answer.json()) as Reference[];
}
