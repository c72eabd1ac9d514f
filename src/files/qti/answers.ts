import type { Answer, Choice, Form, Item } from '../../course/item.ts';
import { readQuantity } from '../../course/items/number.ts';

/** A question that an interaction of QTI can ask, with every answer that counts as right. */
export type Askable =
  | {
      readonly kind: 'choice' | 'order';
      readonly options: readonly Choice[];
      /** Whether several may be chosen. */
      readonly many: boolean;
      /** Every right answer, as ids of options; the first is the item's own. */
      readonly right: readonly (readonly string[])[];
    }
  | {
      readonly kind: 'number';
      readonly unit: string;
      readonly value: number;
      /** How far below and above still counts as right. */
      readonly tolerance: readonly [below: number, above: number];
    };

/** Orders of more steps than these are too many to judge one by one. */
const MOST_STEPS = 7;

type Options = Extract<Form, { kind: 'choice' | 'mark' | 'order' }>;

const optionsOf = (form: Options): readonly Choice[] =>
  form.kind === 'choice' ? form.options : form.kind === 'mark' ? form.among : form.steps;

const answerOf = ({ kind }: Options, ids: readonly string[]): Answer =>
  kind === 'choice' ? { kind, chosen: ids } : kind === 'mark' ? { kind, marked: ids } : { kind, steps: ids };

const idsOf = (answer: Answer): readonly string[] =>
  answer.kind === 'choice'
    ? answer.chosen
    : answer.kind === 'mark'
      ? answer.marked
      : answer.kind === 'order'
        ? answer.steps
        : [];

function* permutations(of: readonly string[]): Generator<readonly string[]> {
  if (of.length === 0) yield [];
  for (const [k, first] of of.entries())
    for (const rest of permutations(of.toSpliced(k, 1))) yield [first, ...rest];
}

/** Every right answer, found by asking the item's own judge; undefined where nobody could list them. */
function rightOf({ answer, judge }: Item, form: Options): readonly (readonly string[])[] | undefined {
  const own = idsOf(answer);
  const isRight = (ids: readonly string[]) => judge(answerOf(form, ids)).right;
  const all = optionsOf(form).map(({ id }) => id);
  const withOwn = (found: readonly (readonly string[])[]) => [
    own,
    ...found.filter((ids) => ids.join(' ') !== own.join(' ')),
  ];
  if (form.kind === 'order')
    return all.length > MOST_STEPS ? undefined : withOwn([...permutations(all)].filter(isRight));
  const one = form.kind === 'choice' ? !form.many : form.one;
  if (one) return withOwn(all.map((id) => [id]).filter(isRight));
  // A set is the only right one when no change of one member is right as well.
  const changed = all.map((id) => (own.includes(id) ? own.filter((other) => other !== id) : [...own, id]));
  return changed.some(isRight) ? undefined : [own];
}

/** Digits after the point that a limit is found to. */
const DIGITS = 6;

/** How far from a value the judge goes along, one way, in steps of a millionth and never more than it does. */
function reach(accepts: (value: number) => boolean, value: number, way: 1 | -1): number {
  let sure = 0;
  let tooFar = Math.max(Math.abs(value), 1);
  if (accepts(value + way * tooFar)) return tooFar;
  for (let k = 0; k < 60; k++) {
    const middle = (sure + tooFar) / 2;
    if (accepts(value + way * middle)) sure = middle;
    else tooFar = middle;
  }
  // The judge allows for what binary cannot hold: a limit of 0.5 is found as 0.5000000001.
  return Math.floor(sure * 10 ** DIGITS + 0.01) / 10 ** DIGITS;
}

/** The question as an interaction of QTI can ask it, or undefined: wirings and settings fit none. */
export function askable(item: Item): Askable | undefined {
  const { form, answer, judge } = item;
  if (form.kind === 'place' || form.kind === 'set') return undefined;
  if (form.kind !== 'number') {
    const right = rightOf(item, form);
    if (!right) return undefined;
    const many = form.kind === 'choice' ? form.many : form.kind === 'mark' && !form.one;
    const kind = form.kind === 'order' ? 'order' : 'choice';
    return { kind, options: optionsOf(form), many, right };
  }
  const read = readQuantity(answer.kind === 'number' ? answer.typed : '', form.accepts);
  if (read.kind !== 'value') return undefined;
  const { value } = read;
  const unit = form.accepts[0] ?? form.unit;
  const accepts = (tried: number) => {
    const digits = tried.toFixed(DIGITS + 6);
    return judge({ kind: 'number', typed: `${digits} ${unit}` }).right;
  };
  return {
    kind: 'number',
    unit: form.unit,
    value,
    tolerance: [reach(accepts, value, -1), reach(accepts, value, 1)],
  };
}
