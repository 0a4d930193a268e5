/** Placed movements made by hand: the places and the order of construction are stated, nothing is solved. */

import type { Point } from '../../solver/geometry/index.ts';
import type { PointId, RuleId } from '../../solver/movement/ids.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import type { ConstructionStep, Place, PlacedMovement, PlaceState } from '../../solver/planting/placed.ts';
import { movementOfParts } from '../support/movements.ts';

export interface HandPlace {
  readonly at: readonly [number, number];
  readonly by?: readonly string[];
  readonly state?: PlaceState;
  readonly kind?: ConstructionStep['kind'];
}

/** Reads a movement given as data, and fails with its problems when it has any. */
export function movementOf(data: object): Movement {
  return movementOfParts(data);
}

/** The placed movement with points in the order given. Ids are those of the data. */
export function placedByHand(data: object, points: Readonly<Record<string, HandPlace>>): PlacedMovement {
  const movement = movementOf(data);
  const places = new Map<PointId, Place>();
  const order: ConstructionStep[] = [];
  for (const [key, { at, by = [], state = 'planted', kind = 'crossing' }] of Object.entries(points)) {
    const id = key as PointId; // the test's own data
    const placedBy = by as readonly RuleId[]; // the test's own data
    places.set(id, { id, x: at[0], y: at[1], state, placedBy, hangsOn: [], free: [], movedBy: [] });
    order.push({ kind, points: [id], rules: placedBy });
  }
  return {
    movement,
    places,
    rules: new Map(),
    order,
    freeMotions: 0,
    motions: [],
    disagreements: [],
    plusMinusBetween: () => undefined,
  };
}

function turned(of: Point, about: Point, angle: number): readonly [number, number] {
  const dx = of.x - about.x;
  const dy = of.y - about.y;
  return [about.x + dx * Math.cos(angle) - dy * Math.sin(angle), about.y + dx * Math.sin(angle) + dy * Math.cos(angle)];
}

const wheelOf = (id: string, arbor: string, teeth: number) => ({
  id,
  arbor,
  teeth,
  size: { module: 0.8 },
  form: 'cycloidal',
  level: 5,
  thickness: 2,
});

/** Half chord and foot of the two depths by hand: depths 28.8 and 27.2 over centres 45 apart. */
export const THIRD = { x: 16.655303, along: 23.495556 };

/** Exact crossing of two depths by hand (SOURCES.md) with the centre at (40, 30). */
export function thirdPlace(): readonly [number, number] {
  const along = (28.8 ** 2 - 27.2 ** 2 + 45 ** 2) / 90;
  return [40 + Math.sqrt(28.8 ** 2 - along ** 2), 30 + along];
}

const CENTRE: Point = { x: 40, y: 30 };

