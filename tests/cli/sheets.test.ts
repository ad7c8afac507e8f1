/**
 * The command line, on every job of the fixtures. The numbers of a summary are held against each other and against the
 * files beside it, by arithmetic of this file's own.
 *
 * [T10] Every file that a summary names is there; a PDF has as many pages as are said; nothing unfinished is left.
 * [T11] The cells tile the taped sheet: their areas add up to it and no spot lies in two.
 * [T12] A placement keeps lengths, and mirrors the leaf if and only if it is turned over.
 * [T13] A rough piece, laid, covers its cell; where a face has play and its window lies in it, it lies in sound wood.
 * [T14] A seam is as long as its ends are apart; its finished length and the finished widths come from the panel.
 * [T15] The same job gives the same bytes.
 * [T16] What can't be read or written gives a sentence on stderr and 2, and no file.
 */
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest'
import { main } from '../../src/cli/main'
import { jobFileOf, JOB_NAMES } from './all-jobs'
import type { PartSummary, Summary } from './read-summary'

const root = fs.mkdtempSync(path.join(os.tmpdir(), 'sheets-'))
const said: string[] = []

beforeAll(() => {
  vi.spyOn(console, 'log').mockImplementation(() => undefined)
  vi.spyOn(console, 'error').mockImplementation((words: string) => void said.push(words))
})
afterEach(() => void said.splice(0))
afterAll(() => {
  vi.restoreAllMocks()
  fs.rmSync(root, { recursive: true })
})

const summaryIn = (folder: string): Summary =>
  JSON.parse(fs.readFileSync(path.join(folder, 'summary.json'), 'utf8')) as Summary

type Pair = readonly [number, number]

const twiceArea = (ring: readonly Pair[]): number =>
  ring.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length]!
    return sum + x * nextY - nextX * y
  }, 0)

const area = (ring: readonly Pair[]): number => Math.abs(twiceArea(ring)) / 2

/** How far a spot lies from a ring. */
const distanceFrom = (ring: readonly Pair[], [x, y]: Pair): number =>
  Math.min(
    ...ring.map(([ax, ay], i) => {
      const [bx, by] = ring[(i + 1) % ring.length]!
      const [alongX, alongY] = [bx - ax, by - ay]
      const share = ((x - ax) * alongX + (y - ay) * alongY) / (alongX ** 2 + alongY ** 2)
      const t = Math.max(0, Math.min(1, share))
      return Math.hypot(x - ax - t * alongX, y - ay - t * alongY)
    }),
  )

const isInside = (ring: readonly Pair[], [x, y]: Pair): boolean =>
  ring.filter(([ax, ay], i) => {
    const [bx, by] = ring[(i + 1) % ring.length]!
    return ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax
  }).length %
    2 ===
  1

const laid = ([a, b, c, d, e, f]: PartSummary['cells'][number]['placement'], [x, y]: Pair): Pair => [
  a * x + c * y + e,
  b * x + d * y + f,
]

/** The taped sheet as the part says it: panel, core beyond it, overhang beyond that. */
function sheetOf({ panel, core, overhang }: PartSummary) {
  const [top, right, bottom, left] = [0, 1, 2, 3].map((i) => core[i]! + overhang[i]!) as [
    number,
    number,
    number,
    number,
  ]
  return {
    left: -panel.width / 2 - left,
    right: panel.width / 2 + right,
    top: -panel.length / 2 - top,
    bottom: panel.length / 2 + bottom,
  }
}

const spotsOver = (part: PartSummary): readonly Pair[] => {
  const { left, right, top, bottom } = sheetOf(part)
  // shares without a common measure with the seams', so that no spot falls on one
  return Array.from({ length: 400 }, (_, i) => [
    left + (right - left) * ((i * 0.618034 + 0.0123) % 1),
    top + (bottom - top) * ((i * 0.754878 + 0.0271) % 1),
  ])
}

const pagesOf = async (file: string): Promise<number> => {
  const pdf = await getDocument({ data: new Uint8Array(fs.readFileSync(file)), verbosity: 0 }).promise
  const { numPages } = pdf
  await pdf.destroy()
  return numPages
}

