/** The work: what was practised, what is to be worked on, what is planned, and what the teacher says. */
import { FLUENCIES } from '../../../shared/log/events';
import { itemOf } from '../../../shared/music/deck';
import { type Grouping, markOf } from '../../../shared/music/tempo';
import type { Part } from '../../../shared/formats/report-document';
import { reasonText } from '../../../shared/planning/reasons';
import type { Report } from '../../../shared/planning/report';
import type { Remark, Student } from '../../../shared/planning/student';
import type { WeakJoin } from '../../../shared/planning/weak-joins';
import { shortDay } from '../../parts/dates';
import { joinWords } from '../../parts/join-words';
import { SHORT_WAY } from '../../parts/short-way';
import { noteText } from '../../parts/words';
import { cutList, cutText, itemText, list, note, part, text } from './blocks';

const PLANNED = 5;
const ASIDE = 4;
const REMARKS = 4;
/** Characters of a remark. */
const LONGEST_REMARK = 180;

export const weeksPart = ({ weeks }: Report): Part => {
  const most = Math.max(1, ...weeks.map(({ seconds }) => seconds));
  return part(
    `Practice of the last ${weeks.length} weeks`,
    {
      kind: 'table',
      columns: [
        { name: 'Week of', look: 'text', width: 0.24 },
        { name: 'Days', look: 'number', width: 0.14 },
        { name: 'Runs', look: 'number', width: 0.16 },
        { name: 'Minutes', look: 'number', width: 0.24 },
        { name: '', look: 'bar', width: 0.22 },
      ],
      rows: weeks.map(({ monday, days, runs, seconds }) => [
        shortDay(monday),
        String(days),
        String(runs),
        String(Math.round(seconds / 60)),
        seconds / most,
      ]),
    },
    note('Minutes of playing, without the pauses between.'),
  );
};

function evidenceText({ evidence }: WeakJoin): string {
  if (evidence.kind === 'rated') {
    return `its hardest join; last ${FLUENCIES[evidence.fluency]}, ${shortDay(evidence.day)}`;
  }
  const { wait, takes, day } = evidence;
  const runs = takes === 1 ? 'one run' : `${takes} runs`;
  return `heard to wait ${wait} ms in ${runs}, last ${shortDay(day)}`;
}

export function joinsPart(student: Student, { joins }: Report): Part {
  const items = joins.map((weak) => {
    const words = joinWords(student, weak.item, weak.join.id);
    return `${itemText(weak.item)}: ${words}; ${evidenceText(weak)}`;
  });
  return items.length === 0
    ? part('Joins to work on', text('No item of those above was last less than even.'))
    : part('Joins to work on', list(items));
}

export function plannedPart({ planned }: Report, grouping: Grouping): Part {
  const items = planned.entries.map((entry) => {
    const what =
      entry.kind === 'single'
        ? itemText(itemOf(entry.items[0]!))
        : `Round from ${noteText(entry.note)} (${SHORT_WAY[entry.way].join(' ')})`;
    return `${what}, at ${markOf(entry.tempo, grouping)}`;
  });
  const [first] = planned.entries;
  return part(
    `Planned for ${shortDay(planned.day)}`,
    ...cutList(items, PLANNED),
    ...(first === undefined
      ? []
      : [note(`The first of them: ${reasonText(first.reason, grouping)}`)]),
  );
}

export const remarksPart = (student: Student, { teacherRemarks }: Report): Part =>
  part(
    'The teacher’s remarks',
    ...cutList(
      teacherRemarks.map((remark) => remarkText(student, remark)),
      REMARKS,
    ),
  );

function remarkText(student: Student, { about, join, text: words, day }: Remark): string {
  const said = cutText(words, LONGEST_REMARK);
  if (about === null) return `${said} (${shortDay(day)})`;
  const item = itemOf(about);
  const ofJoin = join === null ? null : joinWords(student, item, join);
  const where = ofJoin === null ? itemText(item) : `${itemText(item)}, ${ofJoin}`;
  return `${where}: ${said} (${shortDay(day)})`;
}

export const asidePart = ({ aside }: Report): Part =>
  part('Set aside for now', ...cutList(aside.map(itemText), ASIDE));
