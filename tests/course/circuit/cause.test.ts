import { expect, test } from 'vitest';
import { causeOf, sayCause, sayThrough } from '../../../src/course/circuit/cause.ts';
import { bitsOf, type Config, partState, type System } from '../../../src/engine/model/system.ts';
import { shelf } from '../items/support.ts';

const contactOf = (system: System, part: string, id: string): number =>
  system.contacts.findIndex(({ part: at, spec }) => system.parts[at]?.id === part && spec.id === id);

/** Whether a contact is closed with some inputs, by number, the other way. */
function closedWith(system: System, contact: number, config: Config, flipped: readonly number[]): boolean {
  const { part = -1, spec } = system.contacts[contact] ?? {};
  const owner = system.parts[part];
  if (!owner || !spec) throw new Error(`no contact ${contact}`);
  const inputs = flipped.reduce((bits, k) => bits ^ (1 << k), config.inputs);
  return spec.closed(partState(system, owner, { ...config, inputs }));
}

const subsets = (list: readonly number[]): number[][] =>
  list.reduce<number[][]>((all, one) => all.flatMap((some) => [some, [...some, one]]), [[]]);

// Every contact of every layout, in all settings of its own part: the definition, played out.
test('what is told of a contact can change it, and what is not told cannot', () => {
  let told = 0;
  for (const id of shelf.layoutIds) {
    const { system } = shelf.layout(id);
    system.contacts.forEach(({ part }, contact) => {
      const own = [...new Set(Object.values(system.parts[part]?.slots ?? {}))];
      for (const set of subsets(own)) {
        const config = { inputs: set.reduce((bits, k) => bits | (1 << k), 0), place: 0 };
        const { inputs, mechanism } = causeOf(system, contact, config);
        if (mechanism) continue;
        const now = closedWith(system, contact, config, []);
        const untold = own.filter((k) => !inputs.includes(k));
        for (const some of subsets(untold))
          expect(closedWith(system, contact, config, some), `${id} ${contact}`).toBe(now);
        for (const k of inputs)
          expect(
            subsets(inputs).some(
              (some) => some.includes(k) && closedWith(system, contact, config, some) !== now,
            ),
            `${id} ${contact}`,
          ).toBe(true);
        told += inputs.length;
      }
    });
  }
  expect(told).toBeGreaterThan(200);
});

test('of a programmer only the channel that the contact belongs to is named', () => {
  const { system } = shelf.layout('three-port');
  const heating = contactOf(system, 'programmer', 'heating on');
  const config = { inputs: bitsOf(system, { supply: 'on', heating: 'on' }), place: 0 };
  expect(sayCause(system, heating, config)).toBe('heating is on');
  expect(sayThrough(system, [heating], config)).toBe('the programmer (heating is on)');
});

test('a part with one setting is told by that setting alone, and a valve by where it stands', () => {
  const { system } = shelf.layout('three-port');
  const config = { inputs: bitsOf(system, { supply: 'on', room: 'calling' }), place: 2 };
  expect(sayThrough(system, [contactOf(system, 'room-stat', 'call')], config)).toBe(
    'the room thermostat (calling)',
  );
  expect(sayThrough(system, [contactOf(system, 'three-port', 'switch 2 operated')], config)).toBe(
    'the three-port valve (open to the radiators only)',
  );
});

test('a setting that alone keeps a contact open is the reason, not the mechanism beside it', () => {
  const { system } = shelf.layout('two-boilers');
  const second = system.contacts.findIndex(({ b }) => system.nodes[b] === 'sequencer/B2');
  const stride = system.movers.find(({ part }) => system.parts[part]?.id === 'sequencer')?.stride ?? 0;
  expect(sayCause(system, second, { inputs: 0, place: stride })).toBe('load is low');
  expect(sayCause(system, second, { inputs: 0, place: 0 })).toBe('the sequencer is waiting');
});
