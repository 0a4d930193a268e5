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
  type Contact,
  DynamicTree,
  type Fixture,
  FrictionJoint,
  MotorJoint,
  PolygonShape,
  RevoluteJoint,
  RopeJoint,
  Settings,
  Vec2,
  World,
  type WorldManifold,
} from 'planck';
import type { Bounds, Point } from '../geometry/index.ts';

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

/**
 * Room of the boxes round moving teeth, units: about the way of a tip in a step, so that a box is not set anew each time.
 * Global like the slop, so it is only set while the world steps.
 */
const BOX_ROOM = 2;

/** A body that turns on a bearing, with the rims of its wheels. */
export interface TurningBody {
  readonly at: Point;
  /** How far its axis can move to any side, mm; 0 for a bearing without play. */
  readonly play: number;
  readonly rims: readonly ToothedRim[];
}

/** The teeth of a wheel in one mesh, about its axis. Only those near the mate take part, so that a large wheel costs no more. */
export interface ToothedRim {
  /** Rims meet only within their mesh. */
  readonly mesh: number;
  /** Each tooth's shapes; the first stands at `phase`, the others follow evenly, anticlockwise. */
  readonly teeth: readonly (readonly TurningShape[])[];
  readonly phase: number;
  /** What is there wherever it turns: the root circle. */
  readonly always: readonly TurningShape[];
  /** Direction in the plane in which it meets its mate, and how far to each side teeth can meet, radians. */
  readonly towards: number;
  readonly reach: number;
}

/** A piece of a body in the plane, in its own frame, mm. */
export type TurningShape =
  | { readonly kind: 'polygon'; readonly corners: readonly Point[] }
  | { readonly kind: 'circle'; readonly centre: Point; readonly radius: number };

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
  /** Deepest overlap of any two teeth, the bodies of the two and their mesh. */
  readonly deepest: () => Overlap | undefined;
  /** Calls `visit` for every push of tooth on tooth in the last step: on a body, in a mesh, in units of the world. */
  readonly pushes: (visit: (body: number, mesh: number, x: number, y: number) => void) => void;
}

/** How deep two bodies stand in each other, mm, and at which mesh. */
export interface Overlap {
  readonly overlap: number;
  readonly bodies: readonly [number, number];
  readonly mesh: number;
}

/** Torque that changes a rate by one radian a step within one step, for one unit of inertia. */
export const TORQUE_UNIT = 1 / (STEP_TIME * STEP_TIME);

/** A world without weight, its bodies on their bearings. `friction` is that of tooth on tooth. */
export function turningWorldOf(plans: readonly TurningBody[], friction: number): TurningWorld {
  const world = new World({ gravity: new Vec2(0, 0), allowSleep: false, continuousPhysics: false });
  const frame = world.createBody();
  const bodies = plans.map((plan, index) => bodyIn(world, frame, plan, index));
  const rims = plans.flatMap((plan, index) => plan.rims.map((rim) => rimOn(bodies[index] as Body, rim, friction))); // one a plan
  let driven: { readonly body: Body; readonly rate: number; readonly joint: MotorJoint } | undefined;
  return {
    step: () => {
      const usual = Settings.aabbExtension;
      Settings.aabbExtension = BOX_ROOM;
      for (const rim of rims) rim.follow();
      driven?.joint.setAngularOffset(driven.body.getAngle() + driven.rate);
      world.step(STEP_TIME, VELOCITY_ROUNDS, POSITION_ROUNDS);
      Settings.aabbExtension = usual;
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
      if (torque > 0) {
        world.createJoint(new FrictionJoint({ maxForce: 0, maxTorque: torque }, frame, body, body.getPosition()));
      }
    },
    angle: (index) => bodies[index]?.getAngle() ?? 0,
    rate: (index) => (bodies[index]?.getAngularVelocity() ?? 0) * STEP_TIME,
    inertia: (index) => bodies[index]?.getInertia() ?? 0,
    aside: (index) => {
      const [place, plan] = [bodies[index]?.getPosition(), plans[index]];
      return place && plan ? Math.hypot(place.x / UNITS - plan.at.x, place.y / UNITS - plan.at.y) : 0;
    },
    deepest: () => deepestOverlap(world),
    pushes: (visit) => pushesOf(world, visit),
  };
}

function bodyIn(world: World, frame: Body, plan: TurningBody, index: number): Body {
  const at = new Vec2(plan.at.x * UNITS, plan.at.y * UNITS);
  const body = world.createBody({ type: 'dynamic', position: at, userData: index });
  setMass(body, inertiaOf(plan));
  const here = new Vec2(0, 0);
  if (plan.play > 0) world.createJoint(new RopeJoint({ maxLength: plan.play * UNITS }, frame, body, at));
  else world.createJoint(new RevoluteJoint({ localAnchorA: at, localAnchorB: here, bodyA: frame, bodyB: body }));
  return body;
}

