/** A drill at the head of the list: what it is, and the run that points at it. */
import { FLUENCIES } from '../../../shared/log/events';
import { DRILL_NAMES, parseDrillId } from '../../../shared/planning/drills/kinds';
import { DRILL_SECONDS, type DrillOffer } from '../../../shared/planning/drills/offer';
import { agoInWords, capitalised } from '../../../shared/planning/reasons';
import type { ListedDrill } from '../../day/day-list';
import { minutesText } from '../../parts/dates';
import { chordText, wayText } from '../../parts/words';
import { useStore } from '../../store-context';
import { Minutes, Reason, Row } from './row';

interface DrillRowProps {
  readonly listed: ListedDrill;
  readonly isCurrent: boolean;
  readonly onPutBack: () => void;
}

export function DrillRow({ listed, isCurrent, onPutBack }: DrillRowProps) {
  const { today } = useStore();
  const { offer, state } = listed;
  const { item, hand, kind } = parseDrillId(offer.drill)!;
  const { bottom, name } = chordText(item.note, item.chord);
  return (
    <Row
      note={bottom}
      title={DRILL_NAMES[kind]}
      way={`${name}, ${hand} hand`}
      state={state}
      isCurrent={isCurrent}
      numbers={<Minutes>{minutesText(DRILL_SECONDS)}</Minutes>}
      onPutBack={onPutBack}
    >
      <Reason>{reasonOf(offer, today.value)}</Reason>
    </Row>
  );
}

/** "Stopped yesterday: hands together, two octaves." */
const reasonOf = ({ fluency, item, day }: DrillOffer, today: string): string =>
  `${capitalised(FLUENCIES[fluency])} ${agoInWords(day, today)}: ${wayText(item.way)}.`;
