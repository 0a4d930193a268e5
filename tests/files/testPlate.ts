/** The test plate (SOURCES.md): 100 × 60 outline, three unequal holes in an L, a bulged slot, a letter F as outline. */
import type { Drawing } from '../../solver/files/drawing.ts';
import type { Hole } from '../../solver/marking/index.ts';

/** Holes by place and radius, mm. */
export const TEST_HOLES = [
  { x: 15, y: 15, radius: 2 },
  { x: 15, y: 45, radius: 3 },
  { x: 60, y: 15, radius: 4.5 },
] as const;

const F_CORNERS = [
  [80, 20],
  [83, 20],
  [83, 30],
  [88, 30],
  [88, 33],
  [83, 33],
  [83, 38],
  [90, 38],
  [90, 41],
  [80, 41],
] as const;

/** The F must come back with its upright at the left: unmirrored. */
export const F_LEFT = 80;

export function testPlate(): Drawing {
  return {
    title: 'Test plate',
    face: 'Test plate, marked face',
    mirrored: false,
    extents: [0, 0, 100, 60],
    layers: [
      {
        name: 'OUTLINE',
        shapes: [
          {
            kind: 'path',
            closed: true,
            vertices: [
              { x: 0, y: 0, bulge: 0 },
              { x: 100, y: 0, bulge: 0 },
              { x: 100, y: 60, bulge: 0 },
              { x: 0, y: 60, bulge: 0 },
            ],
          },
        ],
      },
      { name: 'HOLES', shapes: TEST_HOLES.map(({ x, y, radius }) => ({ kind: 'circle', centre: [x, y], radius })) },
      {
        name: 'OPENINGS',
        shapes: [
          {
            kind: 'path',
            closed: true,
            vertices: [
              { x: 30, y: 40, bulge: 0 },
              { x: 60, y: 40, bulge: 1 },
              { x: 60, y: 48, bulge: 0 },
              { x: 30, y: 48, bulge: 1 },
            ],
          },
          { kind: 'path', closed: true, vertices: F_CORNERS.map(([x, y]) => ({ x, y, bulge: 0 })) },
        ],
      },
      {
        name: 'SCRIBE',
        shapes: [
          { kind: 'arc', centre: [15, 15], radius: 30, start: 1.2, end: 1.9 },
          { kind: 'arc', centre: [60, 15], radius: 20, start: -0.4, end: 0.3 },
          { kind: 'line', from: [2, 2], to: [20, 2] },
        ],
      },
      { name: 'LETTERING', shapes: [{ kind: 'text', at: [30, 4], height: 2.5, text: 'Größe 12.5 mm', align: 'left' }] },
    ],
  };
}

/** Fifteen holes on a seeded scatter (a Lehmer sequence), drilled and reamed, two of them alike in size. */
export function fifteenHoles(): readonly Hole[] {
  let seed = 20260301;
  const next = () => {
    seed = (seed * 48271) % 2147483647;
    return seed / 2147483647;
  };
  return Array.from({ length: 15 }, (_, index) => ({
    id: `h${index}`,
    points: [`h${index}`],
    label: `Hole ${index}, (left)`,
    x: Math.round((next() * 120 - 40) * 1e4) / 1e4,
    y: Math.round((next() * 90 - 30) * 1e4) / 1e4,
    diameter: [1.5, 3, 6][index % 3] ?? 3,
    through: true,
    state: 'toMark',
    finish: index % 2 === 0 ? 'ream' : 'drill',
  }));
}
