/** The sentences of the report, the same on the screen and in the files. */
import { daysBetween } from '../../../shared/log/day';
import { type Grouping, markOf } from '../../../shared/music/tempo';
import type { Change, Report, StageLine } from '../../../shared/planning/report';
import { percent } from '../../parts/percent-text';
import { SHORT_WAY } from '../../parts/short-way';

export const CAUTION =
  'All figures are estimates from runs that the player or the teacher has judged: a help for a decision, not a mark. Pain means stop; pain that lasts or returns is for a doctor or a performing-arts clinic.';

export const MAP_KEY =
  'A full disc is certain, a half-filled one even odds; a dash: not open yet, a cross: set aside, blank: not asked. Columns: major and minor 5/3, 6, 6/4; dominant 7, 6/5, 4/3, 4/2; diminished 7.';

/** What the one number of the report says. */
export function readinessText({ today, date, now }: Report): string {
  const days = daysBetween(today, date);
  const until =
    days > 0
      ? `, if nothing is played in the ${days === 1 ? 'day' : `${days} days`} until then. Today it is ${percent(now.share)} per cent`
      : '';
  return `The estimated probability that one item of the programme, drawn at random, comes out at least even at its target tempo${until}.`;
}

/** How much of it has been seen. */
export function evidenceText({ isThin, played, onDate }: Report): string {
  if (played === 0) return 'Nothing has been played yet: the figures are guesses.';
  const rest = played < onDate.items ? '; the rest is estimated from them' : '';
  return `${isThin ? 'Thin evidence: only ' : ''}${played} of ${onDate.items} items have been played${rest}.`;
}

/** What the chance to pass is a chance of. */
export function passText({ pass, today, date }: Report): string {
  const when = date === today ? 'today' : 'on that day';
  const { count, toPass, tempoPercent } = pass.settings;
  const tempo =
    tempoPercent === 100
      ? 'the tempo that is asked'
      : `${tempoPercent} per cent of the tempo that is asked`;
  const drawn = count === 1 ? 'one item,' : `${count} items, ${toPass} of them`;
  return `Of an examination ${when} that draws ${drawn} at least even at ${tempo}. Good and bad days are reckoned with, nerves are not.`;
}

const rise = (before: number, now: number): string => {
  const [from, to] = [percent(before), percent(now)];
  return from === to ? `${to} per cent, as then` : `${to} per cent, ${from} then`;
};

/** "right 2 oct. 22 (30 then)" */
const stageText = ({ stage, share: [before, now] }: Change['stages'][number]): string =>
  `${SHORT_WAY[stage].join(' ')} ${percent(now)} (${percent(before)} then)`;

/** What has changed since the last report, a line each. */
export const changeTexts = ({ share, played, stages, days, runs }: Change): readonly string[] => [
  `Readiness as of the day: ${rise(...share)}.`,
  ...(stages.length === 0 ? [] : [`By stage: ${stages.map(stageText).join('; ')}.`]),
  played[1] === played[0]
    ? 'No item has been played for the first time.'
    : `${played[1] - played[0]} items have been played for the first time.`,
  days === 0
    ? 'No practice since then.'
    : `${runs} runs on ${days === 1 ? 'one day' : `${days} days`} of practice.`,
];

/** "60", or "52–60" where some chords are asked for at a tempo of their own. */
export const targetsText = ([slowest, fastest]: StageLine['targets'], grouping: Grouping): string =>
  [...new Set([markOf(slowest, grouping), markOf(fastest, grouping)])].join('–');
