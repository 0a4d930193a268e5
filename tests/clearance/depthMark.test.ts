/** A depth that binds is marked where its teeth meet, outside and inside a ring. */
import { expect, test } from 'vitest';
import { checkDepthsUnderShake } from '../../solver/clearance/checks/checkDepthsUnderShake.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { movementOfParts } from '../support/movements.ts';

/** A wheel at the origin and a pinion of 20 beside it, module 1, so near that they bind. */
function bound(teeth: number, internal: boolean, distance: number) {
  const size = { module: 1 };
  const wheel = { form: 'involute', size, level: 0, thickness: 2 };
  return plantMovement(
    movementOfParts({
      arbors: [
        { id: 'a', at: [0, 0], diameter: 3 },
        { id: 'b', at: [distance, 0], diameter: 3 },
      ],
      wheels: [
        { ...wheel, id: 'w', arbor: 'a', teeth, internal },
        { ...wheel, id: 'p', arbor: 'b', teeth: 20 },
      ],
      rules: [
        { id: 'h', kind: 'held', point: 'a', at: [0, 0] },
        { id: 'd', kind: 'depth', wheels: ['w', 'p'], use: 'held', held: distance },
        { id: 'x', kind: 'bearing', point: 'b', centre: 'a', angle: 0 },
      ],
    }),
  );
}

// Pitch radii 30 and 10, axes 39 apart: the pitch circles of the pair divide them as 60 : 20.
test.each([
  ['outside', 60, false, 39, 29.25],
  ['inside', 60, true, 21, 31.5],
])('%s', (_, teeth, internal, distance, x) => {
  const [finding] = checkDepthsUnderShake(bound(teeth, internal, distance));
  expect(finding?.at?.[0].x).toBeCloseTo(x, 9);
  expect(finding?.at?.[0].y).toBeCloseTo(0, 9);
});
