/** A train as makers write it. */
import type { CountedTrain } from './counts.ts';

/** "46/9 x 104/9" */
export const trainText = (train: Pick<CountedTrain, 'stages'>): string =>
  train.stages.map((stage) => `${stage.driven}/${stage.worm ? 'worm ' : ''}${stage.driver}`).join(' x ');
