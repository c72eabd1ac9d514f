import { systemPages } from '../../files/site/systems.ts';
import type { BenchLayout } from '../../ui/bench/library.ts';

/** Every layout with its right wirings: what the bench starts from and what a site as found is compared with. */
export function GET(): Response {
  const library = systemPages().map(
    ({ spec, references }): BenchLayout => ({
      spec,
      references: references.map(({ id, title, wires }) => ({ id, title, wires })),
    }),
  );
  return Response.json(library);
}
