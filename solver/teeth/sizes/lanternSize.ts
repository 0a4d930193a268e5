/** Sizes of lantern pinions. */
import type { Wheel } from '../../movement/schema.ts';
import { moduleOf } from './moduleOf.ts';
import { trundleRadiusOf } from './trundles.ts';
import type { WheelSize } from './wheelSize.ts';

/** A lantern pinion: the trundle circle is the pitch circle, the trundles stand half above and half below it. */
export function lanternSize(wheel: Wheel): WheelSize {
  const module = moduleOf(wheel.size);
  const pitchRadius = (module * wheel.teeth) / 2;
  const pin = trundleRadiusOf(wheel);
  return {
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
}
