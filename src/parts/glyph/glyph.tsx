/**
 * A fluency as a sign that is told by its shape: a cross, an empty square, an empty disc, a full disc, a ringed disc.
 * An SVG group centred on `x`, `y`, about 9 units wide.
 */
import type { Fluency } from '../../../shared/log/events';
import styles from './glyph.module.css';

interface GlyphProps {
  readonly fluency: Fluency;
  readonly x: number;
  readonly y: number;
}

export function Glyph({ fluency, x, y }: GlyphProps) {
  switch (fluency) {
    case 0:
      return <path class={styles.line} d={`M${x - 4} ${y - 4}l8 8m0 -8l-8 8`} />;
    case 1:
      return <rect class={styles.line} x={x - 3.5} y={y - 3.5} width={7} height={7} />;
    case 2:
      return <circle class={styles.line} cx={x} cy={y} r={4} />;
    case 3:
      return <circle class={styles.full} cx={x} cy={y} r={4.2} />;
    case 4:
      return (
        <g>
          <circle class={styles.ring} cx={x} cy={y} r={6} />
          <circle class={styles.full} cx={x} cy={y} r={3.4} />
        </g>
      );
  }
}
