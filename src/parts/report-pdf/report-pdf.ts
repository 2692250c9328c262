/**
 * The report as a PDF: real text in a font of its own, tagged, with title and language. A document is laid out in pieces;
 * what does not fit on a page goes on the next.
 */
import { PDFDocument } from 'pdfkit';
import { toBytes } from 'pdfkit/output';
import type { Part, ReportDocument, SideBySide } from '../../../shared/formats/report-document';
import { coveredText } from './covered';
import { type Column, type Cursor, flow, later } from './flow';
import type { Paper } from './paper';
import { type Piece, Pieces, type Sizes, sizesOf } from './pieces';

export interface PdfOptions {
  /** TrueType. */
  readonly font: Uint8Array;
  readonly paper: Paper;
  readonly made: Date;
}

export interface Pdf {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly pages: number;
  /** The font lacks letters of a name or a remark, which were written without accents or as "?". */
  readonly isChanged: boolean;
}

/** Points. */
const MARGIN = 42;
const GUTTER = 24;
/** A report is one sheet of paper; its type is made smaller, down to what can still be read, before it takes another. */
const MOST_PAGES = 2;
const SCALES = [1, 0.95, 0.9, 0.85] as const;

export async function reportPdf(report: ReportDocument, options: PdfOptions): Promise<Pdf> {
  let isChanged = false;
  const write = (text: string): string => {
    const covered = coveredText(text);
    isChanged ||= covered.isChanged;
    return covered.text;
  };
  const pdf = new PDFDocument({
    size: options.paper,
    margin: MARGIN,
    autoFirstPage: false,
    bufferPages: true,
    pdfVersion: '1.7',
    tagged: true,
    lang: 'en',
    displayTitle: true,
    font: options.font,
    info: {
      Title: report.title,
      Creator: 'Arpeggiary',
      Producer: 'Arpeggiary',
      CreationDate: options.made,
    },
  });
  const bytes = toBytes(pdf);
  const root = pdf.struct('Document', { title: report.title });
  pdf.addStructure(root);
  pdf.addPage();

  const { width, height } = pdf.page;
  const whole: Column = {
    x: MARGIN,
    width: width - 2 * MARGIN,
    top: MARGIN,
    bottom: height - MARGIN,
  };
  const open = (page: number) => {
    while (pdf.bufferedPageRange().count <= page) pdf.addPage();
    pdf.switchToPage(page);
  };
  const layOut = (sizes: Sizes, place: Place): Cursor =>
    placeReport(report, { pieces: new Pieces(pdf, root, write, sizes), sizes, whole, place });

  const scale = SCALES.find((one) => layOut(sizesOf(one), withoutInk).page < MOST_PAGES);
  const sizes = sizesOf(scale ?? SCALES.at(-1)!);
  layOut(sizes, (column, from, list) => flow(column, from, list, open));

  const pages = pdf.bufferedPageRange().count;
  if (pages > 1) {
    const pieces = new Pieces(pdf, root, write, sizes);
    for (let page = 0; page < pages; page++) {
      pdf.switchToPage(page);
      pieces.footer(`${write(report.title)}, page ${page + 1} of ${pages}`, height - MARGIN + 10);
    }
  }
  root.end();
  pdf.end();
  return { bytes: await bytes, pages, isChanged };
}

type Place = (column: Column, from: Cursor, list: readonly Piece[]) => Cursor;

/** Only finds out where everything would stand. */
const withoutInk: Place = (column, from, list) =>
  flow(
    column,
    from,
    list.map((piece) => ({ ...piece, draw: () => undefined })),
    () => undefined,
  );

interface Layout {
  readonly pieces: Pieces;
  readonly sizes: Sizes;
  /** The page without its margins. */
  readonly whole: Column;
  readonly place: Place;
}

function placeReport(report: ReportDocument, { pieces, sizes, whole, place }: Layout): Cursor {
  const placePart = (part: Part | SideBySide, from: Cursor): Cursor => {
    if (part.kind === 'part') return place(whole, from, pieces.part(part, whole.width));
    const room = whole.width - GUTTER;
    const left = { ...whole, width: room * part.share };
    const right = { ...whole, x: whole.x + left.width + GUTTER, width: room * (1 - part.share) };
    const inColumn = (column: Column, parts: readonly Part[]) =>
      parts.reduce((at, one) => place(column, at, pieces.part(one, column.width)), from);
    return later(inColumn(left, part.left), inColumn(right, part.right));
  };
  const head = place(whole, { page: 0, y: whole.top }, pieces.head(report, whole.width));
  const end = report.parts.reduce((cursor, part) => placePart(part, cursor), head);
  return place(whole, end, [pieces.gap(sizes.text), pieces.caution(report.caution, whole.width)]);
}
