/** A part of the report as the files have it. */
import type { Block, Part, Table as TableOf } from '../../../shared/formats/report-document';
import { Bar } from '../../parts/bar/bar';
import { Pictures } from '../../parts/picture/picture';
import wide from '../../parts/wide.module.css';
import figure from './readiness-figure.module.css';
import styles from './table.module.css';

export function PartView({ part }: { readonly part: Part }) {
  return (
    <section>
      <h2>{part.heading}</h2>
      {part.blocks.map((block) => (
        <BlockView key={keyOf(block)} block={block} />
      ))}
    </section>
  );
}

const keyOf = (block: Block): string => (block.kind === 'text' ? block.text : block.kind);

function BlockView({ block }: { readonly block: Block }) {
  switch (block.kind) {
    case 'number':
      return (
        <p class={figure.number}>
          {block.value}
          <span class={figure.unit}> {block.unit}</span>
        </p>
      );
    case 'text':
      return <p class={block.isNote ? styles.note : undefined}>{block.text}</p>;
    case 'list':
      return (
        <ul class={styles.list}>
          {block.items.map((item) => (
            <li key={item}>{item}</li>
          ))}
        </ul>
      );
    case 'table':
      return <Table table={block} />;
    case 'pictures':
      return (
        <>
          <Pictures pictures={block.pictures} />
          <p class={styles.note}>{block.key}</p>
          {block.table && <Behind table={block.table} />}
        </>
      );
  }
}

/** So many lines of a table do not stand in the way of what follows. */
const SHORT = 6;

/** The numbers behind a picture; a long table is folded away. */
function Behind({ table }: { readonly table: TableOf }) {
  if (table.rows.length <= SHORT) return <Table table={table} />;
  return (
    <details>
      <summary>As a table</summary>
      <Table table={table} />
    </details>
  );
}

function Table({ table: { columns, rows } }: { readonly table: TableOf }) {
  return (
    <div class={wide.scroll}>
      <table class={styles.table}>
        <thead>
          <tr>
            {columns.map(({ name, look }) => (
              <th key={name} scope="col" class={styles[look]}>
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.join()}>
              {row.map((cell, i) => (
                <Cell key={columns[i]!.name} cell={cell} look={columns[i]!.look} isHead={i === 0} />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

interface CellProps {
  readonly cell: string | number;
  readonly look: 'text' | 'number' | 'bar';
  readonly isHead: boolean;
}

function Cell({ cell, look, isHead }: CellProps) {
  if (isHead) {
    return (
      <th scope="row" class={styles[look]}>
        {cell}
      </th>
    );
  }
  return <td class={styles[look]}>{look === 'bar' ? <Bar share={Number(cell)} /> : cell}</td>;
}
