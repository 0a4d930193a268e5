/**
 * The engine's contacts judged by an independent polygon library: drawn outlines of the teeth, within a ten-millionth of a
 * millimetre, do not overlap where the engine says they touch (backed off by a millionth) and do just beyond.
 */
import { type Geom, intersection } from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import type { Movement, Wheel } from '../../solver/movement/schema.ts';
import { calculatedDepth, contactOfPair } from '../../solver/teeth/index.ts';
import { wheelOutline } from '../../solver/teeth/outlines/index.ts';
import { flattened } from '../../solver/teeth/outlines/offsetOutline.ts';
import { movementOf, wheelOf } from './makeWheels.ts';

type Ring = [number, number][];

/** Miss of the fitted arcs and of the chords in them, mm. */
const FINE = 1e-7;
/** A millionth of a millimetre. */
const MILLIONTH = 1e-6;

/** One tooth as a polygon, its centre line on +x: the part of the outline between two root lands, or a pin. */
function toothOf(wheel: Wheel, movement: Movement): Ring {
  const outline = wheelOutline(wheel, movement, { tolerance: FINE, phase: 0 });
  if (outline.kind === 'none') throw new Error(outline.why.kind);
  const pin = outline.loops.find(({ role }) => role === 'pin');
  if (pin) return flattened(pin.shape, FINE).map(({ x, y }) => [x, y]);
  const edge = outline.loops.find(({ role }) => role === 'teeth')?.shape;
  if (edge?.kind !== 'path') throw new Error('no teeth in the outline');
  const each = edge.vertices.length / wheel.teeth;
  // Where neighbours meet at the root, the next tooth's first vertex ends this one. A straight line closes the polygon
  // inside the metal.
  const shared = Math.abs((edge.vertices[0]?.y ?? 0) + (edge.vertices[each - 1]?.y ?? 0)) > 1e-9;
  const vertices = edge.vertices.slice(0, shared ? each + 1 : each);
  const last = vertices.at(-1);
  if (!last) throw new Error('an empty tooth');
  return flattened({ kind: 'path', vertices: [...vertices.slice(0, -1), { ...last, bulge: 0 }] }, FINE).map(
    ({ x, y }) => [x, y],
  );
}

const placed = (ring: Ring, turn: number, x: number): Ring =>
  ring.map(([px, py]) => [x + px * Math.cos(turn) - py * Math.sin(turn), px * Math.sin(turn) + py * Math.cos(turn)]);

function apart(a: Ring, b: Ring): boolean {
  const [xs, ys] = [(r: Ring) => r.map(([x]) => x), (r: Ring) => r.map(([, y]) => y)];
  const gap = (p: number[], q: number[]) => Math.max(Math.min(...p) - Math.max(...q), Math.min(...q) - Math.max(...p));
  return gap(xs(a), xs(b)) > 0 || gap(ys(a), ys(b)) > 0;
}

/** Only the points near another ring matter; far stretches are left out so that the exact arithmetic stays quick. */
function near(ring: Ring, other: Ring, reach: number): Ring {
  const [x0, x1] = [Math.min(...other.map(([x]) => x)) - reach, Math.max(...other.map(([x]) => x)) + reach];
  const [y0, y1] = [Math.min(...other.map(([, y]) => y)) - reach, Math.max(...other.map(([, y]) => y)) + reach];
  const long = (i: number, j: number): boolean => {
    const [p, q] = [ring.at(i % ring.length), ring.at(j % ring.length)] as [[number, number], [number, number]]; // indices within the ring
    return Math.hypot(p[0] - q[0], p[1] - q[1]) > 0.02;
  };
  // Ends of straight lines stay whatever their place; of the fine points far off every fortieth.
  return ring.filter(
    ([x, y], i) => (x >= x0 && x <= x1 && y >= y0 && y <= y1) || i % 40 === 0 || long(i, i + 1) || long(i, i - 1),
  );
}

