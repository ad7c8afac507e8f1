/** A page with one board on it, for tests and for measuring: `?board=face&part=door-1&pictures=1`. Not shipped. */
import '@fontsource-variable/source-sans-3'
import '../../../src/app/theme.css'
import { boardColours, onColoursChange } from '../../../src/board/board-colours'
import type { Board, BoardTarget, LeafPicture, OutlineTool } from '../../../src/board/board-types'
import { mountFaceBoard } from '../../../src/board/face/face-board'
import { faceScene } from '../../../src/board/face/face-scene'
import { mountLeafBoard } from '../../../src/board/leaf/leaf-board'
import { leafScene } from '../../../src/board/leaf/leaf-scene'
import { mountFlitchBoard } from '../../../src/board/flitch/flitch-board'
import { flitchScene } from '../../../src/board/flitch/flitch-scene'
import { mountOutlineBoard } from '../../../src/board/outline/outline-board'
import { outlineScene } from '../../../src/board/outline/outline-scene'
import { mountPartsBoard } from '../../../src/board/parts/parts-board'
import { partsScene } from '../../../src/board/parts/parts-scene'
import { derive, type DerivedPart } from '../../../src/core/derive'
import type { Finding } from '../../../src/core/finding'
import { demoJob } from '../../../src/core/figure/demo-job'
import { DEMO_LOG } from '../../../src/core/figure/demo-flitch'
import { leafFrame, makeLog } from '../../../src/core/figure/log/log'
import { leafPixels } from '../../../src/core/figure/log/leaf-pixels'
import { WINDOW } from '../../../src/core/faces/window-group'
import { boxHeight, boxWidth } from '../../../src/core/geometry/box'
import { add, point, type Point } from '../../../src/core/geometry/point'
import type { Flitch } from '../../../src/core/leaves/flitch'
import type { DefectKind, DefectShape } from '../../../src/core/leaves/leaf'
import type { Job, Part } from '../../../src/core/job/job'
import { USUAL_FOUR_WAY } from '../../../src/core/patterns/four-way'
import { USUAL_STRIPS } from '../../../src/core/patterns/strips'
import { rememberingAnswers } from '../../../src/store/memory'

const asked = new URLSearchParams(location.search)
const container = document.querySelector<HTMLDivElement>('#board')!

function harnessJob(): Job {
  const job = demoJob()
  const base = job.parts[0]!
  const more = (id: string, name: string, width: number, length: number, rest: Partial<Part>): Part => ({
    ...base,
    id,
    name,
    width,
    length,
    positions: {},
    ...rest,
  })
  const count = Number(asked.get('cells') ?? 24)
  const { DEMO_WIDTH = String(count * 62) } = Object.fromEntries(asked)
  return {
    ...job,
    flitches: job.flitches.map((flitch) => withLeaves(flitch, count)),
    unit: asked.get('unit') === 'in' ? 'in' : 'mm',
    parts: [
      ...job.parts,
      more('wide', 'Wall panel', Number(DEMO_WIDTH), 900, {
        recipe: { ...USUAL_STRIPS, equal: 'after trimming', count, firstLeaf: 1 },
      }),
      more('four', 'Four-way top', 540, 620, {
        core: { top: 12, right: 12, bottom: 12, left: 12 },
        recipe: { ...USUAL_FOUR_WAY, firstLeaf: 9 },
      }),
    ],
  }
}

/** The flitch gone on with from its beginning until it has so many leaves. */
const withLeaves = (flitch: Flitch, count: number): Flitch => ({
  ...flitch,
  leaves: Array.from({ length: Math.max(count, flitch.leaves.length) }, (_, i) =>
    i < flitch.leaves.length
      ? flitch.leaves[i]!
      : { ...flitch.leaves[i % flitch.leaves.length]!, number: i + 1, defects: [] },
  ),
})

const log = makeLog(DEMO_LOG)
const frame = leafFrame(log)
const pictures = new Map<number, LeafPicture>()

/** Of the numbered sides; `pictures=both`: of the other sides too, which are the next leaf's numbered ones. */
function paintPictures(part: DerivedPart, others: readonly number[]): void {
  const leaves = new Set([...part.pieces.flatMap(({ leaf }) => (leaf ? [leaf.number] : [])), ...others])
  for (const leaf of leaves)
    if (asked.get('pictures') === 'both')
      pictures.set(leaf, { ...painted(cutOf(leaf)), other: painted(cutOf(leaf) + 1) })
    else pictures.set(leaf, painted(cutOf(leaf)))
}

const cutOf = (leaf: number): number => ((leaf - 1) % DEMO_LOG.leaves) + 1

const cuts = new Map<number, LeafPicture>()

