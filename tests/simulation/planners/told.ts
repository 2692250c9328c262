/**
 * The app, told the true level of every item each morning in place of its estimates. What it gains on the app is what
 * finding out costs; the rest to the planner that sees the truth is that this one knows what each run will bring too.
 */
import { DECK } from '../../../shared/music/deck';
import { cloneLearner } from '../../../shared/learning/learner';
import { meanOn } from '../../../shared/learning/prediction';
import { app } from './app';
import type { MakePlanner } from './planner';

export const told: MakePlanner = (player, share, programme) => {
  const planner = app(player, share, programme);
  return {
    plan: (morning) => {
      const learner = cloneLearner(morning.student.learner);
      for (const item of DECK) {
        const { index } = item;
        learner.residual[index]! +=
          player.truth.level(index, morning.number) - meanOn(learner, item, morning.number);
      }
      return planner.plan({ ...morning, student: { ...morning.student, learner } });
    },
  };
};
