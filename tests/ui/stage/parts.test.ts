import { describe, expect, it } from 'vitest';
import { wiresOf } from '../../../src/course/claim.ts';
import { loadShelf } from '../../../src/files/site/course.ts';
import { drawStrip } from '../../../src/ui/drawings/strip.ts';
import { eraseAt, frameOf, readSheets, type Stroke, strokePath, toInk } from '../../../src/ui/stage/ink.ts';
import { actionOf, Digits, KEYS, panOf } from '../../../src/ui/stage/keys.ts';
import { roundBox, union } from '../../../src/ui/stage/light.ts';
import { BIG_STRIP, LETTERS, labelUnits, leastLabel, scaleOf, shift } from '../../../src/ui/stage/sizes.ts';
import { durationOf, withDuration } from '../../../src/ui/stage/webm.ts';

const press = (key: string, more = {}) => ({ key, ctrlKey: false, metaKey: false, altKey: false, ...more });

describe('the keys', () => {
  it.each([
    ['ArrowRight', 'next'],
    [' ', 'next'],
    ['PageDown', 'next'],
    ['PageUp', 'back'],
    ['Home', 'first'],
    ['F', 'full'],
    ['f', 'full'],
    ['?', 'help'],
  ])('%s asks for %s', (key, action) => {
    expect(actionOf(press(key), true)).toBe(action);
  });

  it('leave the browser’s own alone, and what is not theirs', () => {
    expect(actionOf(press('f', { ctrlKey: true }), true)).toBeUndefined();
    expect(actionOf(press('/'), true)).toBeUndefined();
  });

  it('of one character can be switched off; arrows, page keys and space stay (WCAG 2.2, 2.1.4)', () => {
    const heard = KEYS.flatMap(({ keys }) => keys).filter((key) => actionOf(press(key), false) !== undefined);
    expect(heard.filter((key) => key.length === 1)).toEqual([' ']);
    expect(heard).toContain('PageDown');
    expect(actionOf(press('3'), false)).toBeUndefined();
  });

  it('move a large drawing with Shift and the arrows, the way the arrow points', () => {
    expect(panOf({ key: 'ArrowRight', shiftKey: true })?.[0]).toBeLessThan(0);
    expect(panOf({ key: 'ArrowUp', shiftKey: true })?.[1]).toBeGreaterThan(0);
    expect(panOf({ key: 'ArrowRight', shiftKey: false })).toBeUndefined();
  });

  it('have no key twice', () => {
    const all = KEYS.flatMap(({ keys }) => keys);
    expect(new Set(all).size).toBe(all.length);
  });

  it('put quick digits together to a step, and never to one that is not there', () => {
    const digits = new Digits();
    expect(digits.type(1, 1000, 21)).toBe(1);
    expect(digits.type(2, 1400, 21)).toBe(12);
    expect(digits.type(3, 1600, 21)).toBe(3);
    expect(digits.type(4, 9000, 21)).toBe(4);
    expect(digits.type(0, 20_000, 21)).toBeUndefined();
  });
});

describe('the letters', () => {
  const { layout, layoutIds } = loadShelf();

  it.each(LETTERS)(
    'are at least as high as %s asks on a screen of 1366 × 768, in every drawing',
    (letters) => {
      for (const view of ['strip', 'circuit', 'pipework'] as const)
        for (const fit of [0.2, 0.9, 3])
          expect(scaleOf(view, letters, fit, 1) * labelUnits[view]).toBeGreaterThanOrEqual(
            leastLabel[letters],
          );
    },
  );

  it('are 20 px by default, and twice that on a screen twice as wide', () => {
    expect(leastLabel.m).toBe(20);
    expect(scaleOf('circuit', 'm', 0.1, 2) * labelUnits.circuit).toBeCloseTo(40);
  });

  it('let the strip of the unvented three-port fit whole on a screen of 1366 × 768', () => {
    const one = layout('unvented-three-port');
    const drawn = drawStrip(one.system, wiresOf(one), BIG_STRIP);
    expect(drawn.width).toBeLessThanOrEqual(1342);
    // What the switches, the caption of two lines and the edges leave.
    expect(drawn.height).toBeLessThanOrEqual(594);
  });

  it.each(layoutIds)('have the room of their lead on the strip of %s', (id) => {
    const one = layout(id);
    const { boxes } = drawStrip(one.system, wiresOf(one), BIG_STRIP);
    for (const { pins } of boxes)
      for (const [k, pin] of pins.slice(1).entries())
        expect(pin.x - (pins[k]?.x ?? Number.NaN)).toBeGreaterThanOrEqual(BIG_STRIP.leastPitch - 1);
  });

  it('move a picture that is too large so that its middle is in sight, and never past its edge', () => {
    expect(shift(500, 800, 0)).toBe(150);
    expect(shift(2000, 800, 1000)).toBe(-600);
    expect(shift(2000, 800, 10)).toBe(0);
    expect(shift(2000, 800, 1990)).toBe(-1200);
  });
});

