/** How the strings of a piano sound: where the partial tones of a key lie, and how strong they are. */

/** Equal temperament from A4 = 440 Hz, moved by the tuning of the piano in cents. */
export const frequencyOf = (midi: number, tuning: number): number =>
  440 * 2 ** ((midi - 69) / 12 + tuning / 1200);

/**
 * Inharmonicity of a string. Stiff strings sound their partials too high (Fletcher 1964, J. Acoust. Soc. Am. 36:203);
 * the numbers are fitted to several pianos and need only be near.
 */
const inharmonicity = (midi: number): number =>
  Math.exp(-8.05 + 0.085 * (midi - 60)) + 6e-5 * Math.exp(-0.09 * (midi - 24));

export interface Partial {
  readonly frequency: number;
  /** The first is 1. */
  readonly strength: number;
}

/** The first `count` partial tones of a key, those above `most` Hz left out. */
export function partialsOf(midi: number, tuning: number, most: number, count: number): Partial[] {
  const stiff = inharmonicity(midi);
  const fall = 0.15 + 0.2 * ((midi - 24) / 36) ** 2;
  return Array.from({ length: count }, (_, i) => i + 1)
    .map((order) => ({
      frequency:
        frequencyOf(midi, tuning) * order * Math.sqrt((1 + stiff * order ** 2) / (1 + stiff)),
      strength: Math.exp(-fall * (order - 1)),
    }))
    .filter(({ frequency }) => frequency < most);
}
