/** Where the student stands: the chance to pass, stage by stage, what has changed, and where most is missing. */
import { FLUENCIES } from '../../../shared/log/events';
import { type Grouping, markOf } from '../../../shared/music/tempo';
import type { Part } from '../../../shared/formats/report-document';
import type { Report } from '../../../shared/planning/report';
import { dateText, shortDay } from '../../parts/dates';
import { percent } from '../../parts/percent-text';
import { wayText } from '../../parts/words';
import { itemText, list, note, part, text } from './blocks';
import { changeTexts, passText, targetsText } from './report-words';

export const passPart = (report: Report): Part =>
  part(
    'Chance to pass',
    { kind: 'number', value: String(percent(report.pass.chance)), unit: 'per cent' },
    text(passText(report)),
    note(
      `What costs most of it: ${report.pass.costly
        .slice(0, COSTLY)
        .map(({ item }) => itemText(item))
        .join('; ')}.`,
    ),
  );

/** So many of the items that cost most. */
const COSTLY = 3;

export const stagesPart = ({ stages }: Report, grouping: Grouping): Part =>
  part(
    'By stage',
    {
      kind: 'table',
      columns: [
        { name: 'Stage', look: 'text', width: 0.43 },
        { name: 'Asked', look: 'number', width: 0.14 },
        { name: 'Reach', look: 'number', width: 0.09 },
        { name: 'Played', look: 'number', width: 0.175 },
        { name: '%', look: 'number', width: 0.065 },
        { name: '', look: 'bar', width: 0.1 },
      ],
      rows: stages.map(({ stage, targets, reach, played, items, share }) => [
        wayText(stage),
        targetsText(targets, grouping),
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

/** What stands in place of the weakest items where there are none. */
export const noWeakestText = ({ played }: Report): string =>
  played === 0 ? 'Nothing has been played yet.' : 'All that was played has been set aside.';

export function weakestPart(report: Report, grouping: Grouping): Part {
  const { weakest } = report;
  if (weakest.length === 0) {
    return part('Weakest of each stage', text(noWeakestText(report)));
  }
  return part(
    'Weakest of each stage',
    {
      kind: 'table',
      columns: [
        { name: 'Arpeggio', look: 'text', width: 0.4 },
        { name: 'Reach', look: 'number', width: 0.1 },
        { name: 'Asked', look: 'number', width: 0.1 },
        { name: '%', look: 'number', width: 0.065 },
        { name: 'Last run', look: 'text', width: 0.335 },
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
