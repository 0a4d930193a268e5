/**
 * Clock teeth against their geometry and the tabulated family; sources stand in cycloidalValues.json. The BS 978 family
 * is a cutter maker's published table; figures recalled from the standard itself are labelled memory there.
 */
import { describe, expect, it } from 'vitest';
import { calculatedDepth, contactOfPair, sizeOfWheel } from '../../solver/teeth/index.ts';
import { CUTTER_LEAVES, CUTTER_WHEELS, faultsOfTables, RECALLED } from '../../solver/teeth/sizes/clockTables.ts';
import { epicycloidAt, pointedFace, recessTo } from '../../solver/teeth/sizes/epicycloid.ts';
import { movementOf, wheelOf } from '../teeth/makeWheels.ts';
import { type CheckValue, figure, input, maybe, valuesOf } from './checkValues.ts';
import values from './cycloidalValues.json' with { type: 'json' };

const ids = (prefix: string) => valuesOf(values, prefix).map((value) => [value.id, value] as const);
function near(got: number, value: CheckValue) {
  const { expected, within } = figure(value);
  expect(Math.abs(got - expected), `${value.id}: ${got} for ${expected}`).toBeLessThanOrEqual(within);
}
const tau = (value: CheckValue): number => maybe(value, 'tau') ?? (Number(maybe(value, 'tau')) || Math.PI / 2);

describe('the pointed tooth', () => {
  const single = (prefix: string) =>
    ids(prefix).filter(([, v]) => typeof v.expected === 'number' && maybe(v, 'Z') !== undefined);
  it.each(single('B.fa.'))('%s: addendum', (_, value) =>
    near(pointedFace(input(value, 'Z'), input(value, 'n'), tau(value)).addendum, value),
  );
  it.each(single('B.eps.'))('%s: recess', (_, value) =>
    near(pointedFace(input(value, 'Z'), input(value, 'n')).recess, value),
  );
  it.each(ids('B.minwheel.'))('%s: least wheel with all action after the line of centres', (_, value) => {
    const leaves = input(value, 'n');
    let teeth = leaves;
    while (pointedFace(teeth, leaves).recess < 1) teeth++;
    expect(teeth).toBe(value.expected);
  });
  it('never below ten leaves, not even for a rack (Goodrich, The Modern Clock, 1905: ten is the least)', () => {
    for (const leaves of [6, 7, 8, 9]) expect(pointedFace(1_000_000, leaves).recess).toBeLessThan(0.9433);
  });
  it.each(ids('B.rack.'))('%s: a very large wheel comes near the rack', (_, value) => {
    const { fa, eps } = value.expected as { fa: number; eps: number }; // shape of these entries
    const face = pointedFace(1_000_000, input(value, 'n'));
    expect(Math.abs(face.addendum - fa)).toBeLessThan(1e-4);
    expect(Math.abs(face.recess - eps)).toBeLessThan(1e-4);
  });
  it('a tip cut lower has less recess', () => {
    const { addendum, recess } = pointedFace(60, 10);
    expect(recessTo(60, 10, addendum)).toBeCloseTo(recess, 12);
    expect(recessTo(60, 10, 0.95 * addendum)).toBeLessThan(recess);
  });
});

