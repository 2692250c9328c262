/** The pieces of a report on paper. Each knows its height before it is drawn; sizes are in points. */
import type { Block, Part, ReportDocument, Table } from '../../../shared/formats/report-document';
import { INK, type Pdf, RULE, SOFT, type Structure } from './pdf';
import { drawPictures, picturesHeight } from './pictures';

export interface Piece {
  readonly height: number;
  readonly draw: (x: number, y: number) => void;
  readonly staysWithNext?: boolean;
  readonly isGap?: boolean;
}

const SIZES = { title: 20, heading: 12.5, number: 30, unit: 13, text: 9.5, note: 7.5 } as const;
export type Sizes = Readonly<Record<keyof typeof SIZES, number>>;

/** The sizes of type; below 1 where a report would need more paper than it may. */
export const sizesOf = (scale: number): Sizes => {
  const { title, heading, number, unit, text, note } = SIZES;
  return {
    title: scale * title,
    heading: scale * heading,
    number: scale * number,
    unit: scale * unit,
    text: scale * text,
    note: scale * note,
  };
};
const BETWEEN = 2;
const CELL_PADDING = 7;
const BULLET = 8;
/** A part that is lower than this is not broken over two pages. */
const KEPT_TOGETHER = 200;

interface TextLook {
  readonly size: number;
  readonly colour?: string;
  readonly align?: 'left' | 'right';
}

export class Pieces {
  constructor(
    private readonly pdf: Pdf,
    private readonly root: Structure,
    /** Puts a text into the characters of the font. */
    private readonly write: (text: string) => string,
    private readonly sizes: Sizes,
  ) {}

  head({ heading, lines }: ReportDocument, width: number): readonly Piece[] {
    return [
      this.text('H1', heading, width, { size: this.sizes.title }),
      ...lines.map((line) => this.text('P', line, width, { size: this.sizes.text })),
      this.gap(4),
      this.rule(width, INK),
    ];
  }

  part({ heading, blocks }: Part, width: number): readonly Piece[] {
    const title = this.text('H2', heading, width, { size: this.sizes.heading });
    const body = blocks.flatMap((block) => this.block(block, width));
    const isShort = body.reduce((sum, piece) => sum + piece.height, 0) < KEPT_TOGETHER;
    return [
      this.gap(this.sizes.heading),
      { ...title, height: title.height + BETWEEN, staysWithNext: true },
      ...body.map((piece, i) =>
        isShort && i < body.length - 1 ? { ...piece, staysWithNext: true } : piece,
      ),
    ];
  }

  private block(block: Block, width: number): readonly Piece[] {
    switch (block.kind) {
      case 'number':
        return [this.number(`${block.value} `, block.unit)];
      case 'text': {
        const look = block.isNote
          ? { size: this.sizes.note, colour: SOFT }
          : { size: this.sizes.text };
        return [this.text('P', block.text, width, look), this.gap(BETWEEN)];
      }
      case 'list':
        return this.list(block.items, width);
      case 'table':
        return [this.table(block, width), this.gap(BETWEEN)];
      case 'pictures': {
        const { pictures, key, table } = block;
        const { pdf, root, write } = this;
        const size = { width, titleSize: this.sizes.note };
        return [
          {
            height: picturesHeight(pdf, pictures, size),
            draw: (x, y) => drawPictures(pdf, root, pictures, { x, y, ...size, write }),
            staysWithNext: true,
          },
          this.text('P', key, width, { size: this.sizes.note, colour: SOFT }),
          ...(table === undefined ? [] : [this.gap(BETWEEN), this.table(table, width)]),
        ];
      }
    }
  }

  gap(height: number): Piece {
    return { height, draw: () => undefined, isGap: true, staysWithNext: true };
  }

  caution(text: string, width: number): Piece {
    return this.text('P', text, width, { size: this.sizes.note, colour: SOFT });
  }

  /** Page numbers are no part of the text. */
  footer(text: string, y: number): void {
    this.aside(() => {
      const { pdf } = this;
      const x =
        pdf.page.width - pdf.page.margins.right - pdf.fontSize(this.sizes.note).widthOfString(text);
      // Below the margin, where the library would begin another page.
      const { bottom } = pdf.page.margins;
      pdf.page.margins.bottom = 0;
      pdf.fillColor(SOFT).text(text, x, y, { lineBreak: false });
      pdf.page.margins.bottom = bottom;
    });
  }

  private rule(width: number, colour: string): Piece {
    return {
      height: 1,
      draw: (x, y) =>
        this.aside(() => {
          this.pdf
            .moveTo(x, y)
            .lineTo(x + width, y)
            .lineWidth(0.6)
            .stroke(colour);
        }),
    };
  }

  /** Ornament that is not read out. */
  private aside(draw: () => void): void {
    this.pdf.markContent('Artifact');
    draw();
    this.pdf.endMarkedContent();
  }

  private tagged(parent: Structure, tag: string, draw: () => void): void {
    const element = this.pdf.struct(tag, {}, draw);
    parent.add(element);
  }

