import { describe, expect, it } from 'vitest';
import { findKind, kindNames } from '../../src/engine/parts/index.ts';
import { parsePartNotes } from '../../src/files/part-notes.ts';
import { loadPartNotes, partPages } from '../../src/files/site/parts.ts';
import { terminalAnchor } from '../../src/files/terminal-anchor.ts';
import { contactTables } from '../../src/ui/reference/contact-tables.ts';
import { loadRows, sayLoad } from '../../src/ui/reference/load-rows.ts';
import { groupParts } from '../../src/ui/reference/part-groups.ts';
import { terminalRows } from '../../src/ui/reference/terminal-rows.ts';

const kindOf = (name: string) => {
  const kind = findKind(name, {});
  if (!kind) throw new Error(`no kind ${name}`);
  return kind;
};

describe('the notes on parts', () => {
  const notes = loadPartNotes();

  it('has one entry for every kind of part, and none for a kind that is not there', () => {
    expect([...notes.keys()].sort()).toEqual(kindNames().sort());
  });

  it.each([...notes].map(([kind, { does }]) => [kind, does]))(
    'says what %s is for in one or two sentences',
    (_, does) => {
      const sentences = does?.match(/[.?!](?=\s+[A-Z]|$)/g)?.length;
      expect(sentences).toBeGreaterThanOrEqual(1);
      expect(sentences).toBeLessThanOrEqual(3);
    },
  );

  it('refuses a key it does not know, and says where', () => {
    expect(() => parsePartNotes('pump: {does: Pumps., alos: [x]}', 'parts.yaml')).toThrow(
      /parts\.yaml: pump: expected one of does, also, caution \(did you mean "also"\?\)/,
    );
  });
});

describe('the pages of parts', () => {
  it('every kind has a page, and a place in a group', () => {
    const pages = partPages();
    expect(pages.map(({ kind }) => kind.kind).sort()).toEqual(kindNames().sort());
    const grouped = groupParts(pages).flatMap(({ pages: found }) => found);
    expect(grouped).toHaveLength(pages.length);
  });

  it('every terminal of a kind has a place of its own on the page', () => {
    for (const { kind } of partPages()) {
      const anchors = kind.terminals.map(({ id }) => terminalAnchor(id));
      expect(new Set(anchors).size, kind.kind).toBe(anchors.length);
    }
  });

  it('the ways of a strip are one row', () => {
    expect(terminalRows(kindOf('strip')).map(({ name }) => name)).toEqual(['1 to 12']);
    expect(terminalRows(kindOf('pump')).map(({ name }) => name)).toEqual(['L', 'N', 'E']);
  });
});

describe('the truth tables', () => {
  it.each(kindNames())('of %s say of every contact in every state what the kind says', (name) => {
    const kind = kindOf(name);
    const tables = contactTables(kind);
    expect(tables.flatMap(({ contacts }) => contacts.map(({ id }) => id)).sort()).toEqual(
      (kind.contacts ?? []).map(({ id }) => id).sort(),
    );
    for (const { rows } of tables)
      expect(new Set(rows.map(({ state }) => state.join('/'))).size).toBe(rows.length);
    // Every state the part can be in, not only those that a table happens to show.
    let settings: Record<string, string>[] = [{}];
    for (const { slot, settings: both } of kind.inputs ?? [])
      settings = settings.flatMap((set) => both.map((one) => ({ ...set, [slot]: one })));
    for (const setting of settings) {
      for (const position of kind.motion?.positions ?? ['']) {
        const now: Record<string, string> = { ...setting, position };
        for (const { decides, contacts, rows } of tables) {
          const row = rows.find(({ state }) => decides.every((what, k) => state[k] === now[what]));
          const closed = contacts.map((contact) => contact.closed({ setting, position }));
          expect(row?.closed, `${contacts.map(({ id }) => id)} in ${JSON.stringify(now)}`).toEqual(closed);
        }
      }
    }
  });

  it('a programmer has a table for each channel, not one of all mixes', () => {
    const tables = contactTables(kindOf('two-channel-programmer'));
    expect(tables.map(({ decides, rows }) => [decides, rows.length])).toEqual([
      [['hot-water'], 2],
      [['heating'], 2],
    ]);
  });

  it('a two-port’s end switch is closed in one position of three', () => {
    const [table] = contactTables(kindOf('two-port-valve'));
    expect(table?.rows).toEqual([
      { state: ['shut'], closed: [false] },
      { state: ['part open'], closed: [false] },
      { state: ['open'], closed: [true] },
    ]);
  });
});

describe('the loads', () => {
  // Current sum of a typical set of controls, common practice: pump 60 W, valve motor 6 W, heat-only boiler 140 W.
  it.each([
    ['pump', 'motor', '60 W, 0.26 A'],
    ['two-port-valve', 'motor', '6 W, 26 mA'],
    ['boiler', 'electronics', '140 W, 0.61 A'],
  ])('of %s: the %s takes %s at 230 V', (name, load, says) => {
    const row = loadRows(kindOf(name)).find(({ id }) => id === load);
    expect(sayLoad(row?.watts ?? 0, row?.amps ?? 0)).toBe(says);
  });

  it('a half-wave feed has no plain figure', () => {
    const row = loadRows(kindOf('mid-position-valve')).find(({ id }) => id === 'half wave');
    expect(row?.watts).toBeUndefined();
    expect(row?.says).toContain('diode');
  });
});
