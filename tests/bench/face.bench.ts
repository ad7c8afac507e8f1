/**
 * What a change of the face costs: 24 leaves of 80 points with defects and drift. A width changed by 1 mm (everything is
 * found anew but the wood of the leaves), and a window moved (nothing but what lies on the leaf changes), each with all
 * checks, as in the program, which remembers answers; beside the clipping calls alone that the change needs.
 *
 * Goal: a window moved, with all checks, in 8 ms.
 */
import { afterAll, bench, describe } from 'vitest'
import { derive } from '../../src/core/derive'
import { intersectAll } from '../../src/core/geometry/clip'
import { innerFit } from '../../src/core/geometry/inner-fit'
import { onLeaf } from '../../src/core/fit/placement'
import { point } from '../../src/core/geometry/point'
import type { Region } from '../../src/core/geometry/polygon'
import type { Job, Part } from '../../src/core/job/job'
import type { Recipe } from '../../src/core/patterns/recipe'
import { rememberingAnswers } from '../../src/store/memory'
import { chanceFrom, spread, wildLeaf } from '../fixtures/geometry/shapes'
import { flitchOf, jobOf, partOf, plainLeaves, radial, strips } from '../properties/job-builders'

const chance = chanceFrom(24)
const flitch = flitchOf({
  outline: wildLeaf(chance, 240, 2400, 80),
  sideMargin: 5,
  endMargin: 20,
  leaves: plainLeaves(24).map((leaf, i) => ({
    ...leaf,
    outline: wildLeaf(chance, 240, 2400, 80),
    drift: i === 0 ? point(0, 0) : point(spread(chance, -3, 3), spread(chance, -10, 10)),
    defects: [
      { id: `k${i}`, kind: 'knot', note: '', shape: 'spot', centre: point(spread(chance, 90, 150), 150), radius: 9 },
      { id: `s${i}`, kind: 'split', note: '', shape: 'line', from: point(120, 2330), to: point(124, 2399) },
    ],
  })),
})

const faces: readonly { of: string; recipe: Recipe; size: Pick<Part, 'width' | 'length'> }[] = [
  { of: '24 strips', recipe: strips({ count: 24 }), size: { width: 3600, length: 900 } },
  { of: '24 wedges', recipe: radial({ count: 24 }), size: { width: 1100, length: 1100 } },
]

const options = { time: 1000, warmupTime: 200, iterations: 5, warmupIterations: 2 }
const spent = new Map<string, number[]>()

for (const { of, recipe, size } of faces) {
  const answers = rememberingAnswers()
  const jobWith = (part: Partial<Part>): Job => jobOf([partOf({ ...size, recipe, ...part })], flitch)
  const [first] = derive(jobWith({}), answers).parts
  const { position, pieces } = first!
  // one shape after the other, none seen before
  let step = 0
  const rough = [
    ...new Map(
      pieces.map((piece) => [piece.rough.map(({ x, y }) => `${x.toFixed(3)} ${y.toFixed(3)}`).join(), piece]),
    ).values(),
  ]
  const fits = () => rough.map((piece): Region<'leaf'> => innerFit(piece.usable, onLeaf(piece.rough, point(0, 0))))
  const known = fits()

  describe(of, () => {
    const timed = (name: string, run: () => void) => {
      const times: number[] = []
      spent.set(`${of}, ${name}`, times)
      const measured = () => {
        const before = performance.now()
        run()
        times.push(performance.now() - before)
      }
      bench(name, measured, options)
    }

    timed('width changed by 1 mm', () => {
      step++
      derive(jobWith({ width: size.width - 1 - step / 1000 }), answers)
    })
    timed('window moved', () => {
      step++
      derive(jobWith({ positions: { window: point(position.x + 1 + (step % 1000) / 1000, position.y) } }), answers)
    })
    timed('window moved out of the play', () => {
      step++
      derive(jobWith({ positions: { window: point(position.x + 60 + (step % 1000) / 1000, position.y) } }), answers)
    })
    timed('clipping alone: one inner fit for each shape, and their intersection', () => {
      fits()
      intersectAll(known)
    })
  })
}

/** The median: what else the machine does then counts little. */
const usual = (times: readonly number[]): number =>
  [...times].sort((p, q) => p - q)[Math.floor(times.length / 2)] ?? NaN

afterAll(() => {
  for (const { of } of faces) {
    const ofFace = [...spent].filter(([name]) => name.startsWith(of))
    const alone = usual(ofFace.find(([name]) => name.includes('clipping'))![1])
    for (const [name, times] of ofFace)
      console.log(`${name}: ${usual(times).toFixed(2)} ms, ${(usual(times) / alone).toFixed(1)} x the clipping`)
  }
})
