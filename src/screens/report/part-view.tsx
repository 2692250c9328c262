/** A part of the report that is words only, as the files have it. */
import type { Block, Part } from '../../../shared/formats/report-document';
import figure from './readiness-figure.module.css';
import table from './table.module.css';

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
      return <p class={block.isNote ? table.note : undefined}>{block.text}</p>;
    case 'list':
      return (
        <ul class={table.list}>
          {block.items.map((item) => (
            <li key={item}>{item}</li>
          ))}
        </ul>
      );
    case 'table':
    case 'maps':
      throw new RangeError(`not a block of words: ${block.kind}`);
  }
}
