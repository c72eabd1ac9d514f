import * as z from 'zod/mini';
import type { Wire } from '../engine/model/wiring.ts';
import { list, map, pattern, text } from './shape.ts';

/** Pieces that several formats share. */

const ID = /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/;
export const id = pattern('an id: small letters, digits and hyphens', ID);

/** Which system a job, a script or a callout is about. */
export const systemId = pattern('a system: its id, in small letters, digits and hyphens', ID);

export const terminal = pattern('a terminal: part/terminal', /^[^/]+\/[^/]+$/);

const wireSays = 'a wire: a list of two terminals';
export const wire = z
  .tuple([terminal, terminal], { error: wireSays })
  .check(z.meta({ description: wireSays, minItems: 2, items: false }));

/** What is landed in each terminal: a short way to write many wires. */
export const landing = map(
  'a landing map: terminal: [terminal, …]',
  terminal,
  list('a list of terminals', terminal),
);
export type Landing = z.infer<typeof landing>;

/** Settings of inputs by name, such as `hot-water: "on"`. */
export const settings = map(
  'settings: input: setting',
  id,
  text('a setting, in quotes when it is on or off'),
);

/** Every wire of a landing map: from each entry to the terminal it is landed in. */
export const expandLanding = (landed: Readonly<Landing>): Wire[] =>
  Object.entries(landed).flatMap(([at, leads]) => leads.map((lead): Wire => [lead, at]));