describe('the spotlight', () => {
  it('makes one hole of boxes that overlap, even by way of a third', () => {
    const box = (x: number, w: number) => ({ x, y: 0, w, h: 10 });
    expect(union([box(0, 10), box(30, 10)])).toHaveLength(2);
    expect(union([box(0, 10), box(30, 10), box(5, 30)])).toEqual([box(0, 40)]);
  });

  it('has no round corner larger than its box', () => {
    expect(roundBox(0, 0, 10, 4, 14)).toContain('a2 2 ');
  });
});

describe('the ink', () => {
  const stroke: Stroke = {
    colour: 1,
    width: 1,
    points: [
      [0, 0],
      [100, 0],
    ],
  };

  it('stays at the same place of the picture when the window grows', () => {
    const small = frameOf(1366, 768);
    const large = frameOf(2732, 1536);
    expect(toInk(small, 783, 384)).toEqual([100, 0]);
    expect(toInk(large, 1566, 768)).toEqual([100, 0]);
    expect(strokePath(large, stroke)).toBe('M1366 768L1566 768');
  });

  it('is a dot where the pen only touched', () => {
    expect(strokePath(frameOf(1366, 768), { ...stroke, points: [[0, 0]] })).toBe('M683 384l0.01 0');
  });

  it('is erased where the eraser meets a line, between its points too', () => {
    expect(eraseAt([stroke], 50, 5)).toEqual([]);
    const far = [stroke];
    expect(eraseAt(far, 50, 60)).toBe(far);
  });

  it('comes back from the device, and nothing else does', () => {
    const sheets = { 2: [stroke] };
    expect(readSheets(JSON.stringify(sheets))).toEqual(sheets);
    for (const text of [
      '',
      'null',
      '{"2":[{"colour":9}]}',
      '{"x":[]}',
      '{"2":[{"colour":1,"width":1,"points":[["a",1]]}]}',
    ])
      expect(readSheets(text)).toEqual({});
  });
});

describe('the length of a WebM', () => {
  // Ids and sizes by RFC 9559, table 1, and RFC 8794, 4: EBML header, Segment of unknown size, Info, one Cluster.
  const header = [0x1a, 0x45, 0xdf, 0xa3, 0x80];
  const segment = [0x18, 0x53, 0x80, 0x67, 0x01, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff];
  const scale = [0x2a, 0xd7, 0xb1, 0x83, 0x0f, 0x42, 0x40];
  const cluster = [0x1f, 0x43, 0xb6, 0x75, 0x83, 0xe7, 0x81, 0x00];
  const info = [0x15, 0x49, 0xa9, 0x66, 0x80 | scale.length, ...scale];
  const file = new Uint8Array([...header, ...segment, ...info, ...cluster]);

  it('is written where there was none, and nothing else changes', () => {
    expect(durationOf(file)).toBeUndefined();
    const out = withDuration(file, 8000);
    expect(durationOf(out)).toBe(8000);
    expect([...out.slice(-cluster.length)]).toEqual(cluster);
    expect([...out.slice(0, header.length + segment.length)]).toEqual([...header, ...segment]);
  });

  it('counts in the ticks of the file', () => {
    const slow = [...scale.slice(0, 4), 0x1e, 0x84, 0x80];
    const other = new Uint8Array([...header, ...segment, ...info.slice(0, 5), ...slow, ...cluster]);
    expect(durationOf(withDuration(other, 8000))).toBe(8000);
  });

  it('is left alone where there is one, and in what is no WebM', () => {
    const once = withDuration(file, 8000);
    expect(withDuration(once, 1)).toBe(once);
    const noise = new Uint8Array([1, 2, 3, 4]);
    expect(withDuration(noise, 1)).toBe(noise);
  });
});
