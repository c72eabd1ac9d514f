import { Document, isMap, isScalar, isSeq, type Node } from 'yaml';
import type { Wire } from '../engine/model/wiring.ts';
import type { Job } from './job.ts';

/** How wide a line of a written file is, as the files of the course have it. */
export const LINE = 120;

/** What is landed in each terminal, in the order in which the terminals first come. */
export function landingOf(wires: readonly Wire[]): Record<string, string[]> {
  const groups = Map.groupBy(wires, ([, at]) => at);
  return Object.fromEntries([...groups].map(([at, group]) => [at, group.map(([lead]) => lead)]));
}

/** Lists of names stand on one line. */
export function flow(node: unknown): void {
  if (isSeq(node) || isMap(node)) node.flow = true;
}

/** Long text is folded below its key. */
export function fold(node: unknown): void {
  if (isScalar(node) && typeof node.value === 'string' && (node.value.length > 90 || /\n/.test(node.value)))
    node.type = 'BLOCK_FOLDED';
}

/** A YAML document as text; `schema` is the address of the format's JSON Schema, which editors check against. */
export function writeDocument(document: Document<Node>, schema?: string): string {
  const body = document.toString({ lineWidth: LINE, flowCollectionPadding: true });
  return schema === undefined ? body : `# yaml-language-server: $schema=${schema}\n${body}`;
}

/** A job as a YAML file that `parseJob` reads back as it was, but for wires regrouped by the terminal they land in. */
export function writeJob({ id, system, title, brief, summary, gives, from }: Job, schema?: string): string {
  const document = new Document({
    id,
    system,
    title,
    brief,
    summary,
    ...(gives && { gives: { locked: gives.locked, wires: landingOf(gives.wires) } }),
    ...(from && {
      from: {
        system: from.system,
        ...(from.reference !== undefined && { reference: from.reference }),
        ...(from.wires && { wires: landingOf(from.wires) }),
        ...(Object.keys(from.renames).length > 0 && { renames: from.renames }),
        says: from.says,
      },
    }),
  });
  fold(document.get('brief', true));
  fold(document.getIn(['from', 'says'], true));
  flow(document.getIn(['from', 'renames'], true));
  for (const key of ['gives', 'from']) {
    const wires = document.getIn([key, 'wires'], true);
    if (isMap(wires)) for (const { value } of wires.items) flow(value);
  }
  return writeDocument(document, schema);
}
