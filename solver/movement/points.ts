/** Things with one place in the plane: arbors, posts and marks. */
import { z } from 'zod';
import { arborId, markId, plateId, pointId, postId, ruleId, wallId } from './ids.ts';
import { angleDeg, bounded, coordinate, ends, extent, length, name, note, place, plusMinus } from './quantities.ts';

/**
 * Which of two crossings is meant: the one on the stated side of the directed line `from` → `to`.
 * `ahead` and `behind` are measured along that line from `from` (for a circle cut by a line through its centre).
 */
export const crossing = z.looseObject({
  from: pointId,
  to: pointId,
  side: z.enum(['left', 'right', 'ahead', 'behind']),
});

export const bearing = z.looseObject({
  kind: z.enum(['plain', 'bush', 'collar', 'jewel', 'race', 'cock']).default('plain'),
  plate: plateId.exactOptional(),
  /** Height of the lower end above the marked face of the base plate, mm; from the plate when absent. */
  at: coordinate.exactOptional(),
  /** Diameter of the running hole, of the pivot in it, and length of the running surface, mm. */
  bore: length,
  pivot: length,
  length: length,
  /** Outer diameter of a bush, collar or race, and the height it stands proud of the plate, mm. */
  outer: length.exactOptional(),
  /** What the drawing said where a measured figure stands in `bore` or `pivot` now, mm. */
  asDrawn: z.looseObject({ bore: length.exactOptional(), pivot: length.exactOptional() }).exactOptional(),
});

const drawn = {
  name: name.exactOptional(),
  note: note.exactOptional(),
  /** Sketch place: the start value, and the branch choice where no crossing is recorded. */
  at: place,
  crossing: crossing.exactOptional(),
};

export const arbor = z.looseObject({
  id: arborId,
  ...drawn,
  /** Outer diameter, mm. */
  diameter: length.default(2),
  /** Heights that the arbor spans with its pivots; an end left out reaches its last part or bearing. */
  levels: ends.exactOptional(),
  /** A pipe: the arbor that it rides on (at the same place), and its inner diameter, mm. */
  ridesOn: arborId.exactOptional(),
  pipeBore: length.exactOptional(),
  /**
   * How it turns: `freely` (the usual one, also when absent), `withArbor` for a pipe fixed to the arbor it rides on,
   * `never` for one fixed to what it stands on (the plate, or the arm that carries it).
   */
  turns: z.enum(['freely', 'withArbor', 'never']).exactOptional(),
  bearings: z.array(bearing).max(20).default([]),
  endShake: extent.default(0),
  /** What the drawing said where a measured figure stands in `diameter` or `endShake` now, mm. */
  asDrawn: z.looseObject({ diameter: length.exactOptional(), endShake: extent.exactOptional() }).exactOptional(),
  collars: z
    .array(z.looseObject({ diameter: length, from: coordinate, to: coordinate, plusMinus: plusMinus.exactOptional() }))
    .max(50)
    .default([]),
  /**
   * What is fixed on it and not round: hands, arms, fingers, pins. In a turn it sweeps a ring, from the nearest to the
   * farthest distance of its metal from the axis, mm.
   */
  swept: z
    .array(
      z.looseObject({
        name: name.exactOptional(),
        kind: z.enum(['hand', 'arm', 'finger', 'pin']),
        nearest: extent.default(0),
        farthest: length,
        from: coordinate,
        to: coordinate,
      }),
    )
    .max(50)
    .exactOptional(),
});

export const post = z.looseObject({
  id: postId,
  ...drawn,
  diameter: length,
  /** Heights that it spans; an end left out reaches the next plate. */
  levels: ends.exactOptional(),
  plate: plateId.exactOptional(),
  /** May slide along a circle about this point; its radius is the one it has, or a radius rule's. */
  slidesAbout: pointId.exactOptional(),
  /** Touches a wall on purpose: how it is fixed there, the gap that may be left, and how wide its foot is, mm. */
  fixedTo: z
    .looseObject({
      wall: wallId,
      how: z.enum(['soldered', 'screwed']),
      allowance: extent.exactOptional(),
      foot: length.exactOptional(),
    })
    .exactOptional(),
  /** Diameter of the fixing hole in the plate, mm; none when 0. */
  hole: extent.default(0),
  /** What the drawing said where a measured figure stands in `diameter` or `hole` now, mm. */
  asDrawn: z.looseObject({ diameter: length.exactOptional(), hole: extent.exactOptional() }).exactOptional(),
  /** Screw heads, nuts and shoulders that are wider than the post, mm. */
  heads: z
    .array(z.looseObject({ diameter: length, from: coordinate, to: coordinate }))
    .max(20)
    .exactOptional(),
});

export const mark = z.looseObject({
  id: markId,
  ...drawn,
  plate: plateId.exactOptional(),
  hole: extent.default(0),
  /** What the drawing said where a measured figure stands in `hole` now, mm. */
  asDrawn: z.looseObject({ hole: extent.exactOptional() }).exactOptional(),
});

const madeState = {
  state: z.enum(['toMark', 'marked', 'drilled']),
  at: place.exactOptional(),
  plusMinus: plusMinus.exactOptional(),
  date: z.iso.date().exactOptional(),
  note: note.exactOptional(),
};

/**
 * What was really made of a point in one plate. A drilled point is fixed at `at`; only the rest is planted. Drilled in two
 * plates its axis is the line through both places.
 */
export const made = z.looseObject({
  point: pointId,
  plate: plateId.exactOptional(),
  ...madeState,
  /** How far the hole was found to lean from square to its plate, degrees, and to where it leans as it rises, degrees. */
  outOfSquare: z.looseObject({ angle: bounded(0, 30), direction: angleDeg.default(0) }).exactOptional(),
  /** Rules that miss because of this place and that the maker let stand; gone with the place. */
  stands: z.array(ruleId).max(1000).exactOptional(),
  /** Places where it was drilled before, the oldest first: plugged, drawn over or measured anew since. */
  earlier: z.array(z.looseObject(madeState)).max(200).exactOptional(),
});
