/** PDF read back by Debian's poppler-utils, which have nothing in common with what writes it. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { isProgram, need, type Program } from '../install';

export const POPPLER: Program = {
  isThere: () => isProgram('pdftotext', '-v'),
  packages: ['poppler-utils'],
};

/** Installs them where that is allowed; says what to do where it is not. */
export const needPoppler = (): void => need(POPPLER);

function run(tool: string, options: readonly string[], pdf: Uint8Array): string {
  const folder = mkdtempSync(join(tmpdir(), 'arpeggiary-pdf-'));
  try {
    const file = join(folder, 'report.pdf');
    writeFileSync(file, pdf);
    // pdftotext writes to a file unless it is told "-" after the name.
    const output = tool === 'pdftotext' ? ['-'] : [];
    const { status, stdout, stderr } = spawnSync(tool, [...options, file, ...output], {
      encoding: 'utf8',
    });
    if (status !== 0) throw new Error(`${tool}: ${stderr}`);
    return stdout;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** In the order of reading, pages one after the other. */
export const textOf = (pdf: Uint8Array): string => run('pdftotext', ['-enc', 'UTF-8'], pdf);
/** "Pages" to "2", "Page size" to "595.28 x 841.89 pts (A4)". */
export const factsOf = (pdf: Uint8Array): ReadonlyMap<string, string> =>
  new Map(
    run('pdfinfo', [], pdf)
      .trim()
      .split('\n')
      .map((line) => {
        const [name, ...rest] = line.split(':');
        return [name!, rest.join(':').trim()] as const;
      }),
  );
/** The tags, a line for each element, with the text in it. */
export const structureOf = (pdf: Uint8Array): string => run('pdfinfo', ['-struct-text'], pdf);
export const fontsOf = (pdf: Uint8Array): string => run('pdffonts', [], pdf);
/** Each word with its box, as XHTML. */
export const boxesOf = (pdf: Uint8Array): string => run('pdftotext', ['-bbox'], pdf);
