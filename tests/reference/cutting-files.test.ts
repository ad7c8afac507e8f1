/**
 * The templates for a machine, read back by a DXF reader and an SVG reader from what the command line writes, and held
 * against the numbers of the summary beside them.
 *
 * [M6] Each rough piece is there as a closed line on the layer `cut`, in leaf orientation, the same way round, its size
 *   to 0.01 mm; both files hold the same.
 * [M7] With a kerf the path stands off each edge by half of it, outside.
 */
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import DxfParser from 'dxf-parser'
import { parseSync, type INode } from 'svgson'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { main } from '../../src/cli/main'
import { jobFileOf, JOB_NAMES } from '../cli/all-jobs'
import type { PartSummary, Summary } from '../cli/read-summary'

type Pair = readonly [number, number]

const root = fs.mkdtempSync(path.join(os.tmpdir(), 'cutting-'))
beforeAll(() => void vi.spyOn(console, 'log').mockImplementation(() => undefined))
afterAll(() => {
  vi.restoreAllMocks()
  fs.rmSync(root, { recursive: true })
})

const twiceArea = (ring: readonly Pair[]): number =>
  ring.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length]!
    return sum + x * nextY - nextX * y
  }, 0)

const lengthsOf = (ring: readonly Pair[]): readonly number[] =>
  ring.map(([x, y], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length]!
    return Math.hypot(nextX - x, nextY - y)
  })

/** Moved so that its box begins at 0, 0 and its first point is the uppermost, of those the leftmost. */
function settled(ring: readonly Pair[]): readonly Pair[] {
  const [left, top] = [Math.min(...ring.map(([x]) => x)), Math.min(...ring.map(([, y]) => y))]
  const moved = ring.map(([x, y]): Pair => [x - left, y - top])
  const first = moved.reduce((best, [x, y], i) => {
    const [bestX, bestY] = moved[best]!
    return y < bestY - 0.01 || (Math.abs(y - bestY) <= 0.01 && x < bestX - 0.01) ? i : best
  }, 0)
  return [...moved.slice(first), ...moved.slice(0, first)]
}

const isSame = (one: readonly Pair[], other: readonly Pair[]): boolean =>
  one.length === other.length &&
  settled(one).every(([x, y], i) => {
    const [otherX, otherY] = settled(other)[i]!
    return Math.hypot(x - otherX, y - otherY) < 0.01
  })

function cutInDxf(file: string): readonly (readonly Pair[])[] {
  const dxf = new DxfParser().parseSync(fs.readFileSync(file, 'utf8'))!
  return dxf.entities.flatMap((entity) => {
    const { type, layer, shape, vertices } = entity as unknown as {
      type: string
      layer: string
      shape: boolean
      vertices: { x: number; y: number }[]
    }
    if (type !== 'LWPOLYLINE' || layer !== 'cut') return []
    expect(shape).toBe(true)
    // y is up in a DXF file
    return [vertices.map(({ x, y }): Pair => [x, -y])]
  })
}

function cutInSvg(file: string): readonly (readonly Pair[])[] {
  const svg = parseSync(fs.readFileSync(file, 'utf8'))
  const [, , width, height] = svg.attributes.viewBox!.split(' ').map(Number)
  expect(svg.attributes).toMatchObject({ width: `${width}mm`, height: `${height}mm` })
  const layer = svg.children.find(({ attributes }) => attributes.id === 'cut')!
  return layer.children
    .filter(({ name }) => name === 'polygon')
    .map((polygon: INode) =>
      polygon.attributes.points!.split(' ').map((pair) => pair.split(',').map(Number) as [number, number]),
    )
}

async function made(name: string, folder: string, options: readonly string[]): Promise<readonly PartSummary[]> {
  expect(await main([jobFileOf(name), folder, ...options])).toBe(0)
  return (JSON.parse(fs.readFileSync(path.join(folder, 'summary.json'), 'utf8')) as Summary).parts
}

const filesOf = ({ files }: PartSummary, folder: string): readonly (readonly (readonly Pair[])[])[] => {
  const named = (ending: string) =>
    path.join(folder, files.find(({ file }) => file.endsWith(`-templates.${ending}`))!.file)
  return [cutInDxf(named('dxf')), cutInSvg(named('svg'))]
}

