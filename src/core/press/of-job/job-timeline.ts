import { polygonArea } from '../../geometry/polygon'
import type { ThreeSizes } from '../../faces/face'
import { flitchesOf } from '../../fit/lay-face'
import type { FlitchId } from '../../ids'
import type { Part } from '../../job/job'
import type { Flitch } from '../../leaves/flitch'
import type { Seam } from '../../seams/find-seams'
import { layLoads } from '../bag-load'
import { pressHoursAt } from '../glues'
import type { PressPlan } from '../press-plan'
import type { GlueName, Method, PressRoom } from '../pressing'
import { timelineOf, type Timeline } from '../timeline'

/** A part as far as the time that it takes hangs on it. */
export interface PartToPress {
  readonly part: Part
  readonly flitch: Flitch
  readonly border: { readonly flitch: Flitch } | null
  readonly sizes: ThreeSizes
  readonly seams: readonly Seam[]
  readonly press: PressPlan
}

/** Parts that go into the press together: names of parts, and what they share. */
export interface PressLoad {
  readonly method: Method
  readonly glue: GlueName
  readonly parts: readonly string[]
}

export interface JobTimeline extends Timeline {
  /** One after the other, as they may be pressed. */
  readonly loads: readonly PressLoad[]
  /** Parts that fit the platen in no way. */
  readonly tooLarge: readonly string[]
}

/** The hours of all parts of a job, from the bundle to the sanded panel. `wavy`: the leaves must be flattened first. */
export function jobTimeline(parts: readonly PartToPress[], room: PressRoom, wavy: boolean): JobTimeline {
  const { loads, tooLarge } = pressLoads(parts, room)
  const timeline = timelineOf({
    parts: parts.length,
    leaves: leavesOf(parts),
    seams: sum(parts, ({ seams }) => seams.length),
    seamLength: sum(parts, ({ seams }) => sum(seams, ({ finishedLength }) => finishedLength)),
    squareMetres: sum(parts, ({ sizes }) => polygonArea([sizes.outlines.finished.ring])) / 1e6,
    edges: sum(parts, ({ part }) => Object.values(part.pressing.edges).filter(({ edge }) => edge !== 'bare').length),
    flatten: wavy,
    loads: loads.length,
    // what is cold is reckoned as if it had been warmed, as it must be
    pressHours: most(parts, ({ press: { glue } }) => pressHoursAt(glue.inUse, warmed(room, glue.inUse)) ?? 0),
    cureDays: most(parts, ({ press: { glue } }) => glue.inUse.cureDays.value),
  })
  return { ...timeline, loads, tooLarge }
}

/** Burl and crotch come wavy; straight-grained leaves as a rule do not (common practice). */
export const asksFlattening = (parts: readonly Pick<PartToPress, 'flitch' | 'border'>[]): boolean =>
  parts.flatMap(flitchesOf).some(({ figure }) => figure !== 'straight')

const warmed = ({ coreTemperature }: PressRoom, { leastTemperature }: PressPlan['glue']['inUse']): number =>
  Math.max(coreTemperature, leastTemperature.value)

/** Together in the bag goes what fits the platen and takes the same glue; under cauls, or by the hammer, each by itself. */
function pressLoads(parts: readonly PartToPress[], room: PressRoom): Pick<JobTimeline, 'loads' | 'tooLarge'> {
  const alone = parts
    .filter(({ part }) => part.pressing.method !== 'bag')
    .map(({ part: { name, pressing } }): PressLoad => ({ method: pressing.method, glue: pressing.glue, parts: [name] }))
  const bagged = parts.filter(({ part }) => part.pressing.method === 'bag')
  const glues = [...new Set(bagged.map(({ part }) => part.pressing.glue))]
  const laid = glues.map((glue) => {
    const own = bagged.filter(({ part }) => part.pressing.glue === glue)
    const panels = own.map(({ part, press }) => ({ id: part.id, ...press.pressed }))
    return { glue, own, ...layLoads(panels, room.platen) }
  })
  const nameIn = (own: readonly PartToPress[], id: string): string =>
    own.find(({ part }) => part.id === id)?.part.name ?? id
  return {
    loads: [
      ...laid.flatMap(({ glue, own, loads }) =>
        loads.map((load): PressLoad => ({ method: 'bag', glue, parts: load.map(({ id }) => nameIn(own, id)) })),
      ),
      ...alone,
    ],
    tooLarge: laid.flatMap(({ own, tooLarge }) => tooLarge.map((id) => nameIn(own, id))),
  }
}

/** Every leaf of the bundles that are opened is registered and measured. */
function leavesOf(parts: readonly PartToPress[]): number {
  const flitches = new Map<FlitchId, Flitch>(parts.flatMap(flitchesOf).map((flitch) => [flitch.id, flitch]))
  return sum([...flitches.values()], ({ leaves }) => leaves.length)
}

const sum = <T>(things: readonly T[], of: (thing: T) => number): number =>
  things.reduce((total, thing) => total + of(thing), 0)

const most = <T>(things: readonly T[], of: (thing: T) => number): number => Math.max(0, ...things.map(of))

/** A load in words: what goes in together, and how. */
export function pressLoadSentence({ method, parts }: PressLoad, nth: number): string {
  const how = method === 'bag' ? 'in the bag' : method === 'cauls' ? 'between cauls' : 'leaf by leaf'
  return `Load ${nth}, ${how}: ${parts.join('; ')}.`
}
