/** Where JSON text breaks: an offset in UTF-16 units, and what should have stood there. */
export interface JsonBreak {
  readonly offset: number;
  readonly expected: string;
}

const space = /[ \t\r\n]*/y;
const letters = /[ !#-[\]-\uffff]*/y;
const escaped = /\\(?:["\\/bfnrt]|u[\dA-Fa-f]{4})/y;
const plain = /(?:true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[Ee][+-]?\d+)?)(?![\w.+-])/y;

/** Finds the first place at which text stops being JSON. Keeps its own stack, so depth costs no calls. */
export function whereJsonBreaks(text: string): JsonBreak {
  const open: ('{' | '[')[] = [];
  let at = 0;
  let next: 'value' | 'key' | 'colon' | 'more' = 'value';
  let mayClose = false;
  const take = (token: RegExp): boolean => {
    token.lastIndex = at;
    if (!token.test(text)) return false;
    at = token.lastIndex;
    return true;
  };
  const close = () => {
    at++;
    open.pop();
    next = 'more';
  };

  for (;;) {
    take(space);
    const char = text[at];
    const inside = open.at(-1);
    const closing = inside === '{' ? '}' : ']';
    if (char === '"' && next !== 'colon' && next !== 'more') {
      at++;
      // In turns, not as one pattern: unclosed text a megabyte long must not send a pattern searching back.
      do take(letters);
      while (take(escaped));
      if (text[at] !== '"') return { offset: at, expected: 'text that ends with a quotation mark' };
      at++;
      next = next === 'key' ? 'colon' : 'more';
    } else if (next === 'colon') {
      if (char !== ':') return { offset: at, expected: 'a colon' };
      at++;
      next = 'value';
    } else if (next === 'key') {
      if (!(char === '}' && mayClose)) return { offset: at, expected: 'a key in quotation marks' };
      close();
    } else if (next === 'value') {
      if (char === '{' || char === '[') {
        open.push(char);
        at++;
        next = char === '{' ? 'key' : 'value';
        mayClose = true;
        continue;
      }
      if (char === ']' && inside === '[' && mayClose) close();
      else if (take(plain)) next = 'more';
      else return { offset: at, expected: 'a value' };
    } else if (inside === undefined) {
      return { offset: at, expected: 'nothing more' };
    } else if (char === ',') {
      at++;
      next = inside === '{' ? 'key' : 'value';
    } else if (char === closing) {
      close();
    } else {
      return { offset: at, expected: `a comma or ${closing}` };
    }
    mayClose = false;
  }
}
