/** A programme in two sentences. */
import { askedStages, type Programme } from '../../shared/log/programme';
import { STARTING_NOTES, WHITE_NOTES } from '../../shared/music/deck';
import { dateText } from './dates';
import { noteText } from './words';

const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven'];
const inWords = (number: number): string => NUMBERS[number] ?? String(number);

const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)!}`;

export function notesText({ notes }: Programme): string {
  if (notes.length === STARTING_NOTES.length) return 'all twelve starting notes';
  const areTheWhite =
    notes.length === WHITE_NOTES.length && WHITE_NOTES.every((note) => notes.includes(note));
  if (areTheWhite) return 'the seven white starting notes';
  return listed(STARTING_NOTES.filter((note) => notes.includes(note)).map(noteText));
}

/** `items` is the size of the programme's deck. */
export function programmeText(programme: Programme, items: number): string {
  const stages = askedStages(programme).length;
  const stagesText = stages === 1 ? 'one stage' : `${inWords(stages)} stages`;
  const { date, minutes, daysPerWeek } = programme;
  const areAll = askedStages(programme).every(
    (stage) => programme.stages[stage].chords === undefined,
  );
  const chords = areAll ? 'Eleven chords' : 'Some of the eleven chords';
  const days = daysPerWeek === 1 ? 'one day' : `${inWords(daysPerWeek)} days`;
  return [
    `${chords} from ${notesText(programme)} in ${stagesText}, ${items} items`,
    date === null ? '. ' : `, for ${dateText(date)}. `,
    `${minutes} minutes a day on ${days} a week.`,
  ].join('');
}
