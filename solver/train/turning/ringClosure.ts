/**
 * Whether the teeth of a closed ring of depths can all stand in mesh at once.
 *
 * Each depth of the ring is a congruence modulo 1 between two angles (meshes.ts). A ring that can turn has a whole
 * combination y of its depths in which every angle cancels; the same combination of the right-hand sides must then
 * be a whole number, and what is over is the miss. For outside teeth and single wheels all y are 1 and -1 in turn:
 * the alternating sum of the ring condition. Compound wheels bring their ratio into y, internal ones change its sign.
 * A ring that cannot turn always fits, at a countable number of phases of its first wheel.
 */
import type { ArborId, RuleId, WheelId } from '../../movement/ids.ts';
import type { Movement } from '../../movement/schema.ts';
import { fromWhole, type Mesh, meshesOf, meshTarget, type Places } from './meshes.ts';
import {
  commonDivisor,
  divide,
  isZero,
  magnitude,
  multiply,
  negate,
  ONE,
  type Rational,
  rational,
  subtract,
  toNumber,
  ZERO,
} from './rational.ts';

/** One closed ring of depths, in order: depth i joins body i and body i + 1, the last joins the first. */
export interface MeshRing {
  readonly bodies: readonly ArborId[];
  readonly meshes: readonly Mesh[];
}

/** What is told of a ring of depths whether it closes or not. */
interface RingBase {
  readonly bodies: readonly ArborId[];
  readonly depths: readonly RuleId[];
}

/** Whether the teeth of a ring can all stand in mesh, by how much they miss, or that it cannot be told. */
export type RingClosure = RingBase &
  (
    | {
        /** Fits, or misses by `missTeeth` of a tooth at the last depth when all the others are right. */
        readonly kind: 'closes' | 'misses';
        readonly missTeeth: number;
      }
    | {
        /** Fits once a wheel is set on its arbor: its tooth so many degrees ahead of that of its fellow. */
        readonly kind: 'setOnArbor';
        readonly missTeeth: number;
        readonly wheel: WheelId;
        readonly turnDeg: number;
      }
    | {
        /** Cannot turn, but fits: so many phases in a pitch of the first wheel, at these tooth angles (degrees). */
        readonly kind: 'standsStill';
        readonly phases: number;
        readonly anglesDeg: readonly number[];
      }
    | { readonly kind: 'notPlaced' }
  );

/** Miss that is read as fitting, teeth: a thousandth, far below the play of any depth. */
export const FITS_TEETH = 1e-3;

/** Every independent ring of depths, short ones first reached (breadth first from the first wheel named). */
export function meshRings(meshes: readonly Mesh[]): readonly MeshRing[] {
  const around = new Map<ArborId, Mesh[]>();
  for (const mesh of meshes) {
    for (const body of mesh.bodies) {
      const list = around.get(body);
      if (list) list.push(mesh);
      else around.set(body, [mesh]);
    }
  }
  const upTo = new Map<ArborId, Mesh | undefined>();
  const rings: MeshRing[] = [];
  const used = new Set<Mesh>();
  for (const first of around.keys()) {
    if (upTo.has(first)) continue;
    upTo.set(first, undefined);
    const queue = [first];
    for (let index = 0; index < queue.length; index++) {
      const at = queue[index] as ArborId; // below its length
      for (const mesh of around.get(at) ?? []) {
        if (used.has(mesh)) continue;
        used.add(mesh);
        const far = farBody(mesh, at);
        if (upTo.has(far)) rings.push(ringOf(mesh, upTo));
        else {
          upTo.set(far, mesh);
          queue.push(far);
        }
      }
    }
  }
  return rings;
}

/** The other of the two bodies of a depth. */
export const farBody = (mesh: Mesh, body: ArborId): ArborId =>
  mesh.bodies[0] === body ? mesh.bodies[1] : mesh.bodies[0];

/** The ring that `closing` shuts in the tree of first reaches; `closing` comes last. */
function ringOf(closing: Mesh, upTo: ReadonlyMap<ArborId, Mesh | undefined>): MeshRing {
  const way = (start: ArborId): { bodies: ArborId[]; meshes: Mesh[] } => {
    const bodies = [start];
    const meshes: Mesh[] = [];
    let at = start;
    for (let mesh = upTo.get(at); mesh; mesh = upTo.get(at)) {
      at = farBody(mesh, at);
      bodies.push(at);
      meshes.push(mesh);
    }
    return { bodies, meshes };
  };
  const [left, right] = [way(closing.bodies[0]), way(closing.bodies[1])];
  const place = new Map(right.bodies.map((body, index) => [body, index]));
  const meet = left.bodies.findIndex((body) => place.has(body));
  const far = place.get(left.bodies[meet] as ArborId) ?? 0; // both ways end at the first body
  return {
    bodies: [...left.bodies.slice(0, meet + 1), ...right.bodies.slice(0, far).reverse()],
    meshes: [...left.meshes.slice(0, meet), ...right.meshes.slice(0, far).reverse(), closing],
  };
}

const coefficientAt = (mesh: Mesh, body: ArborId): number => mesh.coefficients[mesh.bodies[0] === body ? 0 : 1];

