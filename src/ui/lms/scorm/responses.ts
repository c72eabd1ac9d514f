import type { Interaction } from '../report.ts';

type Answered = Pick<Interaction, 'kind'> & { readonly response?: Interaction['response'] };

/** A type of interaction, and the response in its form; without one where the answer is not kept. */
export interface Typed {
  readonly type: string;
  readonly response?: string;
}

const TYPES = {
  choice: 'choice',
  order: 'sequencing',
  match: 'matching',
  number: 'numeric',
  work: 'performance',
} as const;

/** A name as a short identifier may be: `strip/1` stays as it is. */
const short = (id: string): string => id.replace(/[^A-Za-z0-9()+.:=@;$_!*'%/#-]/g, '-').slice(0, 250);
const numberIn = (typed: string): string | undefined =>
  /^\s*(-?\d{1,9}(?:\.\d{1,6})?)/.exec(typed.replace(',', '.'))?.[1];

/** An answer as SCORM 2004 and xAPI write it: `[,]` between answers, `[.]` in a pair. */
export function responseOf({ kind, response }: Answered): Typed {
  if (!response) return { type: TYPES[kind] };
  switch (response.kind) {
    case 'choice':
    case 'order':
      return { type: TYPES[response.kind], response: response.ids.map(short).join('[,]') };
    case 'match': {
      // Wires and settings can be more than a matching holds: 36 pairs. A performance holds 250 steps.
      const type = kind === 'work' || response.pairs.length > 36 ? 'performance' : 'matching';
      return { type, response: response.pairs.map((pair) => pair.map(short).join('[.]')).join('[,]') };
    }
    case 'number': {
      const value = numberIn(response.typed);
      return value === undefined
        ? { type: 'fill-in', response: response.typed.slice(0, 250) }
        : { type: 'numeric', response: value };
    }
  }
}

/**
 * The same for SCORM 1.2, whose choices are single letters: names such as `strip/1` go as a performance, whose response
 * is text of 255 characters.
 */
export function response12Of({ kind, response }: Answered): Typed {
  if (!response) return { type: TYPES[kind] };
  const text = (words: string): Typed => ({
    type: 'performance',
    response: words.length <= 255 ? words : `${words.slice(0, 254)}…`,
  });
  switch (response.kind) {
    case 'choice':
    case 'order':
      return text(response.ids.join(', '));
    case 'match':
      return text(response.pairs.map((pair) => pair.join('-')).join(', '));
    case 'number': {
      const value = numberIn(response.typed);
      return value === undefined
        ? { type: 'fill-in', response: response.typed.slice(0, 255) }
        : { type: 'numeric', response: value };
    }
  }
}
