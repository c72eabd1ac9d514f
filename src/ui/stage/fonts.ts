import readFont from '@fontsource-variable/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-wght-normal.woff2?url';
import headFont from '@fontsource-variable/bricolage-grotesque/files/bricolage-grotesque-latin-wght-normal.woff2?url';

const FONTS = [
  ['Atkinson Hyperlegible Next Variable', readFont],
  ['Bricolage Grotesque Variable', headFont],
] as const;

const base64 = (bytes: Uint8Array): string => {
  let text = '';
  for (let k = 0; k < bytes.length; k += 0x8000)
    text += String.fromCharCode(...bytes.subarray(k, k + 0x8000));
  return btoa(text);
};

let rules: Promise<string> | undefined;

/** The site's two typefaces as `@font-face` rules with the fonts inside: an SVG that becomes a picture can fetch nothing. */
export function fontRules(): Promise<string> {
  rules ??= Promise.all(
    FONTS.map(async ([name, url]) => {
      const bytes = new Uint8Array(await (await fetch(url)).arrayBuffer());
      return `@font-face{font-family:'${name}';font-weight:200 800;src:url(data:font/woff2;base64,${base64(bytes)}) format('woff2')}`;
    }),
  ).then((all) => all.join(''));
  return rules;
}
