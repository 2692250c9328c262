/** The planner that the app ships, through its public face. */
import { itemOf } from '../../../shared/music/deck';
import { planDay } from '../../../shared/planning/today';
import type { MakePlanner } from './planner';

export const app: MakePlanner = () => ({
  plan: ({ student, day, seconds, sitting }) =>
    planDay(student, day, seconds / 60, sitting).entries.map((entry) => ({
      key: entry.key,
      items: entry.items.map(itemOf),
      tempo: entry.tempo,
      seconds: entry.seconds,
    })),
});
