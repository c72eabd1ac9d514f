import type { Licence } from '../../src/files/site/licences.ts';

/** The licences of everything of other people's that is in the site, each text once, under the packages it is for. */
export function licenceText(all: readonly Licence[]): string {
  const byText = Map.groupBy(
    all.filter(({ shipped }) => shipped),
    ({ text }) => text,
  );
  const parts = [...byText].map(([text, packages]) => {
    const names = packages.map(({ name, version, licence }) => `${name} ${version} (${licence})`);
    return `${names.join('\n')}\n${'-'.repeat(72)}\n${text}\n`;
  });
  return `Switched Live contains parts of these packages. Their authors gave them under the licences below.\n\n${parts.join('\n\n')}`;
}
