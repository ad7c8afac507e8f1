import type { FlitchId } from '../ids'
import type { Flitch } from '../leaves/flitch'
import type { Part } from './job'

/** The flitch that the border of a part is cut from: the part's own, unless the border names another. */
export const borderFlitch = ({ flitch, border }: Part): FlitchId => border?.flitch ?? flitch

/** Whether the field of a part or its border is cut from a flitch. */
export const isCutFrom = (part: Part, flitch: FlitchId): boolean =>
  part.flitch === flitch || borderFlitch(part) === flitch

/** The flitches that a part is cut from: its field, and its border, which is the same one unless the border names another. */
export interface PartFlitches {
  readonly field: Flitch
  readonly border: Flitch
}

/** All of a part from one flitch. */
export const allFrom = (flitch: Flitch): PartFlitches => ({ field: flitch, border: flitch })

/** Those of a part in its job; null where one of them is not there. */
export function partFlitches(part: Part, flitches: readonly Flitch[]): PartFlitches | null {
  const [field, border] = [part.flitch, borderFlitch(part)].map((wanted) => flitches.find(({ id }) => id === wanted))
  return field && border ? { field, border } : null
}

/** A border that names the part's own flitch names none. */
export const withOwnUnnamed = (part: Part): Part =>
  part.border && part.border.flitch === part.flitch ? { ...part, border: { ...part.border, flitch: null } } : part
