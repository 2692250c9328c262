/** The benchmarks: `npm run bench` runs all, `npm run bench -- page` those of one name. They print ratios, and judge nothing. */
import { benchExchange } from './exchange';
import { benchFingering } from './fingering';
import { benchLights } from './lights';
import { benchListening } from './listening';
import { benchModel } from './model';
import { benchPage } from './page';
import { benchReport } from './report';
import { benchSound } from './sound';
import { benchStaff } from './staff';
import { benchStudio } from './studio';

const BENCHES: Readonly<Record<string, () => void | Promise<void>>> = {
  model: benchModel,
  fingering: benchFingering,
  staff: benchStaff,
  listening: benchListening,
  lights: benchLights,
  sound: benchSound,
  exchange: benchExchange,
  studio: benchStudio,
  page: benchPage,
  report: benchReport,
};

const asked = process.argv.slice(2);
for (const name of asked.length === 0 ? Object.keys(BENCHES) : asked) {
  const bench = BENCHES[name];
  if (bench === undefined) throw new RangeError(`no such benchmark: ${name}`);
  console.log(`\n== ${name}`);
  await bench();
}
