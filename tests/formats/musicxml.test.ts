/**
 * MusicXML 4.0 (W3C Music Notation Community Group, element reference). No package of npm or Debian carries the official
 * schema, so the files are read by two independent libraries: one is generated from the element reference and keeps only
 * what stands where the reference allows it, the other checks the music: durations, ties, beams, triplets.
 */
import { MusicXML } from '@stringsync/musicxml';
import { type NoteEntry, parse, validate } from 'musicxml-io';
import { describe, expect, it } from 'vitest';
import { musicXml } from '../../shared/formats/musicxml';
import { itemOf } from '../../shared/music/deck';
import type { Score, ScoreNote } from '../../shared/music/score';
import { scoreOf } from '../../shared/music/score-of';
import { midiOf } from '../../shared/music/theory';
import { fc } from '../learning/property';
import { notesIn } from './musicxml-reader';
import { anyDrill, anyItemScore, anyRoundScore, note, OPTIONS, score, timed } from './scores';

/** The elements of a file in one fixed form: no blanks between them, attributes by name. */
const elementsOf = (xml: string): string =>
  xml
    .slice(xml.indexOf('<score-partwise'))
    .replace(/>\s+</g, '><')
    .replace(
      /<([\w-]+)((?: [\w-]+="[^"]*")+)(\/?)>/g,
      (_, name: string, list: string, end: string) => {
        const attributes = [...list.matchAll(/ [\w-]+="[^"]*"/g)].map(([one]) => one).toSorted();
        return `<${name}${attributes.join('')}${end}>`;
      },
    )
    .trim();

const midiIn = ({ pitch }: NoteEntry): number => {
  const alter = pitch!.alter ?? 0;
  return midiOf(`${pitch!.step}${(alter < 0 ? 'b' : '#').repeat(Math.abs(alter))}${pitch!.octave}`);
};
const isTiedBack = ({ tie, ties = [] }: NoteEntry): boolean =>
  [tie, ...ties].some((one) => one?.type === 'stop');

/** What is read back of a hand, tied notes put together, as "keys@onset+length". */
function readBack(xml: string, hand: 'right' | 'left'): readonly string[] {
  const heard: { keys: number[]; at: number; length: number }[] = [];
  let at = 0;
  for (const entry of notesIn(xml, hand)) {
    const last = heard.at(-1);
    if (entry.chord) {
      if (!isTiedBack(entry)) last!.keys.push(midiIn(entry));
      continue;
    }
    if (isTiedBack(entry)) last!.length += entry.duration;
    else if (entry.pitch) heard.push({ keys: [midiIn(entry)], at, length: entry.duration });
    at += entry.duration;
  }
  return heard.map(({ keys, at: onset, length }) => `${keys.join(' ')}@${onset}+${length}`);
}

const written = (notes: readonly ScoreNote[]): readonly string[] =>
  timed(notes)
    .filter(({ keys }) => keys.length > 0)
    .map(({ keys, at, length }) => `${keys.map(({ midi }) => midi).join(' ')}@${at}+${length}`);

function expectSound(made: Score): void {
  const xml = musicXml(made);
  const { errors, warnings } = validate(parse(xml), {
    checkMeasureFullness: true,
    // It looks for both ends of a tie within a bar; reading back puts tied notes together instead.
    checkTies: false,
  });
  expect({ errors, warnings }).toEqual({ errors: [], warnings: [] });
  expect(readBack(xml, 'right')).toEqual(written(made.right));
  expect(readBack(xml, 'left')).toEqual(written(made.left));
}

function expectInPlace(made: Score): void {
  const xml = musicXml(made);
  expect(elementsOf(MusicXML.parse(xml).serialize())).toBe(elementsOf(xml));
}

const music = fc.oneof(anyItemScore, anyRoundScore, anyDrill);

describe('MusicXML', () => {
  it('has only elements and attributes of version 4.0, each in its place', () => {
    expectInPlace(scoreOf([itemOf('gb.dominant-7.right.2')], { ...OPTIONS, grouping: 3 }));
    expectInPlace(scoreOf([itemOf('b.minor-64.together.4')], OPTIONS));
    // That library needs a second for what the other reads at once.
    fc.assert(fc.property(anyDrill, expectInPlace), { numRuns: 6 });
  });

  it('is noticed by that check where it is wrong', () => {
    const xml = musicXml(score([note('D4', 24)]));
    const wrong = xml.replace(/(<voice>1<\/voice>)(<type>quarter<\/type>)/, '$2$1');
    expect(wrong).not.toBe(xml);
    expect(elementsOf(MusicXML.parse(wrong).serialize())).not.toBe(elementsOf(wrong));
  });

  it('reads back as the music that was written', () => {
    fc.assert(fc.property(music, expectSound), { numRuns: 60 });
  });
});
