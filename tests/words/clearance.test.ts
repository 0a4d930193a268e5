/** Every kind of outcome of clearance, printed in millimetres and in inches with odd names and any figures. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { NoPlanting, PlantingAnswer } from '../../solver/clearance/findPlanting/index.ts';
import type {
  Advice,
  CureDeed,
  DepthCause,
  Finding,
  FindingCause,
  NoStack,
  Piece,
  PlainAdvice,
} from '../../solver/clearance/index.ts';
import type { LeftOut, NoRehearsal, RehearsalReport } from '../../solver/clearance/rehearsal/index.ts';
import type { NoSafePlace } from '../../solver/clearance/safe/index.ts';
import type {
  ArborId,
  IndicationId,
  OpeningId,
  PartId,
  PlateId,
  PostId,
  RuleId,
  WallId,
  WheelId,
} from '../../solver/movement/ids.ts';
import type { DisagreementCause } from '../../solver/planting/index.ts';
import * as words from '../../solver/words/clearance/index.ts';
import { disagreementSays } from '../../solver/words/planting/index.ts';
import { anyOf } from './kinds.ts';
import { bothUnits, expectSpoken } from './spoken.ts';
import { MISMATCHES, PAIR_FAULTS, TOOTH_DOUBTS, TOOTH_FAULTS } from './teethKinds.ts';
import { FAULTS as TURNING_FAULTS } from './trainKinds.ts';

const outline = { kind: 'circle', centre: [0, 0], radius: 3 };
const speakers = bothUnits({
  openings: ['zz30', 'zz31'].map((id) => ({ id, kind: 'opening', plate: 'zz0', outline })),
  walls: [{ id: 'zz34', outline, levels: { from: 0, to: 9 } }],
  indications: [
    { id: 'zz32', arbor: 'zz2', ratio: '1/12' },
    { id: 'zz33', name: 'Moon’s age', arbor: 'zz1', ratio: '1/5' },
  ],
});

/** Every kind of an outcome, each made anew for each run. */
type Kinds<Told extends { readonly kind: string }> = {
  readonly [K in Told['kind']]: fc.Arbitrary<Told & { readonly kind: K }>;
};

/** One kind: its name, and its fields. The ids are those of the movement; brands are not known to fast-check. */
function of<Told>(kind: string, fields: Readonly<Record<string, fc.Arbitrary<unknown>>> = {}): fc.Arbitrary<Told> {
  return fc.record({ kind: fc.constant(kind), ...fields }) as fc.Arbitrary<Told>;
}

const mm = fc.double({ min: -400, max: 400, noNaN: true });
const size = fc.double({ min: 1e-9, max: 170, noNaN: true });
const radians = fc.double({ min: -7, max: 7, noNaN: true });
const count = fc.integer({ min: 1, max: 90 });
const yes = fc.boolean();
const ids = <Id>(...all: readonly string[]): fc.Arbitrary<Id> => fc.constantFrom(...all) as fc.Arbitrary<Id>;
const arbor = ids<ArborId>('zz1', 'zz2', 'zz3');
const wheel = ids<WheelId>('zz6', 'zz7', 'zz8', 'zz9');
const post = ids<PostId>('zz4');
const plate = ids<PlateId>('zz0');
const wall = ids<WallId>('zz34');
const opening = ids<OpeningId>('zz30', 'zz31');
const rule = ids<RuleId>('zz10', 'zz12', 'zz13');
const part = ids<PartId>('zz0', 'zz1', 'zz4', 'zz5', 'zz6', 'zz8');
const several = <T>(each: fc.Arbitrary<T>): fc.Arbitrary<T[]> => fc.array(each, { minLength: 1, maxLength: 3 });
const two = <T>(each: fc.Arbitrary<T>): fc.Arbitrary<[T, T]> => fc.tuple(each, each);
const at = fc.record({ x: mm, y: mm });
const piece: fc.Arbitrary<Piece> = fc.record({
  part,
  piece: fc.constantFrom('whole', 'hub', 'collar', 'head', 'bush', 'swept'),
});
const moved = several(fc.record({ arbor, to: at, distance: size }));

