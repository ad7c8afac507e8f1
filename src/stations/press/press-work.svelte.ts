import {
  addLayer,
  applyPressRemedy,
  changeDataSheet,
  changeLayer,
  changePressing,
  changePressRoom,
  moveLayer,
  removeLayer,
  setEdge,
  setLayers,
  type PressingPatch,
  type PressRoomPatch,
} from '../../core/commands/press-commands'
import type { Next } from '../../core/commands/change-within'
import type { Side } from '../../core/geometry/box'
import type { DerivedPart } from '../../core/derive'
import type { Part } from '../../core/job/job'
import { layerName } from '../../core/press/layer-words'
import type { PressRemedy } from '../../core/press/of-job/press-finding'
import type { DataSheet, EdgeWork, GlueName, Layer, PressRoom } from '../../core/press/pressing'
import { ok } from '../../core/result'
import type { Workshop } from '../../store/workshop.svelte'

/** One part at the press and the room it is pressed in: every change goes through the workshop's door with a label. */
export class PressWork {
  constructor(
    readonly workshop: Workshop,
    private readonly faceNow: () => DerivedPart,
  ) {}

  get face(): DerivedPart {
    return this.faceNow()
  }
  get part(): Part {
    return this.face.part
  }
  get unit() {
    return this.workshop.unit
  }
  get room(): PressRoom {
    return this.workshop.job.pressRoom
  }
  /** The leaves that face the part. */
  get leaf(): { readonly species: string; readonly thickness: number } {
    return this.workshop.flitchOf(this.part.flitch) ?? { species: '', thickness: 0.6 }
  }

  decide(label: string, patch: PressingPatch): boolean {
    return this.#act(label, changePressing(this.workshop.job, this.part.id, patch))
  }

  changeLayer(what: string, nth: number, layer: Layer): boolean {
    return this.#act(`${this.#name(nth)}, ${what}`, changeLayer(this.workshop.job, this.part.id, nth, layer))
  }

  /** Another like it right behind a layer. */
  addBehind(nth: number, layer: Layer): boolean {
    return this.#act('one layer more', addLayer(this.workshop.job, this.part.id, nth + 1, layer))
  }

  removeLayer(nth: number): boolean {
    return this.#act(`${this.#name(nth)} taken away`, removeLayer(this.workshop.job, this.part.id, nth))
  }

  moveLayer(nth: number, to: number): boolean {
    const way = to < nth ? 'forward' : 'back'
    return this.#act(`${this.#name(nth)} moved ${way}`, moveLayer(this.workshop.job, this.part.id, nth, to))
  }

  setLayers(label: string, layers: readonly Layer[]): boolean {
    return this.#act(label, setLayers(this.workshop.job, this.part.id, layers))
  }

  /** The same work at several edges, in one step. */
  setEdges(label: string, sides: readonly Side[], work: EdgeWork): boolean {
    const set = (done: Next, side: Side): Next => (done.ok ? setEdge(done.value, this.part.id, side, work) : done)
    return this.#act(label, sides.reduce(set, ok(this.workshop.job)))
  }

  decideRoom(label: string, patch: PressRoomPatch): boolean {
    return this.workshop.act(`Press room: ${label}`, changePressRoom(this.workshop.job, patch))
  }

  readSheet(label: string, glue: GlueName, patch: Partial<DataSheet>): boolean {
    return this.workshop.act(`Data sheet of ${glue}: ${label}`, changeDataSheet(this.workshop.job, glue, patch))
  }

  mend(label: string, remedy: PressRemedy): boolean {
    return this.#act(label, applyPressRemedy(this.workshop.job, this.part.id, remedy))
  }

  #name(nth: number): string {
    return layerName(this.part.pressing.layers, nth).replace(/^the /, '')
  }

  #act(label: string, next: Next): boolean {
    return this.workshop.act(`${this.part.name}: ${label}`, next)
  }
}
