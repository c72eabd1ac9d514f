/** What lunr writes of an index and reads again; only what is used here. */
interface Written {
  version: string;
  fields: string[];
  /** For each field of each entry, by `title/7`: numbers of words, each followed by its weight there. */
  fieldVectors: [string, number[]][];
  /** For each word its number, and in which entries it stands, by field. */
  invertedIndex: [string, { _index: number } & Record<string, unknown>][];
  pipeline: string[];
}

/** A word, and for each field that has it: the field's place, then how far to the next entry and the weight there. */
type Row = [word: string, ...fields: number[][]];

/** An index with each weight written once, which halves what a phone has to fetch. */
export interface Packed {
  version: string;
  fields: string[];
  pipeline: string[];
  rows: Row[];
}

/** Weights keep one decimal. */
const SCALE = 10;

/** Packs what lunr's `toJSON` gives. The entries' references must be whole numbers from 0. */
export function pack(index: object): Packed {
  const { version, fields, pipeline, fieldVectors, invertedIndex } = index as Written;
  const byWord = new Map<number, Map<number, [entry: number, weight: number][]>>();
  for (const [ref, vector] of fieldVectors) {
    const [name = '', entry = ''] = ref.split('/', 2);
    for (let at = 0; at < vector.length; at += 2) {
      const word = vector[at] ?? 0;
      const places = byWord.get(word) ?? new Map<number, [number, number][]>();
      byWord.set(word, places);
      const field = fields.indexOf(name);
      const list = places.get(field) ?? [];
      places.set(field, list);
      list.push([Number(entry), Math.max(1, Math.round((vector[at + 1] ?? 0) * SCALE))]);
    }
  }
  const rows = invertedIndex.map(([word, { _index }]): Row => {
    const places = [...(byWord.get(_index) ?? [])].sort(([a], [b]) => a - b);
    const packed = places.map(([field, list]) => {
      list.sort(([a], [b]) => a - b);
      return [field, ...list.flatMap(([entry, weight], at) => [entry - (list[at - 1]?.[0] ?? 0), weight])];
    });
    return [word, ...packed];
  });
  return { version, fields, pipeline, rows };
}

/** What lunr's `Index.load` reads. */
export function unpack({ version, fields, pipeline, rows }: Packed): object {
  const vectors = new Map<string, number[]>();
  const invertedIndex = rows.map(([word, ...places], number) => {
    const posting: Record<string, unknown> = { _index: number };
    for (const name of fields) posting[name] = {};
    for (const [field = 0, ...list] of places) {
      const name = fields[field] ?? '';
      const entries: Record<string, object> = {};
      let entry = 0;
      for (let at = 0; at < list.length; at += 2) {
        entry += list[at] ?? 0;
        entries[entry] = {};
        const ref = `${name}/${entry}`;
        const vector = vectors.get(ref) ?? [];
        vectors.set(ref, vector);
        vector.push(number, (list[at + 1] ?? 0) / SCALE);
      }
      posting[name] = entries;
    }
    return [word, posting];
  });
  return { version, fields, pipeline, fieldVectors: [...vectors], invertedIndex };
}