const disagreement = fc.record({
  rules: several(rule),
  points: several(arbor),
  gap: size,
  cause: fc.constant({ kind: 'notKept', why: { kind: 'bothFixed' } } as const),
});

const FAULTS: Kinds<DepthCause> = {
  noMesh: of('noMesh', { window: of('none', { why: anyOf(PAIR_FAULTS) }) }),
  tooNear: of('tooNear', {
    by: fc.constantFrom('binding', 'bottoming'),
    tooNear: size,
    play: mm,
    runOut: yes,
  }),
  losesContact: of('losesContact', { tooFar: size }),
  canLoseContact: of('canLoseContact', { tooFar: size }),
  bottomsAsPlanted: of('bottomsAsPlanted', { tooNear: size }),
  uneven: of('uneven', { distance: size, evenTo: size }),
};

const CAUSES: Kinds<FindingCause> = {
  gap: of('gap', { pieces: two(piece), direction: fc.constantFrom('plan', 'height') }),
  disagreement: of('disagreement', { disagreement }),
  turning: of('turning', {
    problem: of('open', { severity: fc.constant('warns'), parts: fc.constant([]), why: anyOf(TURNING_FAULTS) }),
  }),
  ringMisses: of('ringMisses', {
    ring: several(arbor),
    missTeeth: size,
    closing: fc.option(moved, { nil: undefined }),
  }),
  ringSet: of('ringSet', { ring: several(arbor), wheel, arbor, turn: radians }),
  pivotThick: of('pivotThick', { arbor, pivot: size, diameter: size }),
  breaksOut: of('breaksOut', { point: arbor, plate }),
  nearEdge: of('nearEdge', { point: post, plate }),
  holesMeet: of('holesMeet', { points: two(arbor), plate }),
  arborInRoots: of('arborInRoots', { arbor, wheel, diameter: size, roots: size }),
  arborInBore: of('arborInBore', { arbor, wheel, diameter: size, bore: size }),
  arborInPipe: of('arborInPipe', { arbor, pipe: arbor, diameter: size, bore: size }),
  bodyInHole: of('bodyInHole', { arbor, plate, diameter: size, bore: size }),
  notReached: of('notReached', { arbor, piece, short: size }),
  bearingNotReached: of('bearingNotReached', { arbor, plate, short: size }),
  pivotThin: of('pivotThin', { arbor, pivot: size, least: size }),
  rimThin: of('rimThin', { wheel, rim: size, teeth: size }),
  postShort: of('postShort', { post, plates: two(plate), length: size, apart: size }),
  postLong: of('postLong', { post, plates: two(plate), length: size, apart: size }),
  holeTight: of('holeTight', { point: arbor, plate, diameter: size, hole: size }),
  noContact: of('noContact', {
    post,
    wall,
    how: fc.constantFrom('soldered', 'screwed'),
    gap: mm,
    allowance: size,
  }),
  outsideCase: of('outsideCase', { piece, wall }),
  plateInWall: of('plateInWall', { plate, wall, play: mm }),
  noBearing: of('noBearing', { arbor }),
  noEndShake: of('noEndShake', { arbor }),
  openingOutside: of('openingOutside', { opening, plate }),
  openingAcross: of('openingAcross', { opening, plate }),
  openingsCross: of('openingsCross', { openings: two(opening), plate }),
  teeth: of('teeth', { told: fc.oneof(anyOf(TOOTH_FAULTS), anyOf(TOOTH_DOUBTS)) }),
  sizes: of('sizes', { wheels: two(wheel), calculated: of('mismatch', { why: anyOf(MISMATCHES), distance: size }) }),
  apartInHeight: of('apartInHeight', { wheels: two(wheel), apart: size }),
  underShake: of('underShake', { wheels: two(wheel), fault: fc.oneof(...Object.values(FAULTS)) }),
  stackShort: of('stackShort', { arbor }),
  stackUsedUp: of('stackUsedUp', { arbor, lengths: count, likely: mm, worst: mm }),
  pipeUnstopped: of('pipeUnstopped', { arbor, down: yes, up: yes }),
  pipeShort: of('pipeShort', { arbor, between: two(piece) }),
  pipeLoose: of('pipeLoose', { arbor, between: two(piece) }),
  pipeUsedUp: of('pipeUsedUp', { arbor, between: two(piece), room: mm, likely: mm, worst: mm }),
  heldDown: of('heldDown', { arbor, by: part }),
};