describe.each(JOB_NAMES)('%s', (name) => {
  const folder = path.join(root, name)
  let parts: readonly PartSummary[] = []

  beforeAll(async () => {
    expect(await main([jobFileOf(name), folder])).toBe(0)
    const summary = summaryIn(folder)
    expect(summary.unit).toBe('mm')
    parts = summary.parts
    expect(parts.length).toBeGreaterThan(0)
  })

  it('[T10] the files are there, with as many pages as are said', async () => {
    const named = parts.flatMap(({ files }) => files.map(({ file }) => file))
    expect(new Set(named).size).toBe(named.length)
    expect(fs.readdirSync(folder).sort()).toEqual([...named, 'summary.json'].sort())
    for (const { templates } of parts) {
      expect(templates.paper).toBe('a4')
      expect(await pagesOf(path.join(folder, templates.file!))).toBe(templates.pages)
      expect(fs.readFileSync(path.join(folder, templates.picture!), 'utf8')).toContain('<svg ')
    }
    for (const { templates, files } of parts) {
      expect(files.map(({ file }) => file)).toEqual(expect.arrayContaining([templates.file, templates.picture]))
      const { holds } = files.find(({ file }) => file === templates.file)!
      expect(holds[0]!.from).toBe(1)
      holds.slice(1).forEach(({ from }, i) => expect(from).toBe(holds[i]!.to + 1))
      expect(holds.at(-1)!.to).toBe(templates.pages)
    }
  })

  it('[T47] every part has its press sheet, its glue, and a place in one load or none that fits', () => {
    const { pressing } = summaryIn(folder)
    expect(pressing.parts.map(({ id }) => id)).toHaveLength(parts.length)
    for (const { grams, thickness } of pressing.parts) {
      expect(grams).toBeGreaterThan(0)
      expect(thickness.least).toBeLessThanOrEqual(thickness.most)
    }
    for (const { files } of parts) expect(files[0]!.holds.map(({ sheet }) => sheet)).toContain('Press sheet')
    const pressed = [...pressing.loads.flatMap((load) => load.parts), ...pressing.tooLarge]
    expect(pressed.sort()).toEqual(parts.map((part) => part.name).sort())
    expect(pressing.hours.steps.reduce((sum, { hands }) => sum + hands, 0)).toBeCloseTo(pressing.hours.hands, 9)
  })

  it('[F20] a part that does not fit is told what would make it', () => {
    for (const part of parts) if (part.play.empty) expect(part.waysToFit).not.toBeNull()
    if (name !== 'leaf-too-short') return
    const ways = parts.flatMap((part) => part.waysToFit?.ways ?? [])
    expect(ways.length).toBeGreaterThan(1)
    for (const { sentence } of ways) expect(sentence).toMatch(/^[A-Z0-9]/)
  })

  it('[T11] the cells tile the taped sheet', () => {
    for (const part of parts) {
      const { left, right, top, bottom } = sheetOf(part)
      const isPlain = part.outline.shape === 'rectangle'
      const whole = isPlain ? (right - left) * (bottom - top) : area(part.outline.sheet)
      // between border and field there may lie a string
      const string = part.border?.stringBetween
      const sum =
        part.cells.reduce((total, { polygon }) => total + area(polygon), 0) +
        (string ? area(string.outside) - area(string.inside) : 0)
      // along curves the chords of a cell and of the sheet differ by the chord error
      expect(Math.abs(sum - whole)).toBeLessThan(isPlain ? 1e-3 : 0.01 * 2 * (right - left + bottom - top))
      for (const spot of spotsOver(part)) {
        if (distanceFrom(part.outline.sheet, spot) < 0.02) continue
        const isString = !!string && isInside(string.outside, spot) && !isInside(string.inside, spot)
        const isOn = isInside(part.outline.sheet, spot) && !isString
        expect(part.cells.filter(({ polygon }) => isInside(polygon, spot))).toHaveLength(isOn ? 1 : 0)
      }
    }
  })

  it('[T12] placements are rigid and mirror exactly the leaves that are turned over', () => {
    for (const { placement, turnedOver } of parts.flatMap(({ cells }) => cells)) {
      const [a, b, c, d] = placement
      expect(a * d - b * c).toBeCloseTo(turnedOver ? -1 : 1, 12)
      expect(a * c + b * d).toBeCloseTo(0, 12)
      expect(Math.hypot(a, b)).toBeCloseTo(1, 12)
    }
  })

  it('[T13] the rough piece covers its cell, and lies in sound wood where the window has play', () => {
    for (const part of parts) {
      // the arc of a wedge that is cut full has points of its own, a chord error apart from those of its place
      const apart = part.outline.shape === 'rectangle' ? 1e-3 : 0.01
      part.cells.forEach((cell, i) => {
        const rough = part.rough[i]!
        expect([rough.cell, rough.flitch, rough.leaf]).toEqual([cell.id, cell.flitch, cell.leaf])
        const onPanel = rough.polygon.map((corner) => laid(cell.placement, corner))
        for (const corner of cell.polygon)
          expect(isInside(onPanel, corner) ? 0 : distanceFrom(onPanel, corner)).toBeLessThan(apart)
        const { position, nudge, drift } = cell.window
        const play = cell.window.group === 'border' ? part.border!.play : part.play
        const inPlay = play.polygons.some(([outer]) => isInside(outer!, position))
        if (!inPlay || cell.leaf === null) return
        const { usable } = part.leaves.find(({ flitch, leaf }) => flitch === cell.flitch && leaf === cell.leaf)!
        expect(nudge.concat(drift).every(Number.isFinite)).toBe(true)
        for (const spot of alongRing(rough.polygon)) expect(isSound(usable, spot)).toBe(true)
      })
    }
  })

  it('[T14] lengths of seams and widths of columns agree with the panel', () => {
    for (const part of parts) {
      const { panel, seams, finished } = part
      const inside = Math.hypot(panel.width, panel.length)
      for (const seam of seams.filter(({ line }) => !line)) {
        expect(Math.hypot(seam.to[0] - seam.from[0], seam.to[1] - seam.from[1])).toBeCloseTo(seam.length, 9)
        expect(seam.finishedLength).toBeLessThanOrEqual(Math.min(inside, seam.length) + 1e-9)
        const parted = seam.stretches.reduce(
          (sum, { from, to }) => sum + Math.hypot(to[0] - from[0], to[1] - from[1]),
          0,
        )
        expect(Math.abs(parted - seam.length)).toBeLessThan(0.01)
      }
      // where a lipping is put on afterwards the face does not reach the edge of the finished panel
      const { left, right } = sheetOf(part)
      const band = part.border ? part.border.width + (part.border.string?.width ?? 0) : 0
      const face = Math.min(right, panel.width / 2) - Math.max(left, -panel.width / 2) - 2 * band
      if (finished.widths && part.outline.shape === 'rectangle')
        expect(finished.widths.reduce((sum, w) => sum + w, 0)).toBeCloseTo(face, 6)
    }
  })
})

