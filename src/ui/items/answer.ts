import type { Answer, Choice, Form } from '../../course/item.ts';

/** An answer in which nothing has been given yet. */
export function emptyAnswer(form: Form): Answer {
  switch (form.kind) {
    case 'choice':
      return { kind: 'choice', chosen: [] };
    case 'mark':
      return { kind: 'mark', marked: [] };
    case 'place':
      return { kind: 'place', landed: {} };
    case 'set':
      return { kind: 'set', settings: form.start };
    case 'order':
      return { kind: 'order', steps: form.steps.map(({ id }) => id) };
    case 'number':
      return { kind: 'number', typed: '' };
  }
}

/** What is still missing before an answer can be checked, in words; undefined when nothing is. */
export function missing(form: Form, answer: Answer): string | undefined {
  if (answer.kind === 'choice' && answer.chosen.length === 0) return 'Choose an answer first.';
  if (answer.kind === 'mark' && answer.marked.length === 0) return 'Mark a terminal first.';
  if (answer.kind === 'number' && answer.typed.trim() === '') return 'Type a number and its unit first.';
  if (form.kind === 'place' && answer.kind === 'place') {
    const free = form.leads.filter(({ id }) => answer.landed[id] === undefined);
    if (free.length > 0) return `Land ${free.map(({ says }) => says).join(' and ')} first.`;
  }
  return undefined;
}

const isStrings = (data: unknown): data is string[] =>
  Array.isArray(data) && data.every((one) => typeof one === 'string');

const isRecord = (data: unknown): data is Record<string, string> =>
  typeof data === 'object' &&
  data !== null &&
  !Array.isArray(data) &&
  Object.values(data).every((one) => typeof one === 'string');

/** A kept answer, if it still fits the form; whatever the device hands back is checked. */
export function readAnswer(form: Form, data: unknown): Answer | undefined {
  if (typeof data !== 'object' || data === null) return undefined;
  const kept = data as Record<string, unknown>;
  if (kept.kind !== form.kind) return undefined;
  const within = (ids: unknown, all: readonly Choice[]): ids is string[] =>
    isStrings(ids) && ids.every((id) => all.some((one) => one.id === id));
  if (form.kind === 'choice' && within(kept.chosen, form.options))
    return { kind: 'choice', chosen: kept.chosen };
  if (form.kind === 'mark' && within(kept.marked, form.among)) return { kind: 'mark', marked: kept.marked };
  if (form.kind === 'place' && isRecord(kept.landed) && within(Object.values(kept.landed), form.ways))
    return { kind: 'place', landed: kept.landed };
  if (form.kind === 'set' && isRecord(kept.settings)) {
    const { settings } = kept;
    return form.controls.every((control) => control.settings.includes(settings[control.id] ?? ''))
      ? { kind: 'set', settings }
      : undefined;
  }
  if (
    form.kind === 'order' &&
    within(kept.steps, form.steps) &&
    new Set(kept.steps).size === form.steps.length
  )
    return { kind: 'order', steps: kept.steps };
  if (form.kind === 'number' && typeof kept.typed === 'string') return { kind: 'number', typed: kept.typed };
  return undefined;
}

const saysOf = (all: readonly Choice[], id: string): string => all.find((one) => one.id === id)?.says ?? id;

/** An answer in words, a line for each thing in it. */
export function sayAnswer(form: Form, answer: Answer): readonly string[] {
  if (form.kind === 'choice' && answer.kind === 'choice')
    return form.options.filter(({ id }) => answer.chosen.includes(id)).map(({ says }) => says);
  if (form.kind === 'mark' && answer.kind === 'mark')
    return form.among.filter(({ id }) => answer.marked.includes(id)).map(({ says }) => says);
  if (form.kind === 'place' && answer.kind === 'place')
    return form.leads.map(({ id, says }) => {
      const [way = ''] = saysOf(form.ways, answer.landed[id] ?? '').split(':');
      return `${says} to ${way.charAt(0).toLowerCase()}${way.slice(1)}`;
    });
  if (form.kind === 'set' && answer.kind === 'set')
    return form.controls.map(({ id, label }) => `${label} ${answer.settings[id] ?? ''}`);
  if (form.kind === 'order' && answer.kind === 'order')
    return answer.steps.map((id, at) => `${at + 1}. ${saysOf(form.steps, id)}`);
  return answer.kind === 'number' ? [answer.typed] : [];
}
