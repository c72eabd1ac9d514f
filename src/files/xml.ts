const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  '\n': '&#10;',
  '\t': '&#9;',
};

/** Characters that XML 1.0 (5th edition, production 2, `Char`) has no way to write. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones to be left out
const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Surrogate}/gu;

/** Text as the content of an element or the value of an attribute; what XML cannot hold is left out. */
export const escapeXml = (text: string): string =>
  text
    .replace(/\r\n?/g, '\n')
    .replace(FORBIDDEN, '')
    .replace(/[&<>"\n\t]/g, (one) => ENTITIES[one] ?? one);

/** The path of a file as a relative reference: what an address cannot hold is encoded, the slashes stay. */
export const fileReference = (path: string): string => path.split('/').map(encodeURIComponent).join('/');
