/** Units that make a number a figure somebody must vouch for. Longer ones first, so that none hides in another. */
const units = [
  ...[
    'mV/A/m',
    'mΩ/m',
    'kWh/24 h',
    'kJ/kg',
    'L/min',
    'kg/m³',
    'W/K',
    '°C',
    'mm²',
    'm²',
    'kWh',
    'MΩ',
    'kΩ',
    'mΩ',
  ],
  ...[
    'litres a minute',
    'litres',
    'litre',
    'minutes',
    'minute',
    'seconds',
    'second',
    'hours',
    'hour',
    'days',
    'weeks',
  ],
  ...[
    'months',
    'years',
    'metres',
    'metre',
    'degrees',
    'volts',
    'amps',
    'watts',
    'ohms',
    'bar',
    'kW',
    'mA',
    'mm',
    'Hz',
  ],
  ...['per cent', '%', 'Ω', 'min', 'V', 'A', 'W', 'K', 'L', 'm', 's', 'h', 'times'],
];
const number = String.raw`\d[\d,]*(?:\.\d+)?[½¼¾]?`;
const unit = units.map((name) => name.replace(/[/.]/g, String.raw`\$&`)).join('|');
const pattern = new RegExp(
  String.raw`(?<![\w.-])(${number})(?:\s*(?:to|and|–|or)\s*(${number}))?[\s\u00a0]*(${unit})(?![\w/²³])`,
  'gu',
);

/**
 * The numbers with a unit that a lesson's text gives, each as "60 °C"; "60 to 65 °C" gives both. Settings that a
 * component is given are not text.
 */
export function quantitiesIn(text: string): string[] {
  const found = [...text.matchAll(pattern)].flatMap(([, first, last, of]) =>
    [first, last].filter((value) => value !== undefined).map((value) => `${value.replace(/,/g, '')} ${of}`),
  );
  return [...new Set(found)];
}