function painted(leaf: number): LeafPicture {
  const known = cuts.get(leaf)
  if (known) return known
  const pxPerMm = Number(asked.get('px') ?? 1)
  const { width, height, rgba } = leafPixels(log, leaf, { pxPerMm, box: frame })
  const canvas = document.createElement('canvas')
  canvas.width = width
  canvas.height = height
  canvas.getContext('2d')!.putImageData(new ImageData(rgba as Uint8ClampedArray<ArrayBuffer>, width, height), 0, 0)
  const picture = { bitmap: canvas, pxPerMm, origin: frame.min }
  cuts.set(leaf, picture)
  return picture
}

// as the app does
const answers = rememberingAnswers()
let job = harnessJob()
const partId = asked.get('part') ?? 'door-1'
const told: unknown[] = []
let start: Point<'leaf'> | null = null
let flitch: Flitch = job.flitches[0]!

const derived = () => {
  const parts = derive(job, answers).parts
  return { parts, part: parts.find(({ part }) => part.id === partId)! }
}

function placeWindow(at: Point<'leaf'>): void {
  job = {
    ...job,
    parts: job.parts.map((part) => (part.id === partId ? { ...part, positions: { [WINDOW]: at } } : part)),
  }
}

function moveWindow({ by, phase }: { by: Point<'leaf'>; phase: string }): void {
  start ??= derived().part.position
  placeWindow(add(start, by))
  if (phase !== 'move') start = null
  told.push({ by, phase })
  show()
}

const handlers = {
  onWindowDrag: moveWindow,
  onSwap: (one: string, other: string) => void told.push({ swap: [one, other] }),
  onSelect: (target: BoardTarget | null) => {
    told.push({ select: target })
    selected = target
    show()
  },
}

const outlineHandlers = {
  onOutline: ({ ring, phase }: { ring: readonly Point<'leaf'>[]; phase: string }) => {
    told.push({ outline: ring, phase })
    flitch = {
      ...flitch,
      leaves: flitch.leaves.map((leaf) => (leaf.number === leafNumber() ? { ...leaf, outline: ring } : leaf)),
    }
    show()
  },
  onDefectAdd: (drawn: { kind: DefectKind; shape: DefectShape }) => {
    told.push({ defect: drawn })
    const defect = { ...drawn.shape, kind: drawn.kind, id: `new-${told.length}`, note: '' }
    flitch = {
      ...flitch,
      leaves: flitch.leaves.map((leaf) =>
        leaf.number === leafNumber() ? { ...leaf, defects: [...leaf.defects, defect] } : leaf,
      ),
    }
    show()
  },
  onDefectChange: (change: unknown) => void told.push({ change }),
  onDefectRemove: (id: string) => void told.push({ remove: id }),
  onSelect: handlers.onSelect,
  onSay: (words: string) => void told.push({ say: words }),
}

let selected: BoardTarget | null = null
let board: Board<never> | null = null
const kind = (asked.get('board') ?? 'face') as 'face' | 'leaf' | 'flitch' | 'parts' | 'outline'
const leafNumber = () => Number(asked.get('leaf') ?? derived().part.pieces[0]?.leaf?.number ?? 1)

function sceneNow(): unknown {
  const { part, parts } = derived()
  const shared = {
    unit: job.unit,
    colours: boardColours(container),
  }
  const ofLeaves = asked.has('pictures') ? { pictures } : {}
  const ofFlitches = asked.has('pictures') ? { pictures: () => pictures } : {}
  if (kind === 'leaf')
    return leafScene(
      part,
      { flitch: flitch.id, leaf: leafNumber() },
      { ...shared, ...ofFlitches, shop: job.shop, parts, selected },
    )
  if (kind === 'outline') {
    const tool = (asked.get('tool') ?? 'outline') as OutlineTool
    return outlineScene(flitch, leafNumber(), { ...shared, ...ofLeaves, tool, drawnKind: 'knot', selected })
  }
  if (kind === 'flitch') {
    const chosen = (selected as { leaf?: number } | null)?.leaf ?? 1
    return flitchScene(flitchWithStates(), { ...shared, ...ofLeaves, parts, selected: chosen })
  }
  if (kind === 'parts') {
    const chosen = (selected as { part?: string } | null)?.part ?? 'door-2'
    const own = parts.filter(({ part: { id } }) => !['wide', 'four'].includes(id))
    return partsScene(own, { ...shared, ...ofFlitches, selected: chosen })
  }
  const listed = part.findings.filter(({ grade }) => grade !== 'good')
  const numbers = new Map<Finding, number>(listed.map((finding, i) => [finding, i + 1]))
  const lying = asked.has('lying') ? { lying: asked.get('lying') === '1' } : {}
  return faceScene(part, { ...shared, ...ofFlitches, numbers, selected, showLeaves: asked.has('leaves'), ...lying })
}

/** A spare, a leaf set aside and a gap, to be looked at. */
const flitchWithStates = (): Flitch => ({
  ...flitch,
  leaves: flitch.leaves.map((leaf) =>
    leaf.number === 3 ? { ...leaf, state: 'spare' } : leaf.number === 2 ? { ...leaf, state: 'set aside' } : leaf,
  ),
  missing: [{ after: 3, count: 2 }],
})

