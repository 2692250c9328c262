/**
 * Placing the student today: probes one after another, each the one that tells most. They are runs outside the list;
 * kept on the device is only where it began and what was passed over.
 */
import { computed, signal, type ReadonlySignal } from '@preact/signals';
import * as v from 'valibot';
import type { RunEvent } from '../../shared/log/events';
import type { Programme } from '../../shared/log/programme';
import { type ItemId, parseItemId, type Stage, STAGES } from '../../shared/music/deck';
import { nextProbe, PROBES, type StageReach, stageReaches } from '../../shared/planning/placement';
import { PLACEMENT } from '../store/own-keys';
import type { Store } from '../store/store';
import type { Session } from './session';

const stageReach = v.object({
  stage: v.picklist(STAGES satisfies readonly Stage[]),
  tempo: v.number(),
  low: v.number(),
  high: v.number(),
});

const schema = v.object({
  day: v.string(),
  /** The last event before the first probe. */
  since: v.string(),
  /** How the stages stood then. */
  before: v.array(stageReach),
  passedOver: v.array(
    v.custom<ItemId>((input) => typeof input === 'string' && parseItemId(input) !== null),
  ),
});

interface Begun {
  readonly day: string;
  readonly since: string;
  readonly before: readonly StageReach[];
  readonly passedOver: readonly ItemId[];
}

export interface Placement {
  /** How the stages stood before the first probe of today; null if there was none. Undefined until it has been read. */
  readonly before: ReadonlySignal<readonly StageReach[] | null | undefined>;
  /** Today's probes that have been rated. */
  readonly probes: ReadonlySignal<readonly RunEvent[]>;
  /** Begins, if it has not begun today. */
  begin(programme: Programme): void;
  /** It does not come again today. */
  passOver(item: ItemId): void;
  /** The next probe, ready to be played; null when there have been enough, or nothing is left to ask. */
  next(programme: Programme): Session | null;
}

const ofStore = new WeakMap<Store, Placement>();

/** The placement of a store; the same one for every screen. */
export function placementOf(store: Store): Placement {
  const known = ofStore.get(store);
  if (known !== undefined) return known;
  const placement = createPlacement(store);
  ofStore.set(store, placement);
  return placement;
}

function createPlacement(store: Store): Placement {
  const kept = signal<Begun | null | undefined>(undefined);
  store.kept(PLACEMENT).then(
    (value) => {
      const read = v.safeParse(schema, value);
      kept.value ??= read.success ? read.output : null;
    },
    () => {
      kept.value ??= null;
    },
  );
  const today = computed(() => (kept.value?.day === store.today.value ? kept.value : null));
  const set = (begun: Begun) => {
    kept.value = begun;
    // What could not be kept holds until the page is left; the runs are in the log all the same.
    store.keep(PLACEMENT, begun).catch(() => undefined);
  };
  const probes = computed(() => {
    const begun = today.value;
    if (begun === null) return [];
    return store.todaysRuns.value.filter(({ id, entry }) => entry === null && id > begun.since);
  });
  return {
    before: computed(() => (kept.value === undefined ? undefined : (today.value?.before ?? null))),
    probes,
    begin: (programme) => {
      if (today.peek() !== null) return;
      const [student, day] = [store.student.peek(), store.today.peek()];
      const before = stageReaches(student.learner, programme, day);
      set({ day, since: student.lastEvent ?? '', before, passedOver: [] });
    },
    passOver: (item) => {
      const begun = today.peek();
      if (begun !== null) set({ ...begun, passedOver: [...begun.passedOver, item] });
    },
    next: (programme) => {
      const number = probes.peek().length + 1;
      if (number > PROBES) return null;
      const [{ learner, aside }, day] = [store.student.peek(), store.today.peek()];
      const without = new Set([...aside, ...(today.peek()?.passedOver ?? [])]);
      const probe = nextProbe(learner, programme, { day, without });
      if (probe === null) return null;
      const { id, note, way } = probe.item;
      return {
        day,
        entry: { key: `probe.${id}`, kind: 'single', note, way, items: [id], probe: number },
        at: 0,
        phase: 'playing',
        tempo: probe.tempo,
        pedal: false,
        ratings: {},
      };
    },
  };
}
