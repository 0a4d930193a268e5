/** Dividers and straight edge of the simulated maker: crossings from first principles, nothing from the solver. */

type At = readonly [number, number];

export interface FreeCircle {
  readonly centre: At;
  readonly radius: number;
}

export interface FreeLine {
  readonly through: At;
  readonly angle: number;
  readonly ray: boolean;
}

/** Two circles: by the cosine rule at the first centre. */
export function crossingOfCircles(a: FreeCircle, b: FreeCircle): readonly At[] {
  const d = Math.hypot(b.centre[0] - a.centre[0], b.centre[1] - a.centre[1]);
  const cosine = (a.radius ** 2 + d ** 2 - b.radius ** 2) / (2 * a.radius * d);
  if (Math.abs(cosine) > 1 + 1e-12) return [];
  const to = Math.atan2(b.centre[1] - a.centre[1], b.centre[0] - a.centre[0]);
  const turn = Math.acos(Math.max(-1, Math.min(1, cosine)));
  const at = (angle: number): At => [
    a.centre[0] + a.radius * Math.cos(angle),
    a.centre[1] + a.radius * Math.sin(angle),
  ];
  return turn < 1e-9 ? [at(to)] : [at(to + turn), at(to - turn)];
}

/** A line and a circle: the roots along the line. */
export function crossingOfLineAndCircle(line: FreeLine, circle: FreeCircle): readonly At[] {
  const u: At = [Math.cos(line.angle), Math.sin(line.angle)];
  const w: At = [line.through[0] - circle.centre[0], line.through[1] - circle.centre[1]];
  const half = u[0] * w[0] + u[1] * w[1];
  const root = half ** 2 - (w[0] ** 2 + w[1] ** 2 - circle.radius ** 2);
  if (root < 0) return [];
  return [-half - Math.sqrt(root), -half + Math.sqrt(root)]
    .filter((t) => !line.ray || t > 1e-9)
    .map((t): At => [line.through[0] + t * u[0], line.through[1] + t * u[1]]);
}

/** Two lines: Cramer's rule. */
export function crossingOfLines(a: FreeLine, b: FreeLine): readonly At[] {
  const [ux, uy] = [Math.cos(a.angle), Math.sin(a.angle)];
  const [vx, vy] = [Math.cos(b.angle), Math.sin(b.angle)];
  const det = ux * vy - uy * vx;
  if (Math.abs(det) < 1e-12) return [];
  const dx = b.through[0] - a.through[0];
  const dy = b.through[1] - a.through[1];
  const t = (dx * vy - dy * vx) / det;
  return [[a.through[0] + t * ux, a.through[1] + t * uy]];
}
