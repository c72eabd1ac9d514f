import type { APIRoute } from 'astro';
import { layoutFile } from '../../../files/layout-file.ts';
import { systemPages } from '../../../files/site/systems.ts';

export const getStaticPaths = () =>
  systemPages().map((page) => ({ params: { layout: page.spec.id }, props: { file: layoutFile(page) } }));

/** What a layout is made from, for whoever asks questions about it in the browser. */
export const GET: APIRoute = ({ props }) => Response.json(props.file);
