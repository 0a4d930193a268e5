/** Small movements for clearance tests, written as a file would hold them. */

import type { Movement } from '../../solver/movement/schema.ts';
import { movementOfParts } from '../support/movements.ts';

/** Reads a scene, or fails with all that is wrong with it. */
export function sceneOf(parts: Readonly<Record<string, unknown>>): Movement {
  return movementOfParts(parts);
}

/** An arbor held at its place. */
export function arborAt(id: string, x: number, y: number, more: object = {}): { arbor: object; rule: object } {
  return {
    arbor: { id, name: id, at: [x, y], diameter: 2, ...more },
    rule: { id: `place-${id}`, kind: 'held', point: id, at: [x, y] },
  };
}

/** An involute wheel of module 1 with a stated tip diameter, so that gaps are easy to tell by hand. */
export function wheelOf(
  id: string,
  arbor: string,
  tipDiameter: number,
  level: number,
  thickness = 2,
  more: object = {},
): object {
  const teeth = Math.round(tipDiameter - 2);
  return { id, name: id, arbor, teeth, size: { module: 1 }, form: 'involute', tipDiameter, level, thickness, ...more };
}

/** Two wheels on held arbors `apart` mm from each other. */
export function twoWheels(
  apart: number,
  first: [number, number, number],
  second: [number, number, number],
  more: object = {},
): Movement {
  const a = arborAt('A', 0, 0);
  const b = arborAt('B', apart, 0);
  return sceneOf({
    arbors: [a.arbor, b.arbor],
    rules: [a.rule, b.rule],
    wheels: [wheelOf('a', 'A', ...first), wheelOf('b', 'B', ...second)],
    ...more,
  });
}
