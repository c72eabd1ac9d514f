/** The sizes of pictures, in pixels. Slides are laid out at the smaller one and enlarged. */
export const PICTURES = {
  hd: { width: 1920, height: 1080, name: '1920 × 1080' },
  uhd: { width: 3840, height: 2160, name: '3840 × 2160' },
} as const;
export type PictureSize = keyof typeof PICTURES;

/** An SVG text as an image that a canvas can draw. @throws Error when the browser cannot read it */
export async function imageOf(svg: string): Promise<HTMLImageElement> {
  const url = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  try {
    const image = new Image();
    image.src = url;
    await image.decode();
    return image;
  } finally {
    URL.revokeObjectURL(url);
  }
}

/** An SVG text as a PNG of a size in pixels. @throws Error when the browser cannot make it */
export async function pngOf(
  svg: string,
  { width, height }: { width: number; height: number },
): Promise<Uint8Array> {
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  const context = canvas.getContext('2d');
  if (!context) throw new Error('This browser has no canvas to draw on.');
  context.drawImage(await imageOf(svg), 0, 0, width, height);
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'));
  if (!blob) throw new Error('This browser cannot make a picture of this size.');
  return new Uint8Array(await blob.arrayBuffer());
}

/** Offers bytes to be kept as a file. */
export function keepBytes(name: string, bytes: Uint8Array<ArrayBuffer> | Blob | string, type: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(bytes instanceof Blob ? bytes : new Blob([bytes], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
