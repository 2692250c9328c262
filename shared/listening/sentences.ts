/** A take in at most three sentences, the most useful first: "Left hand, going down: it waits 0.14 s before the thumb on F." */
import type { RunTake, TakeFault } from '../log/run-take';
import type { Finger } from '../music/fingering/types';
import { displayName, type NameStyle } from '../music/names';
import type { Score, ScoreNote } from '../music/score';
import { isBlackKey } from '../music/sequence';
import { markOf } from '../music/tempo';
import { type Finding, findingsOf, type HandOrBoth, type Join } from './findings';

/** What comes first: where it broke, then what was played, then how. */
const ORDER: readonly Finding['kind'][] = [
  'break',
  'stop',
  'wrong',
  'missed',
  'extra',
  'hesitation',
  'join',
  'lead',
  'loose',
  'thumb late',
  'gap',
  'thumb loud',
  'uneven',
  'drift',
];
const MOST = 3;

const FINGERS: Readonly<Record<Finger, string>> = {
  1: 'the thumb',
  2: 'the second finger',
  3: 'the third finger',
  4: 'the fourth finger',
  5: 'the fifth finger',
};

/** Milliseconds as "0.14 s", longer ones as "1.5 s". */
const seconds = (ms: number): string =>
  `${(Math.abs(ms) / 1000).toFixed(Math.abs(ms) < 1000 ? 2 : 1)} s`;

/** Empty for a take in which nothing stands out. */
export function sentencesOf(take: RunTake, score: Score, style: NameStyle): readonly string[] {
  const findings = findingsOf(take, score);
  const words = new Words(score, style, take);
  return ORDER.flatMap((kind) => {
    const found = findings.filter((finding) => finding.kind === kind).toSorted(worstFirst);
    return found.length === 0 ? [] : [words.sentence(found[0]!, found.length)];
  }).slice(0, MOST);
}

const sizeOf = (finding: Finding): number =>
  'wait' in finding ? finding.wait : 'units' in finding ? finding.units : 0;
const worstFirst = (a: Finding, b: Finding): number => sizeOf(b) - sizeOf(a);

class Words {
  constructor(
    private readonly score: Score,
    private readonly style: NameStyle,
    private readonly take: RunTake,
  ) {}

  /** `count` findings of the kind, of which this is the worst. */
  sentence(finding: Finding, count: number): string {
    switch (finding.kind) {
      case 'break':
        return this.breakText(finding);
      case 'stop':
      case 'hesitation': {
        const verb = finding.kind === 'stop' ? 'stops for' : 'waits';
        const many = count === 1 ? '' : `, and in ${places(count - 1)} more`;
        const before = this.goal(finding.hand, finding.step);
        return `${this.where(finding.hand, finding.step)} it ${verb} ${seconds(finding.wait)} before ${before}${many}.`;
      }
      case 'wrong':
      case 'missed':
      case 'extra':
        return this.faultText(finding, count);
      case 'join':
        return this.joinText(finding);
      case 'lead':
        return `The left hand comes ${seconds(finding.late)} ${finding.late > 0 ? 'after' : 'before'} the right.`;
      case 'loose':
        return `The hands are not together: they come up to ${seconds(2 * finding.looseness)} apart.`;
      case 'thumb late':
        return this.ofHand(
          finding.hand,
          `the thumb comes ${seconds(finding.late)} too ${finding.late > 0 ? 'late' : 'soon'}, time and again`,
        );
      case 'thumb loud':
        return this.ofHand(
          finding.hand,
          `the thumb is ${finding.accent > 0 ? 'louder' : 'softer'} than the other fingers`,
        );
      case 'gap':
        return this.ofHand(
          finding.hand,
          `the keys come up ${seconds(finding.gap)} before the next are down`,
        );
      case 'uneven':
        return this.ofHand(
          finding.hand,
          `the notes come unevenly, ${finding.units.toFixed(0)} times as much as the ear just hears`,
        );
      case 'drift':
        return this.driftText(finding.drift);
    }
  }

  private note(hand: HandOrBoth, step: number): ScoreNote {
    const notes = hand === 'both' ? this.score.right : this.score[hand];
    return notes[step]!;
  }

  private name({ keys }: ScoreNote): string {
    return displayName(keys[0]!.name, this.style);
  }

  /** "Left hand, going down:", or without the hand where only one plays. */
  private where(hand: HandOrBoth, step: number): string {
    const notes = hand === 'both' ? this.score.right : this.score[hand];
    const [from, to] = step === 0 ? [0, 1] : [step - 1, step];
    const isUp = notes[to]!.keys[0]!.midi > notes[from]!.keys[0]!.midi;
    // In contrary motion both hands together go neither up nor down.
    const way =
      hand === 'both' && this.isContrary(from, to) ? '' : isUp ? 'going up' : 'going down';
    return start(...this.handWords(hand), way);
  }

