/** What a switch move costs in the search for the shortest way: whole moves first, and of equals the one that waits. */
export const MOVE = 16;
/** A second one before the valves have settled costs a little more, so waiting is preferred. */
export const AT_ONCE = 17;
