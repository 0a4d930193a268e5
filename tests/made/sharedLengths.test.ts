/** Shared lengths when a movement is made: an error in one moves the point by its part, and the point can be struck. */
import { describe, expect, it } from 'vitest';
import { TrialPlanting } from '../../solver/made/errors/trialPlanting.ts';
import { markingSteps } from '../../solver/marking/index.ts';
import type { PointId } from '../../solver/movement/ids.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { movementOfParts } from '../support/movements.ts';

/** P with four lengths of 30 all about it, square to each other; the first is known twice as well. Our own scenario. */
function scene() {
  const at = { Q0: [30, 0], Q1: [0, 30], Q2: [-30, 0], Q3: [0, -30] } as const;
  const ids = Object.keys(at);
  return plantMovement(
    movementOfParts({
      arbors: [...Object.entries(at), ['P', [0.2, 0.1]] as const].map(([id, place]) => ({
        id,
        at: place,
        diameter: 1,
      })),
      rules: [
        ...Object.entries(at).map(([id, place]) => ({ id: `h${id}`, kind: 'held', point: id, at: place })),
        ...ids.map((id, k) => ({
          id: `d${k}`,
          kind: 'distance',
          points: [id, 'P'],
          length: 30,
          plusMinus: k === 0 ? 0.02 : 0.04,
        })),
        { id: 'share', kind: 'shareDifference', point: 'P', among: ['d0', 'd1', 'd2', 'd3'] },
      ],
    }),
  );
}

describe('shared lengths', () => {
  it('an error in one of them moves the point by its weight over all that pull that way', () => {
    const placed = scene();
    const trial = new TrialPlanting(placed);
    const { ground } = trial;
    const set = trial.struck.find((r) => {
      const source = ground.sources[r];
      return source?.kind === 'rule' && source.rule === 'd0';
    });
    expect(set).toBeDefined();
    trial.shiftValue(set ?? -1, 0, 0.05);
    const coords = trial.plant();
    const p = ground.indexOf.get('P' as PointId) ?? -1; // a point of the scene
    // Along x pull d0 with weight 4 and d2 with weight 1: four fifths of the error, away from Q0.
    expect(coords?.[2 * p]).toBeCloseTo(-0.04, 4);
    expect(coords?.[2 * p + 1]).toBeCloseTo(0, 4);
    trial.clear();
    expect(trial.plant()?.[2 * p]).toBeCloseTo(0, 9);
  });

  it('the point is struck by settings that are worked out from its place', () => {
    const placed = scene();
    const step = markingSteps(placed, {}).find(({ point }) => point === 'P');
    expect(step?.kind).toMatch(/^(derivedArcs|offset)$/);
    expect(step?.place[0]).toBeCloseTo(0, 9);
    expect(step?.loci.length).toBe(2);
  });
});
