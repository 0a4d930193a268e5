/**
 * A random network that uses every kind of rule, with a known placement.
 *
 * Points: 0 and 1 held; 2 by two distances; 3 by a ray and a distance; 4 on the line 0-2 at a distance; 5 with the
 * radius of 2 about 0 and a distance; 6 opposite 3; 7 a third of a turn from 2 about 0; 8 at the place of 5;
 * 9 on a fixed line at a distance; 10 on a ray that starts from the direction of 2.
 */
import { RuleKind } from '../../../solver/planting/network.ts';
import { type DraftRule, distance, networkFrom } from './builder.ts';
import type { KnownNetwork } from './coupled.ts';
import { seeded } from './random.ts';

type Spot = [number, number];

export function everyKind(seed: number, off: number): KnownNetwork {
  const random = seeded(seed);
  const polar = (radius: number, angle: number): Spot => [radius * Math.cos(angle), radius * Math.sin(angle)];
  const gap = (a: Spot, b: Spot): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
  const turn = 2 * Math.PI * random();
  const angleOf = (k: number): number => turn + k * 1.25 + 0.2 * random();
  const at: Spot[] = [[0, 0], polar(40, angleOf(0))];
  const radius = 22 + 8 * random();
  at.push(polar(radius, angleOf(1)));
  const bearing = angleOf(2);
  at.push(polar(18 + 10 * random(), bearing));
  const along = 1.5 + random();
  at.push([along * at[2]![0], along * at[2]![1]]); // just pushed
  at.push(polar(radius, angleOf(3)));
  at.push([-at[3]![0], -at[3]![1]]); // as above
  const third = (2 * Math.PI) / 3;
  const [qx, qy] = at[2]!; // as above
  at.push([qx * Math.cos(third) - qy * Math.sin(third), qx * Math.sin(third) + qy * Math.cos(third)]);
  at.push([...at[5]!]); // as above
  const ninth = angleOf(4);
  at.push(polar(33, ninth));
  const swing = 0.7 + random();
  const length2 = Math.atan2(qy, qx) + swing;
  at.push(polar(26, length2));
  const to = (a: number, b: number): DraftRule => distance(a, b, gap(at[a]!, at[b]!)); // points above
  const [nx, ny] = [Math.cos(ninth + 0.6), Math.sin(ninth + 0.6)];
  const rules: DraftRule[] = [
    to(2, 0),
    to(2, 1),
    { kind: RuleKind.ray, points: [3, 0], values: [bearing] },
    to(3, 0),
    { kind: RuleKind.inLine, points: [4, 0, 2] },
    to(4, 0),
    { kind: RuleKind.sameRadius, points: [5, 2, 0] },
    to(5, 1),
    { kind: RuleKind.opposite, points: [6, 0, 3] },
    { kind: RuleKind.turned, points: [7, 2, 0], values: [third] },
    { kind: RuleKind.samePlace, points: [8, 5] },
    { kind: RuleKind.onLine, points: [9], values: [nx, ny, nx * at[9]![0] + ny * at[9]![1]] }, // points above
    to(9, 0),
    { kind: RuleKind.ray, points: [10, 0, 2], values: [swing] },
    to(10, 0),
  ];
  const sketch = at.map(([x, y], i): Spot => {
    const angle = 2 * Math.PI * random();
    return i < 2 ? [x, y] : [x + off * Math.cos(angle), y + off * Math.sin(angle)];
  });
  return { network: networkFrom({ at: sketch, held: [0, 1], rules }), known: Float64Array.from(at.flat()) };
}
