/**
 * Brings the comparison to life: rows that do not fit the choices are hidden, the rest sorted, their number said. Rows
 * carry what is asked of them in data attributes; without scripts the form stays hidden and the whole table stands.
 */
export function start(form: HTMLFormElement, body: HTMLTableSectionElement, count: Element): void {
  const rows = [...body.rows];
  const choice = (name: string): string => String(new FormData(form).get(name) ?? '');
  const fits = (row: HTMLTableRowElement, name: string): boolean =>
    choice(name) === '' || row.dataset[name] === choice(name);

  const run = (): void => {
    const words = choice('words').toLowerCase().split(/\s+/);
    const by = choice('sort');
    // Sorting is stable: rows come from the server by name.
    const sorted = by
      ? rows.toSorted((a, b) => (a.dataset[by] ?? '').localeCompare(b.dataset[by] ?? ''))
      : rows;
    let shown = 0;
    for (const row of sorted) {
      const names = row.dataset.names ?? '';
      row.hidden = !(
        fits(row, 'unvented') &&
        fits(row, 'valves') &&
        fits(row, 'interlock') &&
        words.every((word) => names.includes(word))
      );
      if (!row.hidden) shown++;
    }
    body.append(...sorted);
    count.textContent = shown === rows.length ? `All ${shown} layouts` : `${shown} of ${rows.length} layouts`;
  };
  form.hidden = false;
  form.addEventListener('input', run);
  form.addEventListener('reset', () => setTimeout(run));
  form.addEventListener('submit', (event) => event.preventDefault());
  run();
}
