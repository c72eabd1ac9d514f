import { cardOf } from '../../files/callout-pack.ts';
import { loadCallouts } from '../../files/site/callouts.ts';
import { siteShelf } from '../../files/site/shelf.ts';

/** Every authored callout as lists show it: nothing of its fault. */
export const GET = (): Response =>
  Response.json(loadCallouts().map((file) => cardOf(siteShelf().layout(file.system), file)));
