/** True outlines: within their tolerance of the exact flanks, closed, few vertices; crossing out; moved by a kerf. */

import { describe, expect, it } from 'vitest';
import {
  areaOfOutline,
  asPoint,
  containsPoint,
  nearestOnOutline,
  type OutlineShape,
  piecesOf,
} from '../../solver/geometry/index.ts';
import type { Wheel } from '../../solver/movement/schema.ts';
import { formOfWheel } from '../../solver/teeth/index.ts';
import {
  crossingOut,
  leastRim,
  usualArms,
  type WheelOutline,
  wheelOutline,
} from '../../solver/teeth/outlines/index.ts';
import { noOpeningsSay, outlineDoubtSays, speakerOf } from '../../solver/words/index.ts';
import { movementOf, wheelOf } from './makeWheels.ts';

/** What is doubtful in an outline, in words. */
const doubtsOf = (outline: WheelOutline): string =>
  outline.doubts.map((doubt) => outlineDoubtSays(doubt, speakerOf(movementOf()))).join(' ');

const cases: [string, Wheel, Wheel | undefined][] = [
  ['involute', wheelOf({ id: 'a', teeth: 23 }), undefined],
  ['undercut', wheelOf({ id: 'a', teeth: 9 }), undefined],
  ['ring', wheelOf({ id: 'a', teeth: 50, internal: true }), undefined],
  [
    'tabulated wheel',
    wheelOf({ id: 'a', teeth: 60, form: 'cycloidal' }),
    wheelOf({ id: 'b', teeth: 8, form: 'cycloidal' }),
  ],
  ['leaves', wheelOf({ id: 'b', teeth: 8, form: 'cycloidal' }), undefined],
  [
    'epicycloid',
    wheelOf({ id: 'a', teeth: 60, form: 'cycloidal', table: 'epicycloid' }),
    wheelOf({ id: 'b', teeth: 8, form: 'cycloidal' }),
  ],
  ['for pins', wheelOf({ id: 'a', teeth: 40, form: 'cycloidal' }), wheelOf({ id: 'b', teeth: 8, form: 'lantern' })],
  ['triangular', wheelOf({ id: 'a', teeth: 31, form: 'triangular' }), undefined],
];

function teethOf(wheel: Wheel, mate: Wheel | undefined, tolerance: number) {
  const movement = mate ? movementOf(wheel, mate) : movementOf(wheel);
  const outline = wheelOutline(wheel, movement, { tolerance });
  const form = formOfWheel(wheel, movement);
  if (outline.kind === 'none' || form.kind === 'none') throw new Error('no teeth');
  const shape = outline.loops.find(({ role }) => role === 'teeth')?.shape;
  if (shape?.kind !== 'path') throw new Error('no path');
  return { outline, form, shape };
}

