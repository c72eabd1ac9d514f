import type { System } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import { wiresFromLink } from '../../files/link.ts';
import { fetchLayoutOf } from '../course/shelf.ts';
import { keptWires } from '../wiring/keep.ts';
import { wiringList } from './lists.ts';

/*
  The learner's own wiring on paper: out of the address (`#w=`), or else what this device keeps for the job. The sheet
  stands empty and hidden in the page until there is something to write on it.
*/

function write(sheet: HTMLElement, system: System, wires: readonly Wire[]): void {
  const body = sheet.querySelector('tbody');
  body?.replaceChildren(
    ...wiringList(system, wires).map(({ number, from, core, to }) => {
      const row = document.createElement('tr');
      const head = document.createElement('th');
      head.scope = 'row';
      head.textContent = String(number);
      const cells = [from, core, to, ''].map((text) => {
        const cell = document.createElement('td');
        cell.textContent = text;
        return cell;
      });
      row.append(head, ...cells);
      return row;
    }),
  );
  const count = sheet.querySelector('[data-count]');
  if (count) count.textContent = wires.length === 1 ? 'One wire.' : `${wires.length} wires.`;
}

/** Fills the sheet of the learner's own wires and shows it, or says why it cannot. */
export async function showOwn(sheet: HTMLElement, status: HTMLElement): Promise<void> {
  const { job = '', system: id = '' } = sheet.dataset;
  const text = /^#w=([\w-]+)$/.exec(location.hash)?.[1];
  try {
    const { system } = await fetchLayoutOf(id);
    const linked = text === undefined ? undefined : wiresFromLink(system, text);
    if (linked && 'problem' in linked) {
      status.textContent = `Your own wiring is not among the sheets. ${linked.problem}`;
      return;
    }
    const wires = linked ?? keptWires(job, system.nodeOf) ?? [];
    if (wires.length === 0) return;
    write(sheet, system, wires);
    for (const part of document.querySelectorAll<HTMLElement>('[data-own]')) part.hidden = false;
    status.textContent = `Your own wiring is among the sheets${linked ? ', out of the link' : ', as this device keeps it'}.`;
  } catch {
    status.textContent =
      'Your own wiring could not be put on paper: the layout could not be fetched. Check the connection, and try again.';
  }
}
