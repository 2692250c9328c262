/** How ready every arpeggio is, in one way of playing at a time. The address may name the way: "#/map/together.4". */
import { useState } from 'preact/hooks';
import { daysBetween } from '../../../shared/log/day';
import { type Programme, targetRange } from '../../../shared/log/programme';
import { roundItems, STARTING_NOTES, WAYS } from '../../../shared/music/deck';
import { isOnTheWay } from '../../../shared/planning/candidates';
import { frontOf, sharesOf } from '../../../shared/planning/map';
import type { Student } from '../../../shared/planning/student';
import { Button } from '../../parts/button/button';
import { Choice } from '../../parts/choice/choice';
import { shortDay } from '../../parts/dates';
import { Page } from '../../parts/page/page';
import { Mark } from '../../parts/stepper/beat-note';
import { wayText } from '../../parts/words';
import { hrefOf, type ScreenProps } from '../../route';
import { useStore } from '../../store-context';
import { NoProgramme } from '../../parts/no-programme';
import { MapTable } from './map-table';
import { WayList } from '../../parts/way-list/way-list';
import styles from './map-screen.module.css';
import shades from './shade.module.css';

export function MapScreen({ argument }: ScreenProps) {
  const student = useStore().student.value;
  const { programme } = student;
  if (programme === null) return <NoProgramme title="Map" />;
  return <Map student={student} programme={programme} named={argument} />;
}

interface MapProps {
  readonly student: Student;
  readonly programme: Programme;
  readonly named: string | null;
}

function Map({ student, programme, named }: MapProps) {
  const today = useStore().today.value;
  const [isOnDate, setOnDate] = useState(false);
  const [areAllShown, setAllShown] = useState(false);
  const date =
    programme.date !== null && daysBetween(today, programme.date) > 0 ? programme.date : null;
  const day = isOnDate && date !== null ? date : today;
  const way = WAYS.find((candidate) => candidate === named) ?? frontOf(student, programme);
  const [slowest, fastest] = targetRange(programme, way);
  const chords = roundItems(programme.notes[0]!, way);
  const onTheWay = chords.filter((item) => isOnTheWay(programme, item)).length;
  const notes = areAllShown ? STARTING_NOTES : programme.notes;
  return (
    <Page title="Map" isWide>
      <WayList
        label="Ways of playing"
        chances={sharesOf(student, programme, day)}
        current={way}
        hrefFor={(other) => hrefOf('map', other)}
      />
      <div class={styles.head}>
        <div>
          <h2 class={styles.way}>{wayText(way)}</h2>
          {onTheWay === 0 ? (
            <p>The programme does not ask for it.</p>
          ) : (
            <p>
              Chance in per cent of at least even at{' '}
              {slowest === fastest ? (
                <Mark tempo={fastest} grouping={programme.grouping} />
              ) : (
                'what is asked of each chord,'
              )}
              {day === today ? ' today.' : ` on ${shortDay(day)}, if nothing is played until then.`}
            </p>
          )}
        </div>
        {date !== null && (
          <Choice
            legend="Day"
            isLegendHidden
            value={String(isOnDate)}
            onChange={(value) => setOnDate(value === 'true')}
            options={[
              { value: 'false', label: 'Today' },
              { value: 'true', label: shortDay(date) },
            ]}
          />
        )}
      </div>
      <MapTable student={student} programme={programme} notes={notes} way={way} day={day} />
      <Legend isAllAsked={onTheWay === chords.length} />
      <p>
        <a href={hrefOf('fingering')}>Fingering chart</a>
      </p>
      {programme.notes.length < STARTING_NOTES.length && (
        <p>
          <Button kind="quiet" onClick={() => setAllShown(!areAllShown)}>
            {areAllShown
              ? 'Only the starting notes of the programme'
              : 'Show all twelve starting notes'}
          </Button>
        </p>
      )}
    </Page>
  );
}

function Legend({ isAllAsked }: { readonly isAllAsked: boolean }) {
  return (
    <ul class={styles.legend}>
      <li>
        <span class={styles.scale} aria-hidden="true">
          {[0, 1, 2, 3, 4].map((shade) => (
            <span key={shade} class={`${styles.swatch} ${shades.shade}`} data-shade={shade} />
          ))}
        </span>
        the fuller the colour, the readier
      </li>
      <li>
        <i class={styles.guess}>42</i> not played yet, estimated from the others
      </li>
      <li>
        <span class={styles.closed}>–</span> not open yet
      </li>
      <li>
        <s>42</s> set aside
      </li>
      {!isAllAsked && (
        <li>
          <span class={styles.closed}>·</span> not asked for
        </li>
      )}
    </ul>
  );
}
