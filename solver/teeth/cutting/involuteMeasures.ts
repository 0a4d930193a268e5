/** Measuring involute wheels: span over teeth, size over pins, thickness at any radius. Handbook formulas, checked in tests/published/involute.test.ts. */
import { involute, involuteAngle } from '../sizes/involuteFunction.ts';

/** What of an involute wheel decides its measures. */
export interface InvoluteTeeth {
  readonly teeth: number;
  readonly module: number;
  /** Radians. */
  readonly alpha: number;
  /** Tooth thickness on the pitch circle, mm (profile shift and thinning included). */
  readonly thickness: number;
}

/** Tooth thickness over module that a plain tooth has beyond half a pitch, as a profile shift would give it, × module. */
const shiftOf = ({ module, alpha, thickness }: InvoluteTeeth): number =>
  (thickness / module - Math.PI / 2) / (2 * Math.tan(alpha));

/** Usual number of teeth spanned: the flanks then touch near the middle of their height. */
export function usualSpan({ teeth, alpha }: InvoluteTeeth): number {
  return Math.max(1, Math.min(teeth - 1, Math.round((teeth * alpha) / Math.PI + 0.5)));
}

/** Length over so many teeth between parallel jaws. */
export interface Span {
  readonly over: number;
  /** Length between the parallel jaws, mm. */
  readonly length: number;
  /** Diameter at which the jaws touch, mm. */
  readonly touches: number;
}

/** Base tangent length over `over` teeth. */
export function spanOver(wheel: InvoluteTeeth, over: number): Span {
  const { teeth, module, alpha } = wheel;
  const length =
    module * Math.cos(alpha) * (Math.PI * (over - 0.5) + teeth * involute(alpha)) +
    2 * shiftOf(wheel) * module * Math.sin(alpha);
  return { over, length, touches: Math.hypot(module * teeth * Math.cos(alpha), length) };
}

/** Size over two pins that lie in the spaces, lengths in mm. */
export interface OverPins {
  readonly pin: number;
  /** Over the outsides of two pins in opposite spaces (nearest to opposite when the count is odd), mm. */
  readonly size: number;
  /** Diameter of the circle on which the pins' centres stand, mm. */
  readonly centres: number;
}

/** Size over two pins of diameter `pin`; `undefined` when the pin is too small to touch the flanks. */
export function sizeOverPins({ teeth, module, alpha, thickness }: InvoluteTeeth, pin: number): OverPins | undefined {
  const pitchDiameter = module * teeth;
  const base = pitchDiameter * Math.cos(alpha);
  const value = pin / base - Math.PI / teeth + thickness / pitchDiameter + involute(alpha);
  const phi = involuteAngle(value);
  if (phi === undefined) return undefined;
  const centres = base / Math.cos(phi);
  const across = teeth % 2 === 0 ? centres : centres * Math.cos(Math.PI / (2 * teeth));
  return { pin, size: across + pin, centres };
}

/** Pin diameter that touches the flanks on the pitch circle, mm. */
export function pinOnPitchCircle({ teeth, module, alpha, thickness }: InvoluteTeeth): number {
  const pitchDiameter = module * teeth;
  // Half of the space there, seen along the base circle's tangent through the pin's centre.
  const space = Math.PI / teeth - thickness / pitchDiameter;
  const phi = alpha + space;
  return (
    pitchDiameter * Math.cos(alpha) * (involute(phi) + Math.PI / teeth - thickness / pitchDiameter - involute(alpha))
  );
}

/** Arc thickness of the tooth on a circle of radius ≥ base, mm. */
export function thicknessAt({ teeth, module, alpha, thickness }: InvoluteTeeth, radius: number): number {
  const pitchRadius = (module * teeth) / 2;
  const at = Math.acos(Math.min(1, (pitchRadius * Math.cos(alpha)) / radius));
  return 2 * radius * (thickness / (2 * pitchRadius) + involute(alpha) - involute(at));
}

/** How an involute wheel is usually measured. */
export interface InvoluteMeasures {
  readonly span: Span;
  readonly pins?: OverPins;
}

/** Over the usual number of teeth, and over pins that stand a little proud. */
export function usualMeasures(teeth: InvoluteTeeth): InvoluteMeasures {
  const pin = pinOnPitchCircle(teeth);
  // A pin to a tenth of a millimetre that stands a little proud: makers use the shank of a drill or a needle.
  const pins = sizeOverPins(teeth, Math.max(pin, Math.ceil(pin * 10) / 10));
  return { span: spanOver(teeth, usualSpan(teeth)), ...(pins ? { pins } : {}) };
}
