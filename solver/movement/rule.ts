/** Rules: the things that must hold in the plane. */
import { z } from 'zod';
import { partId, pointId, readingId, ruleId, wheelId } from './ids.ts';
import { angleDeg, bounded, extent, length, name, note, place, plusMinus } from './quantities.ts';

const common = {
  id: ruleId,
  name: name.exactOptional(),
  note: note.exactOptional(),
  plusMinus: plusMinus.exactOptional(),
  leaveOut: z.boolean().default(false),
  /** Told to check: it never places. Absent: the order of the rules decides. */
  duty: z.literal('checks').exactOptional(),
};

/** The point stands at coordinates. */
const held = z.looseObject({ kind: z.literal('held'), ...common, point: pointId, at: place });

/** The first wheel drives the second; the centre distance is calculated, measured or held at a value. */
const depth = z.looseObject({
  kind: z.literal('depth'),
  ...common,
  wheels: z.tuple([wheelId, wheelId]),
  use: z.enum(['calculated', 'measured', 'held']).default('calculated'),
  measured: z
    .looseObject({ value: length, plusMinus: plusMinus.exactOptional(), reading: readingId.exactOptional() })
    .exactOptional(),
  held: length.exactOptional(),
  /** Added to the calculated distance, mm: the shake that the maker wants. */
  allowance: bounded(-10, 10).default(0),
});

const distance = z.looseObject({
  kind: z.literal('distance'),
  ...common,
  points: z.tuple([pointId, pointId]),
  length,
});

const radius = z.looseObject({ kind: z.literal('radius'), ...common, point: pointId, centre: pointId, length });

/** The ray from `centre` to `point` makes `angle` with the direction centre → `reference`, or with +x. */
const bearing = z.looseObject({
  kind: z.literal('bearing'),
  ...common,
  point: pointId,
  centre: pointId,
  reference: pointId.exactOptional(),
  angle: angleDeg,
});

/** `point` is the image of `of` through `centre`. */
const opposite = z.looseObject({
  kind: z.literal('opposite'),
  ...common,
  point: pointId,
  centre: pointId,
  of: pointId,
});

const samePlace = z.looseObject({ kind: z.literal('samePlace'), ...common, points: z.tuple([pointId, pointId]) });

/** `point` lies on the line through two others. */
const inLine = z.looseObject({
  kind: z.literal('inLine'),
  ...common,
  point: pointId,
  through: z.tuple([pointId, pointId]),
});

const sameRadius = z.looseObject({
  kind: z.literal('sameRadius'),
  ...common,
  points: z.array(pointId).min(2).max(1000),
  centre: pointId,
});

/** The points stand evenly about the centre, in the listed order anticlockwise: same radius, equal steps. */
const evenSpacing = z.looseObject({
  kind: z.literal('evenSpacing'),
  ...common,
  points: z.array(pointId).min(2).max(1000),
  centre: pointId,
});

/**
 * A stated gap between two outlines: circles of wheels (tips), arbors, posts, marks and round walls; for a wall
 * with straight sides `edge` says which side (index of its first vertex). A part inside a ring keeps the gap inside.
 */
const clearBy = z.looseObject({
  kind: z.literal('clearBy'),
  ...common,
  parts: z.tuple([partId, partId]),
  gap: extent,
  edge: z.int().min(0).exactOptional(),
});

export const rule = z.discriminatedUnion('kind', [
  held,
  depth,
  distance,
  radius,
  bearing,
  opposite,
  samePlace,
  inLine,
  sameRadius,
  evenSpacing,
  clearBy,
]);