/** The corners of a ring drawn in by 0.02 mm, and spots between them. */
function alongRing(ring: readonly Pair[]): readonly Pair[] {
  const centre = [0, 1].map((k) => ring.reduce((sum, p) => sum + p[k]!, 0) / ring.length) as [number, number]
  const drawnIn = ring.map(([x, y]): Pair => {
    const far = Math.hypot(x - centre[0], y - centre[1])
    return [x + ((centre[0] - x) / far) * 0.03, y + ((centre[1] - y) / far) * 0.03]
  })
  return drawnIn.flatMap(([x, y], i) => {
    const [nextX, nextY] = drawnIn[(i + 1) % drawnIn.length]!
    return Array.from({ length: 20 }, (_, k): Pair => [x + ((nextX - x) * k) / 20, y + ((nextY - y) * k) / 20])
  })
}

const isSound = (usable: PartSummary['leaves'][number]['usable'], spot: Pair): boolean =>
  usable.some(([outer, ...holes]) => isInside(outer!, spot) && !holes.some((hole) => isInside(hole, spot)))

describe('[T15] the same job', () => {
  it('gives the same bytes, and other paper other pages', async () => {
    const [one, two, large] = ['one', 'two', 'large'].map((name) => path.join(root, name)) as [string, string, string]
    const job = jobFileOf('wild-lopsided-leaves')
    expect(await main([job, one])).toBe(0)
    expect(await main([job, two])).toBe(0)
    for (const file of fs.readdirSync(one))
      expect(Buffer.compare(fs.readFileSync(path.join(one, file)), fs.readFileSync(path.join(two, file)))).toBe(0)
    expect(await main(['--paper', 'A3', job, large])).toBe(0)
    const [small, wide] = [summaryIn(one), summaryIn(large)].map(({ parts }) => parts[0]!.templates)
    expect(wide!.paper).toBe('a3')
    expect(wide!.pages).toBeLessThan(small!.pages)
  })
})

