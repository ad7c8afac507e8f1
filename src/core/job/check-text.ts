import type { MeaningTrouble } from './trouble'

/** A text that is longer than a job file holds, or null. */
export const textTrouble = (text: string, longest: number, place: string): MeaningTrouble | null =>
  text.length <= longest
    ? null
    : { trouble: 'too many', place, value: text.length, things: 'characters', limit: longest }
