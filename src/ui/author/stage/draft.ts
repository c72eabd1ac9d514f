import type { Outcome } from '../../../course/claim.ts';
import { STAGE_VIEWS, type StageScript, type StageStep, type StageView } from '../../../course/stage.ts';
import type { Wire } from '../../../engine/model/wiring.ts';

/** A step while it is made. */
export interface StepDraft {
  /** Its own on this desk, so that it keeps its place in hand while it is moved. */
  readonly id: string;
  readonly says: string;
  readonly set: Readonly<Record<string, string>>;
  /** What has failed from here on; `null` for what had failed before. */
  readonly fail: readonly string[] | null;
  /** Id of a call to follow, or empty. */
  readonly follow: string;
  readonly spot: readonly string[];
  /** The drawings from here on; empty for those before. */
  readonly view: readonly StageView[];
  readonly expect: Outcome;
}

/** A stage script while it is made. */
export interface StageDraft {
  readonly title: string;
  readonly system: string;
  /** Id of a wiring; empty for the first right one. */
  readonly wiring: string;
  /** Wires of the script's own; `null` where it names a wiring. */
  readonly wires: readonly Wire[] | null;
  readonly view: readonly StageView[];
  readonly steps: readonly StepDraft[];
}

export const freshStage = (): StageDraft => ({
  title: '',
  system: '',
  wiring: '',
  wires: null,
  view: ['strip', 'pipework'],
  steps: [],
});

/** A step after others, under an id that none of them has. */
export function freshStep(steps: readonly Pick<StepDraft, 'id'>[]): StepDraft {
  const most = Math.max(0, ...steps.map(({ id }) => Number(id.slice(1)) || 0));
  return { id: `s${most + 1}`, says: '', set: {}, fail: null, follow: '', spot: [], view: [], expect: {} };
}

/** The script as its file says it. */
export const scriptOf = ({ title, system, wiring, wires, view, steps }: StageDraft): StageScript => ({
  title,
  system,
  ...(wires ? { wires } : wiring !== '' && { wiring }),
  view,
  steps: steps.map(
    ({ says, set, fail, follow, spot, view: own, expect }): StageStep => ({
      says: says.trim().replaceAll(/\s+/g, ' '),
      ...(Object.keys(set).length > 0 && { set }),
      ...(fail && { fail }),
      ...(follow !== '' && { follow }),
      ...(spot.length > 0 && { spot }),
      ...(own.length > 0 && { view: own }),
      ...(Object.keys(expect).length > 0 && { expect }),
    }),
  ),
});

/** A script opened to be changed. */
export const draftOf = ({ title, system, wiring = '', wires, view, steps }: StageScript): StageDraft => ({
  title,
  system,
  wiring,
  wires: wires ?? null,
  view,
  steps: steps.map(({ says, set = {}, fail, follow = '', spot = [], view: own = [], expect = {} }, k) => ({
    id: `s${k + 1}`,
    says,
    set,
    fail: fail ?? null,
    follow,
    spot,
    view: own,
    expect,
  })),
});

const isText = (data: unknown): data is string => typeof data === 'string';
const areTexts = (data: unknown): data is string[] => Array.isArray(data) && data.every(isText);
const areViews = (data: unknown): boolean =>
  areTexts(data) && data.every((one) => (STAGE_VIEWS as readonly string[]).includes(one));
const isObject = (data: unknown): data is object =>
  typeof data === 'object' && data !== null && !Array.isArray(data);

/** A draft as it was kept, or undefined for what is none. */
export function readStageDraft(data: unknown): StageDraft | undefined {
  if (!isObject(data)) return undefined;
  const { title, system, wiring, wires, view, steps } = data as Partial<Record<keyof StageDraft, unknown>>;
  if (![title, system, wiring].every(isText) || !areViews(view)) return undefined;
  if (wires !== null && !(Array.isArray(wires) && wires.every((wire) => areTexts(wire) && wire.length === 2)))
    return undefined;
  if (!Array.isArray(steps) || !steps.every(isStep)) return undefined;
  return data as StageDraft;
}

function isStep(data: unknown): boolean {
  if (!isObject(data)) return false;
  const { id, says, set, fail, follow, spot, view, expect } = data as Partial<
    Record<keyof StepDraft, unknown>
  >;
  return (
    [id, says, follow].every(isText) &&
    isObject(set) &&
    areTexts(Object.values(set)) &&
    (fail === null || areTexts(fail)) &&
    areTexts(spot) &&
    areViews(view) &&
    isObject(expect)
  );
}
