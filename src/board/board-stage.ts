import Konva from 'konva/lib/Core'
import type { Layer } from 'konva/lib/Layer'
import { Shape } from 'konva/lib/Shape'
import { forgetWidths } from './paint/text'
import type { Size } from './view'

/** The canvases of one board: they follow the size of their container and are as sharp as is worth while. */
export interface BoardStage {
  readonly layers: readonly Layer[]
  readonly size: () => Size
  readonly setLabel: (label: string) => void
  readonly destroy: () => void
}

/** More pixels than this cost time and show nothing. */
const SHARPEST = 2

/** Canvases in a container, one on top of another, and word when its size changes or the type has come: fit anew. */
export function mountStage(container: HTMLDivElement, layerCount: number, onResize: (size: Size) => void): BoardStage {
  Konva.pixelRatio = pixelRatio()
  const size = (): Size => ({ width: container.clientWidth, height: container.clientHeight })
  const stage = new Konva.Stage({ container, ...atLeastOne(size()), listening: false })
  const layers = Array.from({ length: layerCount }, () => new Konva.Layer({ listening: false }))
  for (const layer of layers) stage.add(layer)
  container.setAttribute('role', 'img')
  let known = size()
  const observer = new ResizeObserver(() => {
    const now = size()
    if (now.width === known.width && now.height === known.height) return
    known = now
    stage.size(atLeastOne(now))
    onResize(now)
  })
  observer.observe(container)
  const fontsCame = () => {
    forgetWidths()
    onResize(size())
  }
  document.fonts.addEventListener('loadingdone', fontsCame)
  return {
    layers,
    size,
    setLabel: (label) => container.setAttribute('aria-label', label),
    destroy() {
      observer.disconnect()
      document.fonts.removeEventListener('loadingdone', fontsCame)
      stage.destroy()
    },
  }
}

export const pixelRatio = (): number => Math.min(SHARPEST, Math.max(1, window.devicePixelRatio || 1))

const atLeastOne = ({ width, height }: Size): Size => ({ width: Math.max(1, width), height: Math.max(1, height) })

/** Something drawn by hand on a layer, in the board's pixels. */
export interface Painter {
  /** Draws again in the next frame. */
  readonly update: () => void
  readonly destroy: () => void
}

/** Puts a painter on a layer; `paint` is called whenever the layer is drawn. */
export function addPainter(layer: Layer, paint: (context: CanvasRenderingContext2D) => void): Painter {
  const node = new Shape({
    listening: false,
    perfectDrawEnabled: false,
    sceneFunc: (context) => {
      const native = context._context as CanvasRenderingContext2D
      native.save()
      paint(native)
      native.restore()
    },
  })
  layer.add(node)
  return { update: () => void layer.batchDraw(), destroy: () => void node.destroy() }
}
