type Given<T> = { [K in keyof T]?: Exclude<T[K], undefined> }

/** Only the fields that have a value: one that is undefined would hide the usual. */
export const given = <T extends object>(fields: T): Given<T> =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as Given<T>