/** Whole factors of the ring's depths in which all angles cancel; undefined where the ring cannot turn. */
export function ringFactors(ring: MeshRing): readonly bigint[] | undefined {
  const { bodies, meshes } = ring;
  const factors: Rational[] = [ONE];
  for (let index = 1; index < meshes.length; index++) {
    const [before, here, body] = [meshes[index - 1] as Mesh, meshes[index] as Mesh, bodies[index] as ArborId]; // in range
    const step = rational(-coefficientAt(before, body), coefficientAt(here, body));
    factors.push(multiply(factors[index - 1] as Rational, step)); // pushed in the round before
  }
  const [first, last] = [meshes[0] as Mesh, meshes[meshes.length - 1] as Mesh]; // rings have two depths or more
  const start = bodies[0] as ArborId; // as above
  const left = subtract(
    multiply(factors[factors.length - 1] as Rational, rational(coefficientAt(last, start))), // one a depth
    negate(rational(coefficientAt(first, start))),
  );
  if (!isZero(left)) return undefined;
  const unit = factors.reduce((common, factor) => commonDivisor(common, magnitude(factor)), ZERO);
  return factors.map((factor) => divide(factor, unit).n);
}

/** Combined right-hand side of a ring that can turn, turns: whole where it closes. */
export function ringSum(ring: MeshRing, factors: readonly bigint[], places: Places): number | undefined {
  let sum = 0;
  for (let index = 0; index < ring.meshes.length; index++) {
    const target = meshTarget(ring.meshes[index] as Mesh, places); // in range
    if (target === undefined) return undefined;
    sum += Number(factors[index]) * fromWhole(target);
  }
  return sum;
}

/** Checks every ring of depths of a placed movement. */
export const checkRings = (movement: Movement, places: Places): readonly RingClosure[] =>
  meshRings(meshesOf(movement)).map((ring) => checkRing(ring, places));

/** Whether the depths of one closed ring can stand in mesh together, and by how many teeth they miss. */
export function checkRing(ring: MeshRing, places: Places): RingClosure {
  const base = { bodies: ring.bodies, depths: ring.meshes.map((mesh) => mesh.rule) };
  const factors = ringFactors(ring);
  if (!factors) return standingRing(ring, places, base);
  const sum = ringSum(ring, factors, places);
  if (sum === undefined) return { ...base, kind: 'notPlaced' };
  const over = fromWhole(sum);
  const missTeeth = over / Number(factors[factors.length - 1]);
  if (Math.abs(missTeeth) <= FITS_TEETH) return { ...base, kind: 'closes', missTeeth };
  const settable = freeWheel(ring);
  if (settable) {
    // Turning the wheel on by d lowers its depth's right-hand side by its coefficient times d.
    const turnDeg = (360 * over) / (Number(factors[settable.index]) * settable.coefficient);
    return { ...base, kind: 'setOnArbor', missTeeth, wheel: settable.wheel.id, turnDeg };
  }
  return { ...base, kind: 'misses', missTeeth };
}

/** A wheel of the ring that shares its arbor with the other one the ring uses there and may still be turned on it. */
function freeWheel(ring: MeshRing) {
  const count = ring.meshes.length;
  for (let index = 0; index < count; index++) {
    const body = ring.bodies[index] as ArborId; // in range
    const [before, here] = [ring.meshes[(index + count - 1) % count] as Mesh, ring.meshes[index] as Mesh]; // in range
    const [entering, leaving] = [before, here].map((mesh) => mesh.wheels[mesh.bodies[0] === body ? 0 : 1]);
    if (!entering || !leaving || entering.id === leaving.id) continue;
    if (leaving.phase === undefined) return { wheel: leaving, index, coefficient: coefficientAt(here, body) };
    if (entering.phase === undefined) {
      return { wheel: entering, index: (index + count - 1) % count, coefficient: coefficientAt(before, body) };
    }
  }
  return undefined;
}

/** A ring that cannot turn: the angles of its first wheel at which all teeth meet. */
function standingRing(ring: MeshRing, places: Places, base: RingBase): RingClosure {
  // Go once round: the first angle comes back as round * angle + sum of share[i] * (e[i] + whole number).
  let round = ONE;
  let shares: Rational[] = [];
  let whole = 0;
  const targets = ring.meshes.map((mesh) => meshTarget(mesh, places));
  ring.meshes.forEach((mesh, index) => {
    const [here, next] = [ring.bodies[index] as ArborId, ring.bodies[(index + 1) % ring.bodies.length] as ArborId]; // in range
    const step = rational(-coefficientAt(mesh, here), coefficientAt(mesh, next));
    round = multiply(round, step);
    shares = [...shares.map((share) => multiply(share, step)), rational(1, coefficientAt(mesh, next))];
  });
  const scale = divide(ONE, subtract(ONE, round));
  const first = ring.meshes[0] as Mesh; // rings have two depths or more
  const wheel = first.wheels[first.bodies[0] === ring.bodies[0] ? 0 : 1];
  const pitch = rational(1, wheel.teeth);
  const steps = shares.map((share) => magnitude(multiply(share, scale)));
  const step = steps.reduce(commonDivisor, pitch);
  for (let index = 0; index < targets.length; index++) {
    const target = targets[index];
    if (target === undefined) return { ...base, kind: 'notPlaced' };
    whole += toNumber(multiply(shares[index] as Rational, scale)) * target; // one a depth
  }
  const phases = Math.round(toNumber(divide(pitch, step)));
  const size = toNumber(step);
  const start = whole - Math.floor(whole / size) * size;
  const anglesDeg = Array.from({ length: Math.min(phases, 24) }, (_, index) => 360 * (start + index * size));
  return { ...base, kind: 'standsStill', phases, anglesDeg };
}
