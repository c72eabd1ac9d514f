/** What a key can do on the stage. */
export type Action =
  | 'next'
  | 'back'
  | 'first'
  | 'last'
  | 'full'
  | 'light'
  | 'pen'
  | 'erase'
  | 'undo'
  | 'theme'
  | 'bigger'
  | 'smaller'
  | 'whole'
  | 'pan'
  | 'blank'
  | 'help'
  | 'leave';

interface KeyRow {
  readonly action: Action;
  /** As `KeyboardEvent.key` has them; letters small. */
  readonly keys: readonly string[];
  /** As people read them. */
  readonly shown: string;
  readonly says: string;
}

/** Every key, in the order of the help. Presenter clickers send the page keys, some of them a full stop or B. */
export const KEYS: readonly KeyRow[] = [
  {
    action: 'next',
    keys: ['ArrowRight', 'ArrowDown', 'PageDown', ' '],
    shown: '→ ↓ Page down, space',
    says: 'next step',
  },
  {
    action: 'back',
    keys: ['ArrowLeft', 'ArrowUp', 'PageUp', 'Backspace'],
    shown: '← ↑ Page up',
    says: 'step before',
  },
  { action: 'first', keys: ['Home'], shown: 'Home', says: 'first step' },
  { action: 'last', keys: ['End'], shown: 'End', says: 'last step' },
  { action: 'full', keys: ['f'], shown: 'F', says: 'full screen, and back' },
  { action: 'light', keys: ['s'], shown: 'S', says: 'spotlight: script, chosen, pointer, off' },
  { action: 'pen', keys: ['p'], shown: 'P', says: 'pen' },
  { action: 'erase', keys: ['e'], shown: 'E', says: 'eraser' },
  { action: 'undo', keys: ['z'], shown: 'Z', says: 'undo a stroke' },
  { action: 'theme', keys: ['l'], shown: 'L', says: 'light or dark' },
  { action: 'bigger', keys: ['+', '='], shown: '+', says: 'larger letters' },
  { action: 'smaller', keys: ['-'], shown: '−', says: 'smaller letters' },
  { action: 'whole', keys: ['w'], shown: 'W', says: 'the whole drawing, and back' },
  {
    action: 'pan',
    keys: [],
    shown: 'Shift and arrows',
    says: 'move a drawing that is larger than the screen',
  },
  { action: 'blank', keys: ['b', '.'], shown: 'B', says: 'nothing in sight, and back' },
  { action: 'help', keys: ['h', '?'], shown: 'H', says: 'these keys' },
  { action: 'leave', keys: ['Escape'], shown: 'Escape', says: 'put the pen down, leave full screen' },
];

/** Keys of one character, which people who speak to their computer may set off by chance (WCAG 2.2, 2.1.4). */
export const isCharacter = (key: string): boolean => key.length === 1 && key !== ' ';

interface Press {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
}

/**
 * What a press of a key asks for, or the digit that was typed; nothing for keys that are none of ours.
 * @param letters whether keys of one character are listened to
 */
export function actionOf(
  { key, ctrlKey, metaKey, altKey }: Press,
  letters: boolean,
): Action | number | undefined {
  if (ctrlKey || metaKey || altKey) return undefined;
  if (isCharacter(key) && !letters) return undefined;
  if (/^\d$/.test(key)) return Number(key);
  const name = key.length === 1 ? key.toLowerCase() : key;
  return KEYS.find(({ keys }) => keys.includes(name))?.action;
}

/** Pixels that a press of Shift and an arrow moves a drawing. */
const STEP = 90;

/** Where Shift and an arrow move a large drawing: to the right brings in sight what is on the right. */
export function panOf({
  key,
  shiftKey,
}: {
  key: string;
  shiftKey: boolean;
}): readonly [number, number] | undefined {
  if (!shiftKey) return undefined;
  const by: Readonly<Record<string, readonly [number, number]>> = {
    ArrowRight: [-STEP, 0],
    ArrowLeft: [STEP, 0],
    ArrowDown: [0, -STEP],
    ArrowUp: [0, STEP],
  };
  return by[key];
}

/** Milliseconds within which a second digit belongs to the first: 1 then 2 is step 12. */
const TOGETHER = 1200;

/** Puts digits together to the number of a step. */
export class Digits {
  #typed = '';
  #at = 0;

  /** The step that is meant now, at least 1; undefined for a nought alone. */
  type(digit: number, at: number, total: number): number | undefined {
    const longer = at - this.#at < TOGETHER ? this.#typed + digit : String(digit);
    // What is beyond the last step begins anew.
    this.#typed = Number(longer) > total ? String(digit) : longer;
    this.#at = at;
    const step = Number(this.#typed);
    return step >= 1 && step <= total ? step : undefined;
  }
}
