import type { PartKind, PartOptions } from '../model/part.ts';

const running = ({ position }: { readonly position: string }) => position === 'running';

/**
 * Wiring centre of an underfloor manifold, for as many `loops` as the system says, three unless told. Each call goes
 * straight on to the actuator of its loop, and any call pulls in the relay that switches pump and valve (common practice).
 */
export function wiringCentre(options: PartOptions): PartKind {
  const loops = Array.from({ length: Number(options.loops ?? 3) }, (_, k) => k + 1);
  return {
    kind: 'wiring-centre',
    title: 'Underfloor wiring centre',
    terminals: [
      { id: 'L', core: 'brown', duty: 'line', does: 'Permanent line for both outputs.' },
      { id: 'N', core: 'blue', duty: 'neutral', does: 'Neutral of the relay.' },
      { id: 'E', core: 'green-yellow', duty: 'earth', does: 'Earth of the wiring centre.' },
      ...loops.map((k) => ({
        id: `S${k}`,
        core: 'brown' as const,
        duty: 'switched' as const,
        does: `Call in from the room thermostat of loop ${k}.`,
      })),
      ...loops.map((k) => ({
        id: `A${k}`,
        core: 'brown' as const,
        duty: 'switched' as const,
        does: `Out to the actuator of loop ${k}: live with its call.`,
      })),
      { id: 'P', core: 'brown', duty: 'switched', does: 'Live while any loop calls: the manifold pump.' },
      {
        id: 'V',
        core: 'brown',
        duty: 'switched',
        does: 'Live while any loop calls: the two-port valve.',
      },
    ],
    contacts: [
      ...loops.map((k) => ({ id: `loop ${k}`, between: [`S${k}`, `A${k}`] as const, closed: () => true })),
      { id: 'pump contact', between: ['L', 'P'], closed: running },
      { id: 'valve contact', between: ['L', 'V'], closed: running },
    ],
    loads: loops.map((k) => ({ id: `call ${k}`, between: [`S${k}`, 'N'] as const })),
    // Assumption: each call input draws about 1 W at 230 V; no value is published.
    elements: loops.map((k) => ({ id: `call ${k}`, between: [`S${k}`, 'N'] as const, ohms: 52_900 })),
    motion: { positions: ['stopped', 'running'], drive: loops.map((k) => `call ${k}`) },
    permanentLine: ['L'],
    failures: [
      { id: 'relay stuck on', says: 'keeps pump and valve on', stuck: 'running' },
      { id: 'relay dead', says: 'never switches pump and valve on', stuck: 'stopped' },
      ...(['pump', 'valve'] as const).map((name) => ({
        id: `${name} contact open`,
        says: `never makes its ${name} contact`,
        contacts: { [`${name} contact`]: 'open' } as const,
      })),
    ],
  };
}
