/** An examination that has begun and is not yet in the log, kept on the device at every mark. */
import { useEffect, useState } from 'preact/hooks';
import * as v from 'valibot';
import {
  examinationSeed,
  examinationSettings,
  markedItem,
} from '../../../shared/formats/event-schema';
import { type ExaminationBody, type Fluency, type Judge, JUDGES } from '../../../shared/log/events';
import type { ExaminationSettings, MarkedItem } from '../../../shared/log/examination';
import type { Programme } from '../../../shared/log/programme';
import { askedTempo, drawItems } from '../../../shared/planning/examination/draw';
import { EXAMINATION } from '../../store/own-keys';
import type { Store } from '../../store/store';

const schema = v.object({
  seed: examinationSeed,
  settings: examinationSettings,
  judge: v.picklist(JUDGES),
  forecast: v.pipe(v.number(), v.minValue(0), v.maxValue(1)),
  asked: v.pipe(v.array(v.omit(markedItem, ['fluency'])), v.minLength(1)),
  marks: v.array(v.picklist([0, 1, 2, 3, 4] satisfies Fluency[])),
}) satisfies v.GenericSchema<unknown, Draft>;

export interface Draft {
  readonly seed: number;
  readonly settings: ExaminationSettings;
  readonly judge: Judge;
  /** The chance to pass that was told before. */
  readonly forecast: number;
  readonly asked: readonly Pick<MarkedItem, 'item' | 'tempo'>[];
  /** Of the first of them, so far. */
  readonly marks: readonly Fluency[];
}

export type Begun = Pick<Draft, 'seed' | 'settings' | 'judge' | 'forecast'>;

/** A draft in a kept value of any origin; null if there is none. */
export function readDraft(kept: unknown): Draft | null {
  const result = v.safeParse(schema, kept);
  return result.success && result.output.marks.length <= result.output.asked.length
    ? result.output
    : null;
}

export const newDraft = (programme: Programme, begun: Begun): Draft => ({
  ...begun,
  asked: drawItems(programme, begun.settings, begun.seed).map((item) => ({
    item: item.id,
    tempo: askedTempo(programme, item, begun.settings.tempoPercent),
  })),
  marks: [],
});

export const bodyOf = ({
  seed,
  settings,
  judge,
  forecast,
  asked,
  marks,
}: Draft): ExaminationBody => ({
  kind: 'examination',
  seed,
  settings,
  judge,
  forecast,
  items: asked.map((one, i) => ({ ...one, fluency: marks[i]! })),
});

/** Undefined until it has been read. */
export function useDraft(store: Store): [Draft | null | undefined, (draft: Draft | null) => void] {
  const [draft, setDraft] = useState<Draft | null>();
  useEffect(() => {
    store.kept(EXAMINATION).then(
      (kept) => setDraft(readDraft(kept)),
      () => setDraft(null),
    );
  }, [store]);
  const keep = (changed: Draft | null) => {
    setDraft(changed);
    // It holds until the page is left; the marks go into the log together at the end.
    store.keep(EXAMINATION, changed ?? undefined).catch(() => undefined);
  };
  return [draft, keep];
}
