/** The grid itself: a plain table of links, one row a starting note and one column a chord. */
import type { Day } from '../../../shared/log/events';
import type { Programme } from '../../../shared/log/programme';
import { type ChordId, CHORDS, chordOf } from '../../../shared/music/chords';
import type { StartingNote, Way } from '../../../shared/music/deck';
import { type Cell, cellsOf } from '../../../shared/planning/map';
import type { Student } from '../../../shared/planning/student';
import { Figures } from '../../parts/figures/figures';
import { percent } from '../../parts/percent-text';
import wide from '../../parts/wide.module.css';
import { noteText } from '../../parts/words';
import { hrefOf } from '../../route';
import { shadeOf } from './shade';
import styles from './map-table.module.css';
import shades from './shade.module.css';

interface MapTableProps {
  readonly student: Student;
  readonly programme: Programme;
  readonly notes: readonly StartingNote[];
  readonly way: Way;
  readonly day: Day;
}

const KIND_ABBREVIATED: Readonly<Record<string, string>> = {
  major: 'maj.',
  minor: 'min.',
  dominant: 'dom.',
  diminished: 'dim.',
};
const kindOf = (chord: ChordId): string => chord.split('-')[0]!;

export function MapTable({ student, programme, notes, way, day }: MapTableProps) {
  const rows = notes.map((note) => cellsOf(student, programme, { note, way, day }));
  return (
    <div class={`${wide.scroll} ${styles.grid}`}>
      <table class={styles.table}>
        <thead>
          <tr>
            <td />
            {CHORDS.map(({ id, name }, i) => (
              <th key={id} scope="col" data-asked={rows[0]![i]!.isOnTheWay}>
                <span class="spoken">{name}</span>
                <span class={styles.chord} aria-hidden="true">
                  <span class={styles.kind}>{KIND_ABBREVIATED[kindOf(id)]}</span>
                  <Figures chord={id} />
                </span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {notes.map((note, i) => (
            <tr key={note}>
              <th scope="row">
                <NoteName note={note} />
              </th>
              {rows[i]!.map((cell) => (
                <td key={cell.item.id}>
                  <CellLink cell={cell} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** Both names of a black key stand one above the other. */
function NoteName({ note }: { readonly note: StartingNote }) {
  return noteText(note)
    .split('/')
    .map((name, place) => (
      <span key={name} class={styles.note}>
        {place > 0 && <span class="spoken">or </span>}
        {name}
      </span>
    ));
}

function CellLink({ cell }: { readonly cell: Cell }) {
  const { item, chance, isOnTheWay, isPlayed, isAside } = cell;
  const isOpen = cell.isOpen && isOnTheWay;
  return (
    <a
      class={`${styles.cell} ${shades.shade}`}
      href={hrefOf('item', item.id)}
      data-shade={isOpen && !isAside ? shadeOf(chance) : undefined}
      data-open={isOpen}
      data-played={isPlayed}
      data-aside={isAside && isOnTheWay}
    >
      <span class="spoken">
        {noteText(item.note)}, {chordOf(item.chord).shortName}:{' '}
      </span>
      {isOpen ? percent(chance) : isOnTheWay ? '–' : '·'}
      <span class="spoken">{spokenState(cell)}</span>
    </a>
  );
}

function spokenState({ isOnTheWay, isOpen, isPlayed, isAside }: Cell): string {
  if (!isOnTheWay) return ' not asked for';
  const words = [isOpen ? ' per cent' : ' not open yet'];
  if (isOpen && !isPlayed) words.push('not played yet');
  if (isAside) words.push('set aside');
  return words.join(', ');
}
