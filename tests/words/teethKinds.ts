/** Every kind of outcome of teeth, with any figures. */
import fc from 'fast-check';
import type {
  ContactFault,
  DepthRemark,
  Mismatch,
  PairFault,
  ToothDoubt,
  ToothFault,
} from '../../solver/teeth/index.ts';
import { anyOf, count, type Kinds, mm, of, radians, share, size, two, wheel } from './kinds.ts';

const factor = fc.double({ min: -2, max: 2, noNaN: true });
const module = fc.double({ min: 0.05, max: 10, noNaN: true });
export const toothSize = fc.oneof(
  fc.record({ module }),
  fc.record({ diametralPitch: fc.double({ min: 4, max: 200, noNaN: true }) }),
  fc.record({ circularPitch: size }),
);
const form = fc.constantFrom('involute', 'cycloidal', 'triangular', 'lantern');

export const TOOTH_FAULTS: Kinds<ToothFault> = {
  noSpace: of('noSpace', { wheel, thickness: size, pitch: size }),
  noHeight: of('noHeight', { wheel, tipDiameter: size, rootDiameter: size }),
  noFlanks: of('noFlanks', { wheel }),
  nothingLeft: of('nothingLeft', { wheel }),
  unsound: of('unsound', { wheel, teeth: count, internal: fc.boolean() }),
  spacesToCentre: of('spacesToCentre', { wheel, depth: size }),
  flankCutAway: of('flankCutAway', { wheel, teeth: count, rootCurveDiameter: size, tipDiameter: size }),
  undercutThrough: of('undercutThrough', { wheel, teeth: count, diameter: size }),
  ringFilled: of('ringFilled', { wheel }),
  flatTriangles: of('flatTriangles', { wheel }),
  trundlesTouch: of('trundlesTouch', { wheel, trundleDiameter: size, apart: size }),
};

export const TOOTH_DOUBTS: Kinds<ToothDoubt> = {
  unknownTable: of('unknownTable', {
    wheel,
    form: fc.constantFrom('involute', 'cycloidal'),
    table: fc.constant('shop'),
    used: fc.constant('BS 978'),
    known: fc.constant(['BS 978', 'epicycloid']),
  }),
  blankTooLarge: of('blankTooLarge', { wheel, pointDiameter: size, tipDiameter: size }),
  pointed: of('pointed', { wheel, pointDiameter: size, tipDiameter: size }),
  pointedTriangles: of('pointedTriangles', { wheel, pointDiameter: size, tipDiameter: size }),
  undercut: of('undercut', { wheel, teeth: count, pressureAngle: radians, shift: factor }),
  cutToCentre: of('cutToCentre', { wheel, dedendum: factor, pitchRadius: count }),
  tipsBelowPitch: of('tipsBelowPitch', { wheel, below: fc.oneof(fc.constant(0), size) }),
  ringThin: of('ringThin', { wheel, rim: size, least: size, outerDiameter: size }),
  ringTipsInBase: of('ringTipsInBase', { wheel, baseDiameter: size }),
  rootsMeet: of('rootsMeet', { wheel, meetDiameter: size, rootDiameter: size }),
};

const wheels = two(wheel);
export const MISMATCHES: Kinds<Mismatch> = {
  twoRings: of('twoRings', { wheels }),
  ringTooSmall: of('ringTooSmall', { wheels, teeth: two(count) }),
  onRingAxis: of('onRingAxis', { wheels }),
  pitches: fc
    .record(
      { wheels, sizes: two(toothSize), apart: size, cut: fc.record({ wheel, size: toothSize }) },
      { requiredKeys: ['wheels', 'sizes', 'apart'] },
    )
    .map((fault) => ({ kind: 'pitches' as const, ...fault })),
  twoLanterns: of('twoLanterns', { wheels }),
  involuteOnPins: of('involuteOnPins', { wheels }),
  forms: of('forms', { wheels, forms: two(form) }),
  pressureAngles: of('pressureAngles', { wheels, angles: two(radians), apart: size }),
  shifts: of('shifts', { wheels, shifts: two(factor), sum: fc.constantFrom('above', 'below'), limit: factor }),
};

export const CONTACT_FAULTS: Kinds<ContactFault> = {
  bothRings: of('bothRings'),
  ringTooFew: of('ringTooFew'),
  noDistance: of('noDistance', {
    distance: fc.oneof(mm, fc.constant(Number.NaN), fc.constant(Number.POSITIVE_INFINITY)),
  }),
  outOfReach: of('outOfReach', { distance: size, short: size }),
  loseEachOther: of('loseEachOther', { distance: size }),
  neverMesh: of('neverMesh', { calculated: size }),
};

export const PAIR_FAULTS: Kinds<PairFault> = { ...TOOTH_FAULTS, ...MISMATCHES, ...CONTACT_FAULTS };

const move = fc.record({ from: size, to: size });
const shake = fc.record({ shake: mm, inModules: factor });
const off = { by: size, calculated: size, perHundredth: size };
export const REMARKS: Kinds<DepthRemark> = {
  bottoming: of('bottoming', { tips: wheel, roots: wheel, by: size, move }),
  binding: of('binding', { overlap: size, move }),
  drop: of('drop', { driven: wheel, angle: radians, move }),
  butting: of('butting', { driven: wheel, angle: radians, move }),
  tight: of('tight', { shake, wanted: size, move }),
  free: of('free', { shake }),
  right: of('right', { shake }),
  shallow: of('shallow', off),
  deep: of('deep', off),
  engaging: of('engaging', { share, stepsDown: fc.boolean(), fewLeaves: fc.boolean() }),
  corner: of('corner', { share }),
  uneven: of('uneven', { driven: wheel, along: size, angle: radians }),
  turn: of('turn', {
    nearest: size,
    farthest: size,
    shake: two(mm),
    ends: fc.constantFrom('inside', 'deep', 'shallow'),
    wide: size,
    wheels,
  }),
  fullForms: of('fullForms', {
    full: fc
      .record(
        { calculated: size, free: size, pinion: wheel, addendum: share, wheels: two(wheel) },
        { requiredKeys: ['calculated', 'wheels'] },
      )
      .map((full) => ({ kind: 'fullForms' as const, ...full })),
  }),
  otherSize: of('otherSize', { distance: size, calculated: size, size: toothSize }),
  lost: of('lost', { why: anyOf(PAIR_FAULTS), runs: fc.option(two(size), { nil: undefined }) }),
};
