/** A page with one board on it, for tests and for measuring: `?board=face&part=door-1&pictures=1`. Not shipped. */
import '@fontsource-variable/source-sans-3'
import '../../../src/app/theme.css'
import { boardColours, onColoursChange } from '../../../src/board/board-colours'
import type { Board, LeafPicture } from '../../../src/board/board-types'
import { mountFaceBoard } from '../../../src/board/face/face-board'
import { faceScene } from '../../../src/board/face/face-scene'
import { mountLeafBoard } from '../../../src/board/leaf/leaf-board'
import { leafScene } from '../../../src/board/leaf/leaf-scene'
import { mountFlitchBoard } from '../../../src/board/flitch/flitch-board'
import { flitchScene } from '../../../src/board/flitch/flitch-scene'
import { mountPartsBoard } from '../../../src/board/parts/parts-board'
import { partsScene } from '../../../src/board/parts/parts-scene'
import { derive, type DerivedPart } from '../../../src/core/derive'
import type { Finding } from '../../../src/core/finding'
import { demoJob } from '../../../src/core/figure/demo-job'
import { DEMO_LOG } from '../../../src/core/figure/demo-flitch'
import { leafFrame, makeLog } from '../../../src/core/figure/log/log'
import { leafPixels } from '../../../src/core/figure/log/leaf-pixels'
import type { Answers } from '../../../src/core/fit/answers'
import { WINDOW } from '../../../src/core/fit/lay-face'
import { add, point, type Point } from '../../../src/core/geometry/point'
import type { Job, Part } from '../../../src/core/job/job'
import { USUAL_FOUR_WAY } from '../../../src/core/patterns/four-way'
import { USUAL_STRIPS } from '../../../src/core/patterns/strips'

const asked = new URLSearchParams(location.search)
const container = document.querySelector<HTMLDivElement>('#board')!

/** Remembers by identity, as the app does. */
function memory(): Answers {
  const kept = new Map<string, { about: readonly unknown[]; answer: unknown }[]>()
  return <T>(kind: string, about: readonly (object | number | string | boolean)[], find: () => T): T => {
    const list = kept.get(kind) ?? []
    kept.set(kind, list)
    const known = list.find(
      (entry) => entry.about.length === about.length && entry.about.every((x, i) => x === about[i]),
    )
    if (known) return known.answer as T
    const answer = find()
    list.push({ about, answer })
    if (list.length > 60) list.shift()
    return answer
  }
}

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

const log = makeLog(DEMO_LOG)
const frame = leafFrame(log)
const pictures = new Map<number, LeafPicture>()

function paintPictures(part: DerivedPart, others: readonly number[]): void {
  const pxPerMm = Number(asked.get('px') ?? 1)
  const leaves = new Set([...part.pieces.flatMap(({ leaf }) => (leaf ? [leaf.number] : [])), ...others])
  for (const leaf of leaves) {
    if (pictures.has(leaf)) continue
    const { width, height, rgba } = leafPixels(log, leaf, { pxPerMm, box: frame })
    const canvas = document.createElement('canvas')
    canvas.width = width
    canvas.height = height
    canvas.getContext('2d')!.putImageData(new ImageData(rgba as Uint8ClampedArray<ArrayBuffer>, width, height), 0, 0)
    pictures.set(leaf, { bitmap: canvas, pxPerMm, origin: frame.min })
  }
}

const answers = memory()
let job = harnessJob()
const partId = asked.get('part') ?? 'door-1'
const told: unknown[] = []
let start: Point<'leaf'> | null = null

const derived = () => {
  const parts = derive(job, answers).parts
  return { parts, part: parts.find(({ part }) => part.id === partId)! }
}

function moveWindow({ by, phase }: { by: Point<'leaf'>; phase: string }): void {
  start ??= derived().part.position
  const at = add(start, by)
  job = {
    ...job,
    parts: job.parts.map((part) => (part.id === partId ? { ...part, positions: { [WINDOW]: at } } : part)),
  }
  if (phase !== 'move') start = null
  told.push({ by, phase })
  show()
}

const handlers = {
  onWindowDrag: moveWindow,
  onSwap: (one: string, other: string) => void told.push({ swap: [one, other] }),
  onSelect: (target: unknown) => {
    told.push({ select: target })
    selected = target as never
    show()
  },
}

let selected = null as never
let board: Board<never> | null = null
const kind = asked.get('board') ?? 'face'
const leafNumber = () => Number(asked.get('leaf') ?? derived().part.pieces[0]?.leaf?.number ?? 1)

function show(): void {
  const { part, parts } = derived()
  const colours = boardColours(container)
  const unit = job.unit
  const shown = asked.has('pictures') ? pictures : undefined
  if (kind === 'face') {
    const listed = part.findings.filter(({ grade }) => grade !== 'good')
    const numbers = new Map<Finding, number>(listed.map((finding, i) => [finding, i + 1]))
    const scene = faceScene(part, {
      unit,
      colours,
      numbers,
      selected,
      ...(shown ? { pictures: shown } : {}),
      showLeaves: asked.has('leaves'),
      ...(asked.has('lying') ? { lying: asked.get('lying') === '1' } : {}),
    })
    board ??= mountFaceBoard(container, handlers) as Board<never>
    board.update(scene as never)
  } else if (kind === 'leaf') {
    const scene = leafScene(part, leafNumber(), {
      unit,
      colours,
      shop: job.shop,
      parts,
      selected,
      ...(shown ? { pictures: shown } : {}),
    })
    board ??= mountLeafBoard(container, handlers) as Board<never>
    board.update(scene as never)
  } else if (kind === 'flitch') {
    const flitch = {
      ...part.flitch,
      leaves: part.flitch.leaves.map((leaf) => ({
        ...leaf,
        state: leaf.number === 3 ? ('spare' as const) : leaf.number === 2 ? ('set aside' as const) : leaf.state,
      })),
      missing: [{ after: 3, count: 2 }],
    }
    const chosen = (selected as { kind: string; leaf: number } | null)?.leaf ?? 1
    board ??= mountFlitchBoard(container, handlers) as Board<never>
    board.update(
      flitchScene(flitch, { unit, colours, parts, selected: chosen, ...(shown ? { pictures: shown } : {}) }) as never,
    )
  } else if (kind === 'parts') {
    const chosen = (selected as { kind: string; part: string } | null)?.part ?? 'door-2'
    board ??= mountPartsBoard(container, handlers) as Board<never>
    board.update(
      partsScene(
        parts.filter(({ part: { id } }) => !['wide', 'four'].includes(id)),
        { unit, colours, selected: chosen, ...(shown ? { pictures: shown } : {}) },
      ) as never,
    )
  }
}

await document.fonts.load('600 14px "Source Sans 3 Variable"')
await document.fonts.load('400 14px "Source Sans 3 Variable"')
if (asked.has('pictures'))
  paintPictures(
    derived().part,
    kind === 'face' ? [] : kind === 'leaf' ? [leafNumber()] : Array.from({ length: 24 }, (_, i) => i + 1),
  )
show()
onColoursChange(show)
Object.assign(window, { board, told, moveWindow, point, ready: true })
