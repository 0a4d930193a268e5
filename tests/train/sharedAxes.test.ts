/** Depths between the same two axes: which pair may be cut otherwise, and which may not. */
import { describe, expect, it } from 'vitest';
import type { Movement } from '../../solver/movement/schema.ts';
import { turnMovement } from '../../solver/train/index.ts';
import { speakerOf } from '../../solver/words/index.ts';
import { sharedAxesSay } from '../../solver/words/train/index.ts';
import { movementOfParts } from '../support/movements.ts';

type Drawn = Readonly<Record<string, readonly [arbor: string, teeth: number, module?: number]>>;

/** Arbors A to C, wheels on them, and depths by their wheels' letters. */
const drawn = (wheels: Drawn, depths: readonly string[]): Movement =>
  movementOfParts({
    arbors: ['A', 'B', 'C'].map((id, i) => ({ id, name: id, at: [60 * i, 0], diameter: 2 })),
    wheels: Object.entries(wheels).map(([id, [arbor, teeth, module = 1]], i) => ({
      id,
      name: id,
      arbor,
      teeth,
      size: { module },
      form: 'involute',
      level: 4 * i,
      thickness: 2,
    })),
    rules: depths.map((pair) => ({ kind: 'depth', id: `d${pair}`, wheels: [pair.charAt(0), pair.charAt(1)] })),
  });

const sharedOf = (movement: Movement) => turnMovement(movement).sharedAxes;
const PAIRS = { p: ['A', 60], q: ['B', 20], r: ['A', 50], s: ['B', 24] } as const;

describe('depths between the same two axes', () => {
  it('offer the module of the second pair where that meshes with nothing else', () => {
    const movement = drawn(PAIRS, ['pq', 'rs']);
    const [shared] = sharedOf(movement);
    expect(shared?.depths.map(({ recut }) => recut)).toEqual([undefined, { wheels: ['r', 's'], module: 80 / 74 }]);
    if (!shared) throw new Error('two depths');
    expect(sharedAxesSay(shared, speakerOf(movement))).toContain('or cut it with module 1.08108.');
  });

  it('name the first pair where only that can change', () => {
    const movement = drawn({ ...PAIRS, t: ['C', 30] }, ['pq', 'rs', 'rt']);
    const [shared] = sharedOf(movement);
    expect(shared?.depths[1]?.recut).toEqual({ wheels: ['p', 'q'], module: 74 / 80 });
    if (!shared) throw new Error('two depths');
    expect(sharedAxesSay(shared, speakerOf(movement))).toContain('or cut p with q with module 0.925.');
  });

  it('name no module where both mesh with others, or where one change would not do', () => {
    const movement = drawn({ ...PAIRS, t: ['C', 30] }, ['pq', 'rs', 'rt', 'pt']);
    const [shared] = sharedOf(movement);
    expect(shared?.depths.map(({ recut }) => recut)).toEqual([undefined, undefined]);
    if (!shared) throw new Error('two depths');
    expect(sharedAxesSay(shared, speakerOf(movement))).not.toMatch(/with module/);
    const three = drawn({ ...PAIRS, u: ['A', 40], v: ['B', 30], t: ['C', 30] }, ['pq', 'rs', 'uv', 'rt', 'ut']);
    expect(sharedOf(three)[0]?.depths.map(({ recut }) => recut)).toEqual([undefined, undefined, undefined]);
  });

  it('leave out a pair whose pitches differ: that is a fault of its own', () => {
    const movement = drawn({ ...PAIRS, s: ['B', 24, 0.9] }, ['pq', 'rs']);
    expect(sharedOf(movement)).toEqual([]);
  });
});
