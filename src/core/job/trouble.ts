import type { CountTaken } from '../patterns/count-taken'
import type { OutlineTrouble } from '../geometry/outline-check'
import type { Pressing, PressRoom } from '../press/pressing'
import type { Limits } from './limits'

/** Why a file is not a job at all. */
export type FormTrouble =
  | { readonly trouble: 'empty' }
  /** Line and column count from 1; null where they could not be told. */
  | { readonly trouble: 'not json'; readonly line: number | null; readonly column: number | null }
  | { readonly trouble: 'not a job'; readonly format: string | null }
  | { readonly trouble: 'no version'; readonly found: string }
  | { readonly trouble: 'newer version'; readonly version: number; readonly newest: number }
  | { readonly trouble: 'missing'; readonly place: string }
  | { readonly trouble: 'unknown field'; readonly place: string; readonly field: string }
  | { readonly trouble: 'wrong kind'; readonly place: string; readonly wanted: string; readonly found: string }

/** Why what is said can't be so. `place` is in words: `part 2, “Door”: width`. */
export type MeaningTrouble =
  | { readonly trouble: 'out of limits'; readonly place: string; readonly value: number; readonly limits: Limits }
  | {
      readonly trouble: 'too many'
      readonly place: string
      readonly value: number
      readonly things: string
      readonly limit: number
    }
  | { readonly trouble: 'bad outline'; readonly place: string; readonly fault: OutlineTrouble<'leaf'> }
  | { readonly trouble: 'bad panel outline'; readonly place: string; readonly fault: OutlineTrouble<'panel'> }
  | { readonly trouble: 'repeated leaf'; readonly place: string; readonly leaf: number }
  | { readonly trouble: 'repeated id'; readonly place: string; readonly id: string }
  | { readonly trouble: 'no such flitch'; readonly place: string; readonly flitch: string }
  | { readonly trouble: 'no such leaf'; readonly place: string; readonly leaf: number }
  | { readonly trouble: 'no length'; readonly place: string }
  | { readonly trouble: 'nothing left'; readonly place: string; readonly value: number }
  | { readonly trouble: 'no field'; readonly place: string; readonly value: number }
  | { readonly trouble: 'not together'; readonly place: string; readonly value: string; readonly needs: string }
  | {
      readonly trouble: 'bad pair'
      readonly place: string
      readonly part: string
      readonly why: 'not there' | 'itself' | 'first twice' | 'second twice' | 'in a circle'
    }
  | {
      readonly trouble: 'count not taken'
      readonly place: string
      readonly value: number
      readonly pattern: string
      readonly taken: CountTaken
    }
  | {
      readonly trouble: 'window not turned'
      readonly place: string
      readonly degrees: number
      /** The figure has a grain line, or a running match takes the leaves as wide as they go along it. */
      readonly why: 'grain' | 'running'
    }
  | { readonly trouble: 'bad pressing'; readonly place: string; readonly pressing: Pressing }
  | { readonly trouble: 'bad press room'; readonly place: string; readonly room: PressRoom }
  | { readonly trouble: 'first leaf drifts'; readonly place: string; readonly leaf: number }

/** Why a text could not be read as a job. */
export type JobTrouble = FormTrouble | MeaningTrouble
