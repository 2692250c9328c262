/**
 * What examinations and schools ask of arpeggios, as beginnings of a programme. From published lists, each with its
 * source; boards change what they ask, so each is only a beginning.
 */
import type { Programme, StageGoal } from '../../../shared/log/programme';
import type { ChordId } from '../../../shared/music/chords';
import { STAGES, type Stage, type StartingNote } from '../../../shared/music/deck';
import { type Grouping, type Tempo, tempoOf } from '../../../shared/music/tempo';

export interface Standard {
  /** What is asked, in short. */
  readonly title: string;
  /** Who asks it, and where that was read; "from memory" where it was not. */
  readonly source: string;
  /** Of the list that was read; null where it has none. */
  readonly year: number | null;
  readonly asked: readonly Stage[];
  /** Metronome mark of the beat; null where the list names none. */
  readonly mark: number | null;
  readonly grouping: Grouping;
  /** Null where all are asked. */
  readonly notes: readonly StartingNote[] | null;
  /** Where it does not ask for all eleven; null too where the list does not say. */
  readonly chords: readonly ChordId[] | null;
  /** Where some chords have a metronome mark of their own. */
  readonly own?: { readonly chords: readonly ChordId[]; readonly mark: number };
  /** What chords and stages do not say. */
  readonly requirements: string;
}

export const CHECK_BOOKLET = 'Check your board’s current booklet.';

const ROOT: readonly ChordId[] = ['major-53', 'minor-53'];
const ROOT_AND_FIRST: readonly ChordId[] = [...ROOT, 'major-6', 'minor-6'];
const WITH_SEVENTHS: readonly ChordId[] = [
  ...ROOT_AND_FIRST,
  'major-64',
  'minor-64',
  'dominant-7',
  'diminished-7',
];

const INVERSIONS: readonly ChordId[] = [
  'major-6',
  'minor-6',
  'major-64',
  'minor-64',
  'dominant-65',
  'dominant-43',
  'dominant-42',
];

const UP_TO_FOUR: readonly Stage[] = ['right.2', 'left.2', 'together.2', 'together.4'];

export const STANDARDS: readonly Standard[] = [
  {
    title: 'Root position and both inversions, hands separately and together',
    source: 'LCM, Grade 8',
    year: 2021,
    asked: UP_TO_FOUR,
    mark: 60,
    grouping: 4,
    notes: null,
    chords: null,
    requirements:
      'Root position, first and second inversion; hands separately and together; soft and loud; legato.',
  },
  {
    title: 'Root position and first inversion, hands separately and together',
    source: 'LCM, Grade 7',
    year: 2021,
    asked: UP_TO_FOUR,
    mark: 52,
    grouping: 4,
    notes: null,
    chords: ROOT_AND_FIRST,
    requirements:
      'Root position and first inversion; hands separately and together; soft and loud; legato.',
  },
  {
    title: 'Hands separately and together, loud',
    source: 'LCM, Grade 6',
    year: 2021,
    asked: UP_TO_FOUR,
    mark: 48,
    grouping: 4,
    notes: null,
    chords: null,
    requirements: 'Hands separately and together; loud.',
  },
  {
    title: 'F and A major and minor, two octaves, hands separately',
    source: 'AMEB, Third Grade (leisure syllabus)',
    year: null,
    asked: ['right.2', 'left.2'],
    mark: 38,
    grouping: 4,
    notes: ['f', 'a'],
    chords: ROOT,
    requirements: 'Root position, major and minor; clear, even legato.',
  },
  {
    title: 'Root position and both inversions in sixteen keys, four octaves, and sevenths',
    source: 'ABRSM, Grade 8 before 2021, from a teachers’ forum; tempo from memory',
    year: null,
    asked: UP_TO_FOUR,
    mark: 66,
    grouping: 4,
    notes: null,
    chords: WITH_SEVENTHS,
    requirements:
      'Common chords in root position, first and second inversion; dominant sevenths in root position; diminished sevenths on any note. From memory, legato, no pedal; hands an octave apart and separately.',
  },
  {
    title: 'Major and minor, four octaves in similar motion, two in contrary motion',
    source: 'IPPEC, Grade 8',
    year: null,
    asked: ['together.4', 'together.contrary'],
    mark: null,
    grouping: 4,
    notes: null,
    chords: ROOT,
    requirements: 'All major and minor arpeggios, four octaves; contrary motion two octaves.',
  },
  {
    title: 'Major and minor triads, hands together, four octaves',
    source: 'Michigan State University, jury requirements (graduate secondary)',
    year: null,
    asked: ['together.4'],
    mark: 60,
    grouping: 4,
    notes: null,
    chords: ROOT,
    requirements: 'Root position, major and minor; hands together, four octaves.',
  },
  {
    title: 'Four octaves in triplets, first year',
    source: 'Arkansas State University, piano majors',
    year: null,
    asked: ['together.4'],
    mark: 60,
    grouping: 3,
    notes: null,
    chords: null,
    requirements: 'Four octaves in triplets; inversions at the same tempo.',
  },
  {
    title: 'Four octaves in triplets, barrier examination',
    source: 'Arkansas State University, piano majors',
    year: null,
    asked: ['together.4'],
    mark: 72,
    grouping: 3,
    notes: null,
    chords: null,
    own: { chords: INVERSIONS, mark: 60 },
    requirements: 'Four octaves in triplets; inversions at 60.',
  },
];

/** Notes per minute; null where the standard names no tempo. */
export const targetOf = ({ mark, grouping }: Standard): Tempo | null =>
  mark === null ? null : tempoOf(mark, grouping);

type TempoGoal = Pick<StageGoal, 'target' | 'targets'>;

const tempoIn = ({ target, targets }: StageGoal): TempoGoal =>
  targets === undefined ? { target } : { target, targets };

function tempoBy({ own, grouping }: Standard, target: Tempo): TempoGoal {
  if (own === undefined) return { target };
  const targets = own.chords.map((chord) => [chord, tempoOf(own.mark, grouping)] as const);
  return { target, targets: Object.fromEntries(targets) };
}

/** A programme begun from a standard: what that does not speak of stays. */
export function withStandard(programme: Programme, standard: Standard): Programme {
  const target = targetOf(standard);
  const stages = { ...programme.stages };
  for (const stage of STAGES) {
    const asked = standard.asked.includes(stage);
    stages[stage] = {
      ...(target === null ? tempoIn(stages[stage]) : tempoBy(standard, target)),
      asked,
      ...(standard.chords !== null && { chords: standard.chords }),
    };
  }
  return {
    ...programme,
    stages,
    notes: standard.notes ?? programme.notes,
    grouping: target === null ? programme.grouping : standard.grouping,
    requirements: standard.requirements,
  };
}
