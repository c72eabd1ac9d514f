import { failuresOf, statesAfter, wiresOf } from '../../course/claim.ts';
import { seedOf } from '../../course/random.ts';
import type { Shelf } from '../../course/task.ts';
import type { Settings, System } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import { capital, list } from '../../engine/rules/words.ts';
import { wiresToLink } from '../../files/link.ts';
import { inSentence } from '../drawings/say.ts';
import { href } from '../shell/href.ts';
import { failed, playScript, type ScriptStep, type Stop } from './script.ts';
import type { Shown } from './shown.ts';
import { type View, viewNames } from './views.ts';

/** What an author writes. */
export interface LiveProps {
  readonly layout: string;
  readonly wiring?: string;
  readonly view?: View;
  readonly set?: Settings;
  readonly steps?: readonly ScriptStep[];
  readonly fail?: readonly string[];
  readonly switches?: boolean;
  readonly id?: string;
  readonly secret?: boolean;
}

/** A live circuit made ready: what the island is given, and its script for those who read. */
export interface MadeLive {
  readonly system: System;
  readonly wires: readonly Wire[];
  readonly stops: readonly Stop[];
  readonly shown: Shown;
}

/**
 * Checks what an author wrote and makes it ready.
 * @param laysOut whether the pipework of a system can be drawn
 * @throws Error naming the layout and the name that is not there, with those that are
 */
export function makeLive(
  shelf: Shelf & { readonly layoutIds: readonly string[] },
  props: LiveProps,
  laysOut: (system: System) => boolean,
): MadeLive {
  const { view = 'strip', set = {}, steps = [], fail = [], switches } = props;
  const stop = (says: string): never => {
    throw new Error(`<Live layout="${props.layout}">: ${says}`);
  };
  if (!shelf.layoutIds.includes(props.layout)) stop(`expected one of ${list(shelf.layoutIds)}`);
  if (!(view in viewNames)) stop(`expected a view of ${list(Object.keys(viewNames))}, found "${view}"`);
  const layout = shelf.layout(props.layout);
  const { system: healthy } = layout;
  try {
    const wires = wiresOf(layout, props.wiring);
    const failures = failuresOf(healthy, fail);
    const patient = failed(healthy, failures);
    // Names every switch and setting that is not there.
    statesAfter(patient.system, wires, [set, ...steps.map((step) => step.set ?? {})]);
    const pipes = laysOut(healthy);
    if (view === 'pipes' && !pipes) stop('its pipework cannot be drawn');
    const wiring = [...layout.right, ...layout.wrong].find((known) => known.wires === wires);
    const failing = failures.map((failure) =>
      'part' in failure
        ? `The ${inSentence(healthy.parts[failure.part]?.name ?? '')} ${failure.spec.says}.`
        : '',
    );
    const { stores: _stores, ...spec } = healthy.spec;
    return {
      system: patient.system,
      wires,
      stops: playScript(patient, wires, set, steps),
      shown: {
        id: props.id ?? `live-${seedOf(JSON.stringify(props)).toString(36)}`,
        spec,
        wiring: { id: wiring?.id ?? '', title: wiring?.title ?? '', wires },
        about: props.secret
          ? 'Something is wrong with it.'
          : [wires === layout.right[0]?.wires ? '' : `${capital(wiring?.title ?? '')}.`, ...failing]
              .filter((says) => says !== '')
              .join(' '),
        fail,
        start: set,
        steps,
        switches: switches === undefined ? 'folded' : switches ? 'open' : 'none',
        pipes,
        drawings: href(`/drawings/${layout.id}/#w=${wiresToLink(healthy, wires)}`),
      },
    };
  } catch (error) {
    return error instanceof RangeError
      ? stop(error.message)
      : stop((error as Error).message.replace(/^<Live[^>]*>: /, ''));
  }
}
