/** The version that `writeJob` writes. */
export const NEWEST_VERSION = 1

/** From the plain form of one version to that of the next; it is given, and gives, parsed JSON. */
export type Migration = (job: Readonly<Record<string, unknown>>) => Readonly<Record<string, unknown>>

/** By the version that is left behind. */
export const MIGRATIONS: ReadonlyMap<number, Migration> = new Map()

/** The job in the newest form, step by step; every version below the newest has its migration. */
export function migrate(
  job: Readonly<Record<string, unknown>>,
  version: number,
  newest = NEWEST_VERSION,
  migrations = MIGRATIONS,
): Readonly<Record<string, unknown>> {
  let moved = job
  for (let v = version; v < newest; v++) {
    const step = migrations.get(v)
    if (step) moved = { ...step(moved), version: v + 1 }
  }
  return moved
}