const DEEDS: Kinds<CureDeed> = {
  turnPost: of('turnPost', { post, about: arbor, by: radians }),
  otherCrossing: of('otherCrossing', { arbor }),
  moveArbors: of('moveArbors', { moved }),
  holdAt: of('holdAt', { arbor, to: at, distance: size }),
  setDirection: of('setDirection', { arbor, direction: radians, distance: size }),
  moveWheels: of('moveWheels', { wheels: several(wheel), by: mm }),
  thin: of('thin', { wheel, by: size, from: fc.constantFrom('above', 'below') }),
  top: of('top', { wheel, tipDiameter: size }),
  leaveToForm: of('leaveToForm', { wheel, fields: fc.constantFrom(['tipDiameter'], ['addendum', 'dedendum']) }),
  giveTeethFigure: of('giveTeethFigure', {
    wheel,
    field: fc.constantFrom('tipDiameter', 'profileShift', 'outerDiameter'),
    value: size,
  }),
  cutAsPinion: of('cutAsPinion', { wheel }),
  lowerAddendum: of('lowerAddendum', { wheels: two(wheel), addendum: fc.double({ min: 0.4, max: 1.4, noNaN: true }) }),
  cutInSizeOf: of('cutInSizeOf', { wheel, like: wheel }),
  moveToMeet: of('moveToMeet', { wheel, mate: wheel, by: mm }),
  giveTeeth: of('giveTeeth', { wheel, teeth: count, instead: count }),
  recut: of('recut', { wheels: two(wheel), module: fc.double({ min: 0.05, max: 10, noNaN: true }), instead: count }),
  setPhase: of('setPhase', { wheel, phase: radians }),
  useCalculated: of('useCalculated', { wheels: two(wheel), distance: size }),
  holdDepth: of('holdDepth', { wheels: two(wheel), distance: size }),
  leaveOutDepth: of('leaveOutDepth', { wheels: two(wheel) }),
  bush: of('bush', { arbors: several(arbor), play: size }),
  setLength: of('setLength', { rule, length: size }),
  setAngle: of('setAngle', { rule, angle: radians }),
  shortenSwept: of('shortenSwept', { piece, farthest: size }),
  moveSwept: of('moveSwept', { piece, by: mm }),
  turnHead: of('turnHead', { post, diameter: size }),
  shorten: of('shorten', { piece, by: size, from: fc.constantFrom('above', 'below') }),
  putCollars: of('putCollars', { collars: several(fc.record({ arbor, diameter: size, from: mm, to: mm })) }),
  giveEndShake: of('giveEndShake', { arbor, endShake: size }),
  makeNotch: of('makeNotch', { opening }),
  turnArbor: of('turnArbor', { arbor, diameter: size }),
  turnPivots: of('turnPivots', { arbor, pivot: size }),
  turnPlate: of('turnPlate', { plate, diameter: size }),
  lengthenBearing: of('lengthenBearing', { arbor, length: size }),
  openHole: of('openHole', { post, hole: size }),
  openBore: of('openBore', { wheel, bore: size }),
  leaveRim: of('leaveRim', { wheel, rim: size }),
  reach: of('reach', { part: arbor }),
  setAgainst: of('setAgainst', { post, wall, by: mm }),
  makeLength: of('makeLength', { post, length: size }),
  putBearings: of('putBearings', { arbor, plates: two(plate), endShake: size }),
  wantSense: of('wantSense', {
    indication: ids<IndicationId>('zz32', 'zz33'),
    sense: fc.constantFrom('clockwise', 'anticlockwise'),
  }),
  letTurn: of('letTurn', { arbor }),
  holdStill: of('holdStill', { arbor }),
  fixPipe: of('fixPipe', { arbor, on: arbor }),
};

/** Every cause but three has advice of its own name. */
const { ringMisses: _m, ringSet: _s, heldDown: _h, ...PLAIN } = CAUSES;
const PLAIN_ADVICE = Object.fromEntries(Object.keys(PLAIN).map((kind) => [kind, of(kind)])) as unknown as Kinds<
  Advice & { readonly kind: PlainAdvice }