  private heightOf(text: string, width: number, size: number): number {
    return this.pdf.fontSize(size).heightOfString(text, { width, lineGap: size * 0.1 });
  }

  private put(text: string, at: { x: number; y: number; width: number }, look: TextLook): void {
    const { size, colour = INK, align = 'left' } = look;
    const { x, y, width } = at;
    this.pdf
      .fontSize(size)
      .fillColor(colour)
      .text(text, x, y, { width, align, lineGap: size * 0.1 });
  }

  private text(tag: string, words: string, width: number, look: TextLook): Piece {
    const text = this.write(words);
    return {
      height: this.heightOf(text, width, look.size),
      draw: (x, y) => this.tagged(this.root, tag, () => this.put(text, { x, y, width }, look)),
    };
  }

  private number(value: string, unit: string): Piece {
    return {
      height: this.sizes.number * 1.1,
      draw: (x, y) =>
        this.tagged(this.root, 'P', () => {
          const { pdf } = this;
          const end = pdf.fontSize(this.sizes.number).widthOfString(value);
          pdf.fillColor(INK).text(value, x, y, { lineBreak: false });
          // Both stand on one line.
          const drop = (this.sizes.number - this.sizes.unit) * 0.75;
          pdf.fontSize(this.sizes.unit).text(unit, x + end, y + drop, { lineBreak: false });
        }),
    };
  }

  private list(items: readonly string[], width: number): readonly Piece[] {
    // Made with its first item: what is never drawn must not be in the document.
    let list: Structure | null = null;
    const size = this.sizes.text;
    return items.map((item): Piece => {
      const text = this.write(item);
      return {
        height: this.heightOf(text, width - BULLET, size) + BETWEEN,
        draw: (x, y) => {
          const line = this.pdf.struct('LI', {});
          if (list === null) {
            list = this.pdf.struct('L', {});
            this.root.add(list);
          }
          list.add(line);
          this.tagged(line, 'Lbl', () => this.put('•', { x, y, width: BULLET }, { size }));
          this.tagged(line, 'LBody', () =>
            this.put(text, { x: x + BULLET, y, width: width - BULLET }, { size }),
          );
        },
      };
    });
  }

  private table({ columns, rows }: Table, width: number): Piece {
    const widths = columns.map((column) => column.width * width);
    const lefts = widths.map((_, i) => widths.slice(0, i).reduce((sum, one) => sum + one, 0));
    const cellWidth = (i: number) => widths[i]! - (i === widths.length - 1 ? 0 : CELL_PADDING);
    const head = columns.map(({ name }) => this.write(name));
    const texts = rows.map((row) =>
      row.map((cell, i) => (columns[i]!.look === 'bar' ? '' : this.write(String(cell)))),
    );
    const heightOfRow = (cells: readonly string[], size: number): number =>
      Math.max(...cells.map((cell, i) => this.heightOf(cell || ' ', cellWidth(i), size))) + 3;
    const heights = [
      heightOfRow(head, this.sizes.note),
      ...texts.map((row) => heightOfRow(row, this.sizes.text)),
    ];
    const draw = (x: number, top: number) => {
      const table = this.pdf.struct('Table', {});
      this.root.add(table);
      let y = top;
      [head, ...texts].forEach((cells, row) => {
        const isHead = row === 0;
        const line = this.pdf.struct('TR', {});
        table.add(line);
        const look = isHead ? { size: this.sizes.note, colour: SOFT } : { size: this.sizes.text };
        cells.forEach((cell, i) => {
          const at = { x: x + lefts[i]!, y: y + 1.5, width: cellWidth(i) };
          const align = columns[i]!.look === 'number' ? 'right' : 'left';
          const scope = isHead ? 'Column' : i === 0 ? 'Row' : undefined;
          const element = this.pdf.struct(scope ? 'TH' : 'TD', scope ? { scope } : {}, () =>
            this.put(cell, at, { ...look, align }),
          );
          line.add(element);
        });
        const bar = isHead ? -1 : columns.findIndex(({ look: kind }) => kind === 'bar');
        y += heights[row]!;
        this.aside(() => {
          if (bar >= 0) {
            const share = Number(rows[row - 1]![bar]);
            const left = x + lefts[bar]! + CELL_PADDING;
            const room = cellWidth(bar) - CELL_PADDING;
            this.bar(share, { x: left, y: y - heights[row]!, width: room });
          }
          this.pdf
            .moveTo(x, y)
            .lineTo(x + width, y)
            .lineWidth(0.4)
            .stroke(RULE);
        });
      });
    };
    return { height: heights.reduce((sum, height) => sum + height, 0), draw };
  }

  private bar(share: number, { x, y, width }: { x: number; y: number; width: number }): void {
    const { pdf } = this;
    pdf.rect(x, y + 4, width * share, 6).fill(INK);
    pdf
      .moveTo(x, y + 3)
      .lineTo(x, y + 11)
      .lineWidth(0.8)
      .stroke(INK);
  }
}
