const unit = '%|°C|K|Ω|mΩ|V|A|W|kW|kWh|kJ/kg|W/K|kg|mm|mm²|m|L|L/min|litres|bar|min|minutes';
const gap = new RegExp(`(?<=\\d) (?=(?:${unit})(?![\\p{L}\\d]))`, 'gu');

/** Keeps each number and its unit on one line. */
export function keepUnits(text: string): string {
  return text.replace(gap, '\u00a0');
}
