/** Tables of the results in Markdown. */

export const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [head, head.map((_, i) => (i === 0 ? '---' : '--:')), ...rows]
    .map((cells) => `| ${cells.join(' | ')} |`)
    .join('\n');

export const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

export const percent = (share: number): string => `${Math.round(100 * share)} %`;
