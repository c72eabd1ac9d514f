import {
  alternatives,
  bitsOf,
  holds,
  type Settings,
  type System,
  settingsOf,
} from '../../engine/model/system.ts';

/** How a customer says a setting, as a clause: at rest, and active. Undefined where nobody in a house would notice. */
type Says = (label: string) => readonly [rest: string | undefined, active: string | undefined];

const TANK: Says = () => ['the tank is hot', 'the tank has gone cool'];
const CLOCK: Says = (label) => [`the ${label} is off`, `the ${label} is on`];
const ROOM: Says = (label) => [
  `the ${label} thermostat is turned down`,
  `the ${label} thermostat is turned up`,
];
const TANK_THERMOSTATS = ['cylinder-thermostat', 'immersion-heater'];

/** By the name that a kind of part gives its input; `call` is for the thermostats on walls. */
const SAYS: Readonly<Record<string, Says>> = {
  call: ROOM,
  tank: TANK,
  store: TANK,
  'hot-water': CLOCK,
  heating: CLOCK,
  timed: CLOCK,
  boost: CLOCK,
  supply: (label) => [
    label === 'supply' ? 'everything is switched off at the wall' : `the ${label} is switched off`,
    undefined,
  ],
  trip: (label) => [undefined, `the red button of the ${label} has popped out`],
  frost: (label) => [undefined, `it is freezing in the ${label.replace(/ air$/, '')}`],
  pasteurise: () => [undefined, 'the weekly hot run is on'],
  sun: () => ['the sky is grey', 'the sun is out'],
  load: () => [undefined, 'it is bitterly cold outside'],
  limit: () => [undefined, 'the floor has got too hot'],
  pipe: () => [undefined, undefined],
};

/**
 * Settings as a customer says them: what is turned on, what it is like, and of a call half made also what is turned
 * down. Empty when all is at rest.
 * @param settings those left out are at rest; names as the system has them
 */
export function saySettings(system: System, settings: Settings): readonly string[] {
  const bits = bitsOf(system, settings);
  const now = settingsOf(system, bits);
  const isActive = (id: string): boolean =>
    system.inputs.some((input) => input.id === id && input.settings[1] === now[id]);
  const isTold = new Set(system.inputs.map(({ id }) => id).filter(isActive));
  for (const when of system.spec.demands.flatMap((demand) => alternatives(demand.when))) {
    const wanted = Object.entries(when);
    const isHalf = wanted.some(([id, setting]) => now[id] === setting && isActive(id));
    if (!isHalf || holds(system, bits, when)) continue;
    for (const [id, setting] of wanted) if (now[id] !== setting) isTold.add(id);
  }
  for (const { input } of system.supplies) {
    const supply = system.inputs[input];
    if (supply && !isActive(supply.id)) isTold.add(supply.id);
  }
  const said = system.inputs.flatMap(({ id, label }, k) => {
    if (!isTold.has(id)) return [];
    const part = system.parts.find(({ slots }) => Object.values(slots).includes(k));
    const slot = Object.keys(part?.slots ?? {}).find((name) => part?.slots[name] === k) ?? '';
    const says = TANK_THERMOSTATS.includes(part?.kind.kind ?? '') && slot === 'call' ? TANK : SAYS[slot];
    const [rest, active] = says?.(label.toLowerCase()) ?? [undefined, `${label.toLowerCase()} is ${now[id]}`];
    return (isActive(id) ? active : rest) ?? [];
  });
  return [...new Set(said)];
}
