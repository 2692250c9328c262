/** The report as one page of HTML that needs nothing else: no scripts, no fonts, no pictures from elsewhere. */
import { DASH, LETTERS, type Mark, type Picture, type Point, STROKES } from './picture';
import type { Block, Part, ReportDocument, SideBySide, Table } from './report-document';

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};
const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => ESCAPES[sign]!);

/** Of two columns, in rem; where there is less, the right one goes under the left. */
const WIDTH = 44;

/** Ink on paper, so that it prints as it is and is read without colour. */
const STYLE = `
body{margin:2rem auto;max-width:60rem;padding:0 1rem;color:#1f1b16;background:#fff;font:1rem/1.45 Georgia,serif}
h1{font-weight:400;font-size:1.9rem;line-height:1.2;margin:0 0 .3rem}
h2{font-weight:400;font-size:1.25rem;line-height:1.2;margin:1.6rem 0 .4rem}
p{margin:.3rem 0}
ul{margin:.3rem 0;padding-left:1.1rem}
.head{border-bottom:1px solid #1f1b16;padding-bottom:.6rem}
.pair{display:flex;flex-wrap:wrap;gap:0 2.5rem}
.number{font-size:2.6rem;line-height:1.1}
.number span{font-size:1.2rem}
.note{color:#544c42;font-size:.85rem}
table{border-collapse:collapse;width:100%;line-height:1.3}
th,td{text-align:left;font-weight:400;padding:.2rem .8rem .2rem 0;vertical-align:baseline;border-bottom:1px solid #d9d0c0}
thead th{color:#544c42;font-size:.85rem}
.figure{text-align:right;white-space:nowrap;font-variant-numeric:lining-nums tabular-nums}
.bar{width:20%;min-width:4rem}
.bar svg{display:block;width:100%;height:.7em}
.pictures{display:flex;flex-wrap:wrap;gap:1rem}
.pictures figure{margin:0;flex:1 1 9rem;max-width:16rem}
figcaption{font-size:.85rem}
.pictures svg{display:block;width:100%;font-family:Georgia,serif}
@media print{body{margin:0;max-width:none;font-size:9pt}@page{margin:14mm}h2{break-after:avoid}section{break-inside:avoid}}
`;

export function reportHtml({ title, heading, lines, parts, caution }: ReportDocument): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${escaped(title)}</title>
<style>${STYLE}</style>
</head>
<body>
<main>
<div class="head">
<h1>${escaped(heading)}</h1>
${lines.map((line) => `<p>${escaped(line)}</p>`).join('\n')}
</div>
${parts.map(partOf).join('\n')}
<p class="note">${escaped(caution)}</p>
</main>
</body>
</html>
`;
}

function partOf(part: Part | SideBySide): string {
  if (part.kind === 'part') {
    return `<section>
<h2>${escaped(part.heading)}</h2>
${part.blocks.map(blockOf).join('\n')}
</section>`;
  }
  const column = (parts: readonly Part[], share: number) =>
    `<div style="flex:${share} 1 ${rounded(WIDTH * share)}rem">${parts.map(partOf).join('\n')}</div>`;
  const { left, right, share } = part;
  return `<div class="pair">${column(left, share)}${column(right, rounded(1 - share))}</div>`;
}

function blockOf(block: Block): string {
  switch (block.kind) {
    case 'number':
      return `<p class="number">${escaped(block.value)} <span>${escaped(block.unit)}</span></p>`;
    case 'text':
      return `<p${block.isNote ? ' class="note"' : ''}>${escaped(block.text)}</p>`;
    case 'list':
      return `<ul>${block.items.map((item) => `<li>${escaped(item)}</li>`).join('\n')}</ul>`;
    case 'table':
      return tableOf(block);
    case 'pictures':
      return `<div class="pictures">${block.pictures.map(figureOf).join('\n')}</div>
<p class="note">${escaped(block.key)}</p>${block.table === undefined ? '' : `\n${tableOf(block.table)}`}`;
  }
}

const CLASSES = { text: '', number: ' class="figure"', bar: ' class="bar"' } as const;

function tableOf({ columns, rows }: Table): string {
  const head = columns
    .map(({ name, look }) => `<th scope="col"${CLASSES[look]}>${escaped(name)}</th>`)
    .join('');
  const body = rows.map((row) => {
    const cells = row.map((cell, i) => {
      const { look } = columns[i]!;
      if (i === 0) return `<th scope="row">${escaped(String(cell))}</th>`;
      if (look === 'bar') return `<td class="bar">${barOf(Number(cell))}</td>`;
      return `<td${CLASSES[look]}>${escaped(String(cell))}</td>`;
    });
    return `<tr>${cells.join('')}</tr>`;
  });
  return `<table><thead><tr>${head}</tr></thead><tbody>
${body.join('\n')}
</tbody></table>`;
}

/** Beside its number, so it is not read out. */
const barOf = (share: number): string =>
  `<svg viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true"><rect width="${rounded(100 * share)}" height="10"/><path d="M0 0V10" stroke="#000"/></svg>`;

const figureOf = ({ title, alt, width, height, marks }: Picture): string =>
  `<figure><figcaption>${escaped(title)}</figcaption>
<svg viewBox="0 0 ${width} ${height}" role="img" aria-label="${escaped(alt)}">${marks.map(markOf).join('')}</svg></figure>`;

const pathOf = (points: readonly Point[]): string =>
  `M${points.map(([x, y]) => `${rounded(x)} ${rounded(y)}`).join('L')}`;

const THIN = `stroke="#857b6b" stroke-width="${STROKES.thin}"`;
const ANCHORS = { left: '', middle: ' text-anchor="middle"', right: ' text-anchor="end"' } as const;
const DOTS = {
  full: '',
  hollow: ' fill="none" stroke="#000"',
  thin: ` fill="none" ${THIN}`,
} as const;

function markOf(mark: Mark): string {
  switch (mark.kind) {
    case 'path': {
      const dashes = mark.look === 'dashed' ? ` stroke-dasharray="${DASH}"` : '';
      const line =
        mark.look === 'thin' ? THIN : `stroke="#000" stroke-width="${STROKES[mark.look]}"`;
      return `<path d="${pathOf(mark.points)}" fill="none" ${line}${dashes}/>`;
    }
    case 'dot': {
      const [x, y] = mark.at;
      return `<circle cx="${rounded(x)}" cy="${rounded(y)}" r="${rounded(mark.radius)}"${DOTS[mark.look]}/>`;
    }
    case 'text': {
      const [x, y] = mark.at;
      return `<text x="${rounded(x)}" y="${rounded(y)}" font-size="${LETTERS}"${ANCHORS[mark.align]}>${escaped(mark.text)}</text>`;
    }
  }
}

const rounded = (value: number): number => Math.round(value * 100) / 100;
