/**
 * Two loci of one point that do not meet: by how much, and the lengths that would meet.
 *
 * Loci are told from the planted places: a circle about a point, a line through two points or at an edge, or a ray.
 */
import { type Point, separation } from '../../geometry/index.ts';
import { HOLDS } from '../../tolerances.ts';
import { wrapAngle } from '../kernel/residual.ts';
import type { Network } from '../network.ts';
import { RuleKind } from '../network.ts';

/** A circle, a line or a half line on which a rule holds its point. */
type Locus =
  | {
      readonly kind: 'circle';
      readonly rule: number;
      readonly centre: Point;
      readonly from: number;
      readonly radius: number;
    }
  | {
      readonly kind: 'line';
      readonly rule: number;
      readonly through: Point;
      readonly along: Point;
      readonly ray: boolean;
    };

/** A length that would make the two meet. */
export interface MeetingLength {
  readonly rule: number;
  /** Radius of the locus as it is and as it would have to be, mm. */
  readonly radius: number;
  readonly length: number;
  readonly bound: 'atLeast' | 'atMost' | 'exactly';
}

/** How two loci fail to meet. */
export interface Miss {
  readonly kind: 'apart' | 'inside' | 'concentric' | 'lineOutside' | 'behind' | 'parallel';
  readonly point: number;
  /** mm */
  readonly gap: number;
  /** The smallest change first. */
  readonly cures: readonly MeetingLength[];
}

/** How two rules miss each other at the one point that they share; undefined where they meet, or share no such point. */
export function missOf(network: Network, coords: Float64Array, rules: readonly [number, number]): Miss | undefined {
  for (const point of sharedPoints(network, rules)) {
    const [a, b] = rules.map((rule) => locusOf(network, coords, rule, point));
    const miss = a && b && missOfLoci(point, a, b);
    if (miss) return miss;
  }
  return undefined;
}

function sharedPoints(network: Network, [a, b]: readonly [number, number]): number[] {
  const of = (rule: number): number[] => [...network.points.subarray(4 * rule, 4 * rule + 4)];
  const other = of(b);
  return of(a).filter((point) => point >= 0 && network.held[point] !== 1 && other.includes(point));
}

function locusOf(network: Network, coords: Float64Array, rule: number, point: number): Locus | undefined {
  const at = (k: number): number => network.points[4 * rule + k] ?? -1;
  const value = (k: number): number => network.values[3 * rule + k] ?? 0;
  const place = (index: number): Point => ({ x: coords[2 * index] ?? 0, y: coords[2 * index + 1] ?? 0 });
  switch (network.kinds[rule]) {
    case RuleKind.distance: {
      const from = at(0) === point ? at(1) : at(0);
      return { kind: 'circle', rule, centre: place(from), from, radius: value(0) };
    }
    case RuleKind.sameRadius: {
      if (at(2) === point) return undefined;
      const centre = place(at(2));
      const other = place(at(0) === point ? at(1) : at(0));
      return {
        kind: 'circle',
        rule,
        centre,
        from: at(2),
        radius: separation(other, centre),
      };
    }
    case RuleKind.onLine: {
      const [nx, ny] = [value(0), value(1)];
      return {
        kind: 'line',
        rule,
        through: { x: nx * value(2), y: ny * value(2) },
        along: { x: -ny, y: nx },
        ray: false,
      };
    }
    case RuleKind.level:
    case RuleKind.abreast:
    case RuleKind.halfway: {
      const [nx, ny] = [value(0), value(1)];
      const { x: ox, y: oy } = place(at(0) === point ? at(1) : at(0));
      const across = nx * ox + ny * oy;
      const isSum = network.kinds[rule] === RuleKind.halfway;
      const away = isSum ? value(2) - across : across + (at(0) === point ? value(2) : -value(2));
      return { kind: 'line', rule, through: { x: nx * away, y: ny * away }, along: { x: -ny, y: nx }, ray: false };
    }
    case RuleKind.inLine: {
      if (at(0) !== point) return undefined;
      const [a, b] = [place(at(1)), place(at(2))];
      const length = separation(a, b);
      if (length === 0) return undefined;
      return {
        kind: 'line',
        rule,
        through: a,
        along: { x: (b.x - a.x) / length, y: (b.y - a.y) / length },
        ray: false,
      };
    }
    case RuleKind.ray: {
      if (at(0) !== point) return undefined;
      const a = place(at(1));
      const reference = at(2) < 0 ? undefined : place(at(2));
      const zero = reference ? Math.atan2(reference.y - a.y, reference.x - a.x) : 0;
      const angle = wrapAngle(value(0) + zero);
      return { kind: 'line', rule, through: a, along: { x: Math.cos(angle), y: Math.sin(angle) }, ray: true };
    }
    default:
      return undefined;
  }
}

