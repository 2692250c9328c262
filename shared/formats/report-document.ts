/**
 * A report as it is laid out: words, tables and pictures in the order of reading. From this one form come the PDF and
 * the page of HTML, so that both say the same.
 */

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

export type Block = NumberBlock | TextBlock | ListBlock | TableBlock | MapsBlock;

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

export interface TableBlock {
  readonly kind: 'table';
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

/** A picture of each stage: a disc for each item, whose area is its chance. */
export interface MapsBlock {
  readonly kind: 'maps';
  readonly maps: readonly MapPicture[];
  readonly key: string;
}

export interface MapPicture {
  readonly title: string;
  /** Starting notes, top row first. */
  readonly rows: readonly MapRow[];
}

export interface MapRow {
  readonly name: string;
  /** By chord in the order of a round. */
  readonly cells: readonly MapCell[];
}

export interface MapCell {
  readonly state: 'open' | 'not open' | 'aside';
  /** 0 to 1. */
  readonly chance: number;
}

/** Units of a map: the distance of two discs is 10. */
export const MAP_PITCH = 10;
const LABELS = 14;
/** Between the groups of chords: root position, first, second inversion, dominant, diminished seventh. */
const GAP = 3;
const GAPS_BEFORE = [0, 0, 1, 1, 2, 2, 3, 3, 3, 3, 4] as const;
/** Radius of a full disc. */
export const MAP_DISC = 4.6;

export const mapX = (column: number): number =>
  LABELS + MAP_PITCH * (column + 0.5) + GAP * GAPS_BEFORE[column]!;
export const mapY = (row: number): number => MAP_PITCH * (row + 0.5);
export const MAP_WIDTH = mapX(10) + MAP_PITCH / 2 + 1;
export const mapHeight = (rows: number): number => mapY(rows - 1) + MAP_PITCH / 2 + 1;

/** The area of the disc is the chance. */
export const discRadius = (chance: number): number => MAP_DISC * Math.sqrt(chance);
