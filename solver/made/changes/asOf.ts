/**
 * The movement as it stood on a day: what was measured or made later is left out, and what rests on measurements is worked
 * out again from those there were.
 */

import { applyEdit } from '../../movement/index.ts';
import type { Made, Movement, Rule } from '../../movement/schema.ts';
import { HOLDS } from '../../tolerances.ts';
import { type DepthReadings, depthReadings } from '../readings/depthReadings.ts';
import { sizeReadings } from '../readings/sizeReadings.ts';
import { editOfSize, partSizes } from '../readings/sizes.ts';

/** A note with the day that it was made on, as ISO date. */
type Dated = { readonly date?: string };

/**
 * The movement at the end of a day (`2026-05-01`), or as drawn: before anything was read or made.
 *
 * Combined depths and sizes that are in use are combined again from the readings of then; one that had none is calculated
 * or drawn again. What has no day was always there, except in the movement as drawn; so with a depth that was typed in by
 * hand, without a reading.
 */
export function movementAsOf(movement: Movement, day: string | 'drawn'): Movement {
  const isThere = ({ date }: Dated): boolean => (day === 'drawn' ? false : date === undefined || date <= day);
  const readings = movement.readings.filter(isThere);
  const then: Movement = { ...movement, readings, made: movement.made.flatMap((made) => madeThen(made, isThere)) };
  return withSizesThen(movement, withDepthsThen(movement, then, day));
}

/** Days on which something was read or made, the earliest first. */
export function daysOf(movement: Movement): readonly string[] {
  const made = movement.made.flatMap((each) => [each, ...(each.earlier ?? [])]);
  const days = [...movement.readings, ...made].flatMap(({ date }: Dated) => (date === undefined ? [] : [date]));
  return [...new Set(days)].sort();
}

/** The state that a point had: the last of those that were there. */
function madeThen({ earlier = [], ...now }: Made, isThere: (dated: Dated) => boolean): Made[] {
  const before = earlier.filter(isThere);
  if (isThere(now)) return [before.length > 0 ? { ...now, earlier: before } : now];
  const last = before.pop();
  if (!last) return [];
  const { point, plate } = now;
  return [
    { ...last, point, ...(plate === undefined ? {} : { plate }), ...(before.length > 0 ? { earlier: before } : {}) },
  ];
}

function withDepthsThen(now: Movement, then: Movement, day: string): Movement {
  const known = new Map(depthReadings(now).map((each) => [each.rule, each]));
  const were = new Map(depthReadings(then).map((each) => [each.rule, each]));
  const there = new Set(then.readings.map(({ id }) => id));
  const isDrawing = day === 'drawn';
  const rules = then.rules.map((rule): Rule => {
    if (rule.kind !== 'depth' || !rule.measured) return rule;
    const { measured, use, ...rest } = rule;
    const { reading } = measured;
    const isGone = reading !== undefined && !there.has(reading);
    if (!isGone && !isDrawing && !restsOn(measured.value, known.get(rule.id))) return rule;
    const was = were.get(rule.id)?.measured;
    if (!was) return { ...rest, use: use === 'measured' ? 'calculated' : use };
    const [only] = was.used;
    const sole = was.used.length === 1 ? then.readings.find(({ id }) => id === only)?.id : undefined;
    const value = { value: was.length, plusMinus: was.plusMinus, ...(sole === undefined ? {} : { reading: sole }) };
    return { ...rest, use, measured: value };
  });
  return { ...then, rules };
}

const restsOn = (value: number, known: DepthReadings | undefined): boolean =>
  known?.measured !== undefined && Math.abs(known.measured.length - value) <= HOLDS;

/** Measured sizes in use as they were; where a field refuses the older value it keeps the one that it has. */
function withSizesThen(now: Movement, then: Movement): Movement {
  const used = new Set(sizeReadings(now).flatMap(({ size, isUsed }) => (isUsed ? [size.key] : [])));
  if (used.size === 0) return then;
  const were = new Map(sizeReadings(then).map(({ size, measured }) => [size.key, measured?.length]));
  // One after the other: two bearings of an arbor stand in one field.
  return [...used].reduce((movement, key) => {
    const size = partSizes(movement).find((each) => each.key === key);
    const edit = size && editOfSize(movement, size, were.get(key));
    const edited = edit && applyEdit(movement, edit);
    return edited?.kind === 'edited' ? edited.movement : movement;
  }, then);
}
