import { formatNames, publishedSchema } from '../../files/published.ts';

export const getStaticPaths = () => formatNames().map((format) => ({ params: { format } }));

/** The JSON Schema of a file format, built with the site: what its parser validates against. */
export function GET({ params }: { params: { format: string } }): Response {
  return new Response(JSON.stringify(publishedSchema(params.format), null, 2), {
    headers: { 'Content-Type': 'application/schema+json' },
  });
}
