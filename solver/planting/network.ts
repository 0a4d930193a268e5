/**
 * The planting kernel's input and output: points and rules as flat arrays, no names and no trade words.
 *
 * The movement's rules become a `Network` (`networkOf`), the kernel plants it (`plantNetwork`), and the
 * result is told in the maker's terms (`plantMovement`). The kernel knows nothing of wheels or files.
 */

/** Kinds of network rule. `points` holds up to four point indices a rule (-1 where unused), `values` up to three numbers. */
export const RuleKind = {
  /** |a b| = v0. points a, b. */
  distance: 0,
  /** The ray a→p points along angle v0 (radians from +x), or from the direction a→r when r ≥ 0. points p, a, r. */
  ray: 1,
  /** p on the line through a and b. points p, a, b. */
  inLine: 2,
  /** |c p| = |c q|. points p, q, c. */
  sameRadius: 3,
  /** v0·x + v1·y = v2 with (v0, v1) a unit vector: a signed distance to a fixed line. points p. */
  onLine: 4,
  /** v0·(p − a).x + v1·(p − a).y = v2 with (v0, v1) a unit vector: level with each other across a fixed direction. points p, a. */
  level: 5,
  /** As `level`, of a point and its image in a fixed line: a pattern. points p, q. */
  abreast: 6,
  /** v0·(p + q).x + v1·(p + q).y = v2 with (v0, v1) a unit vector: the middle of a point and its image is on a fixed line. points p, q. */
  halfway: 7,
  /** p = q. points p, q. Merged exactly. */
  samePlace: 8,
  /** p = 2c − q. points p, c, q. Eliminated exactly. */
  opposite: 9,
  /** p = c + R(v0)·(q − c): q turned about c by v0 radians. points p, q, c. Eliminated exactly. */
  turned: 10,
  /** p = (1 − v0)·c + v0·q: on the line of both, at a share of the way. points p, c, q. Eliminated exactly. */
  between: 11,
} as const;
export type RuleKindCode = (typeof RuleKind)[keyof typeof RuleKind];

/** Points and rules by their indices. */
export interface Network {
  readonly pointCount: number;
  readonly ruleCount: number;
  /** Sketch places [x0, y0, x1, y1, …], mm: the only things that choose a branch, with `sides`. */
  readonly coords: Float64Array;
  /** 1 where the point is held at its sketch place. */
  readonly held: Uint8Array;
  /** One code of `RuleKind` a rule. */
  readonly kinds: Uint8Array;
  /** Four point indices a rule, -1 where unused. */
  readonly points: Int32Array;
  /** Three numbers a rule. */
  readonly values: Float64Array;
  /**
   * Recorded crossing per point: 0 none, 1 left, 2 right, 3 ahead, 4 behind of the directed line
   * `sideFrom[i]` → `sideTo[i]` (point indices).
   */
  readonly sides: Uint8Array;
  readonly sideFrom: Int32Array;
  readonly sideTo: Int32Array;
  /** 1 for each rule that only checks: it places nothing and is judged where the others put the points. Without it the kernel says which rules those are. */
  readonly checks?: Uint8Array;
  /** 1 for rules that the maker told to check: they never place, and a tie among them joins nothing. */
  readonly told?: Uint8Array;
  /** As above: of lengths between the same two points the lower rank places, at the turn of the first of them. */
  readonly rank?: Uint8Array;
}

export const PointState = { planted: 0, loose: 1, contested: 2 } as const;

/** How one point, or one coupled group, was placed. */
export interface PlacementStep {
  /** `given` held; `derived` exactly from others (same place, opposite, turned); `crossing` two loci; `block` coupled group. */
  readonly kind: 'given' | 'derived' | 'crossing' | 'block' | 'loose';
  /** Points placed by the step (one, except in a block). */
  readonly points: readonly number[];
  /** Rules used (two for a crossing). */
  readonly rules: readonly number[];
  /** The other crossing [x, y], where there is one. */
  readonly other?: readonly [number, number];
  /** Angle between the two loci at the crossing, radians in (0, π/2]. */
  readonly crossingAngle?: number;
  /** The two loci do not reach: gap in mm (> 0 apart, and the values that would reach are for the teller to find). */
  readonly missBy?: number;
}

/** More about points that are planted. */
export interface Doubt {
  /**
   * `touching`: the loci only touch, so a small error in a length moves the point far, though it cannot move.
   * `barely`: the least singular value of the rules' Jacobian (columns scaled by points) lies between 1e-9 and 1e-6 of
   * the largest, and these points move most.
   */
  readonly kind: 'touching' | 'barely';
  readonly points: readonly number[];
  /** The least singular value over the largest; 0 where loci touch. */
  readonly ratio: number;
}

/** Where the points of a network came to stand. */
export interface NetworkResult {
  /** Places [x0, y0, …] for every point of the network, mm. Finite always. */
  readonly coords: Float64Array;
  /**
   * Largest residual of each rule, mm. A rule that loses its meaning (a direction at its own centre, a line through one
   * place, a length of nothing) does not hold: it misses by what its arm falls short of 0.001 mm.
   */
  readonly missBy: Float64Array;
  /** One code of `PointState` a point. */
  readonly states: Uint8Array;
  /** In order of construction. Listed when first read. */
  readonly steps: readonly PlacementStep[];
  /** Number of free motions that keep every rule. */
  readonly freeMotions: number;
  /** Per free motion: unit-largest displacement of every point, [dx0, dy0, …]. Written out when first read. */
  readonly motions: readonly Float64Array[];
  /** Points that are planted, but of which more is to be told. */
  readonly doubts: readonly Doubt[];
  /** 1 for each rule that only checks. */
  readonly checks: Uint8Array;
  /** The rules that a check cannot hold with where it misses: those that place its points, by how they press. */
  readonly against: (check: number) => readonly number[];
  /** The rules that place a check's points, with their share in it (mm for mm), and whether they place the last of its own points. */
  readonly shares: (
    check: number,
  ) => readonly { readonly rule: number; readonly share: number; readonly isOwn: boolean }[];
  /** Rules that hold but are not needed: each may be left out alone. Listed when first read. */
  readonly spare: readonly number[];
  /**
   * Smallest sets of rules that cannot hold together, with the gap in mm. `isDegenerate`: they would bring a point onto
   * one that a direction, a line or a radius is named from, where it has no meaning.
   */
  readonly disagreements: readonly {
    readonly rules: readonly number[];
    readonly gap: number;
    readonly isDegenerate?: boolean;
  }[];
  /** Work counts: Newton iterations, residual evaluations, blocks. */
  readonly work: { readonly iterations: number; readonly evaluations: number; readonly blocks: number };
}
