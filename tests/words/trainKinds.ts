/** Every kind of fault of a train, with any figures. */
import fc from 'fast-check';
import type { LockedRing, NothingShown, SharedAxes, TurningFault } from '../../solver/train/index.ts';
import { rational } from '../../solver/train/turning/rational.ts';
import { anyOf, arbor, count, indication, type Kinds, mm, of, rule, several, size, two, wheel } from './kinds.ts';

const whole = fc.integer({ min: 1, max: 100_000 });
/** Any exact number above nothing. */
export const exact = fc.tuple(whole, whole).map(([n, d]) => rational(n, d));
/** Any exact error, none included. */
export const error = fc.tuple(fc.integer({ min: -500, max: 500 }), whole).map(([n, d]) => rational(n, 1000 + d));
const sense = fc.constantFrom('clockwise', 'anticlockwise');

export const NOTHING: Kinds<NothingShown> = {
  arborMissing: of('arborMissing'),
  nothingDrives: of('nothingDrives'),
  periodAndRatio: of('periodAndRatio'),
  neither: of('neither'),
  badPeriod: of('badPeriod', { value: fc.oneof(mm, fc.constant(Number.NaN)) }),
  badRatio: of('badRatio', { ratio: fc.constantFrom('0', '1/0', 'often') }),
  arborStands: of('arborStands', {
    arbor,
    state: fc.constantFrom('still', 'locked', 'notDriven', 'open', 'turns'),
    wantedPeriod: exact,
  }),
};

export const ring: fc.Arbitrary<LockedRing> = fc.record({
  arbors: several(arbor),
  links: fc.constant([]),
  kind: fc.constantFrom<LockedRing['kind']>('ratios', 'senses', 'fixed'),
  onceRound: exact,
});
const depth = fc.record(
  {
    rule,
    wheels: two(wheel),
    sum: count,
    module: size,
    distance: size,
    misfit: mm,
    moduleThatFits: size,
    fits: fc.boolean(),
    recut: fc.record({ wheels: two(wheel), module: size }),
  },
  { requiredKeys: ['rule', 'wheels', 'sum', 'module', 'distance', 'misfit', 'moduleThatFits', 'fits'] },
);
export const shared: fc.Arbitrary<SharedAxes> = fc.record({ depths: several(depth), fits: fc.boolean() });

export const FAULTS: Kinds<TurningFault> = {
  noDrive: of('noDrive'),
  driveMissing: of('driveMissing'),
  drivePeriod: of('drivePeriod', { value: fc.oneof(mm, fc.constant(Number.NaN)) }),
  ringLocked: of('ringLocked', { ring }),
  driveHeld: of('driveHeld', { drive: arbor, fixed: fc.array(arbor, { maxLength: 3 }) }),
  carriesItself: of('carriesItself', { arm: arbor, carried: arbor }),
  twoArms: of('twoArms', { carried: arbor, arms: two(arbor) }),
  armsInCircle: of('armsInCircle', { arms: several(arbor) }),
  leavesEachOther: of('leavesEachOther', { carried: arbor, other: arbor, arm: arbor }),
  armsApart: of('armsApart', { arbors: two(arbor) }),
  partMissing: of('partMissing', { joining: fc.constantFrom('depth', 'worm', 'contrate', 'stepped', 'pipe') }),
  withItself: of('withItself', { wheel }),
  onOneArbor: of('onOneArbor', { wheels: two(wheel), arbor }),
  onOneAxis: of('onOneAxis', { wheels: two(wheel) }),
  bothInternal: of('bothInternal', { wheels: two(wheel) }),
  ringTooFew: of('ringTooFew', { wheels: two(wheel), teeth: two(count) }),
  turnsItself: of('turnsItself', { arbor, wheel }),
  ridesOnNone: of('ridesOnNone', { arbor }),
  showsNothing: of('showsNothing', { indication, why: anyOf(NOTHING) }),
  wrongSense: of('wrongSense', { indication, sense, wanted: sense }),
  outOfTolerance: of('outOfTolerance', { indication, error, allowedPpm: size }),
  notDriven: of('notDriven', { arbors: fc.array(arbor, { minLength: 1, maxLength: 20 }) }),
  open: of('open', { arbors: several(arbor) }),
  axesDisagree: of('axesDisagree', { shared }),
};
