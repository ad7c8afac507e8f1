import { present } from '../../core/invariant'
import { showLength } from '../../core/units/show-length'
import { customPaper, LARGEST_PAGE, paperOf, SMALLEST_PAPER, type Paper } from '../../documents/paper'
import { calibrationBars, calibrationPage } from '../../documents/pdf/calibration-page'
import { correctionMeasured, correctionSentence, UNCORRECTED, type Correction } from '../../documents/pdf/correction'
import type { PdfDocument } from '../../documents/pdf/pdf-document'
import type { Joining, Printing } from '../../documents/pdf/printing'
import { sheetRefusal } from '../../documents/pdf/sheet-refusal'
import { documentId } from '../../documents/document-id'
import { handOver } from '../../store/hand-over'
import { keepPrintRoom, readPrintRoom, withoutPrinter, withPrinter, type PrintHabit } from '../../store/printers'
import type { Workshop } from '../../store/workshop.svelte'
import { writePdfAside, type WritingPdf } from '../../workers/pdf-door'
import { fonts } from './print'

/** The paper of the maker's own, among those that are listed. */
export const OWN_PAPER = 'own'

/** What is printed on what, and the writing of it. The printers are remembered by this browser. */
export class PrintWork {
  #room = $state.raw(readPrintRoom(localStorage))
  /** How many pages of how many are written; null when nothing is being written. */
  progress = $state.raw<{ readonly done: number; readonly of: number } | null>(null)
  #writing: WritingPdf | null = null

  constructor(private readonly workshop: Workshop) {}

  readonly printers = $derived.by(() => this.#room.printers)
  readonly printer = $derived.by(
    () => this.#room.printers.find(({ name }) => name === this.#room.habit.printer) ?? null,
  )
  readonly joining = $derived.by((): Joining => this.#room.habit.joining)
  readonly ownSize = $derived.by(() => this.#room.habit.custom ?? { width: 500, height: 700 })
  readonly paperId = $derived.by(() => (this.#room.habit.custom ? OWN_PAPER : this.paper.id))

  readonly paper = $derived.by((): Paper => {
    const { custom, paper } = this.#room.habit
    const own = custom ? customPaper(custom.width, custom.height) : null
    if (own?.ok) return { ...own.value, name: 'Own paper' }
    return paperOf(paper) ?? present(paperOf('a4'), 'A4 is a paper')
  })

  readonly printing = $derived.by((): Printing => ({
    paper: this.paper,
    correction: this.#correction,
    joining: this.joining,
  }))

  get #correction(): Correction {
    const { printer } = this
    const found = printer ? correctionMeasured(printer.measured, printer.lengths) : null
    return found?.ok ? found.value : UNCORRECTED
  }

  choosePaper(id: string): void {
    this.#habit(id === OWN_PAPER ? { custom: this.ownSize } : { custom: null, paper: id })
  }

  sizeOwn(side: 'width' | 'height', length: number): void {
    this.#habit({ custom: { ...this.ownSize, [side]: length } })
  }

  chooseJoining(joining: Joining): void {
    this.#habit({ joining })
  }

  readonly viewfinders = $derived.by(() => this.#room.habit.viewfinders)

  chooseViewfinders(wanted: boolean): void {
    this.#habit({ viewfinders: wanted })
  }

  choosePrinter(name: string): void {
    this.#habit({ printer: name === '' ? null : name })
  }

  /** Remembers what the bars of the page for measuring came out as; a sentence when that can't be. */
  measure(name: string, measured: Correction): string | null {
    const lengths = calibrationBars(this.paper)
    const found = correctionMeasured(measured, lengths)
    if (!found.ok) return correctionSentence(found.reason, (length) => showLength(length, this.workshop.unit, 'seam'))
    this.#keep(withPrinter(this.#room, { name, measured, lengths }))
    this.workshop.said = `${name} is remembered`
    return null
  }

  forget(name: string): void {
    this.#keep(withoutPrinter(this.#room, name))
    this.workshop.said = `${name} is forgotten`
  }

  saveCalibration(): Promise<void> {
    const { paper } = this
    const document = { title: 'Bars to measure', pages: [calibrationPage(paper)], created: new Date() }
    return this.save({ ...document, id: documentId(`bars ${paper.id}`) }, `Bars to measure, ${paper.name}.pdf`)
  }

  /** Writes a document beside the page and hands it over. */
  async save(document: PdfDocument, name: string): Promise<void> {
    if (this.progress) return
    this.progress = { done: 0, of: document.pages.length }
    try {
      this.#writing = writePdfAside(document, await fonts(), (done) => {
        this.progress = { done, of: document.pages.length }
      })
      const written = await this.#writing.done
      if (written === null) this.workshop.said = 'Stopped: no PDF was made'
      else if (!written.ok) this.workshop.trouble = sheetRefusal(written.reason, this.paper.name)
      else {
        handOver(new Blob([written.value as Uint8Array<ArrayBuffer>], { type: 'application/pdf' }), name)
        this.workshop.said = `Saved as ${name}`
      }
    } catch (error) {
      this.workshop.trouble = `The PDF could not be made: ${error instanceof Error ? error.message : String(error)}`
    } finally {
      this.progress = null
      this.#writing = null
    }
  }

  stop(): void {
    this.#writing?.stop()
  }

  #habit(change: Partial<PrintHabit>): void {
    this.#keep({ ...this.#room, habit: { ...this.#room.habit, ...change } })
  }

  #keep(room: ReturnType<typeof readPrintRoom>): void {
    this.#room = room
    keepPrintRoom(localStorage, room)
  }
}

export const OWN_PAPER_LIMITS = { least: SMALLEST_PAPER, most: LARGEST_PAGE }