const mounts = {
  face: () => mountFaceBoard(container, handlers),
  leaf: () => mountLeafBoard(container, handlers),
  flitch: () => mountFlitchBoard(container, handlers),
  parts: () => mountPartsBoard(container, handlers),
  outline: () => mountOutlineBoard(container, outlineHandlers),
}

function show(): void {
  board ??= mounts[kind]() as Board<never>
  board.update(sceneNow() as never)
}

/** Where the window is at a step of a measured drag, away from where it began. */
const swing = (i: number): Point<'leaf'> => point(12 * Math.sin(i / 7), 40 * Math.sin(i / 11))

/** Steps once a frame and gives the times between frames, ms. */
function framesOf(count: number, step: (i: number) => void): Promise<number[]> {
  const times: number[] = []
  return new Promise((done) => {
    let last = 0
    let i = 0
    const tick = (now: number) => {
      if (i > 5) times.push(now - last)
      last = now
      step(i++)
      if (times.length < count) requestAnimationFrame(tick)
      else done(times)
    }
    requestAnimationFrame(tick)
  })
}

/** `drag`: through the whole spine; `spine`: its share alone; `board`: scenes made beforehand; `bare`: the same pictures on a plain canvas. */
async function measure(what: 'drag' | 'spine' | 'board' | 'bare', count: number): Promise<number[] | null> {
  if (what === 'drag') {
    const times = await framesOf(count, (i) => moveWindow({ by: swing(i), phase: 'move' }))
    moveWindow({ by: point(0, 0), phase: 'cancel' })
    return times
  }
  if (what === 'bare') return kind === 'face' && pictures.size > 0 ? framesOf(count, bareFace()) : null
  const began = derived().part.position
  if (what === 'spine') {
    return Array.from({ length: count }, (_, i) => {
      const t = performance.now()
      placeWindow(add(began, swing(i)))
      sceneNow()
      return performance.now() - t
    })
  }
  const scenes = Array.from({ length: 24 }, (_, i) => {
    placeWindow(add(began, swing(i * 3)))
    return sceneNow()
  })
  return framesOf(count, (i) => board!.update(scenes[i % scenes.length] as never))
}

/** The same face on one canvas by hand: pictures scaled down once, clipped anew at every step. */
function bareFace(): (i: number) => void {
  const { part } = derived()
  const ratio = Math.min(2, devicePixelRatio)
  const canvas = document.createElement('canvas')
  canvas.width = container.clientWidth * ratio
  canvas.height = container.clientHeight * ratio
  canvas.style.cssText = 'position:fixed;inset:0;width:100%;height:100%'
  document.body.append(canvas)
  const ctx = canvas.getContext('2d')!
  const scale = Math.min(
    (canvas.width - 160) / boxWidth(part.sizes.sheet),
    (canvas.height - 160) / boxHeight(part.sizes.sheet),
  )
  const small = new Map<number, HTMLCanvasElement>()
  for (const { leaf, cell } of part.pieces) {
    const picture = leaf && pictures.get(leaf.number)
    if (!picture) continue
    const { bitmap, pxPerMm } = (cell.turn.turnedOver ? picture.other : undefined) ?? picture
    const copy = document.createElement('canvas')
    copy.width = (bitmap.width / pxPerMm) * scale
    copy.height = (bitmap.height / pxPerMm) * scale
    copy.getContext('2d')!.drawImage(bitmap, 0, 0, copy.width, copy.height)
    small.set(leaf.number, copy)
  }
  return (step) => {
    const by = swing(step)
    ctx.setTransform(1, 0, 0, 1, 0, 0)
    ctx.clearRect(0, 0, canvas.width, canvas.height)
    for (const { cell, leaf, leafToPanel } of part.pieces) {
      const picture = leaf && small.get(leaf.number)
      if (!picture) continue
      ctx.save()
      ctx.setTransform(scale, 0, 0, scale, canvas.width / 2, canvas.height / 2)
      ctx.beginPath()
      for (const { x, y } of cell.face.ring) ctx.lineTo(x, y)
      ctx.closePath()
      ctx.clip()
      const { a, b, c, d, e, f } = leafToPanel
      ctx.transform(a, b, c, d, e, f)
      ctx.drawImage(picture, -by.x, -by.y, picture.width / scale, picture.height / scale)
      ctx.restore()
    }
  }
}

await document.fonts.load('600 14px "Source Sans 3 Variable"')
await document.fonts.load('400 14px "Source Sans 3 Variable"')
if (asked.has('pictures'))
  paintPictures(
    derived().part,
    kind === 'face'
      ? []
      : kind === 'leaf' || kind === 'outline'
        ? [leafNumber()]
        : Array.from({ length: 24 }, (_, i) => i + 1),
  )
show()
onColoursChange(show)
Object.assign(window, { board, told, moveWindow, measure, view: () => derived().part, ready: true })
