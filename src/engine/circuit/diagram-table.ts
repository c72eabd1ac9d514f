/** Sets of no state and of every state: the two ends of every diagram. */
export const NONE = 0;
export const ALL = 1;

/** Nodes of diagrams, each kept once, and answers of operations worth remembering. */
export interface Table {
  /** The variable a node asks for; past all variables for the two ends. */
  readonly variable: (node: number) => number;
  readonly low: (node: number) => number;
  readonly high: (node: number) => number;
  /** The one node that asks for this variable and goes on to these two; `low` itself where both are the same. */
  readonly node: (variable: number, low: number, high: number) => number;
  /** What `operation` (below 16) gave for this pair of numbers, or -1 when that is not known, or no longer. */
  readonly recall: (operation: number, a: number, b: number) => number;
  /** Remembers an answer and gives it back. */
  readonly remember: (operation: number, a: number, b: number, answer: number) => number;
  /** How many nodes there are. */
  readonly size: () => number;
  /** Nodes made since `keep` are forgotten by `reset`, and their numbers are used again. */
  readonly keep: () => void;
  readonly reset: () => void;
}

const mix = (a: number, b: number, c: number): number => {
  let hash = Math.imul(a, 0x9e3779b1) ^ Math.imul(b, 0x85ebca6b) ^ Math.imul(c, 0xc2b2ae35);
  hash = Math.imul(hash ^ (hash >>> 15), 0x2c1b3c6d);
  return hash ^ (hash >>> 13);
};

const widened = (array: Int32Array): Int32Array<ArrayBuffer> => {
  const wider = new Int32Array(array.length * 2);
  wider.set(array);
  return wider;
};

/** An empty table, with room for `capacity` nodes (a power of two) before it grows. */
export function makeTable(variables: number, capacity = 1 << 12): Table {
  // Three numbers to a node: variable, low, high. The slots keep node numbers by hash, 0 for an empty slot.
  let nodes = new Int32Array(capacity * 3);
  let slots = new Int32Array(capacity * 2);
  // Three numbers to an answer: operation and first number, second number, answer.
  let answers = new Int32Array(capacity * 4 * 3).fill(-1);
  let count = 2;
  let kept = 2;
  nodes[0] = nodes[3] = variables;

  function grow(): void {
    nodes = widened(nodes);
    slots = new Int32Array(slots.length * 2);
    file();
    // What was remembered may be lost: it is only worked out again.
    answers = new Int32Array(answers.length * 2).fill(-1);
  }

  /** Puts every node into the empty slots. */
  function file(): void {
    for (let k = 2; k < count; k++) {
      let slot = mix(nodes[k * 3]!, nodes[k * 3 + 1]!, nodes[k * 3 + 2]!) & (slots.length - 1);
      while (slots[slot] !== 0) slot = (slot + 1) & (slots.length - 1);
      slots[slot] = k;
    }
  }

  function node(variable: number, low: number, high: number): number {
    if (low === high) return low;
    const mask = slots.length - 1;
    let slot = mix(variable, low, high) & mask;
    for (let k = slots[slot]!; k !== 0; k = slots[slot]!) {
      if (nodes[k * 3 + 1] === low && nodes[k * 3 + 2] === high && nodes[k * 3] === variable) return k;
      slot = (slot + 1) & mask;
    }
    const made = count++;
    nodes[made * 3] = variable;
    nodes[made * 3 + 1] = low;
    nodes[made * 3 + 2] = high;
    slots[slot] = made;
    if (count * 3 === nodes.length) grow();
    return made;
  }

  const entry = (operation: number, a: number, b: number): number =>
    (mix(operation, a, b) & (answers.length / 3 - 1)) * 3;
  return {
    variable: (k) => nodes[k * 3]!,
    low: (k) => nodes[k * 3 + 1]!,
    high: (k) => nodes[k * 3 + 2]!,
    node,
    recall(operation, a, b) {
      const at = entry(operation, a, b);
      return answers[at] === ((a << 4) | operation) && answers[at + 1] === b ? answers[at + 2]! : -1;
    },
    remember(operation, a, b, answer) {
      const at = entry(operation, a, b);
      answers[at] = (a << 4) | operation;
      answers[at + 1] = b;
      answers[at + 2] = answer;
      return answer;
    },
    size: () => count,
    keep() {
      kept = count;
    },
    reset() {
      if (count === kept) return;
      count = kept;
      slots.fill(0);
      file();
      answers.fill(-1);
    },
  };
}
