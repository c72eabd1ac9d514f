import type { Item, Scene } from '../../course/item.ts';
import type { Shelf } from '../../course/task.ts';
import { partOf } from '../../engine/model/system.ts';
import { escapeXml } from '../xml.ts';
import { type Askable, askable } from './answers.ts';

/** QTI 3 names things by letters, digits, hyphens, dots and underscores, a letter first (ASI 3.0, `Identifier`). */
export const qtiId = (address: string): string =>
  `q-${address.replace(/[^a-zA-Z0-9]+/g, (sign) => (sign === '-' ? '-' : '_'))}`;

const optionId = (k: number): string => `o${k + 1}`;
const p = (text: string): string => `<p>${escapeXml(text)}</p>`;
const values = (ids: readonly string[]): string => ids.map((id) => `<qti-value>${id}</qti-value>`).join('');
const base = (type: string, value: string | number): string =>
  `<qti-base-value base-type="${type}">${value}</qti-base-value>`;

const MATCH = 'https://purl.imsglobal.org/spec/qti/v3p0/rptemplates/match_correct.xml';

/** The wiring that a question is about, as a table: whoever is asked elsewhere has no drawing of ours. */
function wiring(shelf: Shelf, scene: Scene | undefined): string {
  if (!scene) return '';
  const { system } = shelf.layout(scene.layout);
  const named = (terminal: string): string => {
    const node = system.nodeOf.get(terminal);
    const mark = terminal.slice(terminal.indexOf('/') + 1);
    if (node === undefined) return terminal;
    const part = partOf(system, node);
    return part.kind.kind === 'strip' ? `Terminal ${mark}` : `${part.name} ${mark}`;
  };
  const rows = scene.wires
    .map(([one, other]) => `<tr><td>${escapeXml(named(one))}</td><td>${escapeXml(named(other))}</td></tr>`)
    .join('');
  return `<p>How it is wired, wire by wire:</p><table><thead><tr><th>From</th><th>To</th></tr></thead><tbody>${rows}</tbody></table>`;
}

interface Parts {
  readonly declaration: string;
  readonly body: string;
  readonly processing: string;
  readonly feedback: string;
}

const scoreIf = (condition: string, more = ''): string =>
  `<qti-response-processing><qti-response-condition><qti-response-if>${condition}` +
  `<qti-set-outcome-value identifier="SCORE">${base('float', 1)}</qti-set-outcome-value></qti-response-if>` +
  `<qti-response-else><qti-set-outcome-value identifier="SCORE">${base('float', 0)}</qti-set-outcome-value></qti-response-else>` +
  `</qti-response-condition>${more}</qti-response-processing>`;

const says = (outcome: string, title: string, text: readonly string[]): string =>
  `<qti-modal-feedback outcome-identifier="FEEDBACK" identifier="${outcome}" show-hide="show" title="${title}">` +
  `<qti-content-body>${text.map(p).join('')}</qti-content-body></qti-modal-feedback>`;

function numberParts({ value, unit, tolerance }: Extract<Askable, { kind: 'number' }>): Parts {
  const [below, above] = tolerance;
  const equal =
    `<qti-equal tolerance-mode="absolute" tolerance="${below} ${above}">` +
    `<qti-correct identifier="RESPONSE"/><qti-variable identifier="RESPONSE"/></qti-equal>`;
  return {
    declaration: `<qti-response-declaration identifier="RESPONSE" cardinality="single" base-type="float"><qti-correct-response>${values([String(value)])}</qti-correct-response></qti-response-declaration>`,
    body: `<p>The number alone, in ${escapeXml(unit)}: <qti-text-entry-interaction response-identifier="RESPONSE" expected-length="12"/></p>`,
    processing: scoreIf(equal),
    feedback: '',
  };
}

/** What a chosen option leads to, in the words that the item has for it. */
function optionFeedback(
  { form, judge }: Item,
  options: Extract<Askable, { kind: 'choice' | 'order' }>['options'],
): string {
  return options
    .map(({ id }, k) => {
      const answer =
        form.kind === 'mark'
          ? ({ kind: 'mark', marked: [id] } as const)
          : ({ kind: 'choice', chosen: [id] } as const);
      const { right, notes } = judge(answer);
      const [note] = notes;
      if (right || !note) return '';
      return says(optionId(k), 'Not yet', [note.cause, note.consequence, note.look].filter(Boolean));
    })
    .join('');
}

