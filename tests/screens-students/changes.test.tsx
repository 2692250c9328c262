import { expect, test } from 'vitest';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';
import { changesOf } from '../../src/parts/programme-offer/changes';

test('an offered programme shows only the lines that differ', () => {
  const stages = {
    ...DEFAULT_PROGRAMME.stages,
    'together.4': { asked: true, target: 264 },
    'together.contrary': { asked: true, target: 240 },
  };
  const offered = {
    ...DEFAULT_PROGRAMME,
    stages,
    date: '2027-06-12',
    requirements: 'From memory.',
    furtherDates: [
      { day: '2027-05-30', words: 'rehearsal' },
      { day: '2027-06-05', words: '' },
    ],
  };
  expect(changesOf(DEFAULT_PROGRAMME, offered)).toEqual([
    {
      what: 'hands together, four octaves',
      before: 'at 60',
      after: 'at 66',
    },
    {
      what: 'hands together, contrary motion',
      before: 'not asked',
      after: 'at 60',
    },
    { what: 'Date', before: 'none', after: '12 June 2027' },
    { what: 'Also', before: 'nothing', after: 'rehearsal 30 May 2027; 5 June 2027' },
    { what: 'In words', before: 'nothing', after: 'From memory.' },
  ]);
});

test('the same programme shows none, and without a programme before every line is shown', () => {
  expect(changesOf(DEFAULT_PROGRAMME, { ...DEFAULT_PROGRAMME })).toEqual([]);
  const all = changesOf(null, DEFAULT_PROGRAMME);
  expect(all).toHaveLength(14);
  expect(all.every(({ before }) => before === null)).toBe(true);
});
