/** Before an examination: what may be asked, how many, by which seed, and how it will probably come out. */
import { useState } from 'preact/hooks';
import {
  type ExaminationSettings,
  FASTEST_PERCENT,
  LARGEST_SEED,
  MOST_DRAWN,
  SLOWEST_PERCENT,
} from '../../../shared/log/examination';
import type { Judge } from '../../../shared/log/events';
import type { Programme } from '../../../shared/log/programme';
import {
  defaultSettings,
  fittedTo,
  poolOf,
  settingsFor,
} from '../../../shared/planning/examination/draw';
import { Button } from '../../parts/button/button';
import { Choice } from '../../parts/choice/choice';
import { Page } from '../../parts/page/page';
import { Stepper } from '../../parts/stepper/stepper';
import { useStore } from '../../store-context';
import type { Begun } from './draft';
import styles from './examination.module.css';
import { ForecastPanel, useForecast } from './forecast-panel';
import { PastExaminations } from './past';
import { Pool } from './pool';

interface SetUpProps {
  readonly programme: Programme;
  readonly onBegin: (begun: Begun) => void;
}

const JUDGES = [
  { value: 'player', label: 'I do' },
  { value: 'teacher', label: 'a teacher' },
] as const;
const BEATS = [
  { value: 'off', label: 'without' },
  { value: 'on', label: 'with a beat' },
] as const;

const newSeed = (): number => 1 + (crypto.getRandomValues(new Uint32Array(1))[0]! % LARGEST_SEED);

export function SetUp({ programme, onBegin }: SetUpProps) {
  const { examinations } = useStore().student.value;
  const [settings, setSettings] = useState(() => lastSettings(programme, examinations.at(-1)));
  const [seed, setSeed] = useState(newSeed);
  const [judge, setJudge] = useState<Judge>(examinations.at(-1)?.judge ?? 'player');
  const forecast = useForecast(programme, settings);
  const change = (part: Partial<ExaminationSettings>) =>
    setSettings(fittedTo(programme, { ...settings, ...part }));
  const pool = poolOf(programme, settings).length;
  return (
    <Page
      title="Examination"
      note="As a jury would ask: chords drawn by lot, named one after the other, without notes or fingers on the screen. It is kept apart from practice."
    >
      <div class={styles.form}>
        <Pool programme={programme} settings={settings} onChange={change} />
        <div class={styles.steppers}>
          <Stepper
            label={`How many of ${pool}`}
            value={settings.count}
            min={1}
            max={Math.max(1, Math.min(MOST_DRAWN, pool))}
            onChange={(count) => change({ count })}
          />
          <Stepper
            label="At least even, to pass"
            value={settings.toPass}
            min={1}
            max={settings.count}
            onChange={(toPass) => change({ toPass })}
          />
          <Stepper
            label="Of the tempo that is asked"
            value={settings.tempoPercent}
            min={SLOWEST_PERCENT}
            max={FASTEST_PERCENT}
            step={5}
            unit="per cent"
            onChange={(tempoPercent) => change({ tempoPercent })}
          />
        </div>
        <div class={styles.steppers}>
          <Choice
            legend="Beat"
            options={BEATS}
            value={settings.beat ? 'on' : 'off'}
            onChange={(beat) => change({ beat: beat === 'on' })}
          />
          <Choice<Judge> legend="Who marks" options={JUDGES} value={judge} onChange={setJudge} />
        </div>
        <div class={styles.steppers}>
          <SeedField seed={seed} onChange={setSeed} />
          <Button onClick={() => setSeed(newSeed())}>Another number</Button>
        </div>
        <p class={styles.note}>The same number draws the same again.</p>
      </div>
      {pool === 0 ? (
        <p>The programme asks for none of these chords there. Choose other chords or stages.</p>
      ) : (
        <ForecastPanel forecast={forecast} programme={programme} settings={settings} />
      )}
      <div class={styles.begin}>
        <Button
          kind="main"
          size="stand"
          disabled={forecast === null || pool === 0}
          onClick={() =>
            forecast && onBegin({ seed, settings, judge, forecast: forecast.today.chance })
          }
        >
          Begin
        </Button>
      </div>
      <PastExaminations
        examinations={examinations}
        onAgain={(held) => {
          setSettings(lastSettings(programme, held));
          setSeed(held.seed);
          scrollTo(0, 0);
        }}
      />
    </Page>
  );
}

interface SeedFieldProps {
  readonly seed: number;
  readonly onChange: (seed: number) => void;
}

function SeedField({ seed, onChange }: SeedFieldProps) {
  return (
    <label class={styles.seed}>
      Number of the draw
      <input
        type="number"
        inputMode="numeric"
        class={styles.digits}
        value={seed}
        min={1}
        max={LARGEST_SEED}
        onChange={(event) => {
          const typed = Math.round(event.currentTarget.valueAsNumber);
          const isSeed = typed >= 1 && typed <= LARGEST_SEED;
          if (isSeed) onChange(typed);
          else event.currentTarget.value = String(seed);
        }}
      />
    </label>
  );
}

const lastSettings = (
  programme: Programme,
  last: { readonly settings: ExaminationSettings } | undefined,
): ExaminationSettings =>
  (last && settingsFor(programme, last.settings)) ?? defaultSettings(programme);
