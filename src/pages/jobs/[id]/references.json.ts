import type { APIRoute } from 'astro';
import { jobPages } from '../../../files/site/jobs.ts';

/** The right wirings of a job: fetched by its page once the learner's own has been accepted. */
export const getStaticPaths = () =>
  jobPages().map(({ job, references }) => ({ params: { id: job.id }, props: { references } }));

export const GET: APIRoute = ({ props }) => Response.json(props.references);
