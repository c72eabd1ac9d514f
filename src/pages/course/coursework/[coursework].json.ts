import type { APIRoute } from 'astro';
import { loadCourseworks } from '../../../files/site/coursework.ts';

export const getStaticPaths = () =>
  loadCourseworks().map((coursework) => ({ params: { coursework: coursework.id }, props: { coursework } }));

/** A coursework of the site's own, for whoever sits it. */
export const GET: APIRoute = ({ props }) => Response.json(props.coursework);
