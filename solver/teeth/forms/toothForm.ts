/**
 * The true form of a wheel's teeth, in polar coordinates.
 *
 * One tooth stands with its centre line on angle 0 and is symmetric. At every radius between root and tip it covers
 * the angles −half(r) … +half(r): each flank is a single-valued function of the radius, undercut included. Whether two
 * wheels touch is then a comparison of angles, whatever their forms. Rings have their tips inside and their roots
 * outside. Radii in mm, angles in radians.
 */
import type { ToothDoubt, ToothFault } from '../toothFaults.ts';

/** A stretch of a flank with one formula. */
export interface FlankPiece {
  /** `fillet`: root corner; `flank`: inside the pitch circle; `face`: outside; `pin`: a round trundle. */
  readonly kind: 'fillet' | 'flank' | 'face' | 'pin';
  /** Radii where it begins and ends, `from` < `to`. */
  readonly from: number;
  readonly to: number;
  /** Half of the angle that the tooth covers at a radius of the piece. */
  readonly half: (radius: number) => number;
  /** The circle that the piece lies on, when it is one (tooth centre line on +x, flank at positive angles). */
  readonly circle?: { readonly x: number; readonly y: number; readonly radius: number };
  /** A straight line. */
  readonly straight?: boolean;
}

/** One tooth about its centre line on angle 0: its circles, mm, and the flank from root to tip. */
export interface ToothForm {
  readonly kind: 'teeth';
  readonly teeth: number;
  readonly internal: boolean;
  readonly module: number;
  readonly pitchRadius: number;
  readonly tip: number;
  readonly root: number;
  /** Nothing solid below the root: the trundles of a lantern pinion. */
  readonly open: boolean;
  /** Pieces from the smallest radius to the largest, without gaps. */
  readonly pieces: readonly FlankPiece[];
  /** What is doubtful in these teeth. */
  readonly doubts: readonly ToothDoubt[];
}

/** Teeth that cannot exist, and why. */
export interface NoTeeth {
  readonly kind: 'none';
  readonly why: ToothFault;
}

/** Flanks of one form before the tip is checked. */
export type Flanks =
  | { readonly kind: 'flanks'; readonly pieces: readonly FlankPiece[]; readonly doubts: readonly ToothDoubt[] }
  | NoTeeth;

/** Half of the angle covered by a tooth at a radius between root and tip (clamped to them). */
export function halfAngleAt(form: ToothForm, radius: number): number {
  const { pieces } = form;
  const last = pieces.length - 1;
  for (let i = 0; i < last; i++) {
    const piece = pieces[i] as FlankPiece; // i < length
    if (radius <= piece.to) return piece.half(radius < piece.from ? piece.from : radius);
  }
  const piece = pieces[last] as FlankPiece; // a form has at least one piece
  return piece.half(radius < piece.from ? piece.from : radius > piece.to ? piece.to : radius);
}
