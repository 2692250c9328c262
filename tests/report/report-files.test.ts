/** The report as files, read back by programs of others: poppler for the PDF, happy-dom's parser for the page. */
import { readFileSync } from 'node:fs';
import { Window } from 'happy-dom';
import { beforeAll, describe, expect, it } from 'vitest';
import { reportHtml } from '../../shared/formats/report-html';
import { reportOf } from '../../shared/planning/report';
import type { Student } from '../../shared/planning/student';
import { coveredText } from '../../src/parts/report-pdf/covered';
import { type Pdf, reportPdf } from '../../src/parts/report-pdf/report-pdf';
import { paperFor } from '../../src/parts/report-pdf/paper';
import { documentOf } from '../../src/screens/report/document-of';
import { charactersOf } from './character-map';
import { fullStudent, TODAY as FULL } from './full-student';
import { boxesOf, factsOf, fontsOf, needPoppler, structureOf, textOf } from './poppler';
import { reportedStudent, TODAY } from './student';

const font = new Uint8Array(readFileSync('src/parts/report-pdf/arpeggiary-serif.ttf'));
const made = new Date('2026-01-25T12:00:00Z');
const writtenFor = (student: Student) => {
  const programme = student.programme!;
  return documentOf(reportOf(student, programme, TODAY), student, programme);
};
const pdfFor = (student: Student, paper: 'A4' | 'LETTER' = 'A4'): Promise<Pdf> =>
  reportPdf(writtenFor(student), { font, paper, made });

beforeAll(needPoppler, 120_000);

describe('the report as a PDF', () => {
  let pdf: Pdf;
  let text: string;
  beforeAll(async () => {
    pdf = await pdfFor(reportedStudent());
    text = textOf(pdf.bytes).replaceAll(/\s+/g, ' ');
  });

  it('has a title, tags, and one or two pages of A4 or Letter', async () => {
    const facts = factsOf(pdf.bytes);
    expect(facts.get('Title')).toBe('Readiness report, Ono Muster, 25 January 2026');
    expect(facts.get('Tagged')).toBe('yes');
    expect(facts.get('JavaScript')).toBe('no');
    // ISO 216: 210 x 297 mm; in points of 1/72 inch.
    expect(facts.get('Page size')).toBe('595.28 x 841.89 pts (A4)');
    expect(Number(facts.get('Pages'))).toBe(pdf.pages);
    expect(pdf.pages).toBeLessThanOrEqual(2);
    const letter = await pdfFor(reportedStudent(), 'LETTER');
    // 8.5 x 11 inches.
    expect(factsOf(letter.bytes).get('Page size')).toBe('612 x 792 pts (letter)');
    expect([paperFor('en-US'), paperFor('en-GB'), paperFor('de')]).toEqual(['LETTER', 'A4', 'A4']);
  });

  it('names its language, as the catalogue of a PDF does', () => {
    expect(Buffer.from(pdf.bytes).toString('latin1')).toContain('/Lang (en)');
  });

  it('is real text in an embedded font, with sharps and flats', () => {
    expect(fontsOf(pdf.bytes)).toMatch(/ArpeggiarySerif\S* +CID TrueType +Identity-H +yes yes yes/);
    expect(text).toContain('E♭');
    expect(pdf.isChanged).toBe(false);
  });

  it('says what the report says, part by part', () => {
    for (const words of [
      'Ono Muster, 25 January 2026',
      'Readiness on 6 March 2026',
      'Chance to pass',
      'draws 2 items, 2 of them at least even',
      'What costs most of it: E♭, ',
      '0 of 1 passed; by the forecasts it would have been 0.3. Marked by a teacher.',
      'Since the report of 10 January 2026',
      'At the present pace',
      'too early to tell',
      'Reach over time',
      'By stage',
      'Weakest of each stage',
      'Joins to work on',
      'Planned for',
      'Practice of the last 12 weeks',
      'Calmer. Wrist free.',
      'Set aside for now',
      'All figures are estimates',
    ]) {
      expect(text).toContain(words);
    }
    expect(text).toMatch(/By stage: right 2 oct\. \d+ \(40 then\)/);
    // The player's own remarks are the player's.
    expect(text).not.toContain('My own note');
  });

  it('is tagged in the order of reading, with tables and pictures that have words', () => {
    const tags = structureOf(pdf.bytes);
    const headings = [...tags.matchAll(/H2[^\n]*\n\s+"([^"]+)"/g)].map(([, words]) => words);
    expect(headings.slice(0, 3)).toEqual([
      'Readiness on 6 March 2026',
      'Chance to pass',
      'By stage',
    ]);
    // By stage, reach over time, the weakest, by week, and examinations.
    expect(tags.match(/^ *Table/gm)).toHaveLength(5);
    // A map and a line for each of four stages, and the examinations.
    expect(tags.match(/^ *Figure/gm)).toHaveLength(4 + 4 + 1);
    expect(tags).toMatch(/TH/);
  });

  it('is the same for the same report', async () => {
    const again = await pdfFor(reportedStudent());
    expect(textOf(again.bytes)).toBe(textOf(pdf.bytes));
    expect(again.bytes).toHaveLength(pdf.bytes.length);
  });

  it('stays on one sheet whatever there is to report, and says where it has left something out', async () => {
    const student = fullStudent();
    const full = documentOf(
      reportOf(student, student.programme!, FULL),
      student,
      student.programme!,
    );
    for (const paper of ['A4', 'LETTER'] as const) {
      const { bytes, pages } = await reportPdf(full, { font, paper, made });
      expect(factsOf(bytes).get('Pages')).toBe('2');
      expect(pages).toBe(2);
      const words = textOf(bytes).replaceAll(/\s+/g, ' ');
      expect(words).toContain('660 of 660 items have been played.');
      expect(words).toMatch(/\w… \(5 Apr\)/);
      // Eight remarks, six examinations, 22 items set aside.
      for (const more of ['And 4 more', 'And 3 more', 'And 18 more']) expect(words).toContain(more);
      expect(words).toContain('All figures are estimates');
    }
  });

  it('is read as easily in print as it can be: nothing of it is set smaller than six points', async () => {
    const student = fullStudent();
    const full = documentOf(
      reportOf(student, student.programme!, FULL),
      student,
      student.programme!,
    );
    const { bytes } = await reportPdf(full, { font, paper: 'LETTER', made });
    const sizes = [...boxesOf(bytes).matchAll(/yMin="([\d.]+)"[^>]*yMax="([\d.]+)"/g)].map(
      ([, top, bottom]) => Number(bottom) - Number(top),
    );
    expect(sizes.length).toBeGreaterThan(500);
    // A word's box is as high as its font's line, which is a third higher than its size.
    expect(Math.min(...sizes)).toBeGreaterThan(6);
  });

  it('takes only those letters to be in the font that are', () => {
    const there = charactersOf(font);
    const codes = [...Array.from({ length: 0x2700 }, (_, code) => code), 0x1d12a, 0x1d12b];
    const covered = codes
      .map((code) => String.fromCodePoint(code))
      .filter((sign) => coveredText(sign).text === sign && sign !== '?');
    expect(covered.length).toBeGreaterThan(300);
    expect(covered.filter((sign) => !there.has(sign.codePointAt(0)!))).toEqual([]);
  });

  it('writes letters that the font lacks plainly, and says so', async () => {
    const plain = 'Jiří Łoś, Zoë Ștefan – C♯';
    expect(coveredText(plain)).toEqual({ text: plain, isChanged: false });
    expect(coveredText('Nguyễn ǆ')).toEqual({ text: 'Nguyên dz', isChanged: true });
    expect(coveredText('a\nb')).toEqual({ text: 'a b', isChanged: false });
    expect(coveredText('\u2068a\u2069')).toEqual({ text: 'a', isChanged: false });
    expect(coveredText('小野')).toEqual({ text: '??', isChanged: true });
    const other = await pdfFor(reportedStudent('Nguyễn'));
    expect(other.isChanged).toBe(true);
    expect(textOf(other.bytes)).toContain('Nguyên');
  });
});

