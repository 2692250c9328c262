/** One event of each kind, as it lies in the log. */
import type { EventKind, LogEvent } from '../../shared/log/events';
import { DEFAULT_PROGRAMME } from '../../shared/log/programme';

const stamp = {
  version: 1,
  at: 1_795_615_200_000,
  day: '2026-11-25',
  device: '11111111-1111-4111-8111-111111111111',
  student: '22222222-2222-4222-8222-222222222222',
} as const;

const id = (place: number): string => `019ab8a0-0000-7000-8000-${String(place).padStart(12, '0')}`;

export const SAMPLES: { readonly [K in EventKind]: LogEvent & { readonly kind: K } } = {
  run: {
    ...stamp,
    id: id(1),
    kind: 'run',
    item: 'd.major-6.right.2',
    tempo: 132,
    fluency: 2,
    pedal: false,
    judge: 'teacher',
    entry: 'd.right.2.1',
  },
  programme: { ...stamp, id: id(2), kind: 'programme', programme: DEFAULT_PROGRAMME },
  name: { ...stamp, id: id(3), kind: 'name', name: 'Ada' },
  aside: { ...stamp, id: id(4), kind: 'aside', item: 'eb.dominant-65.together.4', aside: true },
  remark: { ...stamp, id: id(5), kind: 'remark', about: null, text: 'thumb late' },
  fingering: {
    ...stamp,
    id: id(6),
    kind: 'fingering',
    arpeggio: 'd.major-6',
    hand: 'left',
    plan: { low: [5], pattern: [1, 4, 2], high: [1] },
  },
  span: { ...stamp, id: id(7), kind: 'span', semitones: 11 },
  drill: { ...stamp, id: id(8), kind: 'drill', drill: 'd.major-6.left.join.4' },
  wish: { ...stamp, id: id(10), kind: 'wish', item: 'd.major-6.right.2', from: '2026-11-26' },
  examination: {
    ...stamp,
    id: id(11),
    kind: 'examination',
    seed: 20_614,
    settings: {
      notes: ['d', 'bb'],
      chords: ['major-53', 'dominant-65'],
      stages: ['together.4'],
      count: 2,
      toPass: 1,
      tempoPercent: 90,
      beat: true,
    },
    items: [
      { item: 'bb.dominant-65.together.4', tempo: 216, fluency: 1 },
      { item: 'd.major-53.together.4', tempo: 216, fluency: 3 },
    ],
    judge: 'teacher',
    forecast: 0.42,
  },
  report: {
    ...stamp,
    id: id(12),
    kind: 'report',
    share: 0.5,
    stages: [{ stage: 'right.2', share: 0.5 }],
    played: 12,
  },
  void: { ...stamp, id: id(9), kind: 'void', events: [id(1), id(4)] },
};

/** Events with rising ids: a run for each place, with a name or remark now and then. */
export const manyEvents = (count: number): readonly LogEvent[] =>
  Array.from({ length: count }, (_, i): LogEvent => {
    const sample = i % 50 === 49 ? SAMPLES.remark : SAMPLES.run;
    return { ...sample, id: id(1000 + i) };
  });