describe('[T16] what can’t be done', () => {
  const short = jobFileOf('short')
  const bad = (name: string, content: string | Uint8Array): string => {
    const file = path.join(root, name)
    fs.writeFileSync(file, content)
    return file
  }

  it.each([
    { what: 'no words at all', given: () => [], says: /A job file and a folder are wanted/ },
    { what: 'no folder', given: () => [short], says: /A job file and a folder are wanted/ },
    {
      what: 'one word too many',
      given: () => [short, path.join(root, 'no'), 'more'],
      says: /“more” is one word too many/,
    },
    {
      what: 'an unknown paper',
      given: () => [short, path.join(root, 'no'), '--paper', 'b5'],
      says: /“b5” is not a paper/,
    },
    { what: 'a paper without a name', given: () => [short, path.join(root, 'no'), '--paper'], says: /--paper wants/ },
    { what: 'an unknown option', given: () => [short, path.join(root, 'no'), '--fast'], says: /--fast is not known/ },
    {
      what: 'no such file',
      given: () => [path.join(root, 'none.json'), path.join(root, 'no')],
      says: /none\.json.*no such file/,
    },
    { what: 'a folder for a job', given: () => [root, path.join(root, 'no')], says: /it is a folder/ },
    { what: 'not JSON', given: () => [bad('a.json', 'veneer'), path.join(root, 'no')], says: /neither a packed job/ },
    {
      what: 'another JSON',
      given: () => [bad('b.json', '{"a": 1}'), path.join(root, 'no')],
      says: /not a Leafturn job/,
    },
    {
      what: 'half a zip',
      given: () => [bad('c.zip', new Uint8Array([0x50, 0x4b, 3, 4])), path.join(root, 'no')],
      says: /damaged/,
    },
    {
      what: 'a width below nought',
      given: () => [
        bad('d.json', fs.readFileSync(short, 'utf8').replace('"width": 1100', '"width": -4')),
        path.join(root, 'no'),
      ],
      says: /-4/,
    },
    {
      what: 'a part larger than can be tiled',
      given: () => [
        bad(
          'e.json',
          fs
            .readFileSync(short, 'utf8')
            .replace(
              '"width": 1100, "length": 520',
              '"width": 19000, "length": 19000, "recipe": { "pattern": "four-way", "count": 4 }',
            ),
        ),
        path.join(root, 'no'),
      ],
      says: /Part 1: .*can’t be tiled on A4/,
    },
    {
      what: 'a file where the folder should be',
      given: () => [short, bad('f', '')],
      says: /there is a file of that name/,
    },
  ])('$what: a sentence, 2, and no file', async ({ given, says }) => {
    expect(await main(given())).toBe(2)
    expect(said.join('\n')).toMatch(says)
    expect(said).toHaveLength(1)
    expect(fs.existsSync(path.join(root, 'no'))).toBe(false)
  })

  it('[T16] a folder where a file should be: nothing is written', async () => {
    const folder = path.join(root, 'blocked')
    fs.mkdirSync(path.join(folder, 'summary.json'), { recursive: true })
    expect(await main([short, folder])).toBe(2)
    expect(said.join()).toMatch(/summary\.json” is a folder/)
    expect(fs.readdirSync(folder)).toEqual(['summary.json'])
  })
})

it('[T10] the ring marks are written without a job', async () => {
  const folder = path.join(root, 'ring marks')
  expect(await main(['ring-marks', folder])).toBe(0)
  expect(fs.readdirSync(folder)).toEqual(['ring-marks.pdf'])
  const { numPages } = await getDocument({ data: new Uint8Array(fs.readFileSync(path.join(folder, 'ring-marks.pdf'))) })
    .promise
  expect(numPages).toBe(1)
})
