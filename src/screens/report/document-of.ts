/** The report in words, for the files that are handed out. */
import { daysBetween } from '../../../shared/log/day';
import { FLUENCIES } from '../../../shared/log/events';
import type { Programme } from '../../../shared/log/programme';
import { chordOf } from '../../../shared/music/chords';
import { type Item, itemOf } from '../../../shared/music/deck';
import { type Grouping, markOf } from '../../../shared/music/tempo';
import type {
  Block,
  MapPicture,
  Part,
  ReportDocument,
} from '../../../shared/formats/report-document';
import { cellsOf } from '../../../shared/planning/map';
import { outcomeOf } from '../../../shared/planning/examination/outcome';
import { reasonText } from '../../../shared/planning/reasons';
import type { Report } from '../../../shared/planning/report';
import {
  type Examination,
  notesOf,
  type Remark,
  type Student,
} from '../../../shared/planning/student';
import { dateText, shortDay } from '../../parts/dates';
import { joinWords } from '../../parts/join-words';
import { percent } from '../../parts/percent-text';
import { programmeText } from '../../parts/programme-text';
import { SHORT_WAY } from '../../parts/short-way';
import { chordText, noteText, wayText } from '../../parts/words';
import {
  CAUTION,
  changeTexts,
  evidenceText,
  MAP_KEY,
  passText,
  readinessText,
} from './report-words';

const PLANNED = 6;

/** "D, major 6 (both 4 oct.)" */
const itemText = ({ note, chord, way }: Item): string =>
  `${chordText(note, chord).bottom}, ${chordOf(chord).shortName} (${SHORT_WAY[way].join(' ')})`;

const part = (heading: string, ...blocks: readonly Block[]): Part => ({
  kind: 'part',
  heading,
  blocks,
});
const text = (words: string): Block => ({ kind: 'text', text: words });
const note = (words: string): Block => ({ kind: 'text', text: words, isNote: true });
const list = (items: readonly string[]): Block => ({ kind: 'list', items });

export function documentOf(report: Report, student: Student, programme: Programme): ReportDocument {
  const { grouping } = programme;
  const who = student.name ?? 'A student without a name here';
  const today = dateText(report.today);
  const onDay =
    daysBetween(report.today, report.date) > 0 ? `on ${dateText(report.date)}` : 'today';
  const change = report.change === null ? [] : [changePart(report)];
  const held = report.examinations.length === 0 ? [] : [examinationsPart(report)];
  const remarks = report.teacherRemarks.length === 0 ? [] : [remarksPart(student, report)];
  const aside =
    report.aside.length === 0 ? [] : [part('Set aside for now', list(report.aside.map(itemText)))];
  return {
    title: `Readiness report, ${who}, ${today}`,
    heading: 'Readiness report',
    lines: [`${who}, ${today}`, programmeText(programme, report.onDate.items)],
    parts: [
      {
        kind: 'side by side',
        share: 0.36,
        left: [
          part(
            `Readiness ${onDay}`,
            { kind: 'number', value: String(percent(report.onDate.share)), unit: 'per cent' },
            text(readinessText(report)),
            note(evidenceText(report)),
          ),
          passPart(report),
        ],
        right: [stagesPart(report, grouping), ...change],
      },
      part('Map', { kind: 'maps', maps: mapsOf(report, student, programme), key: MAP_KEY }),
      {
        kind: 'side by side',
        share: 0.66,
        left: [weakestPart(report, grouping), joinsPart(student, report), ...remarks, ...held],
        right: [weeksPart(report), plannedPart(report, grouping), ...aside],
      },
    ],
    caution: CAUTION,
  };
}

export const passPart = (report: Report): Part =>
  part(
    'Chance to pass',
    { kind: 'number', value: String(percent(report.pass.chance)), unit: 'per cent' },
    text(passText(report)),
  );

const stagesPart = ({ stages }: Report, grouping: Grouping): Part =>
  part(
    'By stage',
    {
      kind: 'table',
      columns: [
        { name: 'Stage', look: 'text', width: 0.46 },
        { name: 'Asked', look: 'number', width: 0.09 },
        { name: 'Reach', look: 'number', width: 0.09 },
        { name: 'Played', look: 'number', width: 0.16 },
        { name: '%', look: 'number', width: 0.07 },
        { name: '', look: 'bar', width: 0.13 },
      ],
      rows: stages.map(({ stage, target, reach, played, items, share }) => [
        wayText(stage),
        String(markOf(target, grouping)),
        String(markOf(reach, grouping)),
        `${played} of ${items}`,
        String(percent(share)),
        share,
      ]),
    },
    note(
      `Beats a minute, ${grouping} notes a beat. Reach: as often even as not at this tempo, today, for the middle one of the items. The last column is readiness in per cent.`,
    ),
  );

