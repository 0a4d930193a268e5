/** What marking out speaks of: faces of plates, holes, datums and the steps of striking. Plain data, mm. */

/** Which face of a plate is seen: `up` looks down on it (x right, y up), `down` sees it from below, mirrored. */
export type Face = 'up' | 'down';

/** A corner of an outline as it is seen, with the bulge of the side that follows. */
export interface DrawnVertex {
  readonly x: number;
  readonly y: number;
  readonly bulge: number;
}

/** A hole to be made in a plate. */
export interface Hole {
  /** Id of the first point that needs it. */
  readonly id: string;
  /** Every point that shares the hole (pipes on one arbor). */
  readonly points: readonly string[];
  readonly label: string;
  readonly x: number;
  readonly y: number;
  /** Finished diameter, mm. */
  readonly diameter: number;
  readonly through: boolean;
  readonly state: 'toMark' | 'marked' | 'drilled';
  /** How it is brought to size: running holes and bush seats are reamed, the rest drilled. */
  readonly finish: 'drill' | 'ream';
  /** Where the diameter comes from, when that needs saying. */
  readonly note?: string;
}

/** One marking-out step. Everything is told as seen on the face that is marked. */
export interface MarkingStep {
  readonly number: number;
  /** Id of the point that the step strikes. */
  readonly point: string;
  readonly label: string;
  readonly kind:
    | 'datum' // the first points and the base line
    | 'already' // marked or drilled before: it is on the metal
    | 'arcs'
    | 'arcAndLine'
    | 'lines'
    | 'offset' // two distances from the datum's edges or lines
    | 'opposite'
    | 'same' // shares the place of a point already there
    | 'spacing'
    | 'derivedArcs' // dividers settings computed from the place, because its rules give no construction of their own
    | 'unsettled'; // loose or contested: cannot be marked yet
  /** Divider settings or lines used, each from a point already on the metal. */
  readonly loci: readonly MarkingLocus[];
  /** Which crossing is meant, where there are two. */
  readonly crossing?: CrossingTold;
  readonly crossingAngleDeg?: number;
  /** How far the point moves when one setting is wrong by 0.01 mm, mm. */
  readonly movedByHundredth?: number;
  /** Place on the drawing of this face (x is turned about the y axis when the face is mirrored), mm. */
  readonly place: readonly [number, number];
  /** A distance that was not used to make the point; `from` is a point's id, or an edge's name. */
  readonly check?: { readonly from: string; readonly distance: number };
  /** A second way to the same place, where the first needs more than dividers and a straight edge. */
  readonly orElse?: TwoArcs;
  readonly warns?: StepWarning;
  /** Already on the metal, marked or drilled. */
  readonly done: boolean;
}

/** Which of two crossings is meant, told in up to three ways. */
export interface CrossingTold {
  /** By the greater difference as seen. */
  readonly side: 'upper' | 'lower' | 'right-hand' | 'left-hand';
  /** The side of the line from one centre to the other on which it lies, for two arcs. */
  readonly beside?: { readonly isLeft: boolean; readonly from: string; readonly to: string };
  /** A point on the metal that is clearly nearer to it. */
  readonly near?: string;
}

/** Two arcs that strike a place, with the crossing that is meant. */
export interface TwoArcs {
  readonly loci: readonly [MarkingLocus, MarkingLocus];
  readonly crossing?: CrossingTold;
}

/** What is to be heeded at a step. */
export type StepWarning =
  /** The datum that was asked for is not on the plate. */
  | { readonly kind: 'otherDatum' }
  /** Loose, or contested: no mark is given. */
  | { readonly kind: 'notSettled'; readonly isLoose: boolean }
  /** The two loci cross so flatly that the point wanders: two arcs that cross at `angle`, radians, are better. */
  | { readonly kind: 'flatBetterArcs'; readonly arcs: TwoArcs; readonly angle: number }
  /** The same, and two distances from the datum's edges are better. */
  | { readonly kind: 'flatBetterOffsets'; readonly loci: readonly [MarkingLocus, MarkingLocus] }
  /** The same, and nothing on the metal is better. */
  | { readonly kind: 'flatNothingBetter' };

export type EdgeName = 'left edge' | 'right edge' | 'lower edge' | 'upper edge';

/** A line or an arc that is struck, from what it is struck and with what setting. */
export type MarkingLocus =
  | { readonly kind: 'arc'; readonly from: string; readonly radius: number; readonly rule?: string }
  /** The line through two points already there. */
  | { readonly kind: 'line'; readonly through: string; readonly to: string; readonly rule?: string }
  /** A ray from a point, turned anticlockwise as seen on this face from the base line or from the line to another point. */
  | {
      readonly kind: 'ray';
      readonly from: string;
      readonly reference: string | undefined;
      readonly angleDeg: number;
      readonly rule?: string;
    }
  /** A line parallel to an edge, or to the base line (`along` y) or square to it (`along` x) through a point. */
  | { readonly kind: 'offset'; readonly from: EdgeName; readonly distance: number }
  | { readonly kind: 'offset'; readonly from: 'datum'; readonly along: 'x' | 'y'; readonly distance: number };

/** What all marking starts from. */
export type Datum =
  /** The left and the lower straight edge of the plate, as seen. */
  | { readonly kind: 'edges' }
  /** The centre of a round plate and a base line through it. */
  | { readonly kind: 'centre' }
  /** A first point pricked where the plate allows, and a second at its distance along a scribed base line. */
  | { readonly kind: 'pair'; readonly first: string; readonly second: string };
