/** What is used of pdfkit 0.20; the types that are published are of an older version. All lengths in points. */
declare module 'pdfkit' {
  export interface PDFStructureElement {
    add(child: PDFStructureElement | (() => void)): PDFStructureElement;
    end(): void;
  }

  interface StructureOptions {
    readonly title?: string;
    readonly alt?: string;
    /** Left, top, right, bottom. */
    readonly bbox?: readonly [number, number, number, number];
    readonly scope?: 'Row' | 'Column';
  }

  interface TextOptions {
    readonly width?: number;
    readonly align?: 'left' | 'right';
    readonly lineGap?: number;
    readonly lineBreak?: boolean;
  }

  interface DocumentOptions {
    readonly size: 'A4' | 'LETTER';
    readonly margin: number;
    readonly autoFirstPage: boolean;
    /** Pages stay open until the end. */
    readonly bufferPages: boolean;
    readonly pdfVersion: '1.7';
    readonly tagged: boolean;
    readonly lang: string;
    readonly displayTitle: boolean;
    readonly font: Uint8Array;
    readonly info: Readonly<Record<string, string | Date>>;
  }

  export class PDFDocument {
    constructor(options: DocumentOptions);
    readonly page: {
      readonly width: number;
      readonly height: number;
      readonly margins: { bottom: number; readonly right: number };
    };
    addPage(): this;
    switchToPage(page: number): void;
    bufferedPageRange(): { readonly start: number; readonly count: number };
    fontSize(size: number): this;
    fillColor(colour: string): this;
    text(text: string, x: number, y: number, options?: TextOptions): this;
    widthOfString(text: string): number;
    heightOfString(text: string, options?: TextOptions): number;
    save(): this;
    restore(): this;
    translate(x: number, y: number): this;
    scale(factor: number): this;
    moveTo(x: number, y: number): this;
    lineTo(x: number, y: number): this;
    rect(x: number, y: number, width: number, height: number): this;
    circle(x: number, y: number, radius: number): this;
    lineWidth(width: number): this;
    dash(length: number, options: { readonly space: number }): this;
    undash(): this;
    stroke(colour: string): this;
    fill(colour: string): this;
    markContent(tag: 'Artifact'): this;
    endMarkedContent(): this;
    struct(type: string, options: StructureOptions, children?: () => void): PDFStructureElement;
    addStructure(element: PDFStructureElement): this;
    end(): void;
  }
}

declare module 'pdfkit/output' {
  export function toBytes(document: import('pdfkit').PDFDocument): Promise<Uint8Array<ArrayBuffer>>;
}
