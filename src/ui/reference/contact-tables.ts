import type { ContactSpec, PartKind, PartState } from '../../engine/model/part.ts';

/** What can be set about a part, or the position of its mechanism, and the choices it has, from rest. */
interface Dimension {
  /** An input's slot; undefined for the mechanism. */
  readonly slot?: string;
  readonly choices: readonly string[];
}

/** Contacts that hang on the same settings, and which of them are closed in each. */
export interface ContactTable {
  /** What decides, by name: `hot-water`, `position`. */
  readonly decides: readonly string[];
  readonly contacts: readonly ContactSpec[];
  readonly rows: readonly { readonly state: readonly string[]; readonly closed: readonly boolean[] }[];
}

const dimensionsOf = (kind: PartKind): Dimension[] => [
  ...(kind.inputs ?? []).map(({ slot, settings }) => ({ slot, choices: settings })),
  ...(kind.motion ? [{ choices: kind.motion.positions }] : []),
];

/** Every combination of one choice each; what is not varied stays at rest. */
function combinations(dimensions: readonly Dimension[], varied: readonly Dimension[]): string[][] {
  return dimensions.reduce<string[][]>(
    (rows, dimension) => {
      const choices = varied.includes(dimension) ? dimension.choices : dimension.choices.slice(0, 1);
      return rows.flatMap((row) => choices.map((choice) => [...row, choice]));
    },
    [[]],
  );
}

function stateOf(dimensions: readonly Dimension[], choices: readonly string[]): PartState {
  const setting: Record<string, string> = {};
  let position = '';
  dimensions.forEach(({ slot }, k) => {
    if (slot === undefined) position = choices[k] ?? '';
    else setting[slot] = choices[k] ?? '';
  });
  return { setting, position };
}

/**
 * The truth tables of a kind of part, worked out from its contacts: contacts that hang on the same settings share a
 * table, so that a programmer has one for each channel and not one of all mixes.
 */
export function contactTables(kind: PartKind): ContactTable[] {
  const dimensions = dimensionsOf(kind);
  const all = combinations(dimensions, dimensions);
  /** A contact hangs on a dimension when some change of that alone opens or closes it. */
  const matters = ({ closed }: ContactSpec, at: number): boolean =>
    all.some((row) => {
      const now = closed(stateOf(dimensions, row));
      return (dimensions[at]?.choices ?? []).some(
        (choice) => closed(stateOf(dimensions, row.with(at, choice))) !== now,
      );
    });

  const groups = new Map<string, { varied: Dimension[]; contacts: ContactSpec[] }>();
  for (const contact of kind.contacts ?? []) {
    const varied = dimensions.filter((_, at) => matters(contact, at));
    const key = varied.map(({ slot }) => slot ?? 'position').join('/');
    const group = groups.get(key);
    if (group) group.contacts.push(contact);
    else groups.set(key, { varied, contacts: [contact] });
  }
  return [...groups.values()].map(({ varied, contacts }) => ({
    decides: varied.map(({ slot }) => slot ?? 'position'),
    contacts,
    rows: combinations(dimensions, varied).map((row) => ({
      state: row.filter((_, at) => dimensions.some((one, k) => k === at && varied.includes(one))),
      closed: contacts.map(({ closed }) => closed(stateOf(dimensions, row))),
    })),
  }));
}
