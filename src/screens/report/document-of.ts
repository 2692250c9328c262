/** The report in words, for the files that are handed out: one or two pages of A4 or Letter. */
import { daysBetween } from '../../../shared/log/day';
import { asksFor, type Programme } from '../../../shared/log/programme';
import type { Stage } from '../../../shared/music/deck';
import { type MapCell, mapPicture } from '../../../shared/formats/map-picture';
import type { Picture } from '../../../shared/formats/picture';
import type { Block, Part, ReportDocument } from '../../../shared/formats/report-document';
import { type Cell, cellsOf } from '../../../shared/planning/map';
import type { Report } from '../../../shared/planning/report';
import { notesOf, type Student } from '../../../shared/planning/student';
import { dateText } from '../../parts/dates';
import { percent } from '../../parts/percent-text';
import { programmeText } from '../../parts/programme-text';
import { nameText, noteText, wayText } from '../../parts/words';
import { cutText, note, part, text } from './blocks';
import { examinationsPart, hindsightNote, pacePart, progressPart } from './forecast-parts';
import { CAUTION, evidenceText, MAP_KEY, readinessText } from './report-words';
import { changePart, passPart, stagesPart, weakestPart } from './standing-parts';
import { asidePart, joinsPart, plannedPart, remarksPart, weeksPart } from './work-parts';

/** Characters of the requirements. */
const LONGEST_REQUIREMENTS = 220;

/** A part that is there only if it has something to say. */
const partIf = <T>(isThere: boolean, make: () => T): readonly T[] => (isThere ? [make()] : []);
const unlessNull = <T>(made: T | null): readonly T[] => (made === null ? [] : [made]);

const withBlocks = (one: Part, more: readonly Block[]): Part => ({
  ...one,
  blocks: [...one.blocks, ...more],
});

export function documentOf(report: Report, student: Student, programme: Programme): ReportDocument {
  const { grouping, requirements } = programme;
  const who = nameText(student.name);
  const today = dateText(report.today);
  const onDay =
    daysBetween(report.today, report.date) > 0 ? `on ${dateText(report.date)}` : 'today';
  return {
    title: `Readiness report, ${who}, ${today}`,
    heading: 'Readiness report',
    lines: [
      `${who}, ${today}`,
      programmeText(programme, report.onDate.items),
      ...(requirements === undefined
        ? []
        : [`Asked in words: ${cutText(requirements, LONGEST_REQUIREMENTS)}`]),
    ],
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
        right: [
          stagesPart(report, grouping),
          ...partIf(report.change !== null, () => changePart(report)),
        ],
      },
      mapPart(report, student, programme),
      withBlocks(pacePart(student, programme, report), unlessNull(hindsightNote(student))),
      ...unlessNull(progressPart(report, grouping)),
      {
        kind: 'side by side',
        share: 0.64,
        left: [
          weakestPart(report, grouping),
          joinsPart(student, report),
          ...partIf(report.teacherRemarks.length > 0, () => remarksPart(student, report)),
          ...partIf(report.aside.length > 0, () => asidePart(report)),
        ],
        right: [
          weeksPart(report),
          plannedPart(report, grouping),
          ...partIf(report.examinations.length > 0, () => examinationsPart(report)),
        ],
      },
    ],
    caution: CAUTION,
  };
}

export const mapPart = (report: Report, student: Student, programme: Programme): Part =>
  part('Map', { kind: 'pictures', pictures: mapsOf(report, student, programme), key: MAP_KEY });

function stateOf(
  programme: Programme,
  stage: Stage,
  { item, isOpen, isAside }: Cell,
): MapCell['state'] {
  if (!asksFor(programme, stage, item.chord)) return 'not asked';
  if (isAside) return 'aside';
  return isOpen ? 'open' : 'not open';
}

const mapsOf = (report: Report, student: Student, programme: Programme): readonly Picture[] =>
  report.stages.map(({ stage }) =>
    mapPicture(
      wayText(stage),
      notesOf(programme).map((one) => ({
        name: noteText(one).split('/')[0]!,
        cells: cellsOf(student, programme, { note: one, way: stage, day: report.date }).map(
          (cell) => ({ chance: cell.chance, state: stateOf(programme, stage, cell) }),
        ),
      })),
    ),
  );
