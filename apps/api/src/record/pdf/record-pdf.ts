import { sayValue } from '@tenths/domain'
import PDFDocument from 'pdfkit'
import { resultWords } from '../../inspections/record-inspections.ts'
import type { BuildRecordPage } from '../build-record.ts'
import * as cells from './cells.ts'
import { printable } from './printable.ts'
import { drawTable, makeRoom, type Document } from './table.ts'

export type Paper = 'a4' | 'letter'

/**
 * The build record on paper, black on white, with the seal that the chain ends in at the foot of each page.
 */
export function recordPdf(record: BuildRecordPage, paper: Paper): Document {
  const document = new PDFDocument({
    size: paper === 'a4' ? 'A4' : 'LETTER', bufferPages: true,
    margins: { top: 48, bottom: 64, left: 48, right: 48 },
    info: { Title: printable(`Build record, job ${record.job.number}`), Author: printable(record.shopName) },
  })
  drawHead(document, record)
  for (const operation of record.operations) drawOperation(document, record, operation)
  drawMeasurings(document, record)
  drawPartsAndFindings(document, record)
  heading(document, 'Caution')
  paragraph(document, record.caution)
  numberPages(document, record)
  document.end()
  return document
}

function drawHead(document: Document, record: BuildRecordPage): void {
  const { job } = record
  document.font('Helvetica-Bold').fontSize(18).text(printable(`Build record, job ${job.number}`))
  paragraph(document, record.shopName)
  document.moveDown(0.5)
  drawTable(document, [
    { title: 'Engine', share: 3 }, { title: 'Serial', share: 2 }, { title: 'Duty', share: 3 },
    { title: 'Customer', share: 3 },
  ], [
    [job.engineName, record.serial || '–', cells.duty(record), job.customerName],
  ])
  const state = record.handedOverAt === null
    ? `Not handed over: ${job.signed} of ${job.operations} steps are signed.`
    : `Handed over ${cells.instant(record.handedOverAt)}.`
  paragraph(document, `${state} Plan revision ${record.planRevision}, ${record.sealCount} seals.`)
}

function drawOperation(
  document: Document, record: BuildRecordPage, operation: BuildRecordPage['operations'][number],
): void {
  heading(document, operation.title)
  for (const caution of operation.cautions) paragraph(document, `Caution: ${caution}`)
  drawTable(document, [
    { title: 'Requirement', share: 4 }, { title: 'Limits', share: 3 }, { title: 'Measured', share: 4 },
    { title: 'Verdict', share: 3 },
  ], operation.lines.map((line) => [
    line.requirement.title,
    cells.limits(line.requirement.limits, line.requirement.quantity, record.unit),
    cells.measured(line, record.unit),
    cells.verdict(line),
  ]))
  drawTable(document, [
    { title: 'Bobweight of rod journal', share: 3 }, { title: 'Weight', share: 2 }, { title: 'Worked out', share: 9 },
  ], operation.bobweights.map((figure) => [
    `${figure.crankpin}, cylinders ${figure.cylinders.join(' and ')}`,
    figure.value === null ? '–' : sayValue(figure.value, 'mass', record.unit),
    figure.value === null ? `Missing: ${figure.missing.join('; ')}` : figure.worked.join('. '),
  ]))
  drawTable(document, [
    { title: 'Seen', share: 6 }, { title: 'Outcome', share: 2 }, { title: 'By', share: 3 },
    { title: 'When', share: 3 },
  ], operation.observations.map(({ title, outcome, note, since, by, observedAt }) => [
    [title, note, since === null ? '' : cells.instant(since)].filter((part) => part !== '').join('. '),
    outcomes[outcome], by, cells.instant(observedAt),
  ]))
  drawTable(document, [
    { title: 'Tested', share: 5 }, { title: 'Result', share: 4 }, { title: 'Method', share: 3 },
    { title: 'Inspector, when', share: 3 },
  ], operation.inspections.map((test) => [
    test.mark === null ? test.title : `${test.title}, ${test.mark}`,
    [resultWords[test.result], test.note, test.counts ? '' : 'a later result counts', test.conceded ? 'conceded' : '']
      .filter((part) => part !== '').join('. '),
    `${test.method.replaceAll('-', ' ')}${test.pressure === null ? '' : `, ${sayValue(test.pressure, 'pressure', record.unit)}`}`,
    `${test.inspector}, ${cells.instant(test.inspectedAt)}`,
  ]))
  const taken = record.photographs.filter(({ operationKey }) => operationKey === operation.key)
  drawTable(document, [
    { title: 'Photograph', share: 5 }, { title: 'SHA-256 of its bytes', share: 8 }, { title: 'By', share: 2 },
  ], taken.map(({ caption, sha256, by }) => [caption, sha256, by]))
  drawTable(document, [
    { title: 'Signed by', share: 4 }, { title: 'When', share: 3 }, { title: 'Seal', share: 5 },
    { title: 'Since', share: 3 },
  ], operation.signOffs.map(({ by, signedAt, givenAt, sealNumber, hash, reopened }) => [
    by.join(' and '),
    givenAt === null ? cells.instant(signedAt) : `given ${cells.instant(givenAt)} without the network; confirmed ${cells.instant(signedAt)}`,
    `${sealNumber}: ${hash}`,
    reopened === null ? 'stands' : `re-opened ${cells.instant(reopened.at)}: ${reopened.reason}`,
  ]))
  if (operation.signOffs.length === 0) paragraph(document, 'Not signed.')
}

