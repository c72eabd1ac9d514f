import type { APIRoute } from 'astro';
import { systemPages } from '../../../files/site/systems.ts';

/** The right wirings of a layout: fetched once the learner's own has been accepted. */
export const getStaticPaths = () =>
  systemPages().map(({ spec, references }) => ({ params: { system: spec.id }, props: { references } }));

export const GET: APIRoute = ({ props }) => Response.json(props.references);
