/** Every kind of outcome of the shop, printed in millimetres and in inches with odd names and any figures. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ErrorsFound, SourceFound } from '../../solver/made/errors/index.ts';
import {
  boreBeforePressing,
  FIT_USES,
  type FitUse,
  fitOf,
  reamedHole,
  warmingToSlip,
} from '../../solver/made/fits/index.ts';
import { curesFor } from '../../solver/made/holes/cure.ts';
import { type Consequences, type Cure, partSizes, type ReadingDoubt } from '../../solver/made/index.ts';
import type { ArborId, PointId, PostId, ReadingId, RuleId, WheelId } from '../../solver/movement/ids.ts';
import * as shop from '../../solver/words/shop/index.ts';
import { bothUnits, expectSpoken } from './spoken.ts';

const speakers = bothUnits();
const mm = fc.double({ min: -400, max: 400, noNaN: true });
const size = fc.double({ min: 0.01, max: 170, noNaN: true });
const reading = fc.constantFrom('zz20', 'zz21').map((id) => id as ReadingId); // readings of the movement
const at = fc.tuple(mm, mm);
const POINT = 'zz3' as PointId;
const DEPTH = 'zz12' as RuleId;

const lengthSlip = fc.constantFrom(
  'mmAsInches',
  'inchesAsMm',
  'pointTooFarRight',
  'pointTooFarLeft',
  'doubled',
  'halved',
);
const placeSlip = fc.constantFrom(
  'mmAsInches',
  'inchesAsMm',
  'pointTooFarRight',
  'pointTooFarLeft',
  'otherFace',
  'yTurned',
  'bothTurned',
  'axesExchanged',
);
const DOUBTS = {
  noFigure: fc.record({ kind: fc.constant('noFigure'), reading }),
  withinPins: fc.record({
    kind: fc.constant('withinPins'),
    reading,
    shown: mm,
    pins: fc.tuple(size, size),
    least: size,
  }),
  notAboveZero: fc.record({ kind: fc.constant('notAboveZero'), reading, length: mm }),
  slip: fc.record({ kind: fc.constant('slip'), reading, length: size, planned: size, slip: lengthSlip, meant: size }),
  noTeethLeft: fc.record({
    kind: fc.constant('noTeethLeft'),
    reading,
    length: size,
    root: size,
    internal: fc.boolean(),
  }),
  runOutBeyondTeeth: fc.record({ kind: fc.constant('runOutBeyondTeeth'), reading, length: size, depth: size }),
  endShakeBeyondFrame: fc.record({ kind: fc.constant('endShakeBeyondFrame'), reading, length: size, frame: size }),
  placeSlip: fc.record({ kind: fc.constant('placeSlip'), reading, at, planned: at, slip: placeSlip, meant: at }),
} satisfies { readonly [K in ReadingDoubt['kind']]: fc.Arbitrary<Extract<ReadingDoubt, { kind: K }>> };

const CURES: Readonly<Record<Cure['kind'], readonly [number, object]>> = {
  leave: [0.01, {}],
  ream: [0.3, {}],
  bush: [0.3, {}],
  plug: [0.3, { roomDiameter: 3.1 }],
};

function inBoth(say: (speaker: (typeof speakers)[number]) => string): void {
  for (const speaker of speakers) expectSpoken(say(speaker), speaker);
}

describe('readings, holes, cures', () => {
  it.each(Object.entries(DOUBTS))('a reading that is asked about: %s', (_, doubts) => {
    fc.assert(
      fc.property(doubts as fc.Arbitrary<ReadingDoubt>, (doubt) => {
        inBoth((speaker) => shop.doubtSays(doubt, speaker));
        inBoth((speaker) => shop.doubtOfRow(doubt, speaker));
      }),
    );
  });

  it('an odd one is told by its number in the list and what it is of, or stands in its row', () => {
    const [metric] = speakers;
    if (!metric) throw new Error('no speaker');
    const outlier = { id: 'zz20' as ReadingId, off: 0.5 };
    expect(shop.outlierSays(outlier, metric)).toBe(
      'Reading 1 (wheel of 64 on arbor 1 to pinion of 8 on third, upper, 2026-05-01) does not belong with the others: 0.500 mm off the rest, and not used.',
    );
    inBoth((speaker) => shop.outlierSays(outlier, speaker));
    inBoth((speaker) => shop.outlierOfRow(outlier.off, speaker));
  });

  it.each(Object.entries(CURES))('a cure: %s', (kind, [off, options]) => {
    fc.assert(
      fc.property(fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }), (angle) => {
        const cures = curesFor(off * Math.cos(angle), off * Math.sin(angle), { diameter: 3, ...options });
        const cure = cures.find((each) => each.kind === kind);
        if (!cure) throw new Error(`no ${kind}`);
        inBoth((speaker) => shop.holeCureSays(cure, speaker));
      }),
    );
  });

  it('a hole without room says how much there is', () => {
    const [plug] = curesFor(0.3, 0, { diameter: 3, roomDiameter: 3.1 });
    const says = speakers.map((speaker) => plug && shop.holeCureSays(plug, speaker));
    expect(says[0]).toContain('room for Ø 3.100 mm only');
    expect(says[1]).toContain('room for Ø 0.1220 in only');
  });

  it('the clock is told to the nearest five minutes in words that a clock has', () => {
    fc.assert(
      fc.property(fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }), (angle) => {
        expect(shop.clockSays(angle)).toMatch(
          /^(?:(?:5|10|quarter|20|25) (?:past|to)|half past) (?:1[0-2]|[1-9])$|^(?:1[0-2]|[1-9]) o'clock$/,
        );
      }),
    );
  });

  it('every size of every part', () => {
    for (const speaker of speakers) {
      const says = partSizes(speaker.movement).map((each) => shop.partSizeSays(each, speaker));
      expect(new Set(says).size).toBe(says.length);
      for (const each of says) expectSpoken(each, speaker);
    }
  });

  it.each([[['wrong']], [['residual']], [[]]])('what distances tell: %j', (shown) => {
    const wrong = shown.includes('wrong') ? [{ id: 'zz1', dx: 0.2, dy: -0.1, plusMinus: 0.02, explains: 40 }] : [];
    const residual = { from: 'zz1', to: 'zz3', residual: -0.012, sigmas: shown.length === 0 ? -1 : -4 };
    const report = { wrong, places: [], residuals: [residual] };
    const tell = { distances: [{ from: 'zz1', to: 'zz3', length: 3, plusMinus: 0.1 }], report, doubts: [] };
    for (const speaker of speakers) for (const says of shop.holesSay(tell, speaker)) expectSpoken(says, speaker);
    inBoth((speaker) => shop.leftOverSays(residual, speaker));
    expect(shop.holesDisagree(tell)).toBe(shown.length > 0);
    const off = { point: POINT, dx: 0.1, dy: 0, diameter: 3, room: 4, cures: [] };
    inBoth((speaker) => `${shop.offPlaceSays(off, speaker)} ${shop.roomSays(off, speaker)}`);
    expect(speakers.map((speaker) => shop.roomSays({ ...off, room: 40 }, speaker))).toEqual([undefined, undefined]);
  });
});

describe('fits', () => {
  it('standard fits, reamers and bushes over the table and beyond', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 200, noNaN: true }), mm, (nominal, tenths) => {
        const reamer = nominal + tenths / 1e4;
        inBoth((speaker) => shop.fitSays(fitOf(nominal, 'H7', tenths > 0 ? 'g6' : 'p6'), speaker));
        inBoth((speaker) => shop.fitSays(fitOf(nominal, 'H7', 'k6'), speaker));
        inBoth((speaker) => shop.reamedSays(reamedHole({ size: nominal, hole: 'H8', reamer, cutsOver: 0 }), speaker));
        const pressed = boreBeforePressing({ seat: nominal, outer: reamer, bore: nominal / 2 });
        inBoth((speaker) => shop.pressedSays(pressed, speaker));
        inBoth((speaker) => shop.playBetween(nominal, reamer, speaker));
      }),
    );
  });

  it('cautions stand with the warmth, and with what is too warm', () => {
    const [mild, hot] = [warmingToSlip(10, 0.02), warmingToSlip(4, 0.03)];
    expect(mild && shop.warmingSays(mild)).toContain('Hot metal');
    expect(hot && shop.warmingSays(hot)).toContain('press it cold');
  });

  it('uses and feels are words', () => {
    // Keys of the table of uses.
    for (const use of Object.keys(FIT_USES) as FitUse[]) inBoth(() => shop.useSays(use));
    for (const feel of Object.values(shop.FEELS)) inBoth(() => feel);
  });
});

describe('trials of errors, and changes', () => {
  const rest = { plusMinus: 0.03, isStated: false, does: [], breaks: false, share: 0.5 } as const;
  const sources: readonly SourceFound[] = [
    { kind: 'length', of: DEPTH, ...rest },
    { kind: 'slide', of: 'zz4' as PostId, ...rest },
    { kind: 'place', of: 'zz10' as RuleId, point: 'zz1' as PointId, ...rest },
    { kind: 'hole', of: POINT, ...rest },
    { kind: 'bore', of: 'zz1' as ArborId, bearing: 0, ...rest },
    { kind: 'bore', of: 'zz3' as ArborId, bearing: 'pipe', ...rest },
    { kind: 'tip', of: 'zz9' as WheelId, ...rest },
  ];
  const spread = { planned: 1, plusMinus: 0.1, triedPlusMinus: 0.1, least: 0, most: 2, from: [] };
  const found = {
    sources,
    depths: [{ ...spread, rule: DEPTH, window: undefined, tight: 0, bearingsGive: 0, loose: 0 }],
    gaps: [{ ...spread, parts: ['zz8', 'zz4'], asPlanted: 1, wanted: 0.5, fouls: 0, tooClose: 0 }],
    checks: [{ ...spread, rule: 'zz13' as RuleId }],
  } as unknown as ErrorsFound; // what the words ask of it

  it('each source and each effect', () => {
    fc.assert(
      fc.property(mm, fc.nat({ max: sources.length - 1 }), (change, index) => {
        const source = sources[index];
        if (!source) throw new Error('no source');
        inBoth((speaker) => shop.errorSays(source, speaker));
        inBoth((speaker) => shop.mostlySays(found, [{ source: index, share: 0.4 }], speaker) ?? '');
        for (const [on, by] of [
          ['depth', 'distance'],
          ['depth', 'room'],
          ['gap', 'gap'],
          ['check', 'off'],
        ] as const) {
          inBoth((speaker) => shop.effectSays(found, { on, by, index: 0, change }, speaker));
        }
      }),
    );
    for (const kind of ['depths', 'trials'] as const) {
      inBoth((speaker) => shop.doingSays({ kind, at: 1, of: 9 }, speaker));
    }
    inBoth((speaker) => shop.doingSays({ kind: 'alone' }, speaker));
  });

  it('moves, depths and play; nothing when nothing changed', () => {
    const nothing: Consequences = { moves: [], depths: [], plays: [], gaps: [], findingsNew: [], findingsGone: [] };
    expect(speakers.map((speaker) => shop.changesSay(nothing, speaker))).toEqual([
      ['Nothing changes.'],
      ['Nothing changes.'],
    ]);
    fc.assert(
      fc.property(size, size, fc.constantFrom('free', 'tight', 'bottoms', 'apart', 'unknown'), (a, b, runs) => {
        const shift = { amount: a, angle: b % 3 };
        const changes: Consequences = {
          ...nothing,
          moves: [{ id: POINT, from: { x: 0, y: 0 }, to: { x: a, y: b }, amount: a, shift }],
          depths: [
            { rule: DEPTH, before: { distance: a, shake: a, runs: 'free' }, after: { distance: b, shake: b, runs } },
            { rule: DEPTH, before: { distance: a, shake: undefined, runs }, after: { distance: a, shake: b, runs } },
          ],
          plays: [{ arbor: 'zz1' as ArborId, before: { side: a, end: b }, after: { side: b, end: a } }],
        };
        for (const speaker of speakers) {
          for (const says of shop.changesSay(changes, speaker)) expectSpoken(says, speaker);
          expect(shop.changesBesideDepths(changes, speaker)).toHaveLength(2);
          expectSpoken(shop.pairSays(DEPTH, speaker), speaker);
        }
      }),
    );
  });
});
