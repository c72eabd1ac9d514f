import type { APIRoute } from 'astro';
import { jobStart } from '../../../files/job-start.ts';
import { jobPages } from '../../../files/site/jobs.ts';

export const getStaticPaths = () =>
  jobPages().map(({ job, given, was }) => ({
    params: { job: job.id },
    props: { start: jobStart(job, given, was) },
  }));

/** What a job says and starts with, for whoever wires it as a variant. */
export const GET: APIRoute = ({ props }) => Response.json(props.start);