describe('contact points', () => {
  it.each(ids('B.contact.'))('%s', (_, value) => {
    const [n, Z, m] = ['n', 'Z', 'm'].map((name) => input(value, name)) as [number, number, number]; // three names, three numbers
    const turn = (input(value, 'wheel_turn_deg') * Math.PI) / 180;
    const want = value.expected as {
      dist_pinion_centre: number;
      dist_wheel_centre: number;
      obliquity_deg: number;
      pinion_turn_deg: number;
    }; // shape of these entries
    expect(
      Math.abs(m * epicycloidAt({ fixed: Z / 2, rolling: n / 4 }, turn).radius - want.dist_wheel_centre),
    ).toBeLessThan(1e-9);
    // The engine, told only the forms: leaves cut off at the pitch circle so that all action is after the line of centres.
    const size = { module: m };
    const wheel = wheelOf({ id: 'a', teeth: Z, form: 'cycloidal', table: 'epicycloid', addendum: 3, size });
    const pinion = wheelOf({
      id: 'b',
      teeth: n,
      form: 'cycloidal',
      table: 'epicycloid',
      addendum: 0,
      dedendum: 0.45 * n,
      size,
    });
    const movement = movementOf(wheel, pinion);
    const steps = 3600 / Z;
    const contact = contactOfPair(wheel, pinion, movement, (m * (Z + n)) / 2, { steps: Math.round(steps) });
    if (contact.kind !== 'contact') throw new Error(contact.why.kind);
    // Some step touches near the wanted place: there the distances from both centres belong together as the table says.
    let best = Number.POSITIVE_INFINITY;
    const centre = (m * (Z + n)) / 2;
    const leading = Math.max(...contact.curves.error);
    contact.curves.pointX.forEach((x, i) => {
      const y = contact.curves.pointY[i] as number; // same length as pointX
      // Where a corner leads, before the next tooth takes over, the wheel lags; the table speaks of true contact.
      if (y < 0 || (contact.curves.error[i] as number) < leading - 1e-9) return; // same length
      const psi = 2 * Math.acos(Math.min(1, Math.hypot(centre - x, y) / ((m * n) / 2)));
      const other = Math.sqrt(
        ((Z * m) / 2 + (n * m) / 4) ** 2 +
          ((n * m) / 4) ** 2 -
          ((n * m) / 2) * ((Z * m) / 2 + (n * m) / 4) * Math.cos(psi),
      );
      expect(Math.abs(Math.hypot(x, y) - other)).toBeLessThan(2e-5 * m);
      best = Math.min(best, Math.abs((psi * 90) / Math.PI - want.obliquity_deg));
    });
    expect(best).toBeLessThan(3);
  });
  it.each([
    [12, 96],
    [16, 64],
    [12, 36],
  ])('the engine finds the whole recess of a pointed wheel: %d leaves, %d teeth', (leaves, teeth) => {
    const wheel = wheelOf({ id: 'a', teeth, form: 'cycloidal', table: 'epicycloid', addendum: 3 });
    const pinion = wheelOf({ id: 'b', teeth: leaves, form: 'cycloidal', table: 'epicycloid', addendum: 0 });
    const movement = movementOf(wheel, pinion);
    const contact = contactOfPair(wheel, pinion, movement, (teeth + leaves) / 2);
    if (contact.kind !== 'contact') throw new Error(contact.why.kind);
    const { recess } = pointedFace(teeth, leaves);
    expect(Math.abs(contact.recess - recess)).toBeLessThan(2e-4);
    // A corner that is within a micrometre of touching before the line of centres counts as touching.
    expect(Math.abs(contact.pairsInContact - recess)).toBeLessThan(0.01);
    // Conjugate: the driven wheel follows evenly, and the play is what tooth and leaf leave of the pitch.
    expect(contact.error.along).toBeLessThan(2e-6);
    const play = Math.PI - sizeOfWheel(wheel, movement).thickness - sizeOfWheel(pinion, movement).thickness;
    expect(Math.abs(contact.backlash.mean - play)).toBeLessThan(1e-6);
  });
});