  private isContrary(from: number, to: number): boolean {
    const way = (notes: readonly ScoreNote[]) =>
      Math.sign(notes[to]!.keys[0]!.midi - notes[from]!.keys[0]!.midi);
    return way(this.score.right) !== way(this.score.left);
  }

  private ofHand(hand: HandOrBoth, clause: string): string {
    return `${capital([...this.handWords(hand), clause].join(': '))}.`;
  }

  private handWords(hand: HandOrBoth): readonly string[] {
    if (this.score.right.length === 0 || this.score.left.length === 0) return [];
    return [hand === 'both' ? 'both hands' : `${hand} hand`];
  }

  /** "the thumb on F", "the hand goes over to F"; of both hands "F, where the left thumb goes under". */
  private goal(hand: HandOrBoth, step: number): string {
    const note = this.note(hand, step);
    const name = this.name(note);
    if (hand === 'both') return `${name}${this.changesAt(step)}`;
    if (note.change === 'hand over') return `the hand goes over to ${name}`;
    const finger = note.fingers[0];
    return finger ? `${FINGERS[finger]} on ${name}` : name;
  }

  private changesAt(step: number): string {
    const changes = (['right', 'left'] as const).flatMap((hand) => {
      const { change } = this.note(hand, step);
      if (change === null) return [];
      return [
        change === 'hand over'
          ? { hand, what: 'hand', goes: 'over' }
          : { hand, what: 'thumb', goes: 'under' },
      ];
    });
    const [one, other] = changes;
    if (one === undefined) return '';
    if (one.goes === other?.goes) return `, where both ${one.what}s go ${one.goes}`;
    return `, where ${changes.map(({ hand, what, goes }) => `the ${hand} ${what} goes ${goes}`).join(' and ')}`;
  }

  private breakText({ step, isForGood }: Finding & { readonly kind: 'break' }): string {
    const hand = this.score.right.length > 0 ? 'right' : 'left';
    const both = this.score.right.length > 0 && this.score.left.length > 0;
    const way = this.where(both ? 'both' : hand, step);
    const end = isForGood ? 'and does not go on' : 'and begins again';
    return `${way} it breaks off at ${this.name(this.note(hand, step))} ${end}.`;
  }

  private faultText({ kind, hand, step, midi }: TakeFault, count: number): string {
    const place = this.where(hand, Math.min(step, this.score[hand].length - 1));
    const expected = this.note(hand, Math.min(step, this.score[hand].length - 1));
    const heard = midi === null ? '' : this.keyName(midi, expected.keys[0]!.midi);
    const other = kind === 'wrong' ? 'wrong note' : 'note';
    const many = count === 1 ? '' : `, and ${count - 1} more ${other}${count === 2 ? '' : 's'}`;
    if (kind === 'wrong') return `${place} ${heard} for ${this.name(expected)}${many}.`;
    if (kind === 'missed') return `${place} ${this.name(expected)} is missing${many}.`;
    return `${place} ${heard} is one note too many, before ${this.name(expected)}${many}.`;
  }

  /** A key that is not in the chord, named as a step away from the note that was meant. */
  private keyName(midi: number, meant: number): string {
    const letters = midi > meant ? 'C C# D D# E F F# G G# A A# B' : 'C Db D Eb E F Gb G Ab A Bb B';
    const known = [...this.score.right, ...this.score.left].find(
      ({ keys }) => keys[0]!.midi % 12 === midi % 12 && isBlackKey(midi),
    );
    return known ? this.name(known) : displayName(letters.split(' ')[midi % 12]!, this.style);
  }

  private joinText({ hand, way, tone, change, wait }: Join): string {
    const goal = this.score[hand].find(({ keys }) => keys[0]!.tone === tone)!;
    const what = change === 'thumb under' ? 'the thumb goes under' : 'the hand goes over';
    return `${start(...this.handWords(hand), `going ${way}`)} it waits ${seconds(wait)} each time ${what} to ${this.name(goal)}.`;
  }

  private driftText(drift: number): string {
    const { grouping } = this.score;
    const tempo = this.take.tempo!;
    const [from, to] = [tempo * (1 - drift / 200), tempo * (1 + drift / 200)];
    return `It gets ${drift > 0 ? 'faster' : 'slower'}: from ${markOf(from, grouping)} to ${markOf(to, grouping)}.`;
  }
}

const places = (count: number): string => (count === 1 ? 'one place' : `${count} places`);

/** "Left hand, going down:" of the parts that say something. */
function start(...parts: readonly string[]): string {
  const said = parts.filter((part) => part !== '').join(', ');
  return said === '' ? '' : `${capital(said)}:`;
}

const capital = (words: string): string => words[0]!.toUpperCase() + words.slice(1);
