/** Five shades, a fifth of the scale each: 0 is under 20 per cent, 4 is from 80 per cent. */
export const shadeOf = (chance: number): number => Math.min(4, Math.floor(chance * 5));
