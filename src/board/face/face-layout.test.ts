/**
 * [V10] what is written round a face and on it does not cover anything else that is written. [V11] every number is
 * there, with the side of its leaf that is up. [V12] the chain of dimensions is legible or gathered.
 */
import { describe, expect, it } from 'vitest'
import { derive } from '../../core/derive'
import type { Finding } from '../../core/finding'
import { demoJob } from '../../core/figure/demo-job'
import { isBorderPiece } from '../../core/faces/window-group'
import { withoutMemory } from '../../core/fit/answers'
import { point } from '../../core/geometry/point'
import { distanceToEdge } from '../../core/geometry/segment'
import { invert, transformPoint } from '../../core/geometry/transform'
import { USUAL_BORDER } from '../../core/patterns/border'
import { USUAL_RADIAL } from '../../core/patterns/radial'
import type { BoardColours } from '../board-types'
import { legibleChain } from '../paint/dimensions'
import { boxOnScreen, fitView, viewTransform } from '../view'
import { faceMargins, layOutFace, TAG_HEIGHT, TAG_HEIGHT_TOUCH } from './face-layout'
import { pickFace } from './face-pick'
import { faceScene } from './face-scene'

const names =
  'ground sheet ink inkSoft line act onAct note onNote good wood woodEdge grain tagUp onTagUp tagDown onTagDown'
const colours = {
  ...Object.fromEntries(names.split(' ').map((name) => [name, '#888888'])),
  dark: false,
  font: 'sans-serif',
} as unknown as BoardColours

const parts = derive(demoJob(), withoutMemory).parts
const boards = [
  { width: 1280, height: 800 },
  { width: 900, height: 560 },
  { width: 390, height: 500 },
]

const cases = parts.flatMap((part) => boards.map((size) => ({ name: part.part.name, part, size })))

const laidOut = ({ part, size }: (typeof cases)[number]) => {
  const numbers = new Map<Finding, number>(part.findings.map((finding, i) => [finding, i + 1]))
  const scene = faceScene(part, { unit: 'mm', colours, numbers })
  const view = fitView(scene.sheet, size, faceMargins(scene, size), scene.lying)
  return { scene, view, layout: layOutFace(scene, view, TAG_HEIGHT) }
}

describe('what stands on a face and round it', () => {
  it.each(cases)('[V10] $name at $size.width x $size.height: no plate covers another', (one) => {
    const { layout } = laidOut(one)
    const { plates } = layout
    plates.forEach((p, i) =>
      plates.slice(i + 1).forEach((q) => {
        const apart = Math.abs(p.x - q.x) >= (p.width + q.width) / 2 || Math.abs(p.y - q.y) >= (p.height + q.height) / 2
        expect(apart, JSON.stringify([p, q])).toBe(true)
      }),
    )
    for (const { x, y } of [...plates, ...layout.markers.map(({ at }) => at)]) {
      expect(x > 0 && x < one.size.width && y > 0 && y < one.size.height).toBe(true)
    }
  })

  it.each(cases)('[V11] $name at $size.width x $size.height: every leaf has its tag, picked as its cell', (one) => {
    const { scene, view, layout } = laidOut(one)
    const laid = scene.cells.filter(({ leaf }) => leaf !== null)
    expect(layout.tags.map(({ cell, number, turnedOver }) => [cell, number, turnedOver])).toEqual(
      laid.map(({ id, leaf, turnedOver }) => [id, leaf, turnedOver]),
    )
    const bare = { ...layout, markers: [] }
    for (const tag of layout.tags)
      expect(pickFace(scene, bare, view, tag as never, false)).toEqual({ kind: 'cell', cell: tag.cell })
    const { min } = boxOnScreen(view, scene.sheet)
    expect(pickFace(scene, { ...bare, letters: [] }, view, { x: min.x - 15, y: min.y - 15 }, false)).toBeNull()
  })
})

