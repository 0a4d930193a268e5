/** Every kind of rule by itself: where it puts a point, and the length it works out. */
import { describe, expect, it } from 'vitest';
import { plantMovement } from '../../solver/planting/index.ts';
import {
  arbor,
  buildMovement,
  distance,
  held,
  largestMiss,
  mark,
  placeOf,
  type RuleInput,
  ruleOf,
} from './buildMovement.ts';
import { alone, along, DEGREES, ray } from './ruleScenes.ts';

interface Single {
  readonly name: string;
  readonly rule: RuleInput;
  readonly at: readonly [number, number];
  readonly sketch?: readonly [number, number];
  readonly length?: number;
}

const R = 'rule';
const singles: readonly Single[] = [
  { name: 'distance', rule: distance(R, 'P', 'A', 22), at: along(22), length: 22 },
  { name: 'radius', rule: { kind: 'radius', id: R, point: 'P', centre: 'A', length: 25 }, at: along(25), length: 25 },
  {
    name: 'depth, calculated: 1 mm module, 30 + 15 teeth',
    rule: { kind: 'depth', id: R, wheels: ['WA', 'WP'] },
    at: along(22.5),
    length: 22.5,
  },
  {
    name: 'depth with the wanted shake',
    rule: { kind: 'depth', id: R, wheels: ['WA', 'WP'], allowance: 0.08 },
    at: along(22.58),
    length: 22.58,
  },
  {
    name: 'depth, measured',
    rule: { kind: 'depth', id: R, wheels: ['WA', 'WP'], use: 'measured', measured: { value: 22.61 }, held: 23 },
    at: along(22.61),
    length: 22.61,
  },
  {
    name: 'depth, held',
    rule: { kind: 'depth', id: R, wheels: ['WA', 'WP'], use: 'held', measured: { value: 22.61 }, held: 23 },
    at: along(23),
    length: 23,
  },
  {
    name: 'depth inside a ring: (80 − 35) / 2',
    rule: { kind: 'depth', id: R, wheels: ['ring', 'planet'] },
    at: along(22.5),
    length: 22.5,
  },
  {
    name: 'bearing from another point',
    rule: { kind: 'bearing', id: R, point: 'P', centre: 'B', reference: 'A', angle: -30 },
    at: [20, 20 * Math.tan(30 / DEGREES)],
  },
  {
    name: 'in line with two others',
    rule: { kind: 'inLine', id: R, point: 'P', through: ['B', 'M'] },
    at: [20 * Math.sqrt(3) * Math.cos(30 / DEGREES), 20 * Math.sqrt(3) * 0.5],
    sketch: [30, 17],
  },
  {
    name: 'same radius as another',
    rule: { kind: 'sameRadius', id: R, points: ['P', 'M'], centre: 'A' },
    at: along(Math.hypot(10, 10 * Math.sqrt(3) * 3)),
    sketch: [45, 26],
  },
  {
    name: 'clear of an arbor (radius 1 each)',
    rule: { kind: 'clearBy', id: R, parts: ['A', 'P'], gap: 20 },
    at: along(22),
    length: 22,
  },
  {
    name: 'clear inside the drum',
    rule: { kind: 'clearBy', id: R, parts: ['P', 'drum'], gap: 4 },
    at: along(45),
    sketch: [40, 22],
    length: 45,
  },
  {
    name: 'clear outside the drum',
    rule: { kind: 'clearBy', id: R, parts: ['drum', 'P'], gap: 4 },
    at: along(65),
    sketch: [60, 35],
    length: 65,
  },
  {
    name: 'clear inside the edge of the plate',
    rule: { kind: 'clearBy', id: R, parts: ['P', 'plate'], gap: 4 },
    at: along(50),
    sketch: [44, 24],
    length: 50,
  },
  {
    name: 'clear of the second side of a case, from inside',
    rule: { kind: 'clearBy', id: R, parts: ['P', 'case'], gap: 3, edge: 1 },
    at: [86, 86 * Math.tan(30 / DEGREES)],
    sketch: [80, 50],
    length: 4,
  },
  {
    name: 'clear of the second side of a block, from outside',
    rule: { kind: 'clearBy', id: R, parts: ['block', 'P'], gap: 3, edge: 1 },
    at: [14, 14 * Math.tan(30 / DEGREES)],
    sketch: [15, 8],
    length: 4,
  },
  {
    name: 'clear of the nearest side where none is named',
    rule: { kind: 'clearBy', id: R, parts: ['block', 'P'], gap: 3 },
    at: [14, 14 * Math.tan(30 / DEGREES)],
    sketch: [15, 8],
    length: 4,
  },
];

describe('each kind of rule, with a bearing of 30°', () => {
  for (const { name, rule, at, sketch, length } of singles) {
    it(name, () => {
      const needsM = JSON.stringify(rule).includes('"M"');
      const placed = needsM ? withMark(rule, sketch) : alone([ray, rule], sketch);
      const place = placeOf(placed, 'P');
      expect(placed.disagreements).toEqual([]);
      expect(place.state).toBe('planted');
      expect(place.x).toBeCloseTo(at[0], 9);
      expect(place.y).toBeCloseTo(at[1], 9);
      expect(new Set(place.placedBy)).toEqual(new Set(['ray', R]));
      expect(largestMiss(placed)).toBeLessThan(1e-9);
      if (length !== undefined) expect(ruleOf(placed, R)?.length).toBeCloseTo(length, 9);
    });
  }
});

function withMark(rule: RuleInput, sketch: readonly [number, number] = [20, 10]) {
  return plantMovement(
    buildMovement({
      arbors: [arbor('A', 0, 0), arbor('B', 40, 0), arbor('P', ...sketch)],
      marks: [mark('M', 10, 10 * Math.sqrt(3) * 3)],
      rules: [held('a', 'A', 0, 0), held('b', 'B', 40, 0), held('m', 'M', 10, 10 * Math.sqrt(3) * 3), ray, rule],
    }),
  );
}
