/** The centre line on the bench. */
import { centreLineOf } from '../../solver/movement/index.ts';
import { type RuleKindOnBench, WEIGHT } from './kind.ts';

/** Settled on where the document states its centre line; for a loose point it is offered by planting. */
export const onCentreLineOnBench: RuleKindOnBench = {
  snaps: ({ placed: { movement }, point }) => {
    if (!movement.centreLine) return () => [];
    const { through, along } = centreLineOf(movement);
    return ({ target, reach }) => {
      const off = Math.abs((target.x - through.x) * along.y - (target.y - through.y) * along.x);
      if (off > 2 * reach) return [];
      return [
        {
          key: 'onCentreLine',
          locus: { kind: 'line', through, along },
          keeps: { kind: 'onCentreLine', point },
          says: 'on the centre line',
          weight: WEIGHT.length,
        },
      ];
    };
  },
};
