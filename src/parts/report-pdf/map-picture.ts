/** The maps of the stages side by side: a disc for each item, whose area is its chance. */
import {
  discRadius,
  MAP_DISC,
  MAP_WIDTH,
  type MapCell,
  mapHeight,
  type MapPicture,
  mapX,
  mapY,
} from '../../../shared/formats/report-document';
import { EDGE, INK, type Pdf, SOFT, type Structure } from './pdf';

interface Place {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  /** Of the line above each map. */
  readonly titleSize: number;
}

/** Points; one map alone would be as wide as the page. */
const WIDEST = 150;
const GUTTER = 12;
const LINES = 2;

function sizesOf(maps: readonly MapPicture[], width: number) {
  const each = Math.min(WIDEST, (width - GUTTER * (maps.length - 1)) / maps.length);
  return { each, scale: each / MAP_WIDTH };
}

const titleHeight = (size: number): number => LINES * size * 1.35;

export function mapsHeight(maps: readonly MapPicture[], width: number, titleSize: number): number {
  const { scale } = sizesOf(maps, width);
  const rows = Math.max(0, ...maps.map((map) => map.rows.length));
  return titleHeight(titleSize) + scale * mapHeight(rows) + 4;
}

export function drawMaps(
  pdf: Pdf,
  root: Structure,
  maps: readonly MapPicture[],
  { x, y, width, titleSize }: Place,
): void {
  const { each, scale } = sizesOf(maps, width);
  maps.forEach((map, i) => {
    const left = x + i * (each + GUTTER);
    const top = y + titleHeight(titleSize);
    const bottom = top + scale * mapHeight(map.rows.length);
    const caption = pdf.struct('P', {}, () => {
      pdf.fontSize(titleSize).fillColor(SOFT).text(map.title, left, y, { width: each });
    });
    root.add(caption);
    const alt = `Map of ${map.title}: ${altOf(map)}`;
    const figure = pdf.struct('Figure', { alt, bbox: [left, top, left + each, bottom] }, () => {
      pdf.save().translate(left, top).scale(scale);
      drawMap(pdf, map);
      pdf.restore();
    });
    root.add(figure);
  });
}

/** What the picture shows, for those who hear it. */
function altOf({ rows }: MapPicture): string {
  return rows
    .map(({ name, cells }) => {
      const open = cells.filter(({ state }) => state === 'open');
      if (open.length === 0) return `${name} not open`;
      const mean = open.reduce((sum, { chance }) => sum + chance, 0) / open.length;
      return `${name} ${Math.round(100 * mean)} per cent on average`;
    })
    .join(', ');
}

function drawMap(pdf: Pdf, { rows }: MapPicture): void {
  rows.forEach(({ name, cells }, row) => {
    pdf
      .fontSize(9)
      .fillColor(INK)
      .text(name, 0, mapY(row) - 5.5, { lineBreak: false });
    cells.forEach((cell, column) => drawCell(pdf, cell, mapX(column), mapY(row)));
  });
}

function drawCell(pdf: Pdf, { state, chance }: MapCell, x: number, y: number): void {
  switch (state) {
    case 'aside':
      pdf.moveTo(x - 2.6, y - 2.6).lineTo(x + 2.6, y + 2.6);
      pdf
        .moveTo(x - 2.6, y + 2.6)
        .lineTo(x + 2.6, y - 2.6)
        .lineWidth(0.9)
        .stroke(INK);
      break;
    case 'not open':
      pdf
        .moveTo(x - 2, y)
        .lineTo(x + 2, y)
        .lineWidth(0.9)
        .stroke(INK);
      break;
    case 'open':
      pdf.circle(x, y, MAP_DISC).lineWidth(0.5).stroke(EDGE);
      pdf.circle(x, y, discRadius(chance)).fill(INK);
      break;
  }
}
