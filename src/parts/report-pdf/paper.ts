/** The paper of the office where a language is spoken. */
export type Paper = 'A4' | 'LETTER';

/** Where it is Letter; from memory. */
const LETTER_REGIONS = new Set(['US', 'CA', 'MX', 'CO', 'CL', 'PH', 'VE', 'CR', 'GT', 'PA', 'DO']);

/** `paperFor("en-US")` is Letter. */
export const paperFor = (language: string): Paper =>
  LETTER_REGIONS.has(language.split('-').at(-1)!) ? 'LETTER' : 'A4';
