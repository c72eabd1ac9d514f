import * as z from 'zod/mini';
import { STAGE_VIEWS, type StageScript, type StageStep, type StageView } from '../course/stage.ts';
import { outcome } from './lesson.ts';
import { expandLanding, id, type Landing, landing, settings, systemId } from './names.ts';
import { checkShape, keys, list, text } from './shape.ts';
import { parseYaml } from './yaml.ts';

/** Letters of a caption that three lines at the bottom of a screen hold. */
export const LONGEST_CAPTION = 180;
/** Steps of one script, and what a file of them may weigh in characters. */
export const MOST_STEPS = 60;
export const LONGEST_SCRIPT = 60_000;

const viewSays = `one of ${STAGE_VIEWS.join(', ')}, or a list of two of them`;
const oneView = z.enum(STAGE_VIEWS, { error: viewSays });
const view = z
  .union(
    [
      oneView,
      z
        .array(oneView, { error: viewSays })
        .check(z.minLength(1, { error: viewSays }), z.maxLength(2, { error: viewSays })),
    ],
    { error: viewSays },
  )
  .check(z.meta({ description: viewSays }));

const captionSays = `a caption of at most ${LONGEST_CAPTION} letters`;
const spotSays = 'a part, or a terminal as part/terminal';

const step = keys('a step: says, set, fail, follow, spot, view, expect', {
  says: text('a caption').check(z.maxLength(LONGEST_CAPTION, { error: captionSays })),
  set: z.exactOptional(settings),
  fail: z.exactOptional(list('a list of failures', text('a failure: part/failure'))),
  follow: z.exactOptional(id),
  spot: z.exactOptional(list('a list of parts and terminals', text(spotSays))),
  view: z.exactOptional(view),
  expect: z.exactOptional(outcome),
});

const wiresSays = 'a wiring or wires, not both';

export const stageSchema = keys('a stage script: title, system, wiring or wires, view, steps', {
  title: text('a title').check(z.maxLength(80, { error: 'a title of at most 80 letters' })),
  system: systemId,
  wiring: z.exactOptional(id),
  wires: z.exactOptional(landing),
  view: z.exactOptional(view),
  steps: list('a list of steps', step).check(
    z.minLength(1, { error: 'at least one step' }),
    z.maxLength(MOST_STEPS, { error: `at most ${MOST_STEPS} steps` }),
  ),
}).check(
  z.refine(({ wiring, wires }) => wiring === undefined || wires === undefined, { error: wiresSays }),
  z.meta({ title: 'Stage script' }),
);

const asList = (given: StageView | StageView[]): StageView[] =>
  Array.isArray(given) ? [...new Set(given)] : [given];

/**
 * A stage script out of YAML text. Whether its names are those of the layout, its states can be reached and what it
 * expects holds, `npm run check` sees.
 * @throws FileError with the place, what was expected there and what was found
 */
export function parseStage(yaml: string, file: string): StageScript {
  const { wires, view: shown, steps, ...script } = checkShape(stageSchema, parseYaml(yaml, file), file);
  return {
    ...script,
    ...(wires && { wires: expandLanding(wires as Readonly<Landing>) }),
    view: asList(shown ?? 'strip'),
    steps: steps.map(({ says, view: own, ...rest }) => ({
      ...(rest as Omit<StageStep, 'says' | 'view'>),
      says: says.trim().replaceAll(/\s+/g, ' '),
      ...(own && { view: asList(own) }),
    })),
  };
}