function missOfLoci(point: number, a: Locus, b: Locus): Miss | undefined {
  if (a.kind === 'circle' && b.kind === 'circle') return missOfCircles(point, a, b);
  if (a.kind === 'circle' && b.kind === 'line') return missOfCircleAndLine(point, a, b);
  if (a.kind === 'line' && b.kind === 'circle') return missOfCircleAndLine(point, b, a);
  if (a.kind === 'line' && b.kind === 'line') {
    if (a.along.x * b.along.y !== a.along.y * b.along.x) return undefined;
    const gap = Math.abs((b.through.x - a.through.x) * a.along.y - (b.through.y - a.through.y) * a.along.x);
    return gap > HOLDS ? { kind: 'parallel', point, gap, cures: [] } : undefined;
  }
  return undefined;
}

function missOfCircles(point: number, a: Locus & { kind: 'circle' }, b: Locus & { kind: 'circle' }): Miss | undefined {
  const apart = separation(a.centre, b.centre);
  const tooShort = apart - a.radius - b.radius;
  if (tooShort > HOLDS) {
    const cures = [a, b].map(
      ({ rule, radius }): MeetingLength => ({
        ...{ rule, radius, length: radius + tooShort, bound: 'atLeast' },
      }),
    );
    return { kind: 'apart', point, gap: tooShort, cures };
  }
  const [small, large] = a.radius < b.radius ? [a, b] : [b, a];
  const inside = large.radius - small.radius - apart;
  if (inside <= HOLDS) return undefined;
  if (apart <= HOLDS) {
    const [first, last] = a.rule < b.rule ? [a, b] : [b, a];
    const cure = ({ rule, radius }: typeof a, length: number): MeetingLength => ({
      rule,
      radius,
      length,
      bound: 'exactly',
    });
    return { kind: 'concentric', point, gap: inside, cures: [cure(last, first.radius), cure(first, last.radius)] };
  }
  const cures: MeetingLength[] = [
    { rule: small.rule, radius: small.radius, length: small.radius + inside, bound: 'atLeast' },
    { rule: large.rule, radius: large.radius, length: large.radius - inside, bound: 'atMost' },
  ];
  return { kind: 'inside', point, gap: inside, cures };
}

function missOfCircleAndLine(
  point: number,
  circle: Locus & { kind: 'circle' },
  line: Locus & { kind: 'line' },
): Miss | undefined {
  const dx = circle.centre.x - line.through.x;
  const dy = circle.centre.y - line.through.y;
  const along = dx * line.along.x + dy * line.along.y;
  const away = Math.abs(dx * line.along.y - dy * line.along.x);
  const { rule, radius } = circle;
  // Ahead of a ray the nearest place is the foot, behind it the start itself.
  const behind = line.ray && along < 0;
  const nearest = behind ? Math.hypot(dx, dy) : away;
  if (nearest - radius <= HOLDS) return undefined;
  return {
    kind: behind ? 'behind' : 'lineOutside',
    point,
    gap: nearest - radius,
    cures: [{ rule, radius, length: nearest, bound: 'atLeast' }],
  };
}
