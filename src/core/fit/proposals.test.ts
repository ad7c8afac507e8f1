import { allFrom } from '../job/part-flitches'
import { describe, expect, it } from 'vitest'
import { derive } from '../derive'
import { demoJob } from '../figure/demo-job'
import { boxAround, boxCentre } from '../geometry/box'
import type { GreyPicture } from '../figure/align/grey'
import { point } from '../geometry/point'
import type { Part } from '../job/job'
import { blankLeaf, emptyJob, rectangle, usualFlitch, usualPart } from '../job/usual'
import type { Defect } from '../leaves/leaf'
import { USUAL_SHOP } from '../shop'
import { withoutMemory } from './answers'
import { largestFace } from './largest-face'
import { layFace } from './lay-face'
import { pictureScores } from './picture-scores'
import { proposalsInSteps, type Aim, type FaceScore, type Proposals, type ProposalStep } from './proposals'
import { WINDOW } from '../faces/window-group'

const split = (id: string, from: number): Defect => ({
  id,
  kind: 'split',
  note: '',
  shape: 'line',
  from: point(110, from),
  to: point(110, from + 120),
})
/** Leaves 1 and 2 have a split at the numbered end; from leaf 5 on they are wider. */
const leaves = Array.from({ length: 8 }, (_, i) => ({
  ...blankLeaf(i + 1),
  outline: rectangle(i < 4 ? 220 : 260, 1200),
  defects: i < 2 ? [split(`s${i}`, 0)] : [],
}))
const flitch = usualFlitch('f', 'Walnut', rectangle(220, 1200), leaves)
const part = usualPart('p', 'Door', 400, 740, flitch)

/** Crowns about x = 115, bolder from leaf to leaf; leaf 8 has no picture. */
const crown = (strength: number): GreyPicture => ({
  width: 130,
  height: 600,
  pxPerMm: 0.5,
  origin: point(0, 0),
  values: Float32Array.from({ length: 130 * 600 }, (_, i) => {
    const [x, y] = [((i % 130) + 0.5) * 2 - 115, (Math.floor(i / 130) + 0.5) * 2]
    return strength * Math.sin((y + (x * x) / 40) / 12)
  }),
  known: new Uint8Array(130 * 600).fill(1),
})
const figures = new Map(leaves.slice(0, 7).map(({ number }) => [number, crown(number / 100)]))

function proposalsFor(changed: Part, more: readonly FaceScore[] = []): Proposals {
  let last: Proposals = { faces: [], largest: null, strips: [] }
  for (const { answer } of proposalsInSteps(changed, allFrom(flitch), USUAL_SHOP, withoutMemory, more)) last = answer
  return last
}

const { faces, largest, strips } = proposalsFor(part, pictureScores(figures))
const by = (aim: Aim) => {
  const found = faces.find(({ aims }) => aims.some((one) => one.aim === aim))!
  return { part: found.part, measure: found.aims.find((one) => one.aim === aim)!.measure }
}

describe('proposals', () => {
  it('[F23] every one of them fits as it stands', () => {
    expect(faces.length).toBeGreaterThan(2)
    for (const proposed of faces) {
      const job = { ...emptyJob(''), flitches: [flitch], parts: [proposed.part] }
      const wrong = derive(job, withoutMemory).parts[0]!.findings.filter(({ grade }) => grade === 'wrong')
      expect(wrong).toEqual([])
    }
  })

  it('[F23] most play on the widest leaves: 48 by 440', () => {
    const { part: chosen, measure } = by('most play')
    expect(chosen.recipe.firstLeaf).toBe(5)
    // 260 less 206 and 3 off both edges; 1200 less 740 and 10 over at both ends
    expect(measure).toBeCloseTo(48 * 440, 0)
  })

  it('[F23] the longest remainder with the window at an end: 1200 less 760', () => {
    const { part: chosen, measure } = by('longest remainder')
    expect(measure).toBeCloseTo(440, 1)
    const face = layFace(chosen, allFrom(flitch), USUAL_SHOP, withoutMemory)
    const ends = face.play.region.flat(2).map(({ y }) => y)
    expect(Math.min(...[Math.min(...ends), Math.max(...ends)].map((y) => Math.abs(y - face.position.y)))).toBeLessThan(
      0.1,
    )
  })

  it('[F23] away from the splits, and on the middle of the leaf', () => {
    const { part: clear, measure } = by('clear of splits')
    expect(clear.recipe.firstLeaf).toBe(1)
    // at the far end the piece begins 440 from the numbered end, 320 past the end of the split
    expect(measure).toBeCloseTo(320, 0)
    expect(by('figure centred').measure).toBeLessThan(4)
  })

  it('[F27] by the pictures: the crown in the middle of the window, and the boldest leaves that are known', () => {
    const symmetric = by('most symmetric')
    const face = layFace(symmetric.part, allFrom(flitch), USUAL_SHOP, withoutMemory)
    const middles = face.pieces.map(({ roughOnLeaf }) => boxCentre(boxAround(roughOnLeaf)).x)
    // the nearest that was tried of places at the ends, the sides and the middle of the play
    for (const x of middles) expect(Math.abs(x - 115)).toBeLessThan(6)
    expect(symmetric.measure).toBeGreaterThan(0.6)
    const lively = layFace(by('liveliest').part, allFrom(flitch), USUAL_SHOP, withoutMemory)
    expect(lively.pieces.map(({ leaf }) => leaf!.number).sort()).toEqual([6, 7])
    // the root mean square of sines 0.06 and 0.07 high
    expect(by('liveliest').measure).toBeCloseTo(0.065 / Math.SQRT2, 2)
  })

  it('[F27] without pictures no face is said to be the most symmetric or the liveliest', () => {
    const aims = pictureScores(new Map()).map(({ of }) => of(layFace(part, allFrom(flitch), USUAL_SHOP, withoutMemory)))
    expect(aims).toEqual([null, null])
  })

  it('[F24] the largest face of the shape, a millimetre larger fits no more', () => {
    expect(largest!.width / largest!.length).toBeCloseTo(400 / 740, 2)
    const longer = { ...part, length: largest!.length + 2, width: ((largest!.length + 2) * 400) / 740 }
    expect(largestFace(longer, allFrom(flitch), USUAL_SHOP, withoutMemory)!.length).toBeLessThan(longer.length)
  })

  it('[F24] the largest strip of each leaf, with what none can exceed', () => {
    expect(strips.map(({ leaf }) => leaf)).toEqual([2, 1])
    for (const { strip } of strips) {
      expect(strip.area).toBeLessThanOrEqual(strip.bound)
      expect(strip.bound).toBeLessThan(strip.area * 1.01)
    }
  })

  it('[F23] the sideboard of the demonstration has something to pick from', () => {
    const { flitches, parts, shop } = demoJob()
    const first = proposalsInSteps(parts[0]!, allFrom(flitches[0]!), shop, withoutMemory).next().value as ProposalStep
    expect(first.answer.faces.length).toBeGreaterThan(0)
    expect(Object.keys(first.answer.faces[0]!.part.positions).every((group) => group === WINDOW)).toBe(true)
  })
})
