import type { Act } from '../../engine/diagnose/act.ts';
import { partNamed, type Settings, type System } from '../../engine/model/system.ts';
import { capital, list, sayNode } from '../../engine/rules/words.ts';

/** A terminal inside a sentence: "terminal 7". */
export const sayEnd = (system: System, terminal: string): string => {
  const node = system.nodeOf.get(terminal);
  return node === undefined ? terminal : sayNode(system, node);
};

/** A part in a sentence: "the boiler". */
export const the = (system: System, part: string): string =>
  `the ${partNamed(system, part).name.toLowerCase()}`;

/** Settings in a sentence: "hot water to on and heating to off". */
export const saySet = (system: System, settings: Settings): string =>
  list(
    Object.entries(settings).map(([id, setting]) => {
      const label = system.inputs.find((input) => input.id === id)?.label ?? id;
      return `${label.toLowerCase()} to ${setting}`;
    }),
  );

const between = (system: System, [a, b]: readonly [string, string]): string =>
  `${sayEnd(system, a)} to ${sayEnd(system, b)}`;

/** An act as something to do, without its full stop: "set heating to on". */
export function sayAct(system: System, act: Act): string {
  switch (act.do) {
    case 'operate':
      return `Set ${saySet(system, act.settings)}`;
    case 'identify':
      return `Find what feeds this system: ${the(system, act.supply)}`;
    case 'isolate':
      return 'Switch the supply off';
    case 'lock':
      return 'Lock it off';
    case 'prove':
      return 'Prove the tester';
    case 'dead-test':
      return `Test for dead, ${act.pair.replace('-', ' to ')}`;
    case 'open':
      return `Take the cover off ${the(system, act.part)}`;
    case 'close':
      return `Put the cover back on ${the(system, act.part)}`;
    case 'lift':
      return `Lift the wire from ${between(system, act.wire)}`;
    case 'land':
      return `Land the wire from ${between(system, act.wire)} again`;
    case 'bridge':
      return `Bridge ${between(system, act.between)}`;
    case 'unbridge':
      return `Take the bridge from ${between(system, act.between)} out`;
    case 'reset':
      return 'Press the reset of the cut-out';
    case 'lever':
      return `Work the manual lever of ${the(system, act.valve)}`;
    case 'swap':
      return `Change ${the(system, act.part)}`;
    case 'test':
      return act.test.kind === 'reads'
        ? `Measure ${between(system, act.test.between)}`
        : `Look at ${the(system, act.test.part)}`;
  }
}

/** A whole sentence from what `say…` gives. */
export const sentence = (words: string): string => {
  const text = capital(words);
  return /[.?!]$/.test(text) ? text : `${text}.`;
};