describe('the tabulated family', () => {
  it('has one wrong entry as printed: the depth of cut for ten leaves', () => {
    expect(faultsOfTables()).toEqual([
      { row: '10 leaves', figure: 'depthOfCut', printed: 2.755, computed: expect.closeTo(2.855, 12) },
    ]);
  });
  it('module 0.8, 64 teeth, deep: blank 53.41, 2.70 deep, root 48.00, tooth 1.26 (worked from the table)', () => {
    const wheel = wheelOf({ id: 'a', teeth: 64, form: 'cycloidal', size: { module: 0.8 } });
    const pinion = wheelOf({ id: 'b', teeth: 8, form: 'cycloidal', size: { module: 0.8 } });
    const size = sizeOfWheel(wheel, movementOf(wheel, pinion));
    expect(2 * size.tipRadius).toBeCloseTo(53.41, 2);
    expect(size.tipRadius - size.rootRadius).toBeCloseTo(2.7, 2);
    expect(2 * size.rootRadius).toBeCloseTo(48, 9);
    expect(size.thickness).toBeCloseTo(1.256, 9);
  });
  it.each([
    [6, 0.52, 0.2],
    [7, 0.52, 0.47],
    [8, 0.52, 0.52],
    [10, 0.32, 0.67],
    [12, 0.32, 0.72],
    [16, 0.32, 0.72],
  ])('%d leaves: play %f and bottoming clearance %f module at the nominal depth', (leaves, play, clearance) => {
    const wheel = wheelOf({ id: 'a', teeth: 64, form: 'cycloidal' });
    const pinion = wheelOf({ id: 'b', teeth: leaves, form: 'cycloidal' });
    const movement = movementOf(wheel, pinion);
    const left = Math.PI - sizeOfWheel(wheel, movement).thickness - sizeOfWheel(pinion, movement).thickness;
    expect(left).toBeCloseTo(play, 2);
    const contact = contactOfPair(wheel, pinion, movement, calculatedDepth(wheel, pinion, movement).distance);
    if (contact.kind !== 'contact') throw new Error(contact.why.kind);
    expect(contact.tipClearance.driver).toBeCloseTo(clearance, 9);
    // Faces that are fuller than the true curve take some of it, never add.
    expect(contact.backlash.greatest).toBeLessThan(left + 1e-6);
    expect(contact.backlash.least).toBeGreaterThan(0);
    expect(contact.bottoms).toBe(false);
  });
  it.each([
    [0.3, 3.14],
    [0.8, 4],
    [1.25, 3.14],
  ])('module %f has the root (N − %f) m', (module, under) => {
    const wheel = wheelOf({ teeth: 60, form: 'cycloidal', size: { module } });
    expect(2 * sizeOfWheel(wheel, movementOf(wheel)).rootRadius).toBeCloseTo((60 - under) * module, 9);
  });
  it('every row of leaves gives its printed blank and root', () => {
    for (const row of CUTTER_LEAVES) {
      const pinion = wheelOf({ id: 'b', teeth: row.leaves, form: 'cycloidal' });
      const size = sizeOfWheel(pinion, movementOf(pinion));
      expect(2 * size.tipRadius).toBeCloseTo(row.blank, 9);
      expect(Math.abs(2 * size.rootRadius - row.root)).toBeLessThan(0.011);
    }
    expect(CUTTER_WHEELS.roundBottom.blankOver).toBe(2.5);
  });
});

describe('figures recalled from the standard (memory; reproduced by the derivation where they can be)', () => {
  const of = (id: string) => valuesOf(values, id)[0] as CheckValue; // valuesOf fails on none
  it.each(['6.3', '6.4'])('%s: addendum and arc radius factors', (pair) => {
    const [leaves, ratio] = pair.split('.').map(Number) as [number, number]; // "6.3" has two parts
    const { addendum } = pointedFace(leaves * ratio, leaves);
    near(RECALLED.shortening * addendum, of(`B.bs978.table.${pair}.addendum`));
    near(RECALLED.faceArc * addendum, of(`B.bs978.table.${pair}.radius`));
  });
  it('leaf thickness, tops and clearances', () => {
    near(RECALLED.leafThickness[0], of('B.bs978.pinion.thickness.low'));
    near(RECALLED.leafThickness[1], of('B.bs978.pinion.thickness.high'));
    near(RECALLED.tops.C.addendum[0], of('B.bs978.pinion.C.low.add'));
    near(RECALLED.tops.C.radius[1], of('B.bs978.pinion.C.high.rad'));
    near(RECALLED.tops.B.addendum[0], of('B.bs978.pinion.B.low.add'));
    near(RECALLED.tops.B.radius[1], of('B.bs978.pinion.B.high.rad'));
    near(RECALLED.tops.A.addendum[1], of('B.bs978.pinion.A.high'));
    near(RECALLED.wheelThickness, of('B.bs978.wheel.thickness'));
    near(RECALLED.leafClearance, of('B.bs978.pinion.dedendum.clear'));
  });
});
