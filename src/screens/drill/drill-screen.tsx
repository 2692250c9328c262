/** One drill: what it is for, its notes, and a beat to play it to. "#/drill/d.major-6.left.join" names it. */
import { useMemo } from 'preact/hooks';
import { useSignal } from '@preact/signals';
import { workingTempo } from '../../../shared/learning/prediction';
import { changeHint } from '../../../shared/music/fingering/hints';
import { changeText } from '../../../shared/music/fingering/words';
import { handQuestion } from '../../../shared/planning/chosen-fingering';
import { type Drill, drillOf } from '../../../shared/planning/drills/drills';
import {
  type DrillAddress,
  DRILL_NAMES,
  parseDrillId,
} from '../../../shared/planning/drills/kinds';
import { DRILL_WORDS } from '../../../shared/planning/drills/words';
import { ButtonLink } from '../../parts/button/button';
import { nameOfKeys } from '../../parts/name-of-keys';
import { NoProgramme } from '../../parts/no-programme';
import { Page } from '../../parts/page/page';
import { Playback } from '../../parts/playback/playback';
import { SaveScore } from '../../parts/save-score/save-score';
import { Staff } from '../../parts/staff/staff';
import { chordText } from '../../parts/words';
import { preferences } from '../../preferences';
import { hrefOf, type ScreenProps } from '../../route';
import { useStore } from '../../store-context';
import { DrillDone } from './drill-done';
import { OtherDrills } from './other-drills';
import styles from './drill-screen.module.css';

export function DrillScreen({ argument }: ScreenProps) {
  const { programme } = useStore().student.value;
  const address = argument === null ? null : parseDrillId(argument);
  if (address === null) {
    return (
      <Page title="No such drill" note="The address names none.">
        <ButtonLink href={hrefOf('map')}>To the map</ButtonLink>
      </Page>
    );
  }
  const title = DRILL_NAMES[address.kind];
  if (programme === null) return <NoProgramme title={title} />;
  return (
    <Page
      key={address.id}
      title={title}
      note={<ArpeggioLink address={address} />}
      lit={[address.item.note]}
    >
      <Content address={address} />
      <OtherDrills address={address} />
    </Page>
  );
}

const titleOf = ({ item, hand }: DrillAddress): string =>
  `${chordText(item.note, item.chord).title}, ${hand} hand`;

function ArpeggioLink({ address }: { readonly address: DrillAddress }) {
  return <a href={hrefOf('item', address.item.id)}>{titleOf(address)}</a>;
}

function useDrill(address: DrillAddress): Drill | null {
  const store = useStore();
  const student = store.student.value;
  const day = store.today.value;
  const { blackNames } = preferences.value;
  return useMemo(() => {
    const title = `${DRILL_NAMES[address.kind]}: ${titleOf(address)}`;
    const working = workingTempo(student.learner, address.item, day);
    return drillOf(student, address, { title, working, blackNames });
  }, [student, address, day, blackNames]);
}

function Content({ address }: { readonly address: DrillAddress }) {
  const drill = useDrill(address);
  if (drill === null) {
    return (
      <p>
        With the fingering that holds now, the hand does not change its position. Choose another
        drill, or another fingering on the page of the arpeggio.
      </p>
    );
  }
  return <Playable drill={drill} />;
}

function Playable({ drill }: { readonly drill: Drill }) {
  const { address, score } = drill;
  const place = useSignal<number | null>(null);
  const { purpose, how } = DRILL_WORDS[address.kind];
  const isGrand = score.right.length > 0 && score.left.length > 0;
  return (
    <>
      <p class={styles.purpose}>{purpose}</p>
      <div class={styles.staff} data-grand={isGrand} data-long={score[address.hand].length > 20}>
        <Staff score={score} at={place.value} description={purpose} />
      </div>
      <Playback score={score} place={place} initial={{ piano: false, beat: true, repeat: 0 }} />
      <section class={styles.advice}>
        <p>{how}</p>
        <ChangeAdvice drill={drill} />
        {drill.isWide && (
          <p>
            <strong>Wide for this hand.</strong> Three times at the most, then let the arm hang. If
            it pulls, leave the drill out and ask your teacher.
          </p>
        )}
        <p>
          Slower is better than tense. <a href={hrefOf('help')}>Pain: stop.</a>
        </p>
      </section>
      <DrillDone address={address} />
      <SaveScore
        what="this drill"
        scoreOf={() => score}
        fileName={address.id.replaceAll('.', '-')}
      />
    </>
  );
}

function ChangeAdvice({ drill: { address, change } }: { readonly drill: Drill }) {
  const student = useStore().student.value;
  if (change === null) return null;
  const { item, hand } = address;
  const { names } = chordText(item.note, item.chord);
  const nameOfKey = nameOfKeys(handQuestion(student, item, hand)!.keys, names);
  return (
    <p>
      <strong>{changeText(change, nameOfKey)}</strong> {changeHint(change)}
    </p>
  );
}