export const changePart = (report: Report): Part =>
  part(`Since the report of ${dateText(report.change!.day)}`, list(changeTexts(report.change!)));

const mapsOf = (report: Report, student: Student, programme: Programme): readonly MapPicture[] =>
  report.stages.map(({ stage }) => ({
    title: wayText(stage),
    rows: notesOf(programme).map((one) => ({
      name: noteText(one).split('/')[0]!,
      cells: cellsOf(student, programme, { note: one, way: stage, day: report.date }).map(
        ({ chance, isOpen, isAside }) => ({
          chance,
          state: isAside ? 'aside' : isOpen ? 'open' : 'not open',
        }),
      ),
    })),
  }));

function weakestPart({ weakest }: Report, grouping: Grouping): Part {
  if (weakest.length === 0) {
    return part('Weakest of each stage', text('Nothing has been played yet.'));
  }
  return part(
    'Weakest of each stage',
    {
      kind: 'table',
      columns: [
        { name: 'Arpeggio', look: 'text', width: 0.42 },
        { name: 'Reach', look: 'number', width: 0.085 },
        { name: 'Asked', look: 'number', width: 0.085 },
        { name: '%', look: 'number', width: 0.065 },
        { name: 'Last run', look: 'text', width: 0.345 },
      ],
      rows: weakest.map(({ item, reach, target, chance, last }) => [
        itemText(item),
        String(markOf(reach.tempo, grouping)),
        String(markOf(target, grouping)),
        String(percent(chance)),
        `${FLUENCIES[last.fluency]} at ${markOf(last.tempo, grouping)}, ${shortDay(last.day)}`,
      ]),
    },
    note('In per cent: the chance of at least even at the tempo that is asked.'),
  );
}

const weeksPart = ({ weeks }: Report): Part => {
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

export function joinsPart(student: Student, { joins }: Report): Part {
  const items = joins.map(({ item, join, last }) => {
    const words = joinWords(student, item, join.id);
    return `${itemText(item)}: ${words}; last ${FLUENCIES[last.fluency]}, ${shortDay(last.day)}`;
  });
  return items.length === 0
    ? part('Joins to work on', text('No item of those above was last less than even.'))
    : part('Joins to work on', list(items));
}

export function plannedPart({ planned }: Report, grouping: Grouping): Part {
  const items = planned.entries.slice(0, PLANNED).map((entry) => {
    const what =
      entry.kind === 'single'
        ? itemText(itemOf(entry.items[0]!))
        : `Round from ${noteText(entry.note)}, ${wayText(entry.way)}`;
    return `${what}, at ${markOf(entry.tempo, grouping)}`;
  });
  const [first] = planned.entries;
  return part(
    `Planned for ${shortDay(planned.day)}`,
    list(items),
    ...(first === undefined
      ? []
      : [note(`The first of them: ${reasonText(first.reason, grouping)}`)]),
  );
}

export const examinationsPart = ({ examinations }: Report): Part =>
  part('Examinations held here', list(examinations.map(examinationText)));

function examinationText(one: Examination): string {
  const { even, asked, isPassed } = outcomeOf(one);
  const result = `${isPassed ? 'passed' : 'not passed'}, ${even} of ${asked} at least even`;
  const judge = one.judge === 'teacher' ? 'a teacher' : 'the player';
  return `${shortDay(one.day)}: ${result}, marked by ${judge}; the forecast was ${percent(one.forecast)} per cent`;
}

export const remarksPart = (student: Student, { teacherRemarks }: Report): Part =>
  part('The teacher’s remarks', list(teacherRemarks.map((remark) => remarkText(student, remark))));

function remarkText(student: Student, { about, join, text: said, day }: Remark): string {
  if (about === null) return `${said} (${shortDay(day)})`;
  const item = itemOf(about);
  const words = join === null ? null : joinWords(student, item, join);
  const where = words === null ? itemText(item) : `${itemText(item)}, ${words}`;
  return `${where}: ${said} (${shortDay(day)})`;
}
