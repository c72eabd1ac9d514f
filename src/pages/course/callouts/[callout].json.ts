import type { APIRoute } from 'astro';
import { loadCallouts } from '../../../files/site/callouts.ts';

export const getStaticPaths = () =>
  loadCallouts().map((file) => ({ params: { callout: file.id }, props: { file } }));

/** An authored callout, for whoever goes on the visit. */
export const GET: APIRoute = ({ props }) => Response.json(props.file);
