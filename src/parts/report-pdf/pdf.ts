/** What the parts of the PDF share: the library's types, and ink on white paper. */

import type { PDFDocument, PDFStructureElement } from 'pdfkit';

export type Pdf = PDFDocument;
export type Structure = PDFStructureElement;

export const INK = '#1f1b16';
export const SOFT = '#544c42';
export const RULE = '#d9d0c0';
export const EDGE = '#857b6b';
