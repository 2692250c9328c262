/**
 * A report as it is laid out: words, tables and pictures in the order of reading. From this one form come the PDF and
 * the page of HTML, so that both say the same.
 */
import type { Picture } from './picture';

export interface ReportDocument {
  /** Of the file: "Readiness report, Ono Muster, 25 November 2026". */
  readonly title: string;
  readonly heading: string;
  /** Under the heading: who, when, for what. */
  readonly lines: readonly string[];
  readonly parts: readonly (Part | SideBySide)[];
  /** In small type at the end. */
  readonly caution: string;
}

/** Two columns where the page is wide enough; read one after the other. */
export interface SideBySide {
  readonly kind: 'side by side';
  /** Share of the width that the left one has. */
  readonly share: number;
  readonly left: readonly Part[];
  readonly right: readonly Part[];
}

export interface Part {
  readonly kind: 'part';
  readonly heading: string;
  readonly blocks: readonly Block[];
}

export type Block = NumberBlock | TextBlock | ListBlock | TableBlock | PicturesBlock;

/** One number in large type, with what it is. */
export interface NumberBlock {
  readonly kind: 'number';
  readonly value: string;
  readonly unit: string;
}

export interface TextBlock {
  readonly kind: 'text';
  readonly text: string;
  /** An explanation, in small type. */
  readonly isNote?: boolean;
}

export interface ListBlock {
  readonly kind: 'list';
  readonly items: readonly string[];
}

export interface TableBlock extends Table {
  readonly kind: 'table';
}

export interface Table {
  readonly columns: readonly Column[];
  /** The first cell names the row. A number between 0 and 1 in a column of bars is drawn. */
  readonly rows: readonly (readonly (string | number)[])[];
}

export interface Column {
  readonly name: string;
  readonly look: 'text' | 'number' | 'bar';
  /** Share of the width of the table. */
  readonly width: number;
}

/** Drawings side by side. */
export interface PicturesBlock {
  readonly kind: 'pictures';
  readonly pictures: readonly Picture[];
  /** What the lines and dots mean. */
  readonly key: string;
  /** The numbers behind them, where no other table of the part has them. */
  readonly table?: Table;
}
