/** Circles and teeth of any wheel: form, table and the wheel's own factors brought together. */
import type { Movement, Wheel } from '../../movement/schema.ts';
import { cycloidalRow } from './cycloidalRow.ts';
import { involuteSize } from './involuteSize.ts';
import { moduleOf } from './moduleOf.ts';
import { triangularSize } from './triangularSize.ts';
import { trundleRadiusOf } from './trundles.ts';
import type { WheelSize } from './wheelSize.ts';

/**
 * The size of a wheel of the movement, mm. Always gives finite numbers; what is doubtful stands in `doubts`.
 *
 * @param movement tells the mate (from the depth rules), which decides wheel or pinion and a cycloidal addendum
 */
export function sizeOfWheel(wheel: Wheel, movement: Movement): WheelSize {
  switch (wheel.form) {
    case 'involute':
      return involuteSize(wheel, movement);
    case 'cycloidal':
      return cycloidalSize(wheel, movement);
    case 'triangular':
      return triangularSize(wheel);
    case 'lantern':
      return lanternSize(wheel);
  }
}

function cycloidalSize(wheel: Wheel, movement: Movement): WheelSize {
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

/** A lantern pinion: the trundle circle is the pitch circle, the trundles stand half above and half below it. */
function lanternSize(wheel: Wheel): WheelSize {
  const module = moduleOf(wheel.size);
  const pitchRadius = (module * wheel.teeth) / 2;
  const pin = trundleRadiusOf(wheel);
  const size: WheelSize = {
    module,
    pitchRadius,
    tipRadius: pitchRadius + pin,
    rootRadius: Math.max(0, pitchRadius - pin),
    addendum: pin,
    dedendum: pin,
    // Arc of the pitch circle inside a pin.
    thickness: 4 * pitchRadius * Math.asin(Math.min(1, pin / (2 * pitchRadius))),
    source: wheel.trundleDiameter === undefined ? 'usual trundles (common practice)' : 'trundles as stated',
  };
  const chord = 2 * pitchRadius * Math.sin(Math.PI / wheel.teeth);
  if (2 * pin < chord) return size;
  return { ...size, doubts: [{ kind: 'trundlesTouch', wheel: wheel.id, trundleDiameter: 2 * pin, apart: chord }] };
}
