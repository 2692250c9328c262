/** What an independent reader finds in a MusicXML file of ours. */
import { type MeasureEntry, type NoteEntry, parse } from 'musicxml-io';

const STAVES = { right: 1, left: 2 } as const;

/** Everything in the bars of the part, bar by bar. */
export const barsIn = (xml: string): readonly (readonly MeasureEntry[])[] =>
  parse(xml).parts.flatMap((part) => part.measures.map(({ entries }) => entries));

export const notesIn = (xml: string, hand: 'right' | 'left'): readonly NoteEntry[] =>
  barsIn(xml)
    .flat()
    .filter((entry) => entry.type === 'note')
    .filter(({ staff }) => staff === STAVES[hand]);