const parsed = (student: Student) => {
  const { document } = new Window();
  document.write(reportHtml(writtenFor(student)));
  return document;
};

describe('the report as a page', () => {
  it('needs nothing from elsewhere and runs nothing', () => {
    const page = reportHtml(writtenFor(reportedStudent()));
    expect(page).not.toMatch(/<script|<link|<img|https?:|\bon\w+=|url\(/i);
    expect(page).toContain("default-src 'none'");
  });

  it('has a title, a language, headings, tables with heads, and pictures with names', () => {
    const document = parsed(reportedStudent());
    expect(document.documentElement.getAttribute('lang')).toBe('en');
    expect(document.title).toBe('Readiness report, Ono Muster, 25 January 2026');
    const headings = [...document.querySelectorAll('h2')].map(({ textContent }) => textContent);
    expect(headings).toContain('Chance to pass');
    expect(headings).toContain('The teacher’s remarks');
    const tables = [...document.querySelectorAll('table')];
    expect(tables).toHaveLength(5);
    for (const table of tables) {
      const columns = table.querySelectorAll('thead th').length;
      for (const row of table.querySelectorAll('tbody tr')) {
        expect(row.children).toHaveLength(columns);
      }
    }
    const maps = [...document.querySelectorAll('svg[role="img"]')];
    expect(maps.map((map) => map.getAttribute('aria-label'))).toContainEqual(
      expect.stringMatching(/^Map of right hand, two octaves: C \d+ per cent on average/),
    );
    expect(document.body.textContent).toContain('E♭');
  });

  it('shows what a name or a remark holds and does nothing with it', () => {
    const name = '<img src=x onerror=alert(1)>';
    const document = parsed(reportedStudent(name, '</li><script>alert("&")</script>'));
    expect(document.querySelectorAll('script, img')).toHaveLength(0);
    expect(document.title).toContain(name);
    expect(document.body.textContent).toContain('</li><script>alert("&")</script>');
  });
});
