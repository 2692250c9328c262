/** Installs what the tests take from the system before any test runs: two that install at once would shut each other out. */
import { CHROMIUM } from './browser/chromium';
import { need } from './install';
import { FLUIDSYNTH } from './listening/sound/fluidsynth';
import { SOX } from './listening/sound/sox';
import { POPPLER } from './report/poppler';

need(CHROMIUM, POPPLER, FLUIDSYNTH, SOX);
console.log('Chromium, poppler-utils, fluidsynth and sox are there.');
