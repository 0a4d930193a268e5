/** Every kind of outcome of teeth, cutting and depths, printed in millimetres and in inches with odd names and any figures. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type CutterChoice,
  cuttingDataOf,
  type DividingWay,
  type NearWay,
  type NoSetting,
  type SettingResult,
} from '../../solver/teeth/cutting/index.ts';
import { type DepthRemark, depthReport, type Mismatch, type PairFault } from '../../solver/teeth/index.ts';
import type { NoOpenings, OutlineDoubt } from '../../solver/teeth/outlines/index.ts';
import * as words from '../../solver/words/index.ts';
import { anyOf, count, eachKind, type Kinds, of, radians, size, spoken, wheel } from './kinds.ts';
import { bothUnits, expectSpoken } from './spoken.ts';
import { MISMATCHES, PAIR_FAULTS, REMARKS, TOOTH_DOUBTS, TOOTH_FAULTS, toothSize } from './teethKinds.ts';

const speakers = bothUnits({});

const arms = fc.record({
  count,
  width: size,
  widthAtRim: size,
  hubRadius: size,
  rimRadius: size,
  fillet: size,
});
const NO_OPENINGS: Kinds<NoOpenings> = {
  tooTight: of('tooTight', { arms }),
  armsAsBroadAsHub: of('armsAsBroadAsHub', { arms }),
  noRoom: of('noRoom', { arms }),
};
const OUTLINES: Kinds<OutlineDoubt> = {
  ...TOOTH_DOUBTS,
  cornersOfCutter: of('cornersOfCutter', { wheel, stated: size, drawn: size }),
  thinRim: of('thinRim', { wheel, rim: size, least: size }),
  noOpenings: of('noOpenings', { wheel, why: anyOf(NO_OPENINGS) }),
  closedUp: of('closedUp', { wheel, offset: size, role: fc.constantFrom('teeth', 'body', 'opening', 'bore', 'pin') }),
  rootsNotReached: of('rootsNotReached', { wheel, offset: size, left: size }),
};

const head = fc.constant('40:1');
const move = fc.record({
  turns: fc.integer({ min: 0, max: 9 }),
  holes: fc.integer({ min: -20, max: 20 }),
  circle: count,
});
const error = fc.double({ min: 1e-9, max: 0.01, noNaN: true });
const EXACT: Kinds<DividingWay> = {
  direct: of('direct', { circle: count, holes: fc.integer({ min: 1, max: 12 }) }),
  simple: of('simple', { head, moves: fc.array(move, { minLength: 1, maxLength: 3 }) }),
  compound: of('compound', { head, first: move, second: move }),
  differential: of('differential', {
    head,
    as: count,
    move,
    driving: fc.array(count, { minLength: 1, maxLength: 2 }),
    driven: fc.array(count, { minLength: 1, maxLength: 2 }),
    sense: fc.constantFrom('with', 'against'),
  }),
};
const NEAR: Kinds<NearWay> = {
  nearestHole: of('nearestHole', { head, circle: count, placeError: error, spacingError: error }),
  nearCompound: of('nearCompound', {
    head,
    first: move,
    second: move,
    skip: fc.integer({ min: 1, max: 7 }),
    step: error,
    placeError: error,
    spacingError: error,
  }),
  angle: of('angle', { placeError: error, spacingError: error }),
};
const SETTINGS: Kinds<SettingResult | NoSetting> = {
  closes: of('closes', { teeth: count, rounds: fc.constant(1), nearest: count }),
  goesRound: of('goesRound', { teeth: count, rounds: count, nearest: count }),
  none: of('none', {
    ratio: count,
    turns: fc.oneof(count, fc.constant(0.5), fc.constant(Number.NaN)),
    holes: fc.integer({ min: -5, max: 5 }),
    circle: count,
  }),
};
const CUTTERS: Kinds<CutterChoice> = {
  involute: of('involute', {
    size: toothSize,
    pressureAngle: radians,
    range: fc.constantFrom(
      { from: 135, to: undefined, diametralPitchNumber: 1, moduleNumber: 8 },
      { from: 10, to: 11, diametralPitchNumber: 9, moduleNumber: undefined },
    ),
  }),
  noFormCutter: of('noFormCutter', { teeth: count }),
  clockWheel: of('clockWheel', { size: toothSize, family: fc.constant('BS 978') }),
  clockLeaf: of('clockLeaf', { size: toothSize, teeth: count, leaves: count, exact: fc.boolean(), oldWork: size }),
  trundles: of('trundles'),
  vCutter: of('vCutter', { angle: radians, space: radians }),
  ring: of('ring'),
};

describe('teeth that cannot be', () => eachKind(TOOTH_FAULTS, words.teethSay, speakers));
describe('teeth in doubt', () => eachKind(TOOTH_DOUBTS, words.teethSay, speakers));
describe('pairs that do not match', () => {
  eachKind<Mismatch>(MISMATCHES, words.mismatchSays, speakers);
  eachKind<Mismatch>(MISMATCHES, words.pairDoubtSays, speakers);
});
describe('pairs without contact', () => eachKind<PairFault>(PAIR_FAULTS, words.pairFaultSays, speakers));
describe('outlines', () => eachKind<OutlineDoubt>(OUTLINES, words.outlineDoubtSays, speakers));
describe('crossing out', () => eachKind<NoOpenings>(NO_OPENINGS, words.noOpeningsSay, speakers));
describe('exact dividing', () => eachKind<DividingWay>(EXACT, words.dividingWaySays, speakers));
describe('near dividing', () => eachKind<NearWay>(NEAR, words.nearWaySays, speakers));
describe('crank settings', () => eachKind<SettingResult | NoSetting>(SETTINGS, words.settingSays, speakers));
// What a cutter is begins with a size, in a small letter, since it stands behind the word for it.
describe('cutters', () =>
  eachKind<CutterChoice>(CUTTERS, (cutter, speaker) => `Cutter: ${words.cutterSays(cutter, speaker)}`, speakers));
describe('remarks on a depth', () =>
  eachKind<DepthRemark>(
    REMARKS,
    (remark, speaker) => Object.values(words.remarkWords(remark, speaker)).join(' '),
    speakers,
  ));

describe('whole texts of the movement itself', () => {
  it('every depth in lines', () => {
    for (const speaker of speakers) {
      const entries = depthReport(speaker.movement, { shakes: [0.05, 9] });
      expect(entries.length).toBeGreaterThan(0);
      for (const entry of entries) expectSpoken(`${words.depthLines(entry, speaker).join(' ')}.`, speaker);
    }
  });

  it('every wheel as it is cut', () => {
    for (const speaker of speakers) {
      for (const each of speaker.movement.wheels) {
        const lines = words.cuttingLines(cuttingDataOf(each, speaker.movement), speaker);
        expectSpoken(`${lines.join(' ')}.`, speaker);
      }
    }
  });

  it('a change of a distance is told by the smallest step of the unit', () => {
    const [mm, inch] = speakers.map((speaker) => words.smallChange(-0.0073, speaker));
    expect(mm).toMatchObject({ step: 'hundredth', shake: expect.stringMatching(/^0\.007\d* mm$/) });
    // A thousandth of an inch is 2.54 hundredths of a millimetre: 0.0254/0.01 · 0.0073 mm = 0.00073 in.
    expect(inch).toMatchObject({ step: 'thousandth', shake: expect.stringMatching(/^0\.0007\d* in$/) });
    spoken(size, (by, speaker) => `Changes by ${words.smallChange(by, speaker).shake}.`, speakers);
  });
});
