/** A solid: a ring or a filled outline between two heights. */
import type { Point, Region } from '../../geometry/index.ts';
import type { ArborId } from '../../movement/ids.ts';
import type { Piece } from './piece.ts';

/** The lower and the upper end, mm above the marked face of the base plate. */
export interface Heights {
  readonly from: number;
  readonly to: number;
}

/** An arm, and the axis that it turns about. */
export interface CarryingArm {
  readonly arm: ArborId;
  readonly about: Point;
}

/** What every solid has, whatever its shape. */
interface SolidBase extends Piece {
  /** Index in the list of solids. */
  readonly index: number;
  /** `swept`: what a hand, arm, finger or pin reaches in a whole turn. */
  readonly role: 'wheel' | 'hub' | 'collar' | 'arbor' | 'swept' | 'post' | 'wall' | 'plate';
  readonly heights: Heights;
  /** The arbor that it turns with. */
  readonly arbor?: ArborId;
  /** The arms that carry its arbor round, the nearest first and then what carries that one, and where each turns. */
  readonly carried?: readonly CarryingArm[];
}

/** A solid that is round in plan. */
export interface RingSolid extends SolidBase {
  readonly shape: 'ring';
  readonly centre: Point;
  /** Radii, mm; `inner` is 0 for a disc. */
  readonly inner: number;
  readonly outer: number;
}

/** A solid with any outline in plan. */
export interface RegionSolid extends SolidBase {
  readonly shape: 'region';
  readonly region: Region;
}

export type Solid = RingSolid | RegionSolid;
/** A solid before it has its place in the list. */
export type Draft = Omit<RingSolid, 'index'> | Omit<RegionSolid, 'index'>;

/**
 * All that a carried ring reaches while the first `rounds` of its arms go round, each through its whole turn and
 * independent of the others: a ring about the last arm's axis.
 */
export function sweptRing(ring: RingSolid, rounds = ring.carried?.length ?? 0): RingSolid {
  let swept = ring;
  for (const { about } of (ring.carried ?? []).slice(0, rounds)) {
    const { centre, inner, outer } = swept;
    const d = Math.hypot(centre.x - about.x, centre.y - about.y);
    swept = { ...swept, centre: about, inner: Math.max(0, d - outer, inner - d), outer: d + outer };
  }
  return swept;
}
