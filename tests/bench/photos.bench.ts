/**
 * What is read from 60 composed photographs with tables and lights that were not used in tuning, beside the goals; and
 * how long one takes. `LEAFTURN_PHOTOS` asks for fewer.
 */
import { bench, describe } from 'vitest'
import { composePhoto, photoSet, UNSEEN_TABLES } from '../photographs/compose'
import { judge, type Judgement } from '../photographs/judge'

const count = Number(process.env.LEAFTURN_PHOTOS) || 60
const judged = photoSet(UNSEEN_TABLES, 9000, count).map((options) => ({ options, found: judge(composePhoto(options)) }))

const sorted = (of: (found: Judgement) => number) =>
  judged
    .filter(({ found }) => found.outcome === 'good')
    .map(({ found }) => of(found))
    .sort((a, b) => a - b)
const at = (values: readonly number[], share: number) =>
  (values[Math.min(values.length - 1, Math.floor(values.length * share))] ?? NaN).toFixed(3)
const line = (what: string, of: (found: Judgement) => number, goal: string) =>
  `${what}: median ${at(sorted(of), 0.5)}, p95 ${at(sorted(of), 0.95)}, worst ${at(sorted(of), 1)} (goal ${goal})`
const many = (outcome: Judgement['outcome']) => judged.filter(({ found }) => found.outcome === outcome).length

console.log(
  [
    `${count} photographs: ${many('good')} outlines without a warning, ${many('warned')} with one, ${many('refused')} refused`,
    `wrong by more than 1 mm in the mean without a warning: ${judged.filter(({ found }) => found.outcome === 'good' && found.mean > 1).length} (goal 0)`,
    line('straightening, worst of the four corners, mm', ({ straight }) => straight ?? NaN, '0.1 median'),
    line('outline, mean error, mm', ({ mean }) => mean, '0.4'),
    line('outline, error at the 95th percentile, mm', ({ p95 }) => p95, '0.6'),
    line('1 − IoU', ({ iou }) => 1 - iou, '0.005'),
    ...judged
      .filter(({ found }) => found.outcome !== 'good' || found.mean > 0.6)
      .map(
        ({ options, found }) =>
          `  ${options.species} on ${options.table.name}: ${found.outcome} ${found.why} ${found.mean.toFixed(2)} mm`,
      ),
  ].join('\n'),
)

describe('photographs', () => {
  const photo = composePhoto(photoSet(UNSEEN_TABLES, 9000, 1)[0]!)
  bench('reading one of 0.9 megapixels', () => void judge(photo), {
    iterations: 3,
    time: 0,
    warmupIterations: 1,
    warmupTime: 0,
  })
})
