import type { Box } from '../geometry/box'
import { fieldsTrouble, numberTrouble, pointTrouble } from './check-number'
import { LIMITS } from './limits'
import type { MakeUp, SlantedCut } from './make-up'
import { inPlace } from './place-words'
import type { MeaningTrouble } from './trouble'

/** The first number of a made-up leaf that can't be so, or null. Whether its halves meet is for the checks of the face. */
export function makeUpTrouble(
  makeUp: MakeUp,
  owners: readonly string[],
  within: readonly string[],
): MeaningTrouble | null {
  const place = (field: string) => inPlace(owners, [...within, field])
  return (
    (makeUp.leaf === null ? null : numberTrouble(makeUp.leaf, LIMITS.leafNumber, place('leaf'))) ??
    (makeUp.spacing === null ? null : numberTrouble(makeUp.spacing, LIMITS.spacing, place('spacing'))) ??
    (makeUp.cut ? cutTrouble(makeUp.cut, owners, [...within, 'cut']) : null) ??
    (makeUp.how === 'longer'
      ? null
      : ((makeUp.from === null ? null : numberTrouble(makeUp.from, LIMITS.leafNumber, place('from'))) ??
        numberTrouble(makeUp.loss, LIMITS.truing, place('loss')) ??
        boxTrouble(makeUp.kept, owners, [...within, 'kept']) ??
        boxTrouble(makeUp.offcut, owners, [...within, 'offcut']) ??
        boxTrouble(makeUp.strip, owners, [...within, 'strip'])))
  )
}

const cutTrouble = (cut: SlantedCut, owners: readonly string[], within: readonly string[]): MeaningTrouble | null =>
  fieldsTrouble(cut, { slope: LIMITS.slope, gain: LIMITS.gain, loss: LIMITS.truing }, owners, within) ??
  pointTrouble(cut.through, owners, [...within, 'through'])

function boxTrouble(
  { min, max }: Box<'leaf'>,
  owners: readonly string[],
  within: readonly string[],
): MeaningTrouble | null {
  const wrong = pointTrouble(min, owners, within) ?? pointTrouble(max, owners, within)
  const left = Math.min(max.x - min.x, max.y - min.y)
  return wrong ?? (left > 0 ? null : { trouble: 'no length', place: inPlace(owners, within) })
}