describe.each(JOB_NAMES)('%s', (name) => {
  it('[M6] every rough piece is cut from both files, and nothing else', async () => {
    const folder = path.join(root, name)
    for (const part of await made(name, folder, ['--only', 'svg,dxf'])) {
      // strips of leaves, and the pieces that are cut from sheets of them
      const wanted = [...part.rough.map(({ polygon }) => polygon), ...(part.sheets ?? []).map(({ rough }) => rough)]
      for (const cut of filesOf(part, folder)) {
        for (const polygon of wanted) expect(cut.some((ring) => isSame(ring, polygon))).toBe(true)
        for (const ring of cut) expect(wanted.some((polygon) => isSame(ring, polygon))).toBe(true)
      }
    }
  })
})

describe('a kerf', () => {
  it.each(['inches', 'wild-lopsided-leaves', 'radial-of-twelve-on-a-square-core'])(
    '[M7] of 0.4 mm: the path of %s is 0.2 mm outside',
    async (name) => {
      const folder = path.join(root, `${name} kerf`)
      for (const part of await made(name, folder, ['--only', 'dxf,svg', '--kerf', '0.4'])) {
        const areas = part.rough.map(({ polygon }) => {
          const mitres = corners(polygon)
          return (
            Math.abs(twiceArea(polygon)) / 2 + lengthsOf(polygon).reduce((sum, l) => sum + l, 0) * 0.2 + mitres * 0.04
          )
        })
        for (const cut of filesOf(part, folder))
          for (const ring of cut)
            expect(Math.min(...areas.map((area) => Math.abs(Math.abs(twiceArea(ring)) / 2 - area)))).toBeLessThan(0.5)
      }
    },
  )
})

/** The sum over the corners of tan(half the turn): what the mitres add for each square of the distance. */
function corners(ring: readonly Pair[]): number {
  return ring.reduce((sum, here, i) => {
    const before = ring[(i + ring.length - 1) % ring.length]!
    const after = ring[(i + 1) % ring.length]!
    const turn =
      Math.atan2(after[1] - here[1], after[0] - here[0]) - Math.atan2(here[1] - before[1], here[0] - before[0])
    const wrapped = Math.atan2(Math.sin(turn), Math.cos(turn))
    return sum + Math.abs(Math.tan(wrapped / 2))
  }, 0)
}

describe('what is asked for', () => {
  it('[M8] --only writes the parts, sheets and files that are named, and says what there is for a word that names nothing', async () => {
    const said: string[] = []
    vi.spyOn(console, 'error').mockImplementation((words: string) => void said.push(words))
    const folder = path.join(root, 'only')
    const [part] = await made('sideboard', folder, ['--only', 'top,seam-map'])
    expect(part!.files).toEqual([{ file: 'top.pdf', holds: [{ sheet: 'Seam map', from: 1, to: 1 }] }])
    expect(fs.readdirSync(folder).sort()).toEqual(['summary.json', 'top.pdf'])
    expect(await main([jobFileOf('sideboard'), path.join(root, 'none'), '--only', 'table'])).toBe(2)
    expect(said[0]).toMatch(/nothing is called “table”\. There is .*top.*seam-map.*template-1.*dxf/)
    expect(fs.existsSync(path.join(root, 'none'))).toBe(false)
  })

  it('[M8] what the bars measured is in the summary, and a bar that can’t be is refused', async () => {
    const said: string[] = []
    vi.spyOn(console, 'error').mockImplementation((words: string) => void said.push(words))
    const folder = path.join(root, 'corrected')
    const [part] = await made('short', folder, ['--only', 'seam-map', '--correct-x', '97,0', '--correct-y', '100.5'])
    expect(part!.templates.correction.across).toBeCloseTo(100 / 97, 12)
    expect(part!.templates.correction.along).toBeCloseTo(100 / 100.5, 12)
    for (const [options, why] of [
      [['--correct-x', '50'], /--correct-x 50: a bar of 100 mm measures 80 to 125 mm/],
      [['--correct-y', 'ten'], /--correct-y wants a length in mm from 80 to 125, not “ten”/],
      [['--kerf', '-1'], /--kerf wants a width in mm from 0 to 30, not “-1”/],
      [['--join', 'glue'], /“glue” is no way for pages to meet/],
      [['--paper', '50x700'], /A paper of 50 mm can’t be printed on: 100 to 5080 mm/],
    ] as const) {
      expect(await main([jobFileOf('short'), path.join(root, 'none'), ...options])).toBe(2)
      expect(said.pop()).toMatch(why)
    }
  })
})
