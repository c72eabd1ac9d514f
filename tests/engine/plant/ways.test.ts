import { expect, test } from 'vitest';
import { makeFrame } from '../../../src/engine/circuit/frame.ts';
import { laneAtoms, makeLaneSets } from '../../../src/engine/circuit/lane-sets.ts';
import { openWays } from '../../../src/engine/plant/paths.ts';
import { sweepWays } from '../../../src/engine/plant/ways.ts';
import { smallSystems } from '../support/library.ts';

test.each(smallSystems())(
  'in %s the ways of all states at once are those of each place by itself',
  (_, system) => {
    const frame = makeFrame(system);
    const ways = sweepWays(system, laneAtoms(frame, makeLaneSets(frame)));
    for (let place = 0; place < system.places; place++) {
      for (const [source, open] of openWays(system, place)) {
        for (const [part, lanes] of ways.get(source) ?? []) {
          const word = lanes[place * frame.blocks];
          expect(word, `${source} to ${part} in place ${place}`).toBe(open.has(part) ? frame.used : 0);
        }
      }
    }
  },
);