/**
 * All bodies are equally heavy: then teeth that touch feel like inertias, and the solver's rounds converge.
 * Teeth are spread evenly, so the middle of the mass is the axis but for rounding; it is set to be it.
 */
function setMass(body: Body, inertia: number): void {
  body.setMassData({ mass: 1, center: new Vec2(0, 0), I: inertia });
}

/** Moment of inertia about the axis for a mass of one, all teeth counted. */
function inertiaOf({ rims }: TurningBody): number {
  const data = { mass: 0, center: new Vec2(0, 0), I: 0 };
  let [mass, inertia] = [0, 0];
  for (const { teeth, always } of rims) {
    for (const shape of [...always, ...teeth.flat()]) {
      planckShape(shape).computeMass(data, 1);
      mass += data.mass;
      inertia += data.I;
    }
  }
  return mass > 0 ? inertia / mass : 1;
}

function planckShape(shape: TurningShape): CircleShape | PolygonShape {
  if (shape.kind === 'polygon') {
    return new PolygonShape(shape.corners.map(({ x, y }) => new Vec2(x * UNITS, y * UNITS)));
  }
  return new CircleShape(new Vec2(shape.centre.x * UNITS, shape.centre.y * UNITS), shape.radius * UNITS);
}

/** A rim on its body, whose teeth come and go as they near their mate and leave it. */
function rimOn(body: Body, rim: ToothedRim, friction: number): { readonly follow: () => void } {
  const bit = 1 << rim.mesh;
  const inertia = body.getInertia();
  // Without density, so that a tooth that comes changes nothing about the body's mass.
  const filter = { density: 0, friction, restitution: 0, filterCategoryBits: bit, filterMaskBits: bit };
  const put = (shape: TurningShape): Fixture => body.createFixture({ shape: planckShape(shape), ...filter });
  for (const shape of rim.always) put(shape);
  const count = rim.teeth.length;
  const pitch = (2 * Math.PI) / count;
  // One tooth to spare on each side: the one that is coming.
  const beside = Math.min(Math.floor(rim.reach / pitch + 0.5) + 1, Math.ceil((count - 1) / 2));
  const there = new Map<number, readonly Fixture[]>();
  let middle: number | undefined;
  return {
    follow: () => {
      const nearest = Math.round((rim.towards - body.getAngle() - rim.phase) / pitch);
      if (nearest === middle) return;
      middle = nearest;
      const wanted = new Set<number>();
      for (let k = -beside; k <= beside; k++) wanted.add((((nearest + k) % count) + count) % count);
      let gone = false;
      for (const [tooth, fixtures] of there) {
        if (wanted.has(tooth)) continue;
        for (const fixture of fixtures) body.destroyFixture(fixture);
        there.delete(tooth);
        gone = true;
      }
      // planck weighs the body anew when a fixture goes.
      if (gone) setMass(body, inertia);
      for (const tooth of wanted) if (!there.has(tooth)) there.set(tooth, (rim.teeth[tooth] ?? []).map(put));
    },
  };
}

function eachTouch(
  world: World,
  visit: (manifold: WorldManifold, contact: Contact, bodies: readonly [number, number], mesh: number) => void,
): void {
  for (let contact = world.getContactList(); contact; contact = contact.getNext()) {
    if (!contact.isTouching()) continue;
    const manifold = contact.getWorldManifold(null);
    if (!manifold) continue;
    const [first, second] = [contact.getFixtureA(), contact.getFixtureB()];
    // User data is the body's index; a mesh is one bit.
    const bodies = [first.getBody().getUserData() as number, second.getBody().getUserData() as number] as const;
    visit(manifold, contact, bodies, 31 - Math.clz32(first.getFilterCategoryBits()));
  }
}

function deepestOverlap(world: World): Overlap | undefined {
  let found: Overlap | undefined;
  eachTouch(world, (manifold, _contact, bodies, mesh) => {
    for (let point = 0; point < manifold.pointCount; point++) {
      const overlap = -(manifold.separations[point] ?? 0) / UNITS;
      if (!found || overlap > found.overlap) found = { overlap, bodies, mesh };
    }
  });
  return found;
}

/** planck keeps the impulses of the last step with the points of each contact: along its normal and square to it. */
function pushesOf(world: World, visit: (body: number, mesh: number, x: number, y: number) => void): void {
  eachTouch(world, ({ normal, pointCount }, contact, [first, second], mesh) => {
    const { points } = contact.getManifold();
    for (let i = 0; i < pointCount; i++) {
      const [along, across] = [points[i]?.normalImpulse ?? 0, points[i]?.tangentImpulse ?? 0];
      const x = along * normal.x + across * normal.y;
      const y = along * normal.y - across * normal.x;
      visit(second, mesh, x, y);
      visit(first, mesh, -x, -y);
    }
  });
}
