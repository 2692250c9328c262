import { describe, expect, it } from 'vitest';
import {
  isOfferFile,
  LONGEST_OFFER,
  OfferError,
  offerFile,
  offerFileName,
  packOffer,
  type ProgrammeOffer,
  readOfferFile,
  unpackOffer,
} from '../../shared/formats/programme-offer';
import { LONGEST_TEXT } from '../../shared/formats/event';
import { DEFAULT_PROGRAMME, MOST_FURTHER_DATES } from '../../shared/log/programme';
import { CHORD_IDS } from '../../shared/music/chords';
import { STAGES, STARTING_NOTES } from '../../shared/music/deck';
import { fc } from '../learning/property';
import { seededNumbers, spoil } from './spoil';

const OFFER: ProgrammeOffer = {
  programme: {
    ...DEFAULT_PROGRAMME,
    notes: ['d', 'eb'],
    reached: 'together.2',
    contraryForm: 'plain',
    date: '2027-06-12',
    requirements: 'From memory.\nLegato, no pedal; “piano” and forte. 🎹',
  },
  name: 'Ada',
};

const target = fc.integer({ min: 40, max: 600 });
const chords = fc.subarray([...CHORD_IDS], { minLength: 1 });
const goal = fc
  .record({
    asked: fc.boolean(),
    target,
    chords: fc.option(chords),
    own: fc.option(fc.tuple(chords, target, target)),
  })
  .map(({ asked, target: most, chords: some, own }) => ({
    asked,
    target: most,
    ...(own && {
      targets: Object.fromEntries(own[0].map((chord, i) => [chord, own[1 + (i % 2)]])),
    }),
    ...(some && { chords: some }),
  }));

const offer: fc.Arbitrary<ProgrammeOffer> = fc
  .record({
    notes: fc.subarray([...STARTING_NOTES], { minLength: 1 }),
    goals: fc.array(goal, { minLength: 5, maxLength: 5 }),
    reached: fc.constantFrom(...STAGES),
    grouping: fc.constantFrom(3 as const, 4 as const),
    contraryForm: fc.constantFrom('formula' as const, 'plain' as const),
    minutes: fc.integer({ min: 1, max: 600 }),
    daysPerWeek: fc.integer({ min: 1, max: 7 }),
    date: fc.option(fc.constantFrom('2026-12-01', '2028-02-29')),
    furtherDates: fc.option(
      fc.array(
        fc.record({
          day: fc.constantFrom('2026-12-02', '2027-01-31'),
          words: fc.string({ unit: 'grapheme', maxLength: 20 }),
        }),
        { minLength: 1, maxLength: MOST_FURTHER_DATES },
      ),
    ),
    words: fc.option(fc.string({ unit: 'grapheme', maxLength: 60 })),
    name: fc.option(fc.string({ unit: 'grapheme', maxLength: 20 })),
  })
  .filter(({ goals }) => goals.some(({ asked }) => asked))
  .map(({ goals, furtherDates, words, name, ...rest }) => {
    const stages = Object.fromEntries(STAGES.map((stage, i) => [stage, goals[i]!]));
    const programme = {
      ...DEFAULT_PROGRAMME,
      ...rest,
      stages: stages as never,
      ...(furtherDates && { furtherDates }),
      ...(words !== null && { requirements: words }),
    };
    return { programme, name };
  });

const refusal = (read: (text: string) => unknown, text: string): string => {
  try {
    read(text);
  } catch (error) {
    if (error instanceof OfferError) return error.message;
    throw error;
  }
  throw new Error('it was not refused');
};