describe('a sunburst of booked wedges on a small board', () => {
  const job = demoJob()
  const round = job.parts.find(({ recipe }) => recipe.pattern === 'radial')!
  const recipe = { ...USUAL_RADIAL, count: 12, firstLeaf: 1, eachFrom: 'booked pair' } as const
  const [part] = derive({ ...job, parts: [{ ...round, recipe }] }, withoutMemory).parts
  const tagsAt = (zoom: number, picked?: string) => {
    const { scene, view } = laidOut({ name: '', part: part!, size: boards.at(-1)! })
    const selected = picked === undefined ? null : ({ kind: 'cell', cell: picked } as const)
    return layOutFace({ ...scene, selected }, { ...view, scale: view.scale * zoom }, TAG_HEIGHT_TOUCH).tags
  }

  it('[V11] no tag covers another; those left out come when it is enlarged, and that of the cell picked is there', () => {
    const some = tagsAt(0.6)
    expect(some.length).toBeLessThan(24)
    expect(some.length).toBeGreaterThan(6)
    for (const zoom of [0.6, 1])
      tagsAt(zoom).forEach((p, i, tags) =>
        tags.slice(i + 1).forEach((q) => {
          const apart =
            Math.abs(p.x - q.x) >= (p.width + q.width) / 2 || Math.abs(p.y - q.y) >= (p.height + q.height) / 2
          expect(apart, JSON.stringify([zoom, p, q])).toBe(true)
        }),
      )
    const left = part!.pieces.find(({ cell }) => !some.some((tag) => tag.cell === cell.id))!
    expect(tagsAt(0.6, left.cell.id).map(({ cell }) => cell)).toContain(left.cell.id)
    expect(tagsAt(3)).toHaveLength(24)
  })
})

describe('a border of many pieces', () => {
  it('[Y6] its leaf is tagged once, and the letters of its seams with the field stand on them', () => {
    const job = demoJob()
    const [first] = job.parts
    const border = { ...USUAL_BORDER, width: 50, pieceLength: 90 }
    const [part] = derive({ ...job, parts: [{ ...first!, border }] }, withoutMemory).parts
    const { scene, view, layout } = laidOut({ name: '', part: part!, size: boards[0]! })
    const ofBorder = scene.cells.filter(({ id }) => isBorderPiece(id))
    expect(ofBorder.length).toBeGreaterThan(12)
    const tagged = layout.tags.filter(({ cell }) => isBorderPiece(cell)).map(({ number }) => number)
    expect(tagged).toEqual([...new Set(ofBorder.map(({ leaf }) => leaf))])
    const seams = scene.seams.filter(({ band }) => band === 'border')
    expect(seams).toHaveLength(4)
    for (const { letter, edge } of seams) {
      const placed = layout.letters.find((one) => one.letter === letter)!
      const spot = transformPoint(invert(viewTransform<'panel'>(view)), point<'screen'>(placed.x, placed.y))
      expect(distanceToEdge(edge, spot)).toBeLessThan(0.01)
    }
  })
})

describe('a border narrower than its tags', () => {
  it('[Y6] on a round top they cover none of the letters beyond the rim', () => {
    const job = demoJob()
    const round = job.parts.find(({ recipe }) => recipe.pattern === 'radial')!
    const [part] = derive({ ...job, parts: [{ ...round, border: USUAL_BORDER }] }, withoutMemory).parts
    const { layout } = laidOut({ name: '', part: part!, size: boards.at(-1)! })
    const tags = layout.tags.filter(({ cell }) => isBorderPiece(cell))
    expect(tags.length).toBeGreaterThan(6)
    for (const tag of tags)
      for (const letter of layout.letters)
        expect(
          Math.abs(tag.x - letter.x) < tag.width / 2 + letter.radius - 4 &&
            Math.abs(tag.y - letter.y) < tag.height / 2 + letter.radius - 4,
          `${letter.letter} by ${tag.cell}`,
        ).toBe(false)
  })
})

describe('a chain of dimensions', () => {
  const chain = (count: number, length: number, text: (i: number) => string) =>
    Array.from({ length: count }, (_, i) => ({ from: i * length, to: (i + 1) * length, text: text(i) }))

  it.each([
    { what: 'room for all', links: chain(3, 60, () => '150'), texts: ['150', '150', '150'] },
    { what: 'equal and short', links: chain(12, 12, () => '62.5'), texts: ['12 × 62.5'] },
    { what: 'two sizes, short', links: chain(12, 20, (i) => (i < 6 ? '62.5' : '64')), texts: ['6 × 62.5', '6 × 64'] },
    { what: 'all unlike and short', links: chain(3, 10, (i) => `${i}7.5`), texts: ['', '', ''] },
  ])('[V12] $what', ({ links, texts }) => {
    const legible = legibleChain(links, 'x', { font: 'sans-serif' })
    expect(legible.map(({ text }) => text)).toEqual(texts)
    expect([legible[0]!.from, legible.at(-1)!.to]).toEqual([links[0]!.from, links.at(-1)!.to])
  })
})
