/** Pictures side by side, each under its title. */
import { DASH, LETTERS, type Mark, type Picture, STROKES } from '../../../shared/formats/picture';
import { EDGE, INK, type Pdf, SOFT, type Structure } from './pdf';

interface Room {
  readonly width: number;
  /** Of the lines above each picture. */
  readonly titleSize: number;
}

interface Place extends Room {
  readonly x: number;
  readonly y: number;
  /** Puts a text into the characters of the font. */
  readonly write: (text: string) => string;
}

/** Points; one picture alone would be as wide as the page. */
const WIDEST = 150;
const GUTTER = 12;
const BELOW_TITLE = 2;

const widthOfEach = (pictures: readonly Picture[], width: number): number =>
  Math.min(WIDEST, (width - GUTTER * (pictures.length - 1)) / pictures.length);

/** Of the tallest title, so that all pictures begin on one line. */
function titleHeight(pdf: Pdf, pictures: readonly Picture[], { width, titleSize }: Room): number {
  const each = widthOfEach(pictures, width);
  pdf.fontSize(titleSize);
  const heights = pictures.map(({ title }) => pdf.heightOfString(title, { width: each }));
  return Math.max(0, ...heights) + BELOW_TITLE;
}

export function picturesHeight(pdf: Pdf, pictures: readonly Picture[], room: Room): number {
  const each = widthOfEach(pictures, room.width);
  const highest = Math.max(0, ...pictures.map((one) => (one.height * each) / one.width));
  return titleHeight(pdf, pictures, room) + highest + 4;
}

export function drawPictures(
  pdf: Pdf,
  root: Structure,
  pictures: readonly Picture[],
  { x, y, width, titleSize, write }: Place,
): void {
  const each = widthOfEach(pictures, width);
  const top = y + titleHeight(pdf, pictures, { width, titleSize });
  pictures.forEach((picture, i) => {
    const left = x + i * (each + GUTTER);
    const scale = each / picture.width;
    const bottom = top + scale * picture.height;
    const title = pdf.struct('P', {}, () => {
      pdf.fontSize(titleSize).fillColor(SOFT).text(write(picture.title), left, y, { width: each });
    });
    root.add(title);
    const bbox = [left, top, left + each, bottom] as const;
    const figure = pdf.struct('Figure', { alt: picture.alt, bbox }, () => {
      pdf.save().translate(left, top).scale(scale);
      for (const mark of picture.marks) draw(pdf, mark, write);
      pdf.restore();
    });
    root.add(figure);
  });
}

function draw(pdf: Pdf, mark: Mark, write: (text: string) => string): void {
  switch (mark.kind) {
    case 'path': {
      mark.points.forEach(([x, y], i) => (i === 0 ? pdf.moveTo(x, y) : pdf.lineTo(x, y)));
      pdf.lineWidth(STROKES[mark.look]);
      if (mark.look === 'dashed') pdf.dash(DASH, { space: DASH });
      pdf.stroke(mark.look === 'thin' ? EDGE : INK);
      if (mark.look === 'dashed') pdf.undash();
      return;
    }
    case 'dot': {
      pdf.circle(...mark.at, mark.radius);
      if (mark.look === 'full') pdf.fill(INK);
      else pdf.lineWidth(STROKES[mark.look === 'hollow' ? 'strong' : 'thin']);
      if (mark.look !== 'full') pdf.stroke(mark.look === 'hollow' ? INK : EDGE);
      return;
    }
    case 'text': {
      const text = write(mark.text);
      const width = pdf.fontSize(LETTERS).fillColor(INK).widthOfString(text);
      const shift = { left: 0, middle: width / 2, right: width }[mark.align];
      const [x, y] = mark.at;
      // The library wants the head of a line and not its foot.
      pdf.text(text, x - shift, y - 0.94 * LETTERS, { lineBreak: false });
    }
  }
}
