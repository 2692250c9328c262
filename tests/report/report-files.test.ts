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
import { factsOf, fontsOf, needPoppler, structureOf, textOf } from './poppler';
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
      'not passed, 1 of 2 at least even, marked by a teacher; the forecast was 31 per cent',
      'Since the report of 10 January 2026',
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
    expect(tags.match(/^ *Table/gm)).toHaveLength(3);
    expect(tags.match(/^ *Figure/gm)).toHaveLength(4);
    expect(tags).toMatch(/TH/);
  });

  it('is the same for the same report', async () => {
    const again = await pdfFor(reportedStudent());
    expect(textOf(again.bytes)).toBe(textOf(pdf.bytes));
    expect(again.bytes).toHaveLength(pdf.bytes.length);
  });

  it('goes on on further pages where remarks are long, and loses nothing', async () => {
    const said = `${'The thumb comes late. '.repeat(88)}The last word.`;
    const long = await pdfFor(reportedStudent('Ono Muster', said));
    const words = textOf(long.bytes).replaceAll(/\s+/g, ' ');
    expect(long.pages).toBeGreaterThan(1);
    expect(words).toContain('The last word.');
    expect(words).toContain('All figures are estimates');
    expect(words.match(/The thumb comes late/g)).toHaveLength(88);
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
    expect(tables).toHaveLength(3);
    for (const table of tables) {
      const columns = table.querySelectorAll('thead th').length;
      for (const row of table.querySelectorAll('tbody tr')) {
        expect(row.children).toHaveLength(columns);
      }
    }
    const maps = [...document.querySelectorAll('svg[role="img"]')];
    expect(maps.map((map) => map.getAttribute('aria-label'))).toContain(
      'Map: left hand, two octaves',
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
