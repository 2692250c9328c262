/** Below the keys before a run: why, how fast, with or without a beat, and one button to begin. */
import type { Grouping, Tempo } from '../../../shared/music/tempo';
import { Button } from '../../parts/button/button';
import { Choice } from '../../parts/choice/choice';
import { EarControl } from '../../parts/ear/ear-control';
import { TurnerChoice } from '../../parts/ear/turner-choice';
import { TempoStepper } from '../../parts/stepper/tempo-stepper';
import { prefer, preferences, type Preferences } from '../../preferences';
import { hrefOf } from '../../route';
import type { Session } from '../../day/session';
import { hearsBy, mayFollow } from './hears-by';
import { KeyLegend } from './key-legend';
import { PedalChoice } from './pedal-choice';
import styles from './ready-panel.module.css';

interface ReadyPanelProps {
  readonly session: Session;
  readonly grouping: Grouping;
  /** Why, and what is to be expected. */
  readonly text: string;
  /** All of it is even at the tempo that is asked, so the pedal may come in. */
  readonly mayPedal: boolean;
  /** The device would not keep the screen lit. */
  readonly mayGoDark: boolean;
  readonly onTempo: (tempo: Tempo) => void;
  readonly onPedal: (pedal: boolean) => void;
  /** At a place of the entry. */
  readonly onBegin: (at: number) => void;
  /** Rates what was played before the place reached. */
  readonly onRate: () => void;
  readonly onLeaveOut: () => void;
}

const BEATS = [
  { value: 'heard', label: 'heard' },
  { value: 'seen', label: 'seen' },
  { value: 'off', label: 'off' },
] as const;

export function ReadyPanel(props: ReadyPanelProps) {
  const { session, grouping, onBegin } = props;
  const { at } = session;
  const { beat } = preferences.value;
  const told = [
    ...(at === 0 ? [props.text] : []),
    ...(props.mayGoDark ? ['This device may let the screen go dark.'] : []),
  ];
  return (
    <div class={styles.panel}>
      {told.length > 0 && <p class={styles.reason}>{told.join(' ')}</p>}
      <div class={styles.settings}>
        <TempoStepper
          label={`Tempo, ${grouping} notes a beat`}
          tempo={session.tempo}
          grouping={grouping}
          size="stand"
          onChange={props.onTempo}
        />
        <Choice
          legend="Beat"
          options={BEATS}
          value={beat}
          onChange={(wish) => preferOnStand({ beat: wish })}
        />
        {mayFollow(hearsBy(), beat) && !session.entry.isMental && (
          <TurnerChoice onChange={(turner) => preferOnStand({ turner })} />
        )}
        {props.mayPedal && <PedalChoice pedal={session.pedal} onChange={props.onPedal} />}
      </div>
      <div class={styles.begin}>
        <Button size="stand" kind="main" onClick={() => onBegin(at)}>
          {at === 0 ? 'Begin' : `Go on with chord ${at + 1}`}
        </Button>
      </div>
      <KeyLegend actions={['forward']} />
      <div class={styles.others}>
        {at > 0 ? (
          <>
            <Button kind="quiet" onClick={() => onBegin(0)}>
              From the first chord
            </Button>
            {!session.entry.isMental && (
              <Button kind="quiet" onClick={props.onRate}>
                {at === 1 ? 'Rate the first' : `Rate the first ${at}`}
              </Button>
            )}
          </>
        ) : (
          <Button kind="quiet" onClick={props.onLeaveOut}>
            {session.entry.probe === undefined ? 'Leave it out today' : 'Skip this one'}
          </Button>
        )}
        <EarControl />
        <a class={styles.care} href={hrefOf('help')}>
          Pain: stop.
        </a>
      </div>
    </div>
  );
}

/** A preference that could not be kept still holds until the page is left. */
const preferOnStand = (wish: Partial<Preferences>) => void prefer(wish).catch(() => undefined);
