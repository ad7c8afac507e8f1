import { checkOutline } from '../geometry/outline-check'
import type { Ring } from '../geometry/polygon'
import { ok, refused, type Result } from '../result'
import { pointTrouble } from './check-number'
import { MOST_POINTS } from './limits'
import { inPlace } from './place-words'
import type { MeaningTrouble } from './trouble'

/**
 * The ring running positively and without repeated points, or why it can't be had. `owners` and `field` say where
 * it stands: `flitch 1, “Walnut”` and `outline`. A ring that is in order is given back as it is.
 */
export function checkRing(
  ring: Ring<'leaf'>,
  owners: readonly string[],
  field: string,
): Result<Ring<'leaf'>, MeaningTrouble> {
  const place = inPlace(owners, [field])
  if (ring.length > MOST_POINTS) {
    return refused({ trouble: 'too many', place, value: ring.length, things: 'points', limit: MOST_POINTS })
  }
  for (const [i, p] of ring.entries()) {
    const wrong = pointTrouble(p, owners, [field, `point ${i + 1}`])
    if (wrong) return refused(wrong)
  }
  const checked = checkOutline(ring)
  if (!checked.ok) return refused({ trouble: 'bad outline', place, fault: checked.reason })
  return ok(isSameRing(ring, checked.value) ? ring : checked.value)
}

const isSameRing = (a: Ring<'leaf'>, b: Ring<'leaf'>): boolean =>
  a.length === b.length && a.every((p, i) => p.x === b[i]!.x && p.y === b[i]!.y)
