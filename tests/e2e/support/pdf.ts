import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { Page } from 'playwright-core';

/** A piece of text on a sheet; points from the left and from the top. */
export interface PaperText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface PaperSheet {
  /** Points; A4 is 595 by 842. */
  readonly width: number;
  readonly height: number;
  readonly texts: readonly PaperText[];
  /** Everything that is written on it, in one line. */
  readonly says: string;
  /** Colours that something is filled or drawn with, as `#rrggbb`. */
  readonly colours: ReadonlySet<string>;
}

/** What Chromium prints of a page as it stands, sheet by sheet. */
export async function sheetsOf(page: Page): Promise<PaperSheet[]> {
  const data = new Uint8Array(await page.pdf({ preferCSSPageSize: true, printBackground: false }));
  const task = getDocument({ data, verbosity: 0 });
  const pdf = await task.promise;
  const sheets: PaperSheet[] = [];
  for (let k = 1; k <= pdf.numPages; k++) {
    const sheet = await pdf.getPage(k);
    const { width, height } = sheet.getViewport({ scale: 1 });
    const { items } = await sheet.getTextContent();
    const texts = items.flatMap((item): PaperText[] => {
      if (!('str' in item) || item.str.trim() === '') return [];
      const [, , , , x = 0, y = 0] = item.transform as number[];
      return [{ text: item.str, x, y: height - y, width: item.width, height: item.height }];
    });
    const { fnArray, argsArray } = await sheet.getOperatorList();
    const colours = new Set(
      fnArray.flatMap((op, at) =>
        op === OPS.setFillRGBColor || op === OPS.setStrokeRGBColor ? [String(argsArray[at][0])] : [],
      ),
    );
    const says = items
      .map((item) => ('str' in item ? item.str + (item.hasEOL ? ' ' : '') : ''))
      .join('')
      .replace(/\s+/g, ' ');
    sheets.push({ width, height, texts, says, colours });
  }
  await task.destroy();
  return sheets;
}
