/**
 * Ids of the parts of a movement: short readable strings, branded by kind so that an arbor's id
 * cannot stand for a wheel's.
 */
import { z } from 'zod';

/** What an id may look like: a letter or digit first, then letters, digits, dot, dash, underscore; 1..64 long. */
export const ID_PATTERN = /^[\p{L}\p{N}][\p{L}\p{N}._-]{0,63}$/u;

const id = z.string().regex(ID_PATTERN);

export const arborId = id.brand<'ArborId'>();
export const postId = id.brand<'PostId'>();
export const markId = id.brand<'MarkId'>();
export const wheelId = id.brand<'WheelId'>();
export const ruleId = id.brand<'RuleId'>();
export const plateId = id.brand<'PlateId'>();
export const wallId = id.brand<'WallId'>();
export const openingId = id.brand<'OpeningId'>();
export const couplingId = id.brand<'CouplingId'>();
export const indicationId = id.brand<'IndicationId'>();
export const readingId = id.brand<'ReadingId'>();
export type ArborId = z.output<typeof arborId>;
export type PostId = z.output<typeof postId>;
export type MarkId = z.output<typeof markId>;
export type PointId = ArborId | PostId | MarkId;
export type WheelId = z.output<typeof wheelId>;
export type RuleId = z.output<typeof ruleId>;
export type PlateId = z.output<typeof plateId>;
export type WallId = z.output<typeof wallId>;
export type OpeningId = z.output<typeof openingId>;
export type CouplingId = z.output<typeof couplingId>;
export type IndicationId = z.output<typeof indicationId>;
export type ReadingId = z.output<typeof readingId>;
export type PartId = PointId | WheelId | WallId | PlateId | OpeningId;

// A brand over several kinds would be an id of all of them at once; what is meant is an id of one of them. At run
// time the schemas are the plain id, so only the type of their output is restated.
/** Anything with one place in the plane: an arbor, a post or a mark. */
export const pointId = id as unknown as z.ZodType<PointId, string>;
/** Anything with an outline that a gap can be asked of. */
export const partId = id as unknown as z.ZodType<PartId, string>;
