/** A solid: a ring or a filled outline between two heights. */
import type { Region, XY } from '../geometry/index.ts';
import type { ArborId, PartId } from '../movement/index.ts';

export interface Heights {
  readonly from: number;
  readonly to: number;
}

interface SolidBase {
  /** Index in the list of solids. */
  readonly index: number;
  readonly part: PartId;
  /** "Wheel Third", "Arbor B", "Post P2": how a finding names it. */
  readonly label: string;
  /** `swept`: what a hand, arm, finger or pin reaches in a whole turn. */
  readonly role: 'wheel' | 'hub' | 'collar' | 'arbor' | 'swept' | 'post' | 'wall' | 'plate';
  readonly heights: Heights;
  /** The arbor that it turns with. */
  readonly arbor?: ArborId;
  /** The arm that carries its arbor round, and where that turns. */
  readonly carried?: { readonly arm: ArborId; readonly about: XY };
}

export interface RingSolid extends SolidBase {
  readonly shape: 'ring';
  readonly centre: XY;
  /** Radii, mm; `inner` is 0 for a disc. */
  readonly inner: number;
  readonly outer: number;
}

export interface RegionSolid extends SolidBase {
  readonly shape: 'region';
  readonly region: Region;
}

export type Solid = RingSolid | RegionSolid;
/** A solid before it has its place in the list. */
export type Draft = Omit<RingSolid, 'index'> | Omit<RegionSolid, 'index'>;

/** All that a carried ring reaches while its arm goes round: a ring about the arm's axis. */
export function sweptRing(ring: RingSolid): RingSolid {
  if (!ring.carried) return ring;
  const { about } = ring.carried;
  const d = Math.hypot(ring.centre[0] - about[0], ring.centre[1] - about[1]);
  return { ...ring, centre: about, inner: Math.max(0, d - ring.outer, ring.inner - d), outer: d + ring.outer };
}
