/** How the piano is tuned, the more exactly the longer it is heard. */
import { heldIn, type Recent } from './recent';
import { tuningNow, tuningOf } from './tuning';

/** Seconds of sound after which it is first looked for; and until it is looked for again while it cannot be told. */
const FROM = 1.5;
const AGAIN = 0.5;
/** Seconds that are looked at. */
const LOOKED_AT = 4;
/** Seconds from one look to the next once it can be told, as short sounds tell it some cents too low. */
const LATER = [1.5, 3];
/** Seconds after which a piano whose tones do not agree is taken to be at 440 Hz for the time being. */
const AT_LAST = 6;

/** Cents from A4 = 440 Hz as far as it is known after what has come in; null before. `checked` as for `hear`. */
export function liveTuning(recent: Recent, checked: number | null): () => number | null {
  const { rate } = recent.sound;
  let cents = checked;
  let due = FROM;
  let told = 0;
  return () => {
    const now = recent.end() / rate;
    if (now < due) return cents;
    const own = tuningOf({ samples: heldIn(recent, now - LOOKED_AT), rate });
    if (own === null) {
      due = now + AGAIN;
      if (now > AT_LAST) cents ??= 0;
      return cents;
    }
    due = now + (LATER[told++] ?? Infinity);
    cents = tuningNow(own, checked);
    return cents;
  };
}
