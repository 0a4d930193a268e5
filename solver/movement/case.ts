/** The parts of the case: plates, walls and openings. */
import { z } from 'zod';
import { openingId, plateId, wallId } from './ids.ts';
import { outline } from './outline.ts';
import { length, levels, name, note } from './quantities.ts';

const described = { name: name.exactOptional(), note: note.exactOptional() };

export const plate = z.looseObject({
  id: plateId,
  ...described,
  outline,
  /** The base plate's marked face is height 0. */
  levels,
  /** Thickness on the drawing where a measured one stands in `levels` now, mm; the marked face stays where it is. */
  asDrawn: z.looseObject({ thickness: length.exactOptional() }).exactOptional(),
  /** Which face is struck: `up` looks along +z (x right, y up), `down` is seen from below, mirrored. */
  markedFace: z.enum(['up', 'down']).default('up'),
  /** The centre of a round plate is found and the base line through it is scribed. */
  centreMarked: z.boolean().default(false),
});

/** A wall is solid between `outline` and, where it is a ring, `inner`. */
export const wall = z.looseObject({
  id: wallId,
  ...described,
  outline,
  inner: outline.exactOptional(),
  levels,
});

export const opening = z.looseObject({
  id: openingId,
  ...described,
  kind: z.enum(['opening', 'register', 'notch']).default('opening'),
  plate: plateId,
  outline,
});
