/** Where carried arbors stand once their arms have turned. A picture only: the planting itself stays as it is. */

import type { ArborId, PointId } from '../../../solver/movement/ids.ts';
import { carriersOf } from '../../../solver/movement/schema.ts';
import type { Place, PlacedMovement } from '../../../solver/planting/placed.ts';
import type { Turning } from '../../../solver/train/index.ts';
import type { Rational } from '../../../solver/train/turning/rational.ts';
import { turnedAngle } from './turnedPhases.ts';

type Plane = Pick<Place, 'x' | 'y'>;

// A planting finds its parts when they are asked for, so it cannot be copied field by field: both stand-ins ask it.

/** A place that was carried round, otherwise as at rest. */
class CarriedPlace implements Place {
  readonly x: number;
  readonly y: number;
  readonly #rest: Place;

  constructor(rest: Place, now: Plane) {
    this.#rest = rest;
    this.x = now.x;
    this.y = now.y;
  }

  get id() {
    return this.#rest.id;
  }

  get state() {
    return this.#rest.state;
  }

  get placedBy() {
    return this.#rest.placedBy;
  }

  get hangsOn() {
    return this.#rest.hangsOn;
  }

  get free() {
    return this.#rest.free;
  }

  get other() {
    return this.#rest.other;
  }

  get crossingAngle() {
    return this.#rest.crossingAngle;
  }

  get movedBy() {
    return this.#rest.movedBy;
  }

  get spread() {
    return this.#rest.spread;
  }
}

/** A planting with carried places in it, otherwise as at rest. */
class CarriedMovement implements PlacedMovement {
  readonly movement: PlacedMovement['movement'];
  readonly places: PlacedMovement['places'];
  readonly plusMinusBetween: PlacedMovement['plusMinusBetween'];
  readonly #rest: PlacedMovement;

  constructor(rest: PlacedMovement, places: PlacedMovement['places']) {
    this.#rest = rest;
    this.movement = rest.movement;
    this.places = places;
    this.plusMinusBetween = (a, b) => rest.plusMinusBetween(a, b);
  }

  get rules() {
    return this.#rest.rules;
  }

  get order() {
    return this.#rest.order;
  }

  get freeMotions() {
    return this.#rest.freeMotions;
  }

  get motions() {
    return this.#rest.motions;
  }

  get disagreements() {
    return this.#rest.disagreements;
  }
}

/**
 * The planting with every carried arbor brought round by its arm, arms on arms included; `placed` itself where
 * nothing is carried or nothing has turned.
 */
export function carriedPlaces(placed: PlacedMovement, turning: Turning, turned: Rational): PlacedMovement {
  if (turned.n === 0n || carriersOf(placed.movement).length === 0) return placed;
  const moved = new Map<ArborId, Plane | undefined>();
  const placeOf = (arbor: ArborId): Plane | undefined => {
    if (moved.has(arbor)) return moved.get(arbor);
    const rest = placed.places.get(arbor);
    moved.set(arbor, rest); // an arm that were carried by itself would find its place at rest
    const arm = turning.arbors.get(arbor)?.carrier?.arm;
    const armRest = arm && placed.places.get(arm);
    const armNow = arm && placeOf(arm);
    if (!rest || !arm || !armRest || !armNow) return rest;
    const angle = turnedAngle(turning, arm, turned);
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const [dx, dy] = [rest.x - armRest.x, rest.y - armRest.y];
    const now = { x: armNow.x + cos * dx - sin * dy, y: armNow.y + sin * dx + cos * dy };
    moved.set(arbor, now);
    return now;
  };
  const places = new Map<PointId, Place>(placed.places);
  for (const { id } of placed.movement.arbors) {
    const [rest, now] = [placed.places.get(id), placeOf(id)];
    if (rest && now && now !== rest) places.set(id, new CarriedPlace(rest, now));
  }
  return new CarriedMovement(placed, places);
}
