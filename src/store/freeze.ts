/**
 * Freezes a job to its last point, so that a change in place throws where it is made. What is frozen already is taken
 * to be so throughout: of a job that shares most of its parts with the one before, only the new parts are visited.
 */
export function freezeDeep<T>(thing: T): T {
  if (typeof thing !== 'object' || thing === null || Object.isFrozen(thing)) return thing
  Object.freeze(thing)
  Object.values(thing).forEach(freezeDeep)
  return thing
}
