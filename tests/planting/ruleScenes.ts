/** Parts about one point, so that one rule decides where it stands. */
import { plantMovement } from '../../solver/planting/index.ts';
import { arbor, buildMovement, clockWheel, held, type RuleInput } from './buildMovement.ts';

/** Degrees in a radian. */
export const DEGREES = 180 / Math.PI;
/** A square case with its lower left corner at the origin. */
export const square = (size: number) => ({
  kind: 'path' as const,
  vertices: [
    { x: 0, y: 0 },
    { x: size, y: 0 },
    { x: size, y: size },
    { x: 0, y: size },
  ],
});
/** A circular outline. */
export const circle = (radius: number, x = 0, y = 0) => ({
  kind: 'circle' as const,
  centre: [x, y] as [number, number],
  radius,
});
/** Levels of every part here, mm. */
export const levels = { from: 0, to: 3 };

/** A and B are held; P is sketched near (20, 10); parts for gaps stand around. */
export function alone(rules: readonly RuleInput[], sketch: readonly [number, number] = [20.3, 9.8]) {
  return plantMovement(
    buildMovement({
      arbors: [arbor('A', 0, 0), arbor('B', 40, 0), arbor('P', ...sketch)],
      wheels: [
        clockWheel('WA', 'A', 30, 1),
        clockWheel('WP', 'P', 15, 1),
        { ...clockWheel('ring', 'A', 80, 1, 5), form: 'involute', internal: true, outerDiameter: 90 },
        { ...clockWheel('planet', 'P', 35, 1, 5), form: 'involute' },
      ],
      walls: [
        { id: 'drum', outline: circle(60), inner: circle(50), levels },
        { id: 'pillar', outline: circle(5, 20, 40), levels },
        { id: 'case', outline: square(100), inner: square(90), levels },
        { id: 'block', outline: square(10), levels },
      ],
      plates: [{ id: 'plate', outline: circle(55), levels }],
      openings: [{ id: 'window', plate: 'plate', outline: circle(12, 25, 15) }],
      rules: [held('a', 'A', 0, 0), held('b', 'B', 40, 0), ...rules],
    }),
  );
}

/** The direction of P from A is 30°, so that only the rule under test decides how far. */
export const ray: RuleInput = { kind: 'bearing', id: 'ray', point: 'P', centre: 'A', angle: 30 };
/** The place on the ray at a length from A. */
export const along = (length: number): [number, number] => [
  length * Math.cos(30 / DEGREES),
  length * Math.sin(30 / DEGREES),
];
