/** Care for the body: general advice in our own words, with where it comes from. */
import styles from './help-screen.module.css';

const SOURCES: readonly string[] = [
  'National Association of Schools of Music and Performing Arts Medicine Association (NASM, PAMA), information sheet for students on neuromusculoskeletal health.',
  'A ten-point plan for musicians, United Kingdom (co-bwcom.ipower.com).',
  'J. Horvath, Playing (Less) Hurt, as reported in The Ledger, 19 July 2009.',
  'Musicians’ Union and British Association for Performing Arts Medicine, Performance Health Guide for teachers; assessments for musicians in the United Kingdom (bapam.org.uk).',
  'Zhao and others 2024, Frontiers in Psychology: 82.6 per cent of 363 piano students had had a complaint from playing, most often of the wrist.',
  'Bragge and others 2006, Occupational Medicine 56: 28–38: counts of such complaints in pianists differ widely, and the evidence on their causes is weak.',
];

export function Care() {
  return (
    <section id="care">
      <h2>Care for the body</h2>
      <p class={styles.pain}>
        <strong>Pain, tingling or numbness: stop now, and do not play through it.</strong> If it
        returns or lasts, see a doctor or a performing-arts clinic, and tell your teacher.
      </p>
      <ul class={styles.list}>
        <li>Warm up away from the keys, then slowly at them; end as gently as you began.</li>
        <li>
          Pause before it gets uncomfortable: ten minutes in every hour at the least, and one day a
          week without. The app offers a rest after 25 minutes without a pause and asks for one
          after 50.
        </li>
        <li>
          More time and more tempo only by small steps, above all after days off. A week away is no
          debt: the list is not longer for it.
        </li>
        <li>On the day of an examination and the day before, play little.</li>
        <li>
          Sevenths and four octaves stretch a small hand. Take two octaves, or set the item aside;
          nothing here is worth a sore hand.
        </li>
        <li>Seat and height first, wrists level, shoulders low. A teacher sees what you cannot.</li>
        <li>
          A tired hand can rest while the head works: name the notes, hear them, finger them on a
          closed lid.
        </li>
        <li>
          If runs get more uneven and slower as the session goes on, that is tiredness. Stop for
          today.
        </li>
      </ul>
      <p>
        This is general information, not medical advice. The app examines nobody and treats nothing;
        it gives way to teachers and to licensed clinicians.
      </p>
      <h3 class={styles.sources}>Where this comes from</h3>
      <ul class={styles.small}>
        {SOURCES.map((source) => (
          <li key={source}>{source}</li>
        ))}
      </ul>
    </section>
  );
}
