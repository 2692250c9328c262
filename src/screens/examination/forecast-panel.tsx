/** The chance to pass, today and on the date of the programme, with the items that cost most. */
import { useEffect, useState } from 'preact/hooks';
import type { ExaminationSettings } from '../../../shared/log/examination';
import type { Programme } from '../../../shared/log/programme';
import { type Forecast, forecastOf } from '../../../shared/planning/examination/forecast';
import { dateText } from '../../parts/dates';
import { percent } from '../../parts/percent-text';
import { chordText, wayText } from '../../parts/words';
import { hrefOf } from '../../route';
import { useStore } from '../../store-context';
import styles from './examination.module.css';

export interface Forecasts {
  readonly today: Forecast;
  /** Null without a date ahead. */
  readonly onDate: Forecast | null;
}

/** Milliseconds after a change of the settings: the buttons answer first. */
const PAUSE = 60;
const COSTLY = 5;

/** Null while it is being computed. */
export function useForecast(programme: Programme, settings: ExaminationSettings): Forecasts | null {
  const store = useStore();
  const { learner } = store.student.value;
  const today = store.today.value;
  const [forecasts, setForecasts] = useState<Forecasts | null>(null);
  useEffect(() => {
    setForecasts(null);
    const timer = setTimeout(() => {
      const on = (day: string) => forecastOf({ learner, programme, settings, day });
      const { date } = programme;
      setForecasts({ today: on(today), onDate: date !== null && date > today ? on(date) : null });
    }, PAUSE);
    return () => clearTimeout(timer);
  }, [learner, programme, settings, today]);
  return forecasts;
}

interface ForecastPanelProps {
  readonly forecast: Forecasts | null;
  readonly programme: Programme;
  readonly settings: ExaminationSettings;
}

export function ForecastPanel({ forecast, programme, settings }: ForecastPanelProps) {
  return (
    <section class={styles.section} aria-busy={forecast === null}>
      <h2>Chance to pass</h2>
      {forecast === null ? (
        <p>Reckoning…</p>
      ) : (
        <Chances forecast={forecast} programme={programme} />
      )}
      <p class={styles.note}>
        Reckoned from many draws of {settings.count} and many days, good and bad, by what the app
        expects of each chord. Nerves before a jury are not in it.
      </p>
    </section>
  );
}

interface ChancesProps {
  readonly forecast: Forecasts;
  readonly programme: Programme;
}

function Chances({ forecast, programme }: ChancesProps) {
  const { today, onDate } = forecast;
  const { costly } = onDate ?? today;
  return (
    <>
      <p class={styles.number}>
        {percent(today.chance)}
        <span class={styles.unit}> per cent today</span>
      </p>
      {onDate && (
        <p>
          On {dateText(programme.date!)}, if nothing is played until then: {percent(onDate.chance)}{' '}
          per cent.
        </p>
      )}
      <h3>What costs most</h3>
      <ul class={styles.costly}>
        {costly.slice(0, COSTLY).map(({ item }) => (
          <li key={item.id}>
            <a class="music" href={hrefOf('item', item.id)}>
              {chordText(item.note, item.chord).title}
            </a>{' '}
            <span class={styles.soft}>{wayText(item.way)}</span>
          </li>
        ))}
      </ul>
    </>
  );
}