describe('a programme that is given', () => {
  it('comes back as it was, from a file and packed', () => {
    fc.assert(
      fc.property(offer, (given) => {
        expect(readOfferFile(offerFile(given))).toEqual(given);
        expect(unpackOffer(packOffer(given))).toEqual(given);
      }),
      { numRuns: 200 },
    );
  });

  it('without further dates is packed as before there were any, so old links and old readers hold', () => {
    const packed = JSON.parse(packOffer(OFFER)) as unknown[];
    expect(packed).toHaveLength(12);
    const furtherDates = [{ day: '2027-06-01', words: 'rehearsal' }];
    const more = packOffer({ ...OFFER, programme: { ...OFFER.programme, furtherDates } });
    expect((JSON.parse(more) as unknown[]).slice(0, 12)).toEqual(packed);
  });

  it('is short when it is packed, and fits the limit when it is as long as can be', () => {
    expect(packOffer({ programme: DEFAULT_PROGRAMME, name: null }).length).toBeLessThan(80);
    const requirements = '\u0000'.repeat(LONGEST_TEXT);
    const longest = { programme: { ...OFFER.programme, requirements }, name: 'x'.repeat(200) };
    expect(offerFile(longest).length).toBeLessThan(LONGEST_OFFER);
    expect(unpackOffer(packOffer(longest))).toEqual(longest);
  });

  it('is told from other files by its beginning', () => {
    expect(isOfferFile(offerFile(OFFER))).toBe(true);
    expect(isOfferFile('{"format":"arpeggiary-log","version":1}')).toBe(false);
  });

  it.each([
    ['Ada Lindt', 'arpeggiary-programme-ada-lindt-2026-11-25.arpeggiary'],
    [null, 'arpeggiary-programme-2026-11-25.arpeggiary'],
    ['../../Ä/?*', 'arpeggiary-programme-ä-2026-11-25.arpeggiary'],
  ])('%s: the name of the file', (name, file) => {
    expect(offerFileName(name, '2026-11-25')).toBe(file);
  });
});

describe('a programme is refused, with the place', () => {
  const file = offerFile(OFFER);
  it.each([
    ['nothing', '', /no programme/],
    ['another format', '{"format":"other"}', /no programme/],
    ['a later version', file.replace('"version":1', '"version":2'), /Update the app/],
    ['no such note', file.replace('"eb"', '"h"'), /programme\.notes\.1: /],
    [
      'too fast',
      file.replace('"target":240', '"target":9000'),
      /programme\.stages\.right\.2\.target/,
    ],
    ['no such day', file.replace('2027-06-12', '2027-06-31'), /programme\.date: not a day/],
    ['asks for nothing', file.replaceAll('"asked":true', '"asked":false'), /asks for no stage/],
    ['another prototype', file.replace('{"notes"', '{"__proto__":{},"notes"'), /__proto__/],
    ['too long', `${file}${' '.repeat(LONGEST_OFFER)}`, /no programme/],
  ])('%s', (_, text, message) => {
    expect(refusal(readOfferFile, text)).toMatch(message);
  });

  it.each([
    ['no list', '{}', /no programme/],
    ['a later version', '[2]', /Update the app/],
    ['no starting note', packOffer(OFFER).replace(/^\[1,\d+/, '[1,0'), /programme\.notes/],
    ['a note too many', packOffer(OFFER).replace(/^\[1,\d+/, '[1,4096'), /no programme/],
    ['no such grouping', packOffer(OFFER).replace('],2,4,', '],2,5,'), /programme\.grouping/],
  ])('packed: %s', (_, text, message) => {
    expect(refusal(unpackOffer, text)).toMatch(message);
  });

  it('10,000 spoilt files and as many packed: read or refused, never anything else', () => {
    const numbers = seededNumbers(20_261_126);
    for (const [text, read] of [
      [file, readOfferFile],
      [packOffer(OFFER), unpackOffer],
    ] as const) {
      const outcomes = Array.from({ length: 10_000 }, () => {
        const spoilt = spoil(text, numbers);
        try {
          return read(spoilt).programme.notes.length > 0 ? 'read' : `wrong: ${spoilt}`;
        } catch (error) {
          return error instanceof OfferError ? 'refused' : `${String(error)}: ${spoilt}`;
        }
      });
      expect(new Set(outcomes)).toEqual(new Set(['read', 'refused']));
    }
    expect({}).not.toHaveProperty('polluted');
  });
});