/** A rectangular plate with every kind of construction on it, in the order in which each is possible. */
export function everyConstruction(outline?: object): PlacedMovement {
  const third = thirdPlace();
  const evenRadius = 22;
  const even = (k: number) => turned({ x: CENTRE.x + evenRadius, y: CENTRE.y }, CENTRE, 0.4 + (k * 2 * Math.PI) / 3);
  const ray = (200 * Math.PI) / 180;
  const seconds: readonly [number, number] = [CENTRE.x + 18 * Math.cos(ray), CENTRE.y + 18 * Math.sin(ray)];
  const data = {
    title: 'Every construction',
    date: '2026-03-01',
    plates: [
      {
        id: 'base',
        name: 'Base plate',
        levels: { from: 0, to: 3 },
        outline: outline ?? {
          kind: 'path',
          vertices: [
            { x: 0, y: 0 },
            { x: 100, y: 0 },
            { x: 100, y: 90 },
            { x: 0, y: 90 },
          ],
        },
      },
    ],
    arbors: [
      { id: 'centre', name: 'Centre', at: [40, 30] },
      { id: 'escape', name: 'Escape', at: [40, 75] },
      { id: 'third', name: 'Third', at: third, diameter: 1.5 },
      {
        id: 'pipe',
        name: 'Hour pipe',
        at: [40, 30],
        ridesOn: 'centre',
        bearings: [{ plate: 'base', bore: 5, pivot: 4.9, length: 3 }],
      },
      { id: 'seconds', name: 'Seconds', at: seconds },
      { id: 'loose', name: 'Loose one', at: [80, 80] },
      { id: 'blockA', name: 'Block A', at: [70, 20] },
      { id: 'blockB', name: 'Block B', at: [85, 33] },
    ],
    wheels: [
      wheelOf('w1', 'centre', 64),
      wheelOf('p1', 'third', 8),
      wheelOf('w2', 'third', 60),
      wheelOf('p2', 'escape', 8),
    ],
    posts: [
      { id: 'postA', name: 'Post A', at: [10, 80], diameter: 6, hole: 3 },
      { id: 'postB', name: 'Post B', at: even(0), diameter: 6, hole: 3 },
      { id: 'postC', name: 'Post C', at: even(1), diameter: 6, hole: 3 },
      { id: 'postD', name: 'Post D', at: even(2), diameter: 6, hole: 3 },
    ],
    marks: [
      { id: 'opposite', name: 'Opposite', at: [80 - third[0], 60 - third[1]], hole: 1 },
      { id: 'online', name: 'On line', at: [40, 60], hole: 1 },
      { id: 'square', name: 'Square', at: [60, 30 + (20 * 23.5) / 16.66], hole: 1 },
    ],
    rules: [
      { id: 'h1', kind: 'held', point: 'centre', at: [40, 30] },
      { id: 'h2', kind: 'held', point: 'escape', at: [40, 75] },
      { id: 'd1', kind: 'depth', wheels: ['w1', 'p1'] },
      { id: 'd2', kind: 'depth', wheels: ['w2', 'p2'] },
      { id: 's1', kind: 'samePlace', points: ['pipe', 'centre'] },
      { id: 'r1', kind: 'radius', point: 'seconds', centre: 'centre', length: 18 },
      { id: 'b1', kind: 'bearing', point: 'seconds', centre: 'centre', angle: 200 },
      { id: 'o1', kind: 'opposite', point: 'opposite', centre: 'centre', of: 'third' },
      { id: 'l1', kind: 'inLine', point: 'online', through: ['centre', 'escape'] },
      { id: 'r2', kind: 'distance', points: ['online', 'third'], length: Math.hypot(third[0] - 40, third[1] - 60) },
      { id: 'h3', kind: 'held', point: 'postA', at: [10, 80] },
      { id: 'r3', kind: 'radius', point: 'postB', centre: 'centre', length: evenRadius },
      { id: 'b3', kind: 'bearing', point: 'postB', centre: 'centre', reference: 'third', angle: 10 },
      { id: 'e1', kind: 'evenSpacing', points: ['postB', 'postC', 'postD'], centre: 'centre' },
    ],
  };
  const square: readonly [number, number] = [60, 52];
  return placedByHand(data, {
    centre: { at: [40, 30], by: ['h1'], kind: 'given' },
    escape: { at: [40, 75], by: ['h2'], kind: 'given' },
    third: { at: third, by: ['d1', 'd2'] },
    pipe: { at: [40, 30], by: ['s1'], kind: 'derived' },
    seconds: { at: seconds, by: ['r1', 'b1'] },
    opposite: { at: [80 - third[0], 60 - third[1]], by: ['o1'], kind: 'derived' },
    online: { at: [40, 60], by: ['l1', 'r2'] },
    postA: { at: [10, 80], by: ['h3'], kind: 'given' },
    postB: { at: even(0), by: ['r3', 'b3'] },
    postC: { at: even(1), by: ['e1'], kind: 'derived' },
    postD: { at: even(2), by: ['e1'], kind: 'derived' },
    blockA: { at: [70, 20], by: [], kind: 'block' },
    blockB: { at: [85, 33], by: [], kind: 'block' },
    square: { at: square, by: [], kind: 'block' },
    loose: { at: [80, 80], state: 'loose', kind: 'loose' },
  });
}
