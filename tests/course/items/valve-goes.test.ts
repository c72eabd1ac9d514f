import { expect, test } from 'vitest';
import { valveGoes } from '../../../src/course/items/valve-goes.ts';
import { evaluate } from '../../../src/engine/circuit/plain.ts';
import { bitsOf, partNamed, positionOf, settingsOf } from '../../../src/engine/model/system.ts';
import { type Shown, shownOn } from './circuit-support.ts';
import { shelf } from './support.ts';

/** The settings after the change that a question tells of. */
function changed({ item, system, config }: Shown): number {
  const now = { ...settingsOf(system, config.inputs) };
  const change = item.ask.toLowerCase().split(' then ').at(-1) ?? '';
  for (const { id, label, settings } of system.inputs)
    for (const setting of settings)
      if (change.includes(`${label.toLowerCase()} goes to ${setting}`)) now[id] = setting;
  return bitsOf(system, now);
}

// "Published": analyses of the valve's circuit at energycontrols2.fsnet.co.uk ("3 port valves") and next.gr
// ("mid position valve"), both read in part only. White alone from A: position published. Grey alone from mid: so the
// analyses; simple tables at octaveblue.co.uk and ondotdot.pwp.blueyonder.co.uk say that it stays at mid.
const PUBLISHED: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  neither: { B: 'B', mid: 'B', A: 'B' },
  white: { B: 'mid', mid: 'mid', A: 'mid' },
  both: { B: 'A', mid: 'A', A: 'A' },
  grey: { B: 'B', mid: 'A', A: 'A' },
};

test('a mid-position valve goes where the published accounts say, by what its white and grey are fed', () => {
  const met = new Set<string>();
  // Layouts without another valve: what feeds white and grey is then the same before and after the move.
  for (const shown of shownOn(
    valveGoes,
    ['three-port', 'three-port-wireless-programmer', 'overrun-three-port'],
    90,
  )) {
    const { item, system, wires, config } = shown;
    const inputs = changed(shown);
    // The feeds by themselves, with the valve's own leads off: it cannot feed itself back.
    const leads = wires.filter((wire) => wire.some((end) => end.startsWith('three-port/')));
    const { line } = evaluate(
      system,
      wires.filter((wire) => !leads.includes(wire)),
      { inputs, place: config.place },
    );
    const fed = (core: string) =>
      leads.some(
        (wire) =>
          wire.includes(`three-port/${core}`) &&
          wire.some((end) => line[system.nodeOf.get(end) ?? -1] === true),
      );
    const feeds = fed('white') ? (fed('grey') ? 'both' : 'white') : fed('grey') ? 'grey' : 'neither';
    const start = positionOf(system, partNamed(system, 'three-port'), config.place);
    expect(item.answer, `${item.id}: ${feeds} from ${start}`).toEqual({
      kind: 'choice',
      chosen: [PUBLISHED[feeds]?.[start]],
    });
    met.add(`${feeds} from ${start}`);
  }
  // “grey from B” is reached only by a change of both calls at once; the rest is everyday.
  expect(met.size).toBeGreaterThan(9);
});

// Common practice: a spring-return valve opens while its motor is fed and shuts when it is not.
test('a two-port is open at the end when its brown is live, and shut when it is not', () => {
  const ends = { open: 0, shut: 0 };
  for (const shown of shownOn(
    valveGoes,
    ['two-two-ports', 'two-two-ports-unvented', 'gravity-two-port'],
    60,
  )) {
    const { item, system, wires, config } = shown;
    const valve = item.ask.split('Where does the ').at(-1)?.split(' come to rest')[0] ?? '';
    const id = system.parts.find(({ name }) => name.toLowerCase() === valve)?.id ?? '';
    const { line } = evaluate(system, wires, { inputs: changed(shown), place: config.place });
    const end = line[system.nodeOf.get(`${id}/brown`) ?? -1] ? 'open' : 'shut';
    expect(item.answer, item.id).toEqual({ kind: 'choice', chosen: [end] });
    ends[end]++;
  }
  expect(Math.min(ends.open, ends.shut)).toBeGreaterThan(15);
});

test('only a valve that half mains can hold is spoken of so', () => {
  const texts = (layout: string) => shownOn(valveGoes, [layout], 12).map(({ item }) => item.hints.join(' '));
  for (const text of texts('three-port')) expect(text).toContain('Half mains');
  for (const text of texts('two-two-ports')) expect(text).not.toMatch(/half mains|diode/i);
});

test('a wrong position is told what the motor would get there', () => {
  for (const { item, layout } of shownOn(valveGoes, shelf.layoutIds, 9)) {
    if (item.form.kind !== 'choice' || item.answer.kind !== 'choice') continue;
    for (const { id } of item.form.options) {
      const { right, notes } = item.judge({ kind: 'choice', chosen: [id] });
      expect(right).toBe(item.answer.chosen.includes(id));
      if (right) continue;
      expect(notes[0]?.cause).toMatch(/its motor drives it on|its spring takes it back|does not get there/);
      expect(notes[0]?.scene?.layout).toBe(layout.id);
    }
  }
});

// Common practice: brown feeds the motor of a two-port; grey and orange are its end switch.
test('of a two-port only the core that feeds its motor is told of, not its end switch', () => {
  for (const { item } of shownOn(valveGoes, ['two-two-ports'], 24)) {
    const notes = ['shut', 'part-open', 'open'].flatMap(
      (id) => item.judge({ kind: 'choice', chosen: [id] }).notes,
    );
    expect(notes).toHaveLength(2);
    for (const { look } of notes) {
      expect(look).toContain('valve brown');
      expect(look).not.toMatch(/grey|orange/);
    }
  }
});
