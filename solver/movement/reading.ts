/** Readings: dated measurements of what was really made. */
import { z } from 'zod';
import { partId, readingId } from './ids.ts';
import { coordinate, date, extent, name, note, place, plusMinus } from './quantities.ts';

export const reading = z.looseObject({
  id: readingId,
  kind: z.enum(['depth', 'distance', 'diameter', 'thickness', 'place', 'runOut', 'bore', 'endShake']),
  /** What was measured: two wheels or points for a distance, one part for a size. */
  of: z.array(partId).min(1).max(2),
  /**
   * Which bearing of the arbor, counted from 0: a diameter is then that of the pivot in it, a bore that of the hole that
   * the pivot runs in. Without it a diameter is that of the arbor's body.
   */
  bearing: z.int().min(0).max(19).exactOptional(),
  /** The gauge's figure, mm. */
  value: coordinate.exactOptional(),
  at: place.exactOptional(),
  /**
   * How the figure was taken, and the diameters to allow for: over or inside two pins, or from a screw with a zero;
   * `jaws` are flat ones over the tips of a wheel, which bridge two tips where the count is odd.
   */
  taken: z
    .looseObject({
      how: z.enum(['direct', 'over', 'inside', 'between', 'screw', 'jaws']),
      pins: z.tuple([extent, extent]).exactOptional(),
      zero: coordinate.exactOptional(),
    })
    .exactOptional(),
  plusMinus: plusMinus.exactOptional(),
  gauge: name.exactOptional(),
  date: date.exactOptional(),
  note: note.exactOptional(),
  /** Set aside: kept, but not used. */
  setAside: z.boolean().default(false),
  /** A figure that was doubted and is right after all: who said so, and when. It is then used without further question. */
  stands: z.looseObject({ by: name.exactOptional(), date: date.exactOptional() }).exactOptional(),
});
