/** What stands behind a leaf's number where it is of another flitch than the field of its face: ` of “Maple”`; else nothing. */
export const ofFlitch = (name: string | null): string =>
  name === null ? '' : ` of “${name || 'a flitch without a name'}”`
