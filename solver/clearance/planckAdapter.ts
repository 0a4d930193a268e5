/**
 * The one file that imports planck: candidate pairs by its dynamic tree, and bodies for the rehearsal.
 *
 * Its traps: the tree fattens its boxes, so a hit is a candidate and never an answer; slop and skin of its bodies are
 * absolute and global, so the rehearsal scales its lengths.
 */
import {
  AABB,
  type Body,
  CircleShape,
  DynamicTree,
  FrictionJoint,
  MotorJoint,
  PolygonShape,
  RevoluteJoint,
  RopeJoint,
  Vec2,
  World,
} from 'planck';
import type { Bounds, XY } from '../geometry/index.ts';

/** Boxes that can be moved, and asked which of them come near a box. */
export interface NearTree {
  /** Moves the box of an index. */
  readonly move: (index: number, box: Bounds) => void;
  /** Calls `visit` for every index whose box comes within `margin` mm of the given one (and for some that do not). */
  readonly near: (box: Bounds, margin: number, visit: (index: number) => void) => void;
}

/** A tree of boxes; the index of a box is its place in the list. */
export function nearTreeOf(boxes: readonly Bounds[]): NearTree {
  const tree = new DynamicTree<number>();
  const proxies = boxes.map((box, index) => tree.createProxy(boxOf(box, 0), index));
  const still = new Vec2(0, 0);
  return {
    move: (index, box) => {
      const proxy = proxies[index];
      if (proxy !== undefined) tree.moveProxy(proxy, boxOf(box, 0), still);
    },
    near: (box, margin, visit) => {
      tree.query(boxOf(box, margin), (proxy) => {
        visit(tree.getUserData(proxy));
        return true;
      });
    },
  };
}

function boxOf([minX, minY, maxX, maxY]: Bounds, margin: number): AABB {
  return new AABB(new Vec2(minX - margin, minY - margin), new Vec2(maxX + margin, maxY + margin));
}

/**
 * Units of planck in a millimetre. Slop is 0.005 units and the skin of a polygon 0.01 units, absolute and global: so
 * they come to 0.00025 mm and 0.0005 mm, well below the 0.005 mm that a running fit has.
 */
const UNITS = 20;
/** Corners that one of planck's polygons can have. */
export const MOST_CORNERS = 12;
/** Time of one step, seconds of the world: it fixes nothing but the unit of time. */
const STEP_TIME = 1 / 60;
/** Rounds of planck's solver: four times its usual ones, since a train hands its force through many contacts. */
const VELOCITY_ROUNDS = 32;
const POSITION_ROUNDS = 12;

/** A body that turns on a bearing: shapes about its axis, mm; each shape belongs to one mesh and meets only that mesh. */
export interface TurningBody {
  readonly at: XY;
  /** How far its axis can move to any side, mm; 0 for a bearing without play. */
  readonly play: number;
  readonly shapes: readonly TurningShape[];
}

export type TurningShape =
  | { readonly kind: 'polygon'; readonly mesh: number; readonly corners: readonly XY[] }
  | { readonly kind: 'circle'; readonly mesh: number; readonly centre: XY; readonly radius: number };

/** Meshes that can be told apart: one bit each. */
export const MOST_MESHES = 31;

/** Bodies in a plane that push each other round. Angles in radians, lengths in mm; torques in units of the world. */
export interface TurningWorld {
  readonly step: () => void;
  /** Drives a body at so many radians a step, with at most so much torque. */
  readonly drive: (body: number, rate: number, torque: number) => void;
  /** Resists a body's turning with at most so much torque, from now on. */
  readonly brake: (body: number, torque: number) => void;
  readonly angle: (body: number) => number;
  /** Radians a step. */
  readonly rate: (body: number) => number;
  /** Moment of inertia, in units of the world. */
  readonly inertia: (body: number) => number;
  /** How far the axis stands from its place. */
  readonly aside: (body: number) => number;
  /** Deepest overlap of any two teeth, and the bodies of the two. */
  readonly deepest: () => { readonly overlap: number; readonly bodies: readonly [number, number] } | undefined;
}

/** Torque that changes a rate by one radian a step within one step, for one unit of inertia. */
export const TORQUE_UNIT = 1 / (STEP_TIME * STEP_TIME);

