/** Pictures side by side, each under its title. */
import { DASH, type Mark, type Picture } from '../../../shared/formats/picture';
import styles from './picture.module.css';

export const Pictures = ({ pictures }: { readonly pictures: readonly Picture[] }) => (
  <div class={styles.pictures}>
    {pictures.map(({ title, alt, width, height, marks }) => (
      <figure key={title} class={styles.picture}>
        <figcaption class={styles.title}>{title}</figcaption>
        <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={alt}>
          {marks.map((mark) => (
            <MarkView key={JSON.stringify(mark)} mark={mark} />
          ))}
        </svg>
      </figure>
    ))}
  </div>
);

const ANCHORS = { left: 'start', middle: 'middle', right: 'end' } as const;

function MarkView({ mark }: { readonly mark: Mark }) {
  switch (mark.kind) {
    case 'path':
      return (
        <path
          class={styles[mark.look]}
          d={`M${mark.points.map((point) => point.join(' ')).join('L')}`}
          stroke-dasharray={mark.look === 'dashed' ? DASH : undefined}
        />
      );
    case 'dot':
      return <circle class={styles[mark.look]} cx={mark.at[0]} cy={mark.at[1]} r={mark.radius} />;
    case 'text':
      return (
        <text class={styles.text} x={mark.at[0]} y={mark.at[1]} text-anchor={ANCHORS[mark.align]}>
          {mark.text}
        </text>
      );
  }
}