const outcomes = { seen: 'seen', 'not-seen': 'not seen', 'not-applicable': 'not applicable' } as const

function drawMeasurings(document: Document, record: BuildRecordPage): void {
  heading(document, 'Readings')
  drawTable(document, [
    { title: 'Part', share: 2 }, { title: 'Feature, pass, how', share: 5 }, { title: 'Gauge', share: 2 },
    { title: 'By, when', share: 3 }, { title: 'Readings', share: 8 },
  ], record.passes.map((pass) => [
    `${pass.mark}, ${cells.place(pass.place)}`,
    cells.taken(pass, record.unit),
    pass.gaugeMark,
    `${pass.by}, ${cells.instant(pass.openedAt)}`,
    cells.readings(pass, record.unit),
  ]))
}

function drawPartsAndFindings(document: Document, record: BuildRecordPage): void {
  heading(document, 'Parts')
  drawTable(document, [
    { title: 'Mark', share: 1 }, { title: 'Part', share: 2 }, { title: 'Place', share: 2 },
    { title: 'Lot or serial', share: 4 },
    { title: 'Description', share: 4 },
  ], record.parts.map((part) => [
    part.mark, part.kind.replaceAll('-', ' '), cells.place(part.place), cells.lots(part), part.description || '–',
  ]))
  if (record.findings.length === 0) return
  heading(document, 'Findings')
  drawTable(document, [
    { title: 'Finding', share: 6 }, { title: 'Decision', share: 5 },
  ], record.findings.map((finding) => [
    `${finding.title}. ${finding.sentence}`,
    finding.decision === null
      ? finding.state
      : `${finding.decision.decision} by ${finding.decision.by}, ${cells.instant(finding.decision.at)}: ${finding.decision.reason}`,
  ]))
}

function heading(document: Document, text: string): void {
  makeRoom(document, 72)
  document.moveDown(0.6).font('Helvetica-Bold').fontSize(11).text(printable(text)).moveDown(0.3)
}

function paragraph(document: Document, text: string): void {
  document.font('Helvetica').fontSize(9)
  makeRoom(document, document.heightOfString(printable(text)))
  document.text(printable(text)).moveDown(0.2)
}

/**
 * Foot of each page: number of the page, and the head of the chain, which whoever holds this paper can check
 * against.
 */
function numberPages(document: Document, record: BuildRecordPage): void {
  const { start, count } = document.bufferedPageRange()
  for (let index = start; index < start + count; index += 1) {
    document.switchToPage(index)
    const { page } = document
    const width = page.width - page.margins.left - page.margins.right
    // The foot stands below the bottom margin, where text would otherwise start a new page.
    page.margins.bottom = 0
    document.font('Helvetica').fontSize(7)
    document.text(
      printable(
        `Job ${record.job.number}, seal ${record.sealCount}: ${record.sealHead}`,
      ), page.margins.left, page.height - 44, { width },
    )
    document.text(
      `Page ${index - start + 1} of ${count}`, page.margins.left, page.height - 34, { width, align: 'right' },
    )
  }
}
