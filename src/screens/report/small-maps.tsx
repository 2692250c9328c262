/** The map of each stage in small: a disc for each item, whose area is its chance. */
import type { Day } from '../../../shared/log/events';
import { askedStages, type Programme } from '../../../shared/log/programme';
import { STARTING_NOTES, type Way } from '../../../shared/music/deck';
import {
  discRadius,
  MAP_DISC,
  MAP_WIDTH,
  mapHeight,
  mapX,
  mapY,
} from '../../../shared/formats/report-document';
import { cellsOf } from '../../../shared/planning/map';
import type { Student } from '../../../shared/planning/student';
import { noteText, wayText } from '../../parts/words';
import styles from './small-maps.module.css';

interface SmallMapsProps {
  readonly student: Student;
  readonly programme: Programme;
  readonly date: Day;
}

export function SmallMaps(props: SmallMapsProps) {
  return (
    <section class={styles.section}>
      <h2>Map</h2>
      <div class={styles.maps}>
        {askedStages(props.programme).map((stage) => (
          <SmallMap key={stage} way={stage} {...props} />
        ))}
      </div>
      <p class={styles.key}>
        A full disc <Sample chance={1} /> is certain, <Sample chance={0.5} /> even odds,{' '}
        <Sample chance={0.1} /> one in ten; <span aria-hidden="true">–</span> not open yet, × set
        aside. Columns: major and minor 5/3, 6, 6/4; dominant 7, 6/5, 4/3, 4/2; diminished 7.
      </p>
    </section>
  );
}

function Sample({ chance }: { readonly chance: number }) {
  return (
    <svg class={styles.sample} viewBox="-5 -5 10 10" aria-hidden="true">
      <circle class={styles.frame} r={MAP_DISC} />
      <circle class={styles.disc} r={discRadius(chance)} />
    </svg>
  );
}

function SmallMap({ student, programme, date, way }: SmallMapsProps & { readonly way: Way }) {
  const notes = STARTING_NOTES.filter((note) => programme.notes.includes(note));
  const rows = notes.map((note) => cellsOf(student, programme, { note, way, day: date }));
  const [hands, motion] = wayText(way).split(', ');
  return (
    <figure class={styles.map}>
      <figcaption class={styles.caption}>
        {hands}, <span class={styles.motion}>{motion}</span>
      </figcaption>
      <svg
        viewBox={`0 0 ${MAP_WIDTH} ${mapHeight(notes.length)}`}
        role="img"
        aria-label={`Map: ${wayText(way)}`}
      >
        {notes.map((note, row) => (
          <text key={note} class={styles.note} x={0} y={mapY(row)} dy="0.35em">
            {noteText(note).split('/')[0]}
          </text>
        ))}
        {rows.flatMap((cells, row) =>
          cells.map(({ item, chance, isOpen, isAside }, column) => {
            const x = mapX(column);
            const y = mapY(row);
            if (isAside) {
              const d = `M${x - 2.6} ${y - 2.6}l5.2 5.2m0 -5.2l-5.2 5.2`;
              return <path key={item.id} class={styles.cross} d={d} />;
            }
            if (!isOpen) {
              return <path key={item.id} class={styles.cross} d={`M${x - 2} ${y}h4`} />;
            }
            return (
              <g key={item.id}>
                <circle class={styles.frame} cx={x} cy={y} r={MAP_DISC} />
                <circle class={styles.disc} cx={x} cy={y} r={discRadius(chance)} />
              </g>
            );
          }),
        )}
      </svg>
    </figure>
  );
}
