/** PDF read back by Debian's poppler-utils, which have nothing in common with what writes it. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const find = () => spawnSync('pdftotext', ['-v'], { encoding: 'utf8' });

/** Installs them where that is allowed; says what to do where it is not. */
export function needPoppler(): string {
  if (find().error !== undefined && process.getuid?.() === 0) {
    spawnSync('apt-get', ['update'], { stdio: 'ignore' });
    spawnSync('apt-get', ['install', '-y', '--no-install-recommends', 'poppler-utils'], {
      stdio: 'ignore',
    });
  }
  const { error, stderr } = find();
  if (error !== undefined) {
    throw new Error('The tests of the PDF need poppler-utils: apt-get install poppler-utils');
  }
  return stderr.split('\n')[0]!;
}

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