>;

const ADVICE: Kinds<Advice> = {
  contested: of('contested'),
  ...PLAIN_ADVICE,
  ring: of('ring', { nearest: fc.option(fc.record({ wheel, teeth: count, miss: size }), { nil: undefined }) }),
  assembly: of('assembly', { before: fc.array(arbor, { maxLength: 3 }) }),
};

const NO_STACK: Kinds<NoStack> = {
  unknown: of('unknown', { arbor }),
  notBetweenPlates: of('notBetweenPlates', { arbor }),
  fixed: of('fixed', { arbor, on: arbor }),
};
const NO_PLANTING: Kinds<NoPlanting> = {
  nothingLoose: of('nothingLoose'),
  allHeld: of('allHeld'),
  disagree: of('disagree', { disagreement }),
  nonePlanted: of('nonePlanted', { tries: count }),
};
const NOWHERE: Kinds<NoSafePlace> = {
  settled: of('settled'),
  curve: of('curve'),
  circle: of('circle'),
  case: of('case'),
};
const NO_REHEARSAL: Kinds<NoRehearsal> = {
  noDepth: of('noDepth'),
  leadsNowhere: of('leadsNowhere'),
  noTeeth: of('noTeeth', { wheel, form: of('none', { why: anyOf(TOOTH_FAULTS) }) }),
};
const LEFT_OUT: Kinds<LeftOut> = {
  weight: of('weight'),
  leanOnDepths: of('leanOnDepths'),
  friction: of('friction'),
  flanks: of('flanks'),
  couplings: of('couplings'),
  depths: of('depths', { count, most: count }),
};

/** Prints any of a kind in both units. */
function spoken<Told>(told: fc.Arbitrary<Told>, say: (told: Told, speaker: (typeof speakers)[number]) => string): void {
  fc.assert(
    fc.property(told, (each) => {
      for (const speaker of speakers) expectSpoken(say(each, speaker), speaker);
    }),
  );
}

/** A test for each kind of a table. */
function eachKind<Told extends { readonly kind: string }>(
  table: Kinds<Told>,
  say: (told: Told, speaker: (typeof speakers)[number]) => string,
): void {
  it.each(Object.entries(table))('%s', (_, told) => spoken(told as fc.Arbitrary<Told>, say));
}

const figures = fc.record({
  kind: fc.constantFrom<Finding['kind']>('fouls', 'tooClose'),
  gap: mm,
  wanted: size,
  value: fc.constantFrom<NonNullable<Finding['value']>>('asPlanted', 'withShake', 'withPlusMinus'),
});
const FINDING = { key: 'zz', severity: 'stops', parts: [] } as const;

describe('findings', () => {
  it.each(Object.entries(CAUSES))('%s', (_, cause) => {
    spoken(fc.tuple(cause as fc.Arbitrary<FindingCause>, figures), ([each, figure], speaker) =>
      words.findingSays({ ...FINDING, ...figure, cause: each }, speaker),
    );
  });
});

describe('cures', () =>
  eachKind<CureDeed>(
    DEEDS,
    (deed, speaker) => `${words.cureSays({ deed, gapAfter: 0.31 }, speaker)} ${words.cureSays({ deed }, speaker)}`,
  ));
describe('advice', () => eachKind<Advice>(ADVICE, words.adviceSays));
it('advice belongs to its cause: no two causes are told the same', () => {
  for (const speaker of speakers) {
    const told = Object.keys(PLAIN).map((kind) => words.adviceSays({ kind } as Advice, speaker));
    expect(new Set(told).size).toBe(told.length);
  }
});
describe('no stack', () => eachKind<NoStack>(NO_STACK, words.noStackSays));
describe('no planting', () => eachKind<NoPlanting>(NO_PLANTING, words.noPlantingSays));
describe('no safe place', () => eachKind<NoSafePlace>(NOWHERE, words.noSafePlaceSays));
describe('nothing to rehearse', () => eachKind<NoRehearsal>(NO_REHEARSAL, words.noRehearsalSays));
describe('what a rehearsal leaves out', () => eachKind<LeftOut>(LEFT_OUT, words.leftOutSays));