describe('outlines of teeth', () => {
  it.each(cases)('%s: every exact flank point lies within the tolerance of the path', (_, wheel, mate) => {
    for (const tolerance of [0.002, 0.0001]) {
      const { outline, form, shape } = teethOf(wheel, mate, tolerance);
      expect(outline.miss).toBeLessThanOrEqual(tolerance);
      for (const piece of form.pieces) {
        for (let i = 0; i <= 10; i++) {
          const radius = piece.from + ((piece.to - piece.from) * i) / 10;
          const half = Math.max(0, piece.half(radius));
          for (const side of [1, -1]) {
            const at = side * half + (2 * Math.PI * 3) / wheel.teeth;
            const { distance } = nearestOnOutline(shape, { x: radius * Math.cos(at), y: radius * Math.sin(at) });
            expect(distance).toBeLessThan(1.05 * tolerance);
          }
        }
      }
    }
  });
  it.each(cases)(
    '%s: no vertex doubled, no segment of no length, few vertices a tooth, the area of metal is right',
    (_, wheel, mate) => {
      const { form, shape } = teethOf(wheel, mate, 0.002);
      expect(shape.vertices.length % wheel.teeth).toBe(0);
      expect(shape.vertices.length / wheel.teeth).toBeLessThanOrEqual(16);
      shape.vertices.forEach((vertex, i) => {
        const next = shape.vertices[(i + 1) % shape.vertices.length] as typeof vertex; // index within the path
        expect(Math.hypot(next.x - vertex.x, next.y - vertex.y)).toBeGreaterThan(1e-7);
        expect(Number.isFinite(vertex.bulge)).toBe(true);
      });
      // Area between the flanks by the polar form: the root disc and the teeth on it (taken away, for a ring).
      const [low, high] = form.internal ? [form.tip, form.root] : [form.root, form.tip];
      let teeth = 0;
      for (const piece of form.pieces) {
        const steps = 4000;
        for (let i = 0; i < steps; i++) {
          const r = piece.from + ((piece.to - piece.from) * (i + 0.5)) / steps;
          teeth += 2 * piece.half(r) * r * ((piece.to - piece.from) / steps) * wheel.teeth;
        }
      }
      const disc = form.internal ? Math.PI * high * high - teeth : Math.PI * low * low + teeth;
      expect(Math.abs(areaOfOutline(shape) - disc)).toBeLessThan(0.002 * wheel.teeth * 8);
    },
  );
  it('a lantern pinion is pins and shrouds', () => {
    const outline = wheelOutline(wheelOf({ teeth: 8, form: 'lantern', bore: 2 }), movementOf());
    if (outline.kind === 'none') throw new Error(outline.why.kind);
    expect(outline.loops.map(({ role }) => role)).toEqual(['body', ...Array(8).fill('pin'), 'bore']);
    expect(outline.witness).toEqual([{ kind: 'circle', centre: [0, 0], radius: 1.5 }]);
  });
  it('teeth that cannot be give the reason', () => {
    expect(wheelOutline(wheelOf({ teeth: 6, profileShift: -0.9 }), movementOf())).toMatchObject({ kind: 'none' });
  });
});

