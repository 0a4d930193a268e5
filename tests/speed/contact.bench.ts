/**
 * Speed of the contact engine, with a plain dense comparison of both flanks beside it in the same run.
 *
 * Goals (issue 4): contact of a pair over one pitch within 3 ms at 1e-6 rad; the whole window of a depth within 100 ms.
 */

import type { Wheel } from '../../solver/movement/schema.ts';
import {
  calculatedDepth,
  contactOfPair,
  formOfWheel,
  halfAngleAt,
  type ToothForm,
  windowOfDepth,
} from '../../solver/teeth/index.ts';
import { movementOf, wheelOf } from '../teeth/makeWheels.ts';
import { HEADING, line, time } from './measure.ts';

const CONTACT_GOAL = 3;
const WINDOW_GOAL = 100;
/** Radians that engine and plain comparison may differ by. */
const WITHIN = 1e-6;

const clock = (id: string, teeth: number, fields: Partial<Omit<Wheel, 'id'>> = {}) =>
  wheelOf({ id, teeth, form: 'cycloidal', ...fields });

const pairs: readonly [string, Wheel, Wheel, number][] = [
  ['involute 20 / 60', wheelOf({ id: 'a' }), wheelOf({ id: 'b', teeth: 60 }), 0.05],
  ['involute 40 / 8, undercut', wheelOf({ id: 'a', teeth: 40 }), wheelOf({ id: 'b', teeth: 8 }), 0.05],
  [
    'involute 24 in a ring of 72',
    wheelOf({ id: 'a', teeth: 24 }),
    wheelOf({ id: 'b', teeth: 72, internal: true }),
    -0.1,
  ],
  ['tabulated clock 64 / 8', clock('a', 64), clock('b', 8), 0],
  ['exact epicycloid 60 / 10', clock('a', 60, { table: 'epicycloid' }), clock('b', 10, { table: 'epicycloid' }), 0],
  ['lantern 64 / 8', clock('a', 64), wheelOf({ id: 'b', teeth: 8, form: 'lantern' }), 0],
  [
    'triangular 64 / 38',
    wheelOf({ id: 'a', teeth: 64, form: 'triangular' }),
    wheelOf({ id: 'b', teeth: 38, form: 'triangular' }),
    0.05,
  ],
  ['involute 300 / 200', wheelOf({ id: 'a', teeth: 300 }), wheelOf({ id: 'b', teeth: 200 }), 0.05],
];

/** Points along a flank in the plain comparison: enough for the same digits. */
const DENSE = 4000;

/** The driven angle at one driver angle by taking many points of the driver's flank, and of the driven tip, in turn. */
function plainPush(driver: ToothForm, driven: ToothForm, distance: number, angle: number): number {
  let best = Number.NEGATIVE_INFINITY;
  const [low, high] = [Math.min(driver.tip, driver.root), Math.max(driver.tip, driver.root)];
  const [p1, p2] = [(2 * Math.PI) / driver.teeth, (2 * Math.PI) / driven.teeth];
  for (let k = -4; k <= 4; k++) {
    for (let i = 0; i <= DENSE; i++) {
      const r = low + ((high - low) * (1 - Math.cos((Math.PI * i) / DENSE))) / 2;
      const a = angle + k * p1 + halfAngleAt(driver, r);
      const x = r * Math.cos(a);
      const dx = driven.internal ? x + distance : distance - x;
      const y = r * Math.sin(a);
      const r2 = Math.hypot(dx, y);
      const counts = driven.internal ? r2 >= driven.tip : r2 <= driven.tip && (!driven.open || r2 >= driven.root);
      if (counts) best = Math.max(best, Math.atan2(y, dx) + halfAngleAt(driven, r2) - k * p2 - p2 / 2);
    }
  }
  return best;
}

export function run(): void {
  console.log(HEADING);
  for (const [name, driver, driven, open] of pairs) {
    const movement = movementOf(driver, driven);
    const distance = calculatedDepth(driver, driven, movement).distance + open;
    const contact = contactOfPair(driver, driven, movement, distance);
    const [a, b] = [formOfWheel(driver, movement), formOfWheel(driven, movement)];
    if (contact.kind === 'none' || a.kind === 'none' || b.kind === 'none') throw new Error(`${name}: no contact`);
    const steps = contact.curves.driverAngle.length;
    const plainAt = (i: number): number => plainPush(a, b, distance, contact.curves.driverAngle[i] as number); // one of the steps
    let worst = 0;
    for (let i = 0; i < steps; i += 6) {
      const even = ((contact.curves.driverAngle[i] as number) * driver.teeth) / driven.teeth; // one of the steps
      worst = Math.max(worst, Math.abs(plainAt(i) - even - (contact.curves.error[i] as number))); // one of the steps
    }
    // The plain comparison stops short of a corner by up to its spacing: it may only lag, and by little.
    if (worst > 20 * WITHIN) throw new Error(`${name}: engine and plain comparison differ by ${worst} rad`);
    const engine = time(() => contactOfPair(driver, driven, movement, distance), 60, 40);
    const plain = time((n) => plainAt(n % steps), 10, 2);
    const ratio = ((plain.medianMs * steps) / engine.medianMs).toFixed(0);
    const said = engine.medianMs <= CONTACT_GOAL ? 'met' : 'MISSED';
    console.log(
      line(
        `${name}: contact`,
        engine,
        `goal ${CONTACT_GOAL} ${said}; plain ${ratio} times; apart ${worst.toExponential(1)} rad`,
      ),
    );
    const window = time(() => windowOfDepth(driver, driven, movement), 20, 5);
    const found = windowOfDepth(driver, driven, movement);
    if (found.kind !== 'window' || found.shallowest === found.deepest) throw new Error(`${name}: no window`);
    console.log(
      line(`${name}: window`, window, `goal ${WINDOW_GOAL} ${window.medianMs <= WINDOW_GOAL ? 'met' : 'MISSED'}`),
    );
  }
}
