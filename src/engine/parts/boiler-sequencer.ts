import type { ContactSpec, PartKind } from '../model/part.ts';

const isCalling = ({ position }: { readonly position: string }) => position === 'calling';

const outputs: readonly ContactSpec[] = [
  // Assumption: relays inside for 2 A; a switched line of a boiler draws next to nothing.
  { id: 'first boiler', between: ['L', 'B1'], closed: isCalling, amps: 2 },
  {
    id: 'second boiler',
    between: ['L', 'B2'],
    closed: (state) => isCalling(state) && state.setting.load === 'high',
    amps: 2,
  },
];

/**
 * Sequencer for two boilers: a live on IN calls the first, and the second as well while the load is too high for one
 * (common practice). Its own reading of the flow temperature is the input `load`. Which boiler leads is fixed here; a
 * real one changes over now and then to even out the wear.
 */
export const boilerSequencer: PartKind = {
  kind: 'boiler-sequencer',
  title: 'Boiler sequencer',
  terminals: [
    { id: 'L', core: 'brown', duty: 'line', does: 'Permanent line, for the sequencer and both outputs.' },
    { id: 'N', core: 'blue', duty: 'neutral', does: 'Neutral of the sequencer.' },
    { id: 'E', core: 'green-yellow', duty: 'earth', does: 'Earth of the sequencer.' },
    { id: 'IN', core: 'brown', duty: 'switched', does: 'Call in: live asks for heat from the boilers.' },
    { id: 'B1', core: 'brown', duty: 'switched', does: 'Out to the first boiler: live with any call.' },
    {
      id: 'B2',
      core: 'brown',
      duty: 'switched',
      does: 'Out to the second boiler: live too while the load is high.',
    },
  ],
  inputs: [{ slot: 'load', settings: ['low', 'high'] }],
  contacts: outputs,
  loads: [
    { id: 'electronics', between: ['L', 'N'] },
    { id: 'call', between: ['IN', 'N'] },
  ],
  elements: [
    // Assumption: 3 W at 230 V, as for other small controls.
    { id: 'electronics', between: ['L', 'N'], ohms: 17_630 },
    // Assumption: the call input draws about 0.5 W; no value is published.
    { id: 'call', between: ['IN', 'N'], ohms: 105_800 },
  ],
  motion: { positions: ['waiting', 'calling'], drive: 'call' },
  permanentLine: ['L'],
  failures: outputs.flatMap(({ id }) => [
    { id: `${id} welded`, says: `never stops calling the ${id}`, contacts: { [id]: 'closed' } },
    { id: `${id} open`, says: `never calls the ${id}`, contacts: { [id]: 'open' } },
  ]),
};
