/** What the app does and asks, in words: the way it plans, keys and pedals, marks, care for the body. */
import { Page } from '../../parts/page/page';
import { hrefOf } from '../../route';
import { Care } from './care';
import { Marks } from './marks';
import styles from './help-screen.module.css';

export function HelpScreen() {
  return (
    <Page title="Help">
      <div class={styles.help}>
        <section>
          <h2>How the list comes about</h2>
          <p>
            For every arpeggio, in each way of playing it, the app keeps a tempo at which it expects
            an even run as often as not, and how sure it is of that. Each run that you judge moves
            this tempo, for the arpeggio itself and a little for its relatives; days without
            practice lower it slowly.
          </p>
          <p>
            A line of the list is a round from one note, of the chords that lack most for your date
            for the time that they take, at a tempo where about eight runs in ten should come out
            even. The next line is from another note, because one and the same thing all day is soon
            learnt and soon lost.
          </p>
          <p>
            Every tenth line of a note goes back a stage, as hands together can hang on one hand
            that lags: to that hand, if one does. Two octaves may come for the sake of four: they
            are the same moves in half the time. A stage opens when the one below was at least even
            on two separate days at half its tempo or faster, for the whole note once it does for
            most of its chords, and closes again if it does not hold. Black starting notes join one
            by one as the white ones hold.
          </p>
          <p>
            In the week before the examination the lists are shorter from day to day, begin nothing
            new, and have a whole round cold, at the tempo that is asked.
          </p>
          <p>
            Who plays some of it already can{' '}
            <a href={hrefOf('placement')}>find out where to begin</a> by ten runs.
          </p>
          <p>
            These are estimates. They know only what has been judged, by you, by a teacher, or by
            what the app has heard. A teacher’s word counts most, and shows how kindly you judge
            yourself. Where a teacher hears it otherwise, the teacher is right.
          </p>
        </section>
        <Keys />
        <Marks />
        <Care />
      </div>
    </Page>
  );
}

function Keys() {
  return (
    <section>
      <h2>Keys and pedals</h2>
      <dl class={styles.pairs}>
        <div>
          <dt>page down, right, down, space, enter</dt>
          <dd>begin, next chord, done; while judging: save</dd>
        </div>
        <div>
          <dt>page up, left, up</dt>
          <dd>back, with a new count-in; while judging: choose another word</dd>
        </div>
        <div>
          <dt>escape</dt>
          <dd>back to the list</dd>
        </div>
      </dl>
      <p>
        Most page-turner pedals send one of these keys, so a whole list can be played and judged
        with the feet. A pedal that sends other keys can be taught in the settings, and so can keys
        of a digital piano, or its own held pedal. Nothing that a pedal or key does is beyond
        undoing.
      </p>
    </section>
  );
}
