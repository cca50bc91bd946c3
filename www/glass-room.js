// @ts-check
/** Kept free for the cost of a glass before it is known, so that nothing moves when it comes: its buttons stand in one row, or on a phone in two. */
export const ROOM = "clamp(10.8em, (36em - 100vw) * 99, 15.5em)";
