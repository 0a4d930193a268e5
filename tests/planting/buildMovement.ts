/** Short ways to write a movement in a test; defaults come from the schema itself. */
import type { EditOf } from '../../solver/movement/edits/edit.ts';
import type { PointId, RuleId } from '../../solver/movement/ids.ts';
import type { ItemInput } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { movementSchema } from '../../solver/movement/schema.ts';
import type { Place, PlacedMovement } from '../../solver/planting/placed.ts';

type Lists = 'arbors' | 'wheels' | 'posts' | 'marks' | 'plates' | 'walls' | 'openings' | 'rules';
type Parts = { readonly [List in Lists]?: readonly ItemInput<List>[] } & {
  readonly made?: readonly EditOf<'setMade'>['made'][];
  readonly display?: { readonly unit?: 'mm' | 'inch'; readonly decimals?: number };
};
export type RuleInput = ItemInput<'rules'>;

/** A movement as a file would give it, not validated beyond its shape. */
export function buildMovement(parts: Parts): Movement {
  return movementSchema.parse({ format: 'depthwright-movement', version: 2, ...parts });
}

export const arbor = (id: string, x: number, y: number): ItemInput<'arbors'> => ({ id, name: id, at: [x, y] });
export const mark = (id: string, x: number, y: number): ItemInput<'marks'> => ({ id, name: id, at: [x, y] });
export const held = (id: string, point: string, x: number, y: number): RuleInput => ({
  kind: 'held',
  id,
  point,
  at: [x, y],
});
export const distance = (id: string, a: string, b: string, length: number): RuleInput => ({
  kind: 'distance',
  id,
  points: [a, b],
  length,
});

/** A plain wheel of a clock's tooth form. */
export const clockWheel = (id: string, on: string, teeth: number, module: number, level = 0): ItemInput<'wheels'> => ({
  id,
  arbor: on,
  teeth,
  size: { module },
  form: 'cycloidal',
  level,
  thickness: 2,
});

/** The place of a point by its id as a test writes it. */
export function placeOf(placed: PlacedMovement, id: string): Place {
  const place = placed.places.get(id as PointId); // a test's own id
  if (!place) throw new Error(`${id} has no place`);
  return place;
}

export const ruleOf = (placed: PlacedMovement, id: string) => placed.rules.get(id as RuleId); // a test's own id
export const pointId = (id: string): PointId => id as PointId; // a test's own id

/** Every rule in use holds to the proof of the planting, 1e-9 mm. */
export function largestMiss(placed: PlacedMovement): number {
  return Math.max(0, ...[...placed.rules.values()].map(({ missBy }) => missBy));
}
