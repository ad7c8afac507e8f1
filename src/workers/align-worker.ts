/// <reference lib="webworker" />
import { figureDrift } from '../core/figure/align/drift'
import type { FoundShift } from '../core/figure/align/find-shift'
import type { GreyPicture } from '../core/figure/align/grey'
import type { DriftLook } from '../core/figure/align/registration'
import { seamSlide } from '../core/figure/align/seam-slide'
import { seamStrip } from '../core/figure/align/seam-strip'
import { withinOutline } from '../core/figure/align/within-outline'
import type { SeamLook, StripLook } from '../core/seams/line-up'
import type { Failed } from './one-task'
import { woodReader, type WoodSource } from './wood-source'

/** What is to be found: how each leaf lies against the one before, or the slide at each of some seams. */
export type AlignTask =
  | { readonly kind: 'drifts'; readonly looks: readonly DriftLook[] }
  | { readonly kind: 'slides'; readonly looks: readonly SeamLook[] }

export interface ToAlignWorker {
  readonly source: WoodSource
  readonly task: AlignTask
}

export type FromAlignWorker =
  | { readonly kind: 'progress'; readonly share: number }
  /** One for each pair of leaves, or each seam; null where there is no picture. */
  | { readonly kind: 'found'; readonly shifts: readonly (FoundShift | null)[] }

/** Pixels a millimetre: seams are looked at closely, whole leaves from farther off. */
const SEAM_SCALE = 1
const LEAF_SCALE = 0.5

const scope = self as unknown as DedicatedWorkerGlobalScope
const tell = (message: FromAlignWorker | Failed): void => scope.postMessage(message)

scope.onmessage = async ({ data: { source, task } }: MessageEvent<ToAlignWorker>) => {
  try {
    const read = woodReader(source)
    const shifts = task.kind === 'drifts' ? await drifts(task, read) : await slides(task, read)
    tell({ kind: 'found', shifts })
  } catch (error) {
    tell({ kind: 'failed', message: error instanceof Error ? error.message : String(error) })
  }
}

type Read = ReturnType<typeof woodReader>

async function drifts({ looks }: Extract<AlignTask, { kind: 'drifts' }>, read: Read) {
  const shifts: (FoundShift | null)[] = []
  let before: GreyPicture | null = null
  for (const [i, { leaf, box, outline }] of looks.entries()) {
    const picture = await read({ leaf, face: 'numbered', box, pxPerMm: LEAF_SCALE })
    const here: GreyPicture | null = picture && withinOutline(picture, outline)
    if (i > 0) shifts.push(before && here ? figureDrift(before, here) : null)
    before = here
    tell({ kind: 'progress', share: (i + 1) / looks.length })
  }
  return shifts
}

async function slides({ looks }: Extract<AlignTask, { kind: 'slides' }>, read: Read) {
  const strip = async (look: StripLook, edge: SeamLook['edge']) => {
    const picture = await read({ ...look, pxPerMm: SEAM_SCALE })
    return picture && seamStrip(picture, edge, look.side, look.leafToPanel)
  }
  const shifts: (FoundShift | null)[] = []
  for (const [i, { edge, first, second }] of looks.entries()) {
    const [one, other] = [await strip(first, edge), await strip(second, edge)]
    shifts.push(one && other ? seamSlide(one, other) : null)
    tell({ kind: 'progress', share: (i + 1) / looks.length })
  }
  return shifts
}