describe('searches, trials, taking apart', () => {
  const answer: fc.Arbitrary<Pick<PlantingAnswer, 'surplus' | 'gapsLeft'>> = fc.record({
    surplus: mm,
    gapsLeft: fc.integer({ min: 0, max: 4 }),
  });
  it('a planting, plantings, a search under way', () => {
    spoken(answer, words.foundPlantingSays);
    spoken(fc.array(answer, { minLength: 1 }), (answers) => words.plantingsSay(answers, answers.length));
    spoken(fc.record({ best: mm }), words.searchingSays);
  });

  it('a trial', () => {
    const report = fc.record({
      input: arbor,
      runs: yes,
      turns: size,
      inputDeg: mm,
      overlap: size,
      stoppedBy: fc.constantFrom('forced', 'stall', 'slip', 'unmoved'),
      moved: count,
      driven: count,
      stoppedAt: several(arbor),
      stoppedWheels: fc.option(two(wheel), { nil: undefined }),
      aside: several(fc.record({ arbor, most: size })),
      leans: several(
        fc.record({ arbor, tiltDeg: fc.double({ min: 0, max: 3, noNaN: true }), aside: size, known: yes }),
      ),
    });
    // Speeds and steps are not spoken of.
    spoken(report as unknown as fc.Arbitrary<RehearsalReport>, words.rehearsalSays);
  });

  it('the order of taking apart', () => {
    const order = fc.record({
      groups: fc.constant([['zz1', 'zz2'] as ArborId[]]),
      heldDown: several(fc.record({ arbor, by: several(arbor), frame: fc.constant([]) })),
    });
    spoken(order, (each, speaker) => words.assemblySays(each, speaker).join(' '));
    spoken(two(piece), words.piecesWords);
  });
});

describe('rules that disagree', () => {
  const locus = fc.oneof(
    of('arc', { from: arbor }),
    of('ray', { from: arbor }),
    of('line', { through: two(arbor) }),
    of('gap', { rule }),
    of('edge'),
    of('centreLine'),
    of('lineFrom', { from: arbor }),
  );
  const length = fc.record({
    rule,
    bound: fc.constantFrom('atLeast', 'atMost', 'exactly'),
    length: size,
    from: fc.option(arbor, { nil: undefined }),
  });
  const implied = fc.array(fc.record({ kind: fc.constantFrom('pipe', 'slide', 'drilled'), point: arbor }), {
    maxLength: 2,
  });
  const why = fc.oneof(
    of('missing', { what: fc.constantFrom('point', 'wheel', 'part') }),
    of('twice', { point: arbor }),
    of('fewLengths'),
    of('noLengthOfPoint', { rule }),
    of('noDistance', { distance: mm }),
    of('bothFixed'),
    of('noEdge'),
    of('noRoom', { most: size }),
    of('tooLarge', { by: size }),
  );
  const without = fc.oneof(
    of('length', { rule, value: size }),
    of('angle', { rule, value: mm }),
    of('onePlace'),
    fc.constant(undefined),
  );
  const LOST: Kinds<DisagreementCause> = {
    miss: of('miss', {
      how: fc.constantFrom('apart', 'inside', 'concentric', 'lineOutside', 'behind', 'parallel'),
      point: fc.option(arbor, { nil: undefined }),
      centre: fc.option(arbor, { nil: undefined }),
      loci: two(locus),
      cures: fc.array(length, { maxLength: 2 }),
    }),
    set: of('set', {
      implied,
      fixed: fc.array(fc.record({ point: arbor, by: fc.constantFrom('drilled', 'held') }), { maxLength: 2 }),
      without,
    }),
    degenerate: of('degenerate', { implied }),
    notKept: of('notKept', { why }),
    over: of('over', {
      check: rule,
      also: several(rule),
      allowed: size,
      implied,
      measures: fc.option(fc.record({ kind: fc.constantFrom('length', 'angle'), value: size }), { nil: undefined }),
    }),
  };
  it.each(Object.entries(LOST))('%s', (_, cause) => {
    spoken(fc.tuple(cause as fc.Arbitrary<DisagreementCause>, several(rule), size), ([each, rules, gap], speaker) =>
      disagreementSays({ rules, points: [], gap, cause: each }, speaker),
    );
  });
});