describe('crossing out', () => {
  const arms = { count: 5, width: 3, widthAtRim: 2, hubRadius: 5, rimRadius: 22, fillet: 0.6 };
  const shapeOf = (vertices: readonly { x: number; y: number; bulge: number }[]): OutlineShape => ({
    kind: 'path',
    vertices,
  });
  it('openings are equal, stay between hub and rim, and leave the arms their width', () => {
    const crossed = crossingOut(arms);
    if (crossed.kind === 'none') throw new Error(crossed.why.kind);
    const areas = crossed.openings.map((vertices) => areaOfOutline(shapeOf(vertices)));
    for (const area of areas) expect(area).toBeCloseTo(areas[0] ?? Number.NaN, 9);
    for (const vertices of crossed.openings) {
      for (const { x, y } of vertices) {
        const r = Math.hypot(x, y);
        expect(r).toBeGreaterThan(arms.hubRadius - 1e-9);
        expect(r).toBeLessThan(arms.rimRadius + 1e-9);
      }
    }
    // Middle of the first arm: half of its own width there to the opening beside it.
    const nearest = nearestOnOutline(shapeOf(crossed.openings[0] ?? []), { x: 13.5, y: 0 });
    expect(nearest.distance).toBeCloseTo((3 + 2) / 4, 2);
    for (const [i, point] of crossed.pierce.entries()) {
      expect(containsPoint(shapeOf(crossed.openings[i] ?? []), asPoint(point))).toBe(true);
    }
  });
  it('no inner corner is sharper than the fillet, and all joins but the arm edges are smooth', () => {
    for (const fillet of [0.3, 0.6, 1.5]) {
      const crossed = crossingOut({ ...arms, fillet });
      if (crossed.kind === 'none') throw new Error(crossed.why.kind);
      for (const vertices of crossed.openings) {
        const pieces = piecesOf(shapeOf(vertices));
        for (const piece of pieces) if (piece.kind === 'arc') expect(piece.radius).toBeGreaterThan(fillet - 1e-9);
        // Direction at the end of each piece is the direction at the start of the next: tangents, no corners at all.
        vertices.forEach((vertex, i) => {
          const next = vertices[(i + 1) % vertices.length] as typeof vertex; // index within the path
          const after = vertices[(i + 2) % vertices.length] as typeof vertex; // likewise
          const leaving = Math.atan2(next.y - vertex.y, next.x - vertex.x) + 2 * Math.atan(vertex.bulge);
          const starting = Math.atan2(after.y - next.y, after.x - next.x) - 2 * Math.atan(next.bulge);
          expect(Math.abs(Math.sin(leaving - starting))).toBeLessThan(1e-9);
          expect(Math.cos(leaving - starting)).toBeGreaterThan(0.99);
        });
      }
    }
  });
  it('many arms whose edges meet outside the hub still make round openings', () => {
    const crossed = crossingOut({ ...arms, count: 12, width: 3.4, widthAtRim: 3.4, hubRadius: 4 });
    if (crossed.kind === 'none') throw new Error(crossed.why.kind);
    expect(crossed.openings[0]?.length).toBe(6);
  });
  it('no room is said with the numbers', () => {
    const says = (asked: Parameters<typeof crossingOut>[0]): string => {
      const crossed = crossingOut(asked);
      return crossed.kind === 'none' ? noOpeningsSay(crossed.why, speakerOf(movementOf())) : '';
    };
    expect(says({ ...arms, count: 24, width: 6, widthAtRim: 6 })).toContain('24 arms');
    expect(says({ ...arms, width: 11 })).toContain('broad');
    expect(says({ ...arms, rimRadius: 5.5 })).toContain('no room');
  });
  it('corners are not made below the cutter, and a thin rim is said', () => {
    const wheel = wheelOf({ teeth: 60, form: 'cycloidal', bore: 4, arms: { count: 5, width: 3, rim: 1, fillet: 0.2 } });
    const outline = wheelOutline(wheel, movementOf(wheel), { cutterRadius: 0.8 });
    if (outline.kind === 'none') throw new Error(outline.why.kind);
    expect(doubtsOf(outline)).toMatch(/smaller than the cutter; they are drawn 0\.80/);
    expect(doubtsOf(outline)).toMatch(/thinner than the teeth are deep/);
    for (const { role, shape } of outline.loops) {
      if (role !== 'opening') continue;
      for (const piece of piecesOf(shape)) if (piece.kind === 'arc') expect(piece.radius).toBeGreaterThan(0.8 - 1e-9);
    }
  });
  it('usual arms are sane, or none for small wheels', () => {
    const large = wheelOf({ teeth: 96, form: 'cycloidal', bore: 3 });
    const usual = usualArms(large, movementOf(large), 0.6);
    expect(usual && crossingOut(usual).kind).toBe('openings');
    expect(usual?.fillet).toBe(0.6);
    expect((47.6 - 1 - (usual?.rimRadius ?? 0)) / leastRim(large, movementOf(large))).toBeGreaterThan(0.9);
    expect(usualArms(wheelOf({ teeth: 10, form: 'cycloidal' }), movementOf())).toBeUndefined();
  });
});

describe('kerf and cutter offsets', () => {
  it('a kerf grows the outside, shrinks openings and bore, and keeps its distance all along', () => {
    const wheel = wheelOf({ teeth: 12, size: { module: 2 }, bore: 4 });
    const [plain, moved] = [
      wheelOutline(wheel, movementOf(wheel)),
      wheelOutline(wheel, movementOf(wheel), { offset: 0.1 }),
    ];
    if (plain.kind === 'none' || moved.kind === 'none') throw new Error('no outline');
    const [edge, path] = [plain.loops[0]?.shape, moved.loops[0]?.shape];
    if (!edge || path?.kind !== 'path') throw new Error('no path');
    for (const { x, y } of path.vertices) {
      expect(Math.abs(nearestOnOutline(edge, { x: x, y: y }).distance - 0.1)).toBeLessThan(0.002);
    }
    expect(areaOfOutline(path)).toBeGreaterThan(areaOfOutline(edge));
    expect(moved.loops.find(({ role }) => role === 'bore')?.shape).toMatchObject({ radius: 1.9 });
    expect(path.vertices.length / 12).toBeLessThan(24);
  });
  it('a tool too thick for the roots is said with what it leaves', () => {
    const wheel = wheelOf({ teeth: 12 });
    const outline = wheelOutline(wheel, movementOf(wheel), { offset: 0.8 });
    expect(outline.kind === 'outline' && doubtsOf(outline)).toMatch(/does not reach into the roots; 0\.\d+ mm² stays/);
  });
});
