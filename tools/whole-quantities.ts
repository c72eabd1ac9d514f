const quantity = /(\d[½¼¾]?) (?=(?:°C|kWh|kW|mm²?|m[²³]?|bar|[MkmΩ]?Ω|mA|V|A|W|K|L|s|h|%)(?![\w²³]))/gu;

/** Keeps a number and its unit on one line in lessons: “9 m” never breaks after the 9. */
export default function wholeQuantities() {
  return {
    name: 'whole-quantities',
    enforce: 'pre' as const,
    transform: (code: string, id: string) =>
      id.endsWith('.mdx') ? code.replace(quantity, '$1\u00a0') : undefined,
  };
}
