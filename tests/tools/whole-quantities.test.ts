import { expect, it } from 'vitest';
import wholeQuantities from '../../tools/whole-quantities.ts';

const transform = (text: string, name = 'a.mdx') => wholeQuantities().transform(text, name) ?? text;

it('A number keeps its unit beside it, in text and in captions', () => {
  expect(transform('at 60 to 65 °C, 9 m of 22 mm; 3 A and 1½ h')).toBe(
    'at 60 to 65\u00a0°C, 9\u00a0m of 22\u00a0mm; 3\u00a0A and 1½\u00a0h',
  );
  expect(transform("says: '0.75 mm² flex'")).toBe("says: '0.75\u00a0mm² flex'");
});

it('Words that only begin like a unit, settings of components and other files are left alone', () => {
  for (const text of ['2 made of', 'seed={3} />', 'step 4 was', '1 And']) expect(transform(text)).toBe(text);
  expect(transform('9 m', 'a.ts')).toBe('9 m');
});
