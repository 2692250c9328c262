/** The exact time of each step: that of an onset near the place where its notes rise. */
import type { Candidate } from './onsets';
import type { Place } from './follow';

export interface Moment {
  /** Seconds. */
  readonly at: number;
  /** How strongly something begins there; 0 where nothing does, and `at` is only where the step was due. */
  readonly strength: number;
  /** 0 to 1: how much of the notes of the step begins there. */
  readonly rise: number;
}

/** Farthest from the place, in seconds and as a share of the interval. */
const NEAR = 0.045;
const NEAR_SHARE = 0.3;
/** Below this rise the notes may be wrong ones: any strong onset will do, as far off as this. */
const WEAK = 0.35;
const FAR_SHARE = 0.35;
/** Share of the usual strength that makes an onset strong. */
const STRONG = 0.35;
/** Cost of the whole distance against the whole strength, when several are near. */
const OFF = 0.7;
/**
 * Seconds by which an onset is found later for each neper that it is weaker than usual, as what is soft takes longer to
 * stand out; and the strengths up to which that holds. Fitted on a recorded grand in three places, seeds below 100.
 */
const LATER = 0.0035;
const [WEAKEST, STRONGEST] = [0.1, 2];
/**
 * Share of the place in the time of two hands, whose onset is that of the louder note alone. Fitted likewise.
 */
const PLACE_OF_TWO = 0.45;

/** In the order of the steps; no onset stands for two. */
export function snapped(
  places: readonly Place[],
  candidates: readonly Candidate[],
  interval: number,
): readonly Moment[] {
  const usual = usualStrength(places, candidates, interval);
  const timely = candidates.map((one): Candidate => {
    const strength = one.strength / usual;
    const late = LATER * Math.log(Math.max(WEAKEST, Math.min(STRONGEST, strength)));
    return { at: one.at + late, strength };
  });
  let before = -Infinity;
  return places.map(({ at, rise }, i): Moment => {
    const isWeak = rise < WEAK;
    const most = isWeak ? FAR_SHARE * interval : Math.min(NEAR, NEAR_SHARE * interval);
    const next = places[i + 1];
    let [best, worth]: [Candidate | null, number] = [null, -Infinity];
    for (const candidate of timely) {
      const off = Math.abs(candidate.at - at);
      if (off > most || candidate.at <= before) continue;
      // What lies nearer to the next step is that one's.
      if (isWeak && next && Math.abs(candidate.at - next.at) < off) continue;
      if (isWeak && candidate.strength < STRONG) continue;
      const value = Math.min(1, candidate.strength) - (OFF * off) / most;
      if (value > worth) [best, worth] = [candidate, value];
    }
    if (best === null) return { at, strength: 0, rise };
    before = best.at;
    return { at: best.at, strength: best.strength, rise };
  });
}

/** The moments of two hands: between their onsets and their places, which are late or soon by one time throughout. */
export function betweenHands(
  places: readonly Place[],
  moments: readonly Moment[],
): readonly Moment[] {
  const offs = moments.map(({ at }, i) => at - places[i]!.at);
  const off = offs.toSorted((a, b) => a - b)[offs.length >> 1] ?? 0;
  return moments.map((moment, i) => ({
    ...moment,
    at: moment.at + PLACE_OF_TWO * (places[i]!.at + off - moment.at),
  }));
}

/** Median over the steps of the strongest onset near each. */
function usualStrength(
  places: readonly Place[],
  candidates: readonly Candidate[],
  interval: number,
): number {
  const most = Math.min(NEAR, NEAR_SHARE * interval);
  const strengths = places.map(({ at }) =>
    Math.max(
      0,
      ...candidates.filter((one) => Math.abs(one.at - at) <= most).map((one) => one.strength),
    ),
  );
  return strengths.toSorted((a, b) => a - b)[strengths.length >> 1] || 1;
}
