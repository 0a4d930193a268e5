/** Cures of what is no gap: stacks, hands, assembly, rings, turning, depths under shake; each is tried out and each holds. */
import { describe, expect, it } from 'vitest';
import { adviceFor, checkMovement, type Finding, remediesFor, withRemedies } from '../../solver/clearance/index.ts';
import { applyEdit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { arborAt, sceneOf, wheelOf } from './scenes.ts';
import { wordsOf } from './wordsOf.ts';

const DEPTHS = { depths: true } as const;

/** What is offered for the finding of a kind, each taken in turn: the finding must be gone and nothing new be there. */
function offeredFor(movement: Movement, isMeant: (finding: Finding) => boolean): string[] {
  const placed = plantMovement(movement);
  const before = checkMovement(placed, DEPTHS);
  const words = wordsOf(movement);
  const finding = before.find(isMeant);
  if (!finding) throw new Error(`not found; there is: ${before.map(words.finding).join(' | ')}`);
  const offered = remediesFor(placed, finding);
  for (const { edit } of offered) {
    const edited = applyEdit(movement, edit);
    if (edited.kind === 'refused') throw new Error(JSON.stringify(edited.why));
    const after = checkMovement(plantMovement(edited.movement), DEPTHS);
    expect(after.map(({ key }) => key)).not.toContain(finding.key);
    expect(after.length).toBeLessThan(before.length);
  }
  return offered.map(words.cure);
}

const ofKind =
  (kind: Finding['kind']) =>
  (finding: Finding): boolean =>
    finding.kind === kind;

const plates = [
  { id: 'lower', outline: { kind: 'circle', centre: [0, 0], radius: 80 }, levels: { from: -3, to: 0 } },
  { id: 'upper', outline: { kind: 'circle', centre: [0, 0], radius: 80 }, levels: { from: 30, to: 33 } },
];
const bearings = ['lower', 'upper'].map((plate) => ({ plate, bore: 1.02, pivot: 1, length: 3 }));

describe('a stack', () => {
  it('that is too long loses what is missing from a collar', () => {
    const a = arborAt('A', 0, 0, { bearings, endShake: 0.2, collars: [{ diameter: 4, from: 0, to: 29.9 }] });
    const says = offeredFor(sceneOf({ plates, arbors: [a.arbor], rules: [a.rule] }), ofKind('stack'));
    expect(says).toEqual(['Shorten collar on A by 0.100 mm above', 'Shorten collar on A by 0.100 mm below']);
  });

  it('that errors can use up gets a longer end shake', () => {
    const a = arborAt('A', 0, 0, { bearings, endShake: 0.05 });
    const says = offeredFor(
      sceneOf({ plates, arbors: [a.arbor], rules: [a.rule], wheels: [wheelOf('w', 'A', 20, 5)] }),
      ofKind('stack'),
    );
    // Three lengths of ±0.02 and the plates' ±0.05: √(0.0025 + 3·0.0004) = 0.061.
    expect(says).toEqual(['Give A an end shake of 0.070 mm']);
  });

  it('of a pipe gets the collars that hold it', () => {
    const a = arborAt('A', 0, 0, { bearings, diameter: 4, levels: { from: -3, to: 60 } });
    const pipe = {
      id: 'B',
      name: 'Pipe',
      at: [0, 0],
      diameter: 6,
      ridesOn: 'A',
      pipeBore: 4,
      levels: { from: 34, to: 50 },
      endShake: 0.2,
    };
    const says = offeredFor(sceneOf({ plates, arbors: [a.arbor, pipe], rules: [a.rule] }), ofKind('stack'));
    expect(says).toEqual([
      'Put a collar Ø 8.000 mm on Pipe from 33.100 mm to 34.000 mm, and put a collar Ø 6.000 mm on A from 50.100 mm to 52.100 mm',
    ]);
  });
});

describe('a hand that meets a post', () => {
  it('is shortened, or moved past it', () => {
    const a = arborAt('A', 0, 0, {
      levels: { from: -2, to: 0 },
      swept: [{ name: 'Hour hand', kind: 'hand', farthest: 30, from: 5, to: 6 }],
    });
    const movement = sceneOf({
      arbors: [a.arbor],
      rules: [a.rule, { id: 'p', kind: 'held', point: 'P', at: [0, 31] }],
      posts: [{ id: 'P', at: [0, 31], diameter: 4, levels: { from: 0, to: 10 } }],
    });
    const says = offeredFor(movement, ofKind('fouls'));
    // It may reach 31 − 2 − 0.5; the post ends at 10, and 0.3 are owed.
    expect(says).toContainEqual(expect.stringMatching(/^Shorten Hour hand to 28\.490 mm from its axis/));
    expect(says).toContainEqual(expect.stringMatching(/^Move Hour hand up by 5\.3[01]0 mm/));
  });
});

describe('an arbor that is held down', () => {
  const held = (more: object = {}) => {
    const a = arborAt('A', 0, 0, { bearings });
    return sceneOf({
      plates,
      arbors: [a.arbor],
      rules: [a.rule, { id: 'p', kind: 'held', point: 'P', at: [14, 0] }],
      wheels: [wheelOf('a', 'A', 20, 5)],
      posts: [
        {
          id: 'P',
          name: 'Post',
          at: [14, 0],
          diameter: 4,
          levels: { from: 0, to: 30 },
          heads: [{ diameter: 10, from: 12, to: 14 }],
          ...more,
        },
      ],
    });
  };
  it('is freed by a smaller head, or by a wheel above it', () => {
    expect(offeredFor(held(), ofKind('assembly'))).toEqual([
      'Turn the head of Post down to Ø 8.000 mm',
      'Move a (a) up by 9.310 mm',
    ]);
  });
  it('where nothing frees it, is told what to make removable', () => {
    const placed = plantMovement(held({ diameter: 9, heads: [{ diameter: 9.5, from: 7.1, to: 29.9 }] }));
    const [finding] = checkMovement(placed, DEPTHS).filter(ofKind('assembly'));
    if (!finding) throw new Error('not found');
    const [told] = withRemedies(placed, [finding]);
    expect(told?.remedies).toBeUndefined();
    expect(told?.advice).toEqual(adviceFor(placed, finding));
    expect(told?.advice && wordsOf(placed.movement).advice(told.advice)).toMatch(/removable/);
  });
});

/**
 * Diagonal AC of a rhombus of sides 22 whose wheels of 20 and 24 close: with half angles α and β = 90° − α at A and B
 * the alternating sum (2·20·2α − 2·24·2β)/360 is 0 for α = 8640/176 degrees.
 */
const CLOSING = 44 * Math.cos(((8640 / 176) * Math.PI) / 180);

/** Four wheels in a ring: B and D between A and C. */
function ring(teeth: readonly [number, number, number, number], diagonal = CLOSING): Movement {
  const [a, c] = [arborAt('A', 0, 0), arborAt('C', diagonal, 0)];
  const wheel = (id: string, arbor: string, count: number) => ({
    id,
    name: id,
    arbor,
    teeth: count,
    size: { module: 1 },
    form: 'involute',
    level: 0,
    thickness: 2,
  });
  return sceneOf({
    arbors: [
      a.arbor,
      { id: 'B', name: 'B', at: [15, 20], diameter: 2 },
      c.arbor,
      { id: 'D', name: 'D', at: [15, -20], diameter: 2 },
    ],
    rules: [
      a.rule,
      c.rule,
      { id: 'ab', kind: 'depth', wheels: ['a', 'b'] },
      { id: 'bc', kind: 'depth', wheels: ['b', 'c'] },
      { id: 'cd', kind: 'depth', wheels: ['c', 'd'] },
      { id: 'da', kind: 'depth', wheels: ['d', 'a'] },
    ],
    wheels: [
      wheel('a', 'A', teeth[0]),
      wheel('b', 'B', teeth[1]),
      wheel('c', 'C', teeth[2]),
      wheel('d', 'D', teeth[3]),
    ],
  });
}

describe('a ring that does not close', () => {
  const isRing = ({ kind, severity }: Finding): boolean => kind === 'ring' && severity === 'stops';

  it('is closed by a count, or by holding an arbor a little elsewhere', () => {
    const says = offeredFor(ring([20, 24, 20, 25]), isRing);
    expect(says).toContain('Give d (d) 24 teeth for 25');
    expect(says).toContainEqual(
      expect.stringMatching(/^Hold C \(C\) at \(\d\d\.\d{3}, -?\d\.\d{3}\), \d\.\d{3} mm from its place$/),
    );
  });

  it('moves an arbor that is loose, as one edit', () => {
    const movement = ring([20, 24, 20, 25]);
    const loose = applyEdit(movement, { kind: 'leaveOut', rules: ['place-C'], leaveOut: true });
    if (loose.kind === 'refused') throw new Error(JSON.stringify(loose.why));
    expect(offeredFor(loose.movement, isRing)).toContainEqual(
      expect.stringMatching(/^Move .*C \(C\) by \d\.\d{3} mm to /),
    );
  });

  it('tells the nearest count where none closes it', () => {
    const placed = plantMovement(ring([20, 24, 23, 31]));
    const finding = checkMovement(placed).find(isRing);
    if (!finding) throw new Error('it closes');
    const says = wordsOf(placed.movement).advice(adviceFor(placed, finding));
    expect(says).toMatch(/^The nearest count of one wheel is \d+ teeth for [abcd] \([abcd]\): /);
  });
});

describe('turning', () => {
  const train = (teeth: number, more: object = {}, pipe: object = {}): Movement => {
    const [a, b] = [
      arborAt('A', 0, 0, { levels: { from: 0, to: 4 } }),
      { id: 'B', name: 'B', at: [40, 0], diameter: 2 },
    ];
    const wheel = (id: string, arbor: string, count: number) => ({
      id,
      name: id,
      arbor,
      teeth: count,
      size: { module: 1 },
      form: 'involute',
      level: 0,
      thickness: 2,
    });
    return sceneOf({
      arbors: [a.arbor, b, ...('id' in pipe ? [pipe] : [])],
      rules: [
        a.rule,
        { id: 'd', kind: 'depth', wheels: ['a', 'b'] },
        { id: 'g', kind: 'bearing', point: 'B', centre: 'A', angle: 0 },
      ],
      wheels: [wheel('a', 'A', 20), wheel('b', 'B', teeth)],
      drive: { arbor: 'A', period: { value: 1, unit: 'h' } },
      ...more,
    });
  };
  const isTurning = ofKind('turning');

  it('a count that is off by one is put right, whichever wheel has it', () => {
    const wanted = { indications: [{ id: 'i', name: 'Hand', arbor: 'B', ratio: '1/3', tolerancePpm: 100 }] };
    expect(offeredFor(train(61, wanted), isTurning)).toEqual(['Give b (b) 60 teeth for 61']);
  });

  it('a hand that turns the other way may be wanted so', () => {
    const wanted = { indications: [{ id: 'i', name: 'Hand', arbor: 'B', ratio: '1/3', sense: 'clockwise' }] };
    expect(offeredFor(train(60, wanted), isTurning)).toEqual(['Want Hand anticlockwise, if that is what was meant']);
  });

  it('a pipe that nothing drives is fixed on its arbor', () => {
    const pipe = {
      id: 'P',
      name: 'Pipe',
      at: [0, 0],
      diameter: 4,
      ridesOn: 'A',
      pipeBore: 2,
      levels: { from: 5, to: 9 },
    };
    expect(offeredFor(train(60, {}, pipe), isTurning)).toEqual(['Fix Pipe on A (A)']);
  });
});

describe('a depth that binds', () => {
  it('is given its calculated distance, or one in the middle of what runs', () => {
    const movement = sceneOf({
      arbors: [0, 1].map((i) => ({ id: `A${i}`, name: `A${i}`, at: [i * 24.7, 0], diameter: 2 })),
      wheels: [0, 1].map((i) => ({
        id: `w${i}`,
        name: `w${i}`,
        arbor: `A${i}`,
        teeth: [30, 20][i],
        size: { module: 1 },
        form: 'involute',
        level: 0,
        thickness: 2,
      })),
      rules: [
        { id: 'h', kind: 'held', point: 'A0', at: [0, 0] },
        { id: 'b', kind: 'bearing', point: 'A1', centre: 'A0', angle: 0 },
        { id: 'd', kind: 'depth', wheels: ['w0', 'w1'], use: 'held', held: 24.7 },
      ],
    });
    const says = offeredFor(movement, ({ key }) => key.startsWith('depth shake'));
    expect(says[0]).toBe('Use the calculated depth of w0 and w1, 25.000 mm');
    expect(says).toContainEqual(expect.stringMatching(/^Hold the depth of w0 and w1 at 25\.\d{3} mm$/));
    // Nothing about heights: they do meet.
    expect(says.some((each) => each.includes('to meet'))).toBe(false);
  });
});

describe('openings', () => {
  const cut = (openings: readonly { id: string; x: number; r: number; kind?: string }[]): Movement =>
    sceneOf({
      plates: [{ id: 'p', outline: { kind: 'circle', centre: [0, 0], radius: 20 }, levels: { from: -3, to: 0 } }],
      openings: openings.map(({ id, x, r, kind = 'opening' }) => ({
        id,
        kind,
        plate: 'p',
        outline: { kind: 'circle', centre: [x, 0], radius: r },
      })),
    });
  const says = (movement: Movement): string[] => checkMovement(plantMovement(movement)).map(wordsOf(movement).finding);

  it('lie within their plate, and apart; a notch may cross its edge', () => {
    expect(says(cut([{ id: 'a', x: 5, r: 5 }]))).toEqual([]);
    expect(says(cut([{ id: 'a', x: 18, r: 5, kind: 'notch' }]))).toEqual([]);
    expect(says(cut([{ id: 'a', x: 30, r: 5 }]))).toEqual(['Opening 1 is outside plate 1: there is nothing to cut.']);
    expect(
      says(
        cut([
          { id: 'a', x: 0, r: 5 },
          { id: 'b', x: 8, r: 5 },
        ]),
      )[0],
    ).toMatch(/^Opening 1 and opening 2 cross/);
  });
  it('that cross the edge may be made notches', () => {
    expect(offeredFor(cut([{ id: 'a', x: 18, r: 5 }]), ofKind('case'))).toEqual(['Make opening 1 a notch']);
  });
});
