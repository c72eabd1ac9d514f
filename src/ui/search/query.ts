import lunr from 'lunr';
import { unpack } from '../../files/search-pack.ts';
import type { Entry, SearchFile } from '../../files/site/searchIndex.ts';

/** A found entry, and the word stems that it was found by. */
export interface Hit {
  entry: Entry;
  stems: Set<string>;
}

/** Makes a finder of a search file. Each word counts whole, as the start of a longer one, or with one letter wrong. */
export function finder({ entries, index }: SearchFile): (words: string) => Hit[] {
  const ready = lunr.Index.load(unpack(index));
  return (words) => {
    const tokens = lunr
      .tokenizer(words)
      .map(String)
      .filter((token) => /[a-z0-9]/.test(token));
    if (tokens.length === 0) return [];
    // “HW-OFF” is also in the index as one word, which “off” alone is too common to be.
    const joined = words.toLowerCase().match(/\w+(?:-\w+)+/g) ?? [];
    return ready
      .query((query) => {
        query.term(words.toLowerCase().replace(/[^a-z0-9]/g, ''), { boost: 30, fields: ['whole'] });
        for (const word of joined) query.term(word.replaceAll('-', ''), { boost: 20 });
        for (const token of tokens) {
          query.term(token, { boost: 10 });
          if (token.length > 2)
            query.term(token, { boost: 2, wildcard: lunr.Query.wildcard.TRAILING, usePipeline: false });
          if (token.length > 4) query.term(token, { editDistance: 1 });
        }
      })
      .flatMap(({ ref, matchData }) => {
        const entry = entries[Number(ref)];
        return entry ? [{ entry, stems: new Set(Object.keys(matchData.metadata)) }] : [];
      });
  };
}
