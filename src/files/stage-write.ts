import { Document, isMap, isScalar, isSeq, visit } from 'yaml';
import type { StageScript, StageView } from '../course/stage.ts';
import { flow, landingOf, writeDocument } from './job-write.ts';

/** One drawing is written as a word, two as a list. */
const viewOf = (views: readonly StageView[]): StageView | readonly StageView[] =>
  views.length === 1 ? (views[0] ?? views) : views;

/** Words that older readers of YAML take for yes or no. */
const LOOSE = /^(on|off|yes|no|y|n)$/i;

/**
 * A stage script as a YAML file that `parseStage` reads back as it was, but for wires regrouped by the terminal they
 * land in.
 * @param schema address of the format's JSON Schema, which editors check against
 */
export function writeStage(
  { title, system, wiring, wires, view, steps }: StageScript,
  schema?: string,
): string {
  const document = new Document({
    title,
    system,
    ...(wiring !== undefined && { wiring }),
    ...(wires && { wires: landingOf(wires) }),
    view: viewOf(view),
    steps: steps.map(({ says, set, fail, follow, spot, view: own, expect }) => ({
      says,
      ...(set && { set }),
      ...(fail && { fail }),
      ...(follow !== undefined && { follow }),
      ...(spot && { spot }),
      ...(own && { view: viewOf(own) }),
      ...(expect && { expect }),
    })),
  });
  flow(document.get('view', true));
  const landed = document.get('wires', true);
  if (isMap(landed)) for (const { value } of landed.items) flow(value);
  const written = document.get('steps', true);
  for (const step of isSeq(written) ? written.items : [])
    if (isMap(step)) for (const { value } of step.items) flow(value);
  visit(document, {
    Scalar(_, node) {
      if (isScalar(node) && typeof node.value === 'string' && LOOSE.test(node.value))
        node.type = 'QUOTE_DOUBLE';
    },
  });
  return writeDocument(document, schema);
}
