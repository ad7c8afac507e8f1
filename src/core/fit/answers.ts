/**
 * Keeps answers that take long to find. `about` says what the answer depends on, by identity for objects (decisions are
 * never changed in place) and by value for numbers and texts. The core asks; whoever calls it decides how to remember.
 */
export type Answers = <T>(kind: string, about: readonly (object | number | string | boolean)[], find: () => T) => T

/** Remembers nothing. */
export const withoutMemory: Answers = (_kind, _about, find) => find()
