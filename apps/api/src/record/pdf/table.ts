import type PDFDocument from 'pdfkit'
import { printable } from './printable.ts'

export type Document = InstanceType<typeof PDFDocument>

/** A column: its heading and its share of the width. */
export interface Column {
  readonly title: string
  readonly share: number
  readonly align?: 'left' | 'right'
}

const PADDING = 3
const SIZE = 8

/**
 * Draws a table over as many pages as it takes. Every cell wraps in its column, a row is never cut by a
 * page's end unless it is taller than a page, and each page begins with the headings again.
 */
export function drawTable(
  document: Document, columns: readonly Column[], rows: readonly (readonly string[])[],
): void {
  if (rows.length === 0) return
  const widths = widthsOf(document, columns)
  const heading = columns.map(({ title }) => title)
  // Headings alone at the foot of a page help nobody.
  makeRoom(
    document, heightOf(document, widths, heading, true) + heightOf(document, widths, rows[0] ?? [], false),
  )
  drawRow(document, columns, widths, heading, true)
  for (const row of rows) {
    if (makeRoom(document, heightOf(document, widths, row, false))) {
      drawRow(
        document, columns, widths, heading, true,
      )
    }
    drawRow(document, columns, widths, row, false)
  }
  document.x = document.page.margins.left
  document.moveDown(0.8)
}

/** Starts a new page when less than this height is left; says whether it did. */
export function makeRoom(document: Document, height: number): boolean {
  if (document.y + height <= document.page.height - document.page.margins.bottom) return false
  document.addPage()
  return true
}

function widthsOf(document: Document, columns: readonly Column[]): number[] {
  const { width, margins } = document.page
  const whole = columns.reduce((sum, { share }) => sum + share, 0)
  return columns.map(({ share }) => ((width - margins.left - margins.right) * share) / whole)
}

function setFont(document: Document, isHeading: boolean): void {
  document.font(isHeading ? 'Helvetica-Bold' : 'Helvetica').fontSize(SIZE)
}

function heightOf(
  document: Document, widths: readonly number[], cells: readonly string[], isHeading: boolean,
): number {
  setFont(document, isHeading)
  const heights = widths.map((width, index) =>
    document.heightOfString(printable(cells[index] ?? ''), { width: width - 2 * PADDING }))
  return Math.max(...heights) + 2 * PADDING
}

function drawRow(
  document: Document, columns: readonly Column[], widths: readonly number[], cells: readonly string[],
  isHeading: boolean,
): void {
  const height = heightOf(document, widths, cells, isHeading)
  const top = document.y
  let left = document.page.margins.left
  if (isHeading) {
    document.rect(
      left, top, widths.reduce((sum, width) => sum + width, 0), height,
    ).fill('#e8e8e8').fillColor('black')
  }
  widths.forEach((width, index) => {
    document.text(printable(cells[index] ?? ''), left + PADDING, top + PADDING, {
      width: width - 2 * PADDING, align: columns[index]?.align ?? 'left',
    })
    left += width
  })
  const bottom = top + height
  document.moveTo(document.page.margins.left, bottom).lineTo(left, bottom).lineWidth(0.3).stroke('#999999')
  document.x = document.page.margins.left
  document.y = bottom
}