function overlaps(a: Ring, b: Ring): boolean {
  if (apart(a, b)) return false;
  const [p, q] = [near(a, b, 0.01), near(b, a, 0.01)];
  return intersection([p] as Geom, [q] as Geom).length > 0;
}

function checkPair(driver: Wheel, driven: Wheel, open: number): void {
  const movement = movementOf(driver, driven);
  const distance = calculatedDepth(driver, driven, movement).distance + open;
  const steps = 3;
  const contact = contactOfPair(driver, driven, movement, distance, { steps });
  if (contact.kind !== 'contact') throw new Error(contact.why.kind);
  const [a, b] = [toothOf(driver, movement), toothOf(driven, movement)];
  const [pa, pb] = [(2 * Math.PI) / driver.teeth, (2 * Math.PI) / driven.teeth];
  const radius = Math.abs(
    driven.internal || driver.internal
      ? (distance * driven.teeth) / Math.abs(driver.teeth - driven.teeth)
      : (distance * driven.teeth) / (driver.teeth + driven.teeth),
  );
  const [centre, sense] = driven.internal ? [-distance, 1] : driver.internal ? [distance, 1] : [distance, -1];
  const meets = (angle: number, turned: number): boolean => {
    for (let i = -2; i <= 2; i++) {
      for (let j = -3; j <= 2; j++) {
        const at = turned + pb / 2 + j * pb;
        const second = placed(b, sense > 0 ? at : Math.PI - at, centre);
        if (overlaps(placed(a, angle + i * pa, 0), second)) return true;
      }
    }
    return false;
  };
  for (let i = 0; i < steps; i++) {
    const angle = contact.curves.driverAngle[i] as number; // one of the steps
    const turned = (angle * driver.teeth) / driven.teeth + (contact.curves.error[i] as number);
    // Steep flanks come nearer along the normal than along the pitch line.
    expect(meets(angle, turned + MILLIONTH / radius), `overlap at step ${i}`).toBe(false);
    expect(meets(angle, turned - MILLIONTH / radius), `no touch at step ${i}`).toBe(true);
  }
}

const clock = (id: string, teeth: number, fields: Partial<Omit<Wheel, 'id'>> = {}) =>
  wheelOf({ id, teeth, form: 'cycloidal', ...fields });

describe('drawn teeth at the reported contact', () => {
  it.each<[string, Wheel, Wheel, number]>([
    ['involute', wheelOf({ id: 'a', teeth: 20 }), wheelOf({ id: 'b', teeth: 32 }), 0.1],
    ['involute, undercut pinion driven', wheelOf({ id: 'a', teeth: 40 }), wheelOf({ id: 'b', teeth: 8 }), 0.1],
    ['involute in a ring', wheelOf({ id: 'a', teeth: 24 }), wheelOf({ id: 'b', teeth: 70, internal: true }), -0.15],
    ['ring drives', wheelOf({ id: 'a', teeth: 70, internal: true }), wheelOf({ id: 'b', teeth: 24 }), -0.15],
    ['tabulated clock teeth', clock('a', 48), clock('b', 8), 0.02],
    ['tabulated, leaf drives', clock('a', 10), clock('b', 60), 0],
    ['exact epicycloid', clock('a', 60, { table: 'epicycloid' }), clock('b', 10, { table: 'epicycloid' }), 0],
    ['lantern', clock('a', 48), wheelOf({ id: 'b', teeth: 8, form: 'lantern' }), 0.05],
    ['lantern drives', wheelOf({ id: 'a', teeth: 10, form: 'lantern' }), clock('b', 40), 0.05],
    [
      'triangular',
      wheelOf({ id: 'a', teeth: 48, form: 'triangular' }),
      wheelOf({ id: 'b', teeth: 24, form: 'triangular' }),
      0.05,
    ],
    ['a mixture', wheelOf({ id: 'a', teeth: 30 }), clock('b', 12), 0.1],
  ])('%s', (_, driver, driven, open) => checkPair(driver, driven, open), 120_000);
});
