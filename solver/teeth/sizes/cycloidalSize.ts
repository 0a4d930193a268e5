/** Sizes of cycloidal wheels and pinions: the row of proportions with the wheel's own factors. */
import type { Movement, Wheel } from '../../movement/schema.ts';
import { cycloidalRow } from './cycloidalRow.ts';
import { moduleOf } from './moduleOf.ts';
import type { WheelSize } from './wheelSize.ts';

/** Circles and teeth of a cycloidal wheel or pinion. */
export function cycloidalSize(wheel: Wheel, movement: Movement): WheelSize {
  const module = moduleOf(wheel.size);
  const row = cycloidalRow(wheel, movement);
  const side = wheel.internal ? -1 : 1;
  const pitchRadius = (module * wheel.teeth) / 2;
  const tipRadius =
    wheel.tipDiameter === undefined
      ? pitchRadius + side * (wheel.addendum ?? row.addendum) * module
      : wheel.tipDiameter / 2;
  const rootRadius = pitchRadius - side * (wheel.dedendum ?? row.dedendum) * module;
  const asCut = wheel.tipDiameter !== undefined || wheel.toothThickness !== undefined;
  const own = [wheel.addendum, wheel.dedendum, wheel.thicknessFactor].some((factor) => factor !== undefined);
  const size: WheelSize = {
    module,
    pitchRadius,
    tipRadius: Math.max(tipRadius, LEAST_RADIUS * module),
    rootRadius: Math.max(rootRadius, LEAST_RADIUS * module),
    addendum: side * (tipRadius - pitchRadius),
    dedendum: side * (pitchRadius - rootRadius),
    thickness: wheel.toothThickness ?? (wheel.thicknessFactor ?? row.thickness) * module,
    source: `${asCut ? 'as cut; else ' : ''}${row.source}${own ? ', own factors' : ''}`,
  };
  const doubts = [...row.doubts];
  if (rootRadius < LEAST_RADIUS * module) {
    const [dedendum, inModules] = [size.dedendum / module, wheel.teeth / 2];
    doubts.push({ kind: 'cutToCentre', wheel: wheel.id, dedendum, pitchRadius: inModules });
  }
  return doubts.length > 0 ? { ...size, doubts } : size;
}

/** Smallest radius that a size keeps, × module: where factors would cut a wheel away to its centre. */
const LEAST_RADIUS = 0.1;
