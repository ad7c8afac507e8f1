/**
 * What is read from 60 composed photographs with tables and lights that were not used in tuning, beside the goals; then from
 * 24 whose leaves throw a deep, wide shadow on light tables. Two threads, with a line every ten seconds. `LEAFTURN_PHOTOS`
 * asks for fewer.
 */
import { Worker } from 'node:worker_threads'
import { bench, describe } from 'vitest'
import { composePhoto, photoSet, TUNING_TABLES, UNSEEN_TABLES, type PhotoOptions } from '../photographs/compose'
import { judge, type Judgement } from '../photographs/judge'
import { withBuiltForNode } from './built-for-node.mjs'
import type { Trial } from './photo-trials'

const THREADS = 2
const count = Number(process.env.LEAFTURN_PHOTOS) || 60

/** Maple and its like on white paper and pale linen, their shadows 5 and 8 mm wide. */
const SHADOWS = [
  { across: 5, along: 5, depth: 0.6 },
  { across: 8, along: 8, depth: 0.5 },
  { across: 8, along: 3, depth: 0.75 },
]
const shadowed = SHADOWS.flatMap((contact, i) =>
  photoSet([TUNING_TABLES[2]!, UNSEEN_TABLES[2]!], 9600 + 10 * i, 8).map((options) => ({ ...options, contact })),
).slice(0, count)

interface Tried extends Trial {
  readonly options: PhotoOptions
}

/** Tries all of them, each thread the next one that is left. */
async function tried(program: string, all: readonly PhotoOptions[], what: string): Promise<readonly Tried[]> {
  const left = [...all]
  const done: Tried[] = []
  const progress = setInterval(() => console.log(`${what}: ${done.length} of ${all.length}`), 10_000)
  const thread = () =>
    new Promise<void>((end, failed) => {
      const worker = new Worker(program)
      const next = () => {
        const options = left.shift()
        if (!options) return void worker.terminate().then(() => end())
        worker.once('message', (trial: Trial) => {
          done.push({ options, ...trial })
          next()
        })
        worker.postMessage(options)
      }
      worker.once('error', failed)
      next()
    })
  await Promise.all(Array.from({ length: THREADS }, thread)).finally(() => clearInterval(progress))
  return done
}

const at = (values: readonly number[], share: number) =>
  values[Math.min(values.length - 1, Math.floor(values.length * share))] ?? NaN

function spread(what: string, values: readonly number[], goal: string, digits = 2): string {
  const sorted = [...values].sort((a, b) => a - b)
  const [half, most, worst] = [0.5, 0.95, 1].map((share) => at(sorted, share).toFixed(digits))
  return `${what.padEnd(52)} median ${half}, p95 ${most}, worst ${worst} (goal ${goal})`
}

function told(what: string, all: readonly Tried[]): string {
  const many = (outcome: Judgement['outcome']) => all.filter(({ found }) => found.outcome === outcome).length
  const sure = all.map(({ found }) => found).filter(({ outcome }) => outcome === 'good')
  const given = all.map(({ found }) => found).filter(({ straight }) => straight !== null)
  const odd = all.filter(({ found }) => found.outcome !== 'good' || found.mean > 0.6)
  return [
    `${what}: ${many('good')} outlines without a warning, ${many('warned')} with one, ${many('refused')} refused`,
    `wrong by more than 1 mm in the mean without a warning: ${sure.filter(({ mean }) => mean > 1).length} (goal 0)`,
    spread(
      'straightening, worst of the four corners, mm',
      given.map(({ straight }) => straight ?? NaN),
      '0.1 median',
    ),
    spread(
      'outline, mean error, mm',
      sure.map(({ mean }) => mean),
      'at most 0.4',
    ),
    spread(
      'outline, error at the 95th percentile, mm',
      sure.map(({ p95 }) => p95),
      'at most 0.6',
    ),
    spread(
      '1 − IoU',
      sure.map(({ iou }) => 1 - iou),
      'at most 0.005',
      4,
    ),
    spread(
      'reading 0.9 megapixels on one of two threads, s',
      all.map(({ took }) => took / 1000),
      'at most 3',
    ),
    ...odd.map(
      ({ options, found }) =>
        `  ${options.species} on ${options.table.name}: ${found.outcome} ${found.why}, ${found.mean.toFixed(2)} mm`,
    ),
  ].join('\n')
}

await withBuiltForNode('tests/bench/photo-trials.ts', async (program) => {
  const unseen = photoSet(UNSEEN_TABLES, 9000, count)
  console.log(told(`${unseen.length} photographs`, await tried(program, unseen, 'photographs')))
  const deep = await tried(program, shadowed, 'deep shadows')
  console.log(told(`${shadowed.length} with a deep, wide shadow on light tables`, deep))
})

describe('photographs', () => {
  const photo = composePhoto(photoSet(UNSEEN_TABLES, 9000, 1)[0]!)
  bench('reading one of 0.9 megapixels', () => void judge(photo), {
    iterations: 3,
    time: 0,
    warmupIterations: 1,
    warmupTime: 0,
  })
})
