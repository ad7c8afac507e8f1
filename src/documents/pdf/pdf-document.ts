import type { Box } from '../../core/geometry/box'
import type { Item } from '../../core/drawing/drawing'

/** What is to be printed. */
export interface PdfDocument {
  readonly title: string
  readonly pages: readonly PdfPage[]
  /** Printed into the file as it is given, so that the same document gives the same bytes. */
  readonly created: Date
  /** 32 hexadecimal digits. */
  readonly id: string
}

/** One page. Its items are mm of real paper, y down from the top left corner. */
export interface PdfPage {
  /** Size of the paper, mm. */
  readonly width: number
  readonly height: number
  /** What a viewer calls the page in place of its number. */
  readonly label: string
  /** Its name among the bookmarks; null for none. */
  readonly bookmark: string | null
  readonly items: readonly Item[]
  /** Items of which only what lies in the window is seen; they are painted first. */
  readonly inWindow?: { readonly window: Box<'sheet'>; readonly items: readonly Item[] } | null
  /** How much larger than life the printer must be told to draw, as seen across and down; 1 if left out. */
  readonly correction?: { readonly x: number; readonly y: number }
}

/** The two faces of Source Sans 3 as TrueType files. */
export interface PdfFonts {
  readonly regular: Uint8Array
  readonly bold: Uint8Array
}

export type PdfRefusal =
  | { readonly reason: 'no pages' }
  /** A side of a page, mm, and what it may be at most. */
  | { readonly reason: 'page too large'; readonly label: string; readonly side: number; readonly limit: number }
