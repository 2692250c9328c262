/** How the beat comes, and a place to try it. */
import { useState } from 'preact/hooks';
import { Choice } from '../../parts/choice/choice';
import { hasMicrophone } from '../../parts/ear/ear';
import { BEATS, MOST_LATENCY, type Preferences, preferences } from '../../preferences';
import { BeatTrial } from './beat-trial';
import { change } from './change';
import { LatenessCheck } from './lateness-check';
import { Section } from './section';
import { Slider } from './slider';

const NAMES: Readonly<Record<Preferences['beat'], string>> = {
  heard: 'heard and seen',
  seen: 'only seen',
  off: 'no beat',
};

const latencyText = (ms: number): string =>
  ms === 0
    ? 'as the device reports it'
    : `${Math.abs(ms)} milliseconds ${ms > 0 ? 'later' : 'earlier'}`;

export function BeatSection() {
  const { beat, volume, latencyOffsetMs } = preferences.value;
  const [isMeasuring, setMeasuring] = useState(false);
  return (
    <Section title="Beat">
      <Choice<Preferences['beat']>
        legend="The beat is"
        options={BEATS.map((value) => ({ value, label: NAMES[value] }))}
        value={beat}
        onChange={(chosen) => change({ beat: chosen })}
      />
      {beat === 'off' && (
        <p class="soft">Without a beat the page turns by hand or by pedal, chord by chord.</p>
      )}
      {beat === 'heard' && (
        <>
          <Slider
            label="Loudness"
            min={0}
            max={100}
            step={5}
            value={Math.round(volume * 100)}
            textOf={(loudness) => `${loudness} per cent`}
            onChange={(loudness) => change({ volume: loudness / 100 })}
          />
          <Slider
            label="The seen beat against the heard one"
            min={-MOST_LATENCY}
            max={MOST_LATENCY}
            step={10}
            value={latencyOffsetMs}
            textOf={latencyText}
            onChange={(latency) => change({ latencyOffsetMs: latency })}
          />
          <p class="soft">
            Wireless loudspeakers and headphones are often late. Try the beat and move the seen one
            until both fall together.
          </p>
          {hasMicrophone() && <LatenessCheck isOn={isMeasuring} onTurn={setMeasuring} />}
        </>
      )}
      {beat !== 'off' && !isMeasuring && <BeatTrial />}
    </Section>
  );
}
