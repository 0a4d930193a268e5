/** Every kind of step, warning and thing to do when marking out, printed in millimetres and in inches. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type {
  CrossingTold,
  MarkingLocus,
  MarkingStep,
  ResolvedDatum,
  StepWarning,
  TransferStep,
} from '../../solver/marking/index.ts';
import * as shop from '../../solver/words/shop/index.ts';
import { bothUnits, expectSpoken } from './spoken.ts';

const speakers = bothUnits();
const mm = fc.double({ min: -400, max: 400, noNaN: true });
const size = fc.double({ min: 0.01, max: 170, noNaN: true });

function inBoth(say: (speaker: (typeof speakers)[number]) => string): void {
  for (const speaker of speakers) expectSpoken(say(speaker), speaker);
}

describe('marking out', () => {
  const locus = fc.oneof(
    fc.record({ kind: fc.constant('arc'), from: fc.constantFrom('zz1', 'plate centre'), radius: size }),
    fc.record({ kind: fc.constant('line'), through: fc.constant('zz1'), to: fc.constant('zz4') }),
    fc.record({
      kind: fc.constant('ray'),
      from: fc.constant('zz1'),
      reference: fc.constantFrom(undefined, 'zz2'),
      angleDeg: fc.double({ min: 0, max: 360, noNaN: true }),
    }),
    fc.record({ kind: fc.constant('offset'), from: fc.constantFrom('left edge', 'upper edge'), distance: mm }),
    fc.record({
      kind: fc.constant('offset'),
      from: fc.constant('datum'),
      along: fc.constantFrom('x', 'y'),
      distance: mm,
    }),
  ) as fc.Arbitrary<MarkingLocus>;
  const loci = fc.tuple(locus, locus);
  const crossing = fc.record(
    {
      side: fc.constantFrom('upper', 'lower', 'right-hand', 'left-hand'),
      beside: fc.record({ isLeft: fc.boolean(), from: fc.constant('zz1'), to: fc.constant('zz2') }),
      near: fc.constant('zz4'),
    },
    { requiredKeys: ['side'] },
  ) as fc.Arbitrary<CrossingTold>;
  const arcs = fc.record({ loci, crossing }, { requiredKeys: ['loci'] });
  const warnings: Readonly<Record<StepWarning['kind'], fc.Arbitrary<object>>> = {
    otherDatum: fc.record({}),
    notSettled: fc.record({ isLoose: fc.boolean() }),
    flatBetterArcs: fc.record({ arcs, angle: fc.double({ min: 0.01, max: 1.57, noNaN: true }) }),
    flatBetterOffsets: fc.record({ loci }),
    flatNothingBetter: fc.record({}),
  };
  const edge = { axis: 'x', at: 0, inward: 1 } as const;
  const datum = fc.constantFrom<ResolvedDatum>(
    { kind: 'edges', upright: { ...edge, name: 'left edge' }, level: { ...edge, name: 'lower edge' } },
    { kind: 'centre', origin: { x: 0, y: 0 } },
    { kind: 'pair', first: 'zz3', second: 'zz5', origin: { x: 0, y: 0 } },
  );
  const KINDS = {
    datum: true,
    already: true,
    arcs: true,
    arcAndLine: true,
    lines: true,
    offset: true,
    opposite: true,
    same: true,
    spacing: true,
    derivedArcs: true,
    unsettled: true,
  } as const satisfies Readonly<Record<MarkingStep['kind'], true>>;

  it.each(Object.entries(warnings))('a step of any kind that warns: %s', (kind, more) => {
    const warns = more.map((fields) => ({ kind, ...fields }) as StepWarning);
    const step = fc.record({
      kind: fc.constantFrom(...(Object.keys(KINDS) as MarkingStep['kind'][])), // keys of the table
      loci,
      crossing,
      warns,
      orElse: arcs,
      check: fc.record({ from: fc.constantFrom('zz4', 'right edge'), distance: size }),
      crossingAngleDeg: fc.double({ min: 1, max: 90, noNaN: true }),
      movedByHundredth: fc.double({ min: 0.01, max: 0.6, noNaN: true }),
      done: fc.boolean(),
    });
    fc.assert(
      fc.property(step, datum, (fields, from) => {
        const told: MarkingStep = { ...fields, number: 1, point: 'zz3', label: 'third, upper', place: [17, 23] };
        inBoth((speaker) => shop.datumSays(from, speaker));
        inBoth((speaker) => shop.stepLines(told, from, speaker).join(' '));
      }),
    );
  });

  it('a setting is out by what makers ask about in their unit', () => {
    const step: MarkingStep = {
      ...{ number: 1, point: 'zz3', label: 'third, upper', place: [17, 23], done: false, kind: 'arcs', loci: [] },
      crossingAngleDeg: 30,
      movedByHundredth: 0.02,
    };
    const datumAt: ResolvedDatum = { kind: 'centre', origin: { x: 0, y: 0 } };
    const says = speakers.map((speaker) => shop.stepLines(step, datumAt, speaker)[1]);
    expect(says).toEqual([
      'They cross at 30.0°; a setting 0.010 mm out moves the point 0.020 mm.',
      'They cross at 30.0°; a setting 0.0010 in out moves the point 0.0020 in.',
    ]);
  });

  it('each thing to do when holes are carried to another plate', () => {
    const hole = { labels: ['third, upper', 'post 1'], x: 0, y: 0, diameters: [2, 3], isReamed: true } as const;
    const steps: Readonly<Record<TransferStep['kind'], readonly TransferStep[]>> = {
      mark: [{ kind: 'mark', plates: ['zz0', 'zz0'] }],
      clamp: [
        { kind: 'clamp', registers: [], mirrored: true },
        { kind: 'clamp', registers: ['Ring', 'Slot'], mirrored: false },
      ],
      tooFew: [{ kind: 'tooFew' }],
      pin: [
        { kind: 'pin', hole, isFirst: true },
        { kind: 'pin', hole, isFirst: false },
      ],
      pinsFit: [
        { kind: 'pinsFit', oneWay: true },
        { kind: 'pinsFit', oneWay: false },
      ],
      drill: [
        { kind: 'drill', hole, openedIn: 'zz0' },
        { kind: 'drill', hole: { ...hole, isReamed: false } },
      ],
    };
    const plan = { shared: [], dowels: [], registers: [], oneWay: true, mirrored: true };
    for (const speaker of speakers) {
      const says = shop.transferSays({ ...plan, steps: Object.values(steps).flat() }, speaker);
      for (const each of says) expectSpoken(each, speaker);
      expect(new Set(says).size).toBe(says.length);
    }
  });
});
