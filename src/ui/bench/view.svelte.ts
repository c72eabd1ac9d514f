type View = 'board' | 'strip' | 'table';

/** How the board is shown: it stays as chosen when the bench is built anew. */
export const views = $state<{ view: View | undefined }>({ view: undefined });
