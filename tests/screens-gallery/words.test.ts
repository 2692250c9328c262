import { describe, expect, it } from 'vitest';
import { addDays } from '../../shared/log/day';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';
import { type ItemId, itemOf, STARTING_NOTES } from '../../shared/music/deck';
import { replay } from '../../shared/planning/student';
import { planDay } from '../../shared/planning/today';
import { standingText } from '../../src/screens/item/standing';
import { programmeText } from '../../src/parts/programme-text';
import { nameText } from '../../src/parts/words';
import { whatStandsOut } from '../../src/screens/today/stands-out';
import { keyName, learnable } from '../../src/screens/settings/pedal-keys';
import { programme, run, START } from '../learning/events';

describe('a programme in words', () => {
  it('names the starting notes as a whole where it can', () => {
    expect(programmeText(DEFAULT_PROGRAMME, 308)).toBe(
      'Eleven chords from the seven white starting notes in four stages, 308 items. 20 minutes a day on six days a week.',
    );
    expect(programmeText({ ...DEFAULT_PROGRAMME, notes: STARTING_NOTES }, 528)).toContain(
      'from all twelve starting notes',
    );
  });

  it('lists some of them in the order of the deck, with the date', () => {
    const text = programmeText(
      { ...DEFAULT_PROGRAMME, notes: ['bb', 'd', 'c'], date: '2027-02-01', daysPerWeek: 1 },
      132,
    );
    expect(text).toContain('from C, D and A♯/B♭ in');
    expect(text).toContain('for 1 February 2027. 20 minutes a day on one day a week.');
  });
});

/** Made first, as events count in the order of their making. */
const BEGIN = programme({ notes: ['d'] });
const standing = (item: Parameters<typeof itemOf>[0], ...events: Parameters<typeof replay>[0]) => {
  const student = replay([BEGIN, ...events]);
  return standingText(student, student.programme!, itemOf(item));
};

describe('why an item is open or not', () => {
  it('says what the stage below lacks', () => {
    expect(standing('d.major-6.left.2')).toBe(
      'Not open yet. It opens when right hand, two octaves is at least even at 30 or faster on two separate days; so far none yet.',
    );
    expect(standing('d.major-6.left.2', run('d.major-6.right.2', 3, 160))).toContain('so far one.');
  });

  it('says what has opened it', () => {
    expect(standing('d.major-6.right.2')).toContain('Open from the first day');
    const held = [run('d.major-6.right.2', 4, 160, 0), run('d.major-6.right.2', 4, 160, 1)];
    expect(standing('d.major-6.left.2', ...held)).toBe(
      'Open since 6 January 2026: right hand even at 40 and 40 on two days.',
    );
  });

  it('says that it has closed again, and what it takes', () => {
    const held = [run('d.major-6.right.2', 3, 130), run('d.major-6.right.2', 3, 130, 1)];
    const failed = [2, 3, 4].map((day) => run('d.major-6.left.2', 0, 80, day));
    const log = [BEGIN, ...held, ...failed];
    expect(standing('d.major-6.left.2', ...held, ...failed)).toMatch(
      /^Closed again on \d January 2026, as it did not hold\. It opens when right hand/,
    );
    const student = replay(log);
    const last = [...student.work.keys()].at(-1)!;
    const sentences = whatStandsOut(student, planDay(student, addDays(last, 1), 20));
    expect(sentences).toContain(
      'Closed again for one chord, as it did not hold: left hand, two octaves.',
    );
    const later = replay([...log, run('d.major-53.right.2', 3, 160, 6)]);
    expect(whatStandsOut(later, planDay(later, addDays(START, 7), 20)).join()).not.toContain(
      'Closed',
    );
  });

  it('knows what the programme does not ask for', () => {
    expect(standing('e.major-6.right.2')).toContain('does not ask for this starting note');
    expect(standing('d.major-6.right.4')).toContain('Off the path');
  });

  it('promises no opening beyond what the programme asks of a chord', () => {
    const { stages } = DEFAULT_PROGRAMME;
    const triads = { ...stages['together.4'], chords: ['major-53'] as const };
    const student = replay([programme({ stages: { ...stages, 'together.4': triads } })]);
    const textOf = (id: ItemId) => standingText(student, student.programme!, itemOf(id));
    const notAsked = 'The programme does not ask for it in this way.';
    expect(textOf('d.major-6.together.4')).toBe(notAsked);
    expect(textOf('d.major-53.together.contrary')).toBe(notAsked);
    expect(textOf('d.major-53.together.4')).toMatch(/^Not open yet\. It opens when/);
  });
});

describe('keys of a pedal', () => {
  const none = { forwardKeys: [], backKeys: [] };

  it('can be learnt unless they are used or needed', () => {
    expect(learnable('F8', none)).toBe('new');
    expect(learnable('PageDown', none)).toBe('it works already');
    expect(learnable('Tab', none)).toBe('it is needed for other things');
    expect(learnable('b', { forwardKeys: [], backKeys: ['b'] })).toBe('it has been learnt before');
  });

  it('have names', () => {
    expect([keyName('AudioVolumeUp'), keyName('b'), keyName('F8'), keyName(' ')]).toEqual([
      'audio volume up',
      '“b”',
      'f8',
      'space',
    ]);
  });
});

describe('the name of a student in a sentence', () => {
  // UAX #9: first strong isolate and pop directional isolate; overrides are what a spoofed name would have.
  it.each([
    ['Ono Muster', 'Ono Muster'],
    ['مريم', '\u2068مريم\u2069'],
    ['נעמה', '\u2068נעמה\u2069'],
    ['Ono \u202Eretsum', 'Ono retsum'],
    ['', 'Student without a name'],
    [null, 'Student without a name'],
  ])('%j is %j', (name, text) => {
    expect(nameText(name)).toBe(text);
  });
});