/** A world without weight, its bodies on their bearings. `friction` is that of tooth on tooth. */
export function turningWorldOf(plans: readonly TurningBody[], friction: number): TurningWorld {
  const world = new World({ gravity: new Vec2(0, 0), allowSleep: false });
  const frame = world.createBody();
  const bodies = plans.map((plan, index) => bodyIn(world, frame, plan, index, friction));
  let driven: { readonly body: Body; readonly rate: number; readonly joint: MotorJoint } | undefined;
  return {
    step: () => {
      driven?.joint.setAngularOffset(driven.body.getAngle() + driven.rate);
      world.step(STEP_TIME, VELOCITY_ROUNDS, POSITION_ROUNDS);
    },
    drive: (index, rate, torque) => {
      const body = bodies[index];
      if (!body || driven) return;
      // Solved together with the contacts, so that a light arbor before a heavy train does not swing about its speed.
      const joint = new MotorJoint({ maxForce: 0, maxTorque: torque, correctionFactor: 1 }, frame, body);
      world.createJoint(joint);
      driven = { body, rate, joint };
    },
    brake: (index, torque) => {
      const body = bodies[index];
      if (!body) return;
      if (torque > 0)
        world.createJoint(new FrictionJoint({ maxForce: 0, maxTorque: torque }, frame, body, body.getPosition()));
    },
    angle: (index) => bodies[index]?.getAngle() ?? 0,
    rate: (index) => (bodies[index]?.getAngularVelocity() ?? 0) * STEP_TIME,
    inertia: (index) => bodies[index]?.getInertia() ?? 0,
    aside: (index) => {
      const [place, plan] = [bodies[index]?.getPosition(), plans[index]];
      return place && plan ? Math.hypot(place.x / UNITS - plan.at[0], place.y / UNITS - plan.at[1]) : 0;
    },
    deepest: () => deepestOverlap(world),
  };
}

function bodyIn(world: World, frame: Body, plan: TurningBody, index: number, friction: number): Body {
  const at = new Vec2(plan.at[0] * UNITS, plan.at[1] * UNITS);
  const body = world.createBody({ type: 'dynamic', position: at, userData: index });
  for (const shape of plan.shapes) {
    const bit = 1 << shape.mesh;
    body.createFixture({
      shape:
        shape.kind === 'circle'
          ? new CircleShape(new Vec2(shape.centre[0] * UNITS, shape.centre[1] * UNITS), shape.radius * UNITS)
          : new PolygonShape(shape.corners.map(([x, y]) => new Vec2(x * UNITS, y * UNITS))),
      density: 1,
      friction,
      restitution: 0,
      filterCategoryBits: bit,
      filterMaskBits: bit,
    });
  }
  // All bodies are equally heavy: then teeth that touch feel like inertias, and the solver's rounds converge.
  // Teeth are spread evenly, so the middle of the mass is the axis but for rounding; it is set to be it.
  body.setMassData({ mass: 1, center: new Vec2(0, 0), I: body.getInertia() / body.getMass() });
  const here = new Vec2(0, 0);
  if (plan.play > 0) world.createJoint(new RopeJoint({ maxLength: plan.play * UNITS }, frame, body, at));
  else world.createJoint(new RevoluteJoint({ localAnchorA: at, localAnchorB: here, bodyA: frame, bodyB: body }));
  return body;
}

function deepestOverlap(world: World): ReturnType<TurningWorld['deepest']> {
  let found: ReturnType<TurningWorld['deepest']>;
  for (let contact = world.getContactList(); contact; contact = contact.getNext()) {
    if (!contact.isTouching()) continue;
    const manifold = contact.getWorldManifold(null);
    if (!manifold) continue;
    for (let point = 0; point < manifold.pointCount; point++) {
      const overlap = -(manifold.separations[point] ?? 0) / UNITS;
      if (found && overlap <= found.overlap) continue;
      const [a, b] = [contact.getFixtureA(), contact.getFixtureB()].map((fixture) => fixture.getBody().getUserData());
      found = { overlap, bodies: [a as number, b as number] }; // user data is the body's index
    }
  }
  return found;
}