function choiceParts(item: Item, ask: Extract<Askable, { kind: 'choice' | 'order' }>): Parts {
  const { kind, options, many, right } = ask;
  const nameOf = (id: string) => optionId(options.findIndex((one) => one.id === id));
  const cardinality = kind === 'order' ? 'ordered' : many ? 'multiple' : 'single';
  const shown = options
    .map(
      ({ says: text }, k) =>
        `<qti-simple-choice identifier="${optionId(k)}">${escapeXml(text)}</qti-simple-choice>`,
    )
    .join('');
  const own = (right[0] ?? []).map(nameOf);
  const body =
    kind === 'order'
      ? `<qti-order-interaction response-identifier="RESPONSE" shuffle="false">${shown}</qti-order-interaction>`
      : `<qti-choice-interaction response-identifier="RESPONSE" shuffle="false" max-choices="${many ? 0 : 1}">${shown}</qti-choice-interaction>`;
  const declaration = `<qti-response-declaration identifier="RESPONSE" cardinality="${cardinality}" base-type="identifier"><qti-correct-response>${values(own)}</qti-correct-response></qti-response-declaration>`;
  const one = (ids: readonly string[]): string => {
    const all = ids.map((id) => base('identifier', nameOf(id))).join('');
    const whole = cardinality === 'single' ? all : `<qti-${cardinality}>${all}</qti-${cardinality}>`;
    return `<qti-match><qti-variable identifier="RESPONSE"/>${whole}</qti-match>`;
  };
  const any = right.length === 1 ? one(right[0] ?? []) : `<qti-or>${right.map(one).join('')}</qti-or>`;
  if (cardinality !== 'single') {
    const processing = right.length === 1 ? `<qti-response-processing template="${MATCH}"/>` : scoreIf(any);
    return { declaration, body, processing, feedback: '' };
  }
  const told =
    '<qti-set-outcome-value identifier="FEEDBACK"><qti-variable identifier="RESPONSE"/></qti-set-outcome-value>';
  return { declaration, body, processing: scoreIf(any, told), feedback: optionFeedback(item, options) };
}

/** An assessment item of QTI 3. */
export interface QtiItem {
  readonly id: string;
  readonly kind: Askable['kind'];
  readonly xml: string;
}

/**
 * A question as an assessment item of QTI 3 (1EdTech QTI ASI 3.0), or undefined where no standard interaction asks the
 * like of it.
 * @param title what it shows, in a few words
 */
export function qtiItem(shelf: Shelf, item: Item, title: string): QtiItem | undefined {
  const ask = askable(item);
  if (!ask) return undefined;
  const { declaration, body, processing, feedback } =
    ask.kind === 'number' ? numberParts(ask) : choiceParts(item, ask);
  const id = qtiId(item.id);
  const outcome = feedback
    ? '<qti-outcome-declaration identifier="FEEDBACK" cardinality="single" base-type="identifier"/>'
    : '';
  const xml = `<?xml version="1.0" encoding="UTF-8"?>
<qti-assessment-item xmlns="http://www.imsglobal.org/xsd/imsqtiasi_v3p0" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance" xsi:schemaLocation="http://www.imsglobal.org/xsd/imsqtiasi_v3p0 https://purl.imsglobal.org/spec/qti/v3p0/schema/xsd/imsqti_asiv3p0p1_v1p0.xsd" identifier="${id}" title="${escapeXml(title)}" adaptive="false" time-dependent="false" xml:lang="en-GB">
${declaration}
<qti-outcome-declaration identifier="SCORE" cardinality="single" base-type="float"><qti-default-value><qti-value>0</qti-value></qti-default-value></qti-outcome-declaration>
${outcome}<qti-item-body>${wiring(shelf, item.scene)}${p(item.ask)}${body}</qti-item-body>
${processing}
${feedback}</qti-assessment-item>
`;
  return { id, kind: ask.kind, xml };
}
