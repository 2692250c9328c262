/** Whether and why an item can be on the list, in a sentence or two. */
import { type Programme, targetFor } from '../../../shared/log/programme';
import { type Item, itemAt, STAGES, stageIndex } from '../../../shared/music/deck';
import { markOf } from '../../../shared/music/tempo';
import { HANDS_IN_WORDS } from '../../../shared/planning/reasons';
import { lastStageOf } from '../../../shared/planning/stages';
import type { Student } from '../../../shared/planning/student';
import { turnOf, turnText } from '../../../shared/planning/turns';
import { dateText } from '../../parts/dates';

/** The rule of shared/planning/stages.ts: a stage opens after two such days. */
const DAYS_SO_FAR = ['none yet', 'one'];

export function standingText(student: Student, programme: Programme, item: Item): string {
  const stage = stageIndex(item.way);
  if (stage < 0) return 'Off the path: help for one hand while four octaves together are stuck.';
  if (!programme.notes.includes(item.note)) {
    return 'The programme does not ask for this starting note.';
  }
  if (stage > lastStageOf(programme, item.chord)) {
    return 'The programme does not ask for it in this way.';
  }
  const open = student.stages.open[item.arpeggioIndex]!;
  if (stage > open) return closedText(student, programme, item);
  const text = openText(student, programme, item);
  if (programme.stages[STAGES[stage]!].asked) return text;
  return stage === open
    ? `${text} It is a step on the way; the programme does not ask for this stage itself.`
    : 'A step on the way that is done; the programme does not ask for this stage itself.';
}

function openText(student: Student, programme: Programme, item: Item): string {
  const turn = turnOf(student, item);
  if (turn !== null) {
    return `Open since ${dateText(turn.day)}${turnText(turn, programme.grouping)}.`;
  }
  const stage = stageIndex(item.way);
  return stage <= stageIndex(programme.reached)
    ? 'Open from the first day: the programme says that this stage is reached.'
    : `Open, as ${HANDS_IN_WORDS[STAGES[stage - 1]!]} holds.`;
}

function closedText(student: Student, programme: Programme, item: Item): string {
  const below = STAGES[stageIndex(item.way) - 1]!;
  const itemBelow = itemAt(item.arpeggioIndex, below);
  const half = markOf(targetFor(programme, itemBelow) / 2, programme.grouping);
  const days = student.stages.evenDays[itemBelow.index]!;
  const turn = turnOf(student, item);
  const state =
    turn === null
      ? 'Not open yet.'
      : `Closed again on ${dateText(turn.day)}${turnText(turn, programme.grouping)}.`;
  const needed = `${state} It opens when ${HANDS_IN_WORDS[below]} is at least even at ${half} or faster on two separate days`;
  const soFar = DAYS_SO_FAR[days];
  return soFar === undefined
    ? `${needed}, and is likely to stay so.`
    : `${needed}; so far ${soFar}.`;
}
